// The database as a sync sees it.
#pragma once

#include "store/database.hpp"
#include "sync/protocol/replica.hpp"

namespace bullace::server {

class StoreReplica : public sync::Replica {
public:
    explicit StoreReplica(store::Database& database) : database_(database) {}

    Result<sync::HistoryId> history() override;
    Result<journal::Vector> vector() override;
    Result<bool> holds(const journal::BranchEnd& end) override;
    Status onUnknownEnds(const journal::Vector& ends) override;
    Result<std::uint32_t> greatestEpoch(std::uint64_t device) override;
    Result<std::vector<sync::Part>> missing(const journal::Origin& origin,
                                            std::span<const journal::BranchEnd> held) override;
    Result<journal::Run> readRun(const journal::Segment& segment,
                                 std::uint64_t from,
                                 std::size_t mostEntries,
                                 std::size_t mostBytes) override;
    Result<std::vector<journal::RunReport>> store(const journal::Batch& batch,
                                                  const sync::Sender& sender) override;
    Result<std::vector<sync::LackedPhoto>> lackedPhotos(const Digest& after,
                                                        std::size_t most) override;
    Result<sync::PhotoPiece>
    readPiece(const Digest& photo, std::uint64_t offset, std::size_t most) override;
    Status storePiece(const Digest& photo,
                      std::uint64_t total,
                      std::uint64_t offset,
                      BytesView bytes) override;

private:
    store::Database& database_;
};

} // namespace bullace::server
