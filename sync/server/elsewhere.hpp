// A database that belongs to another thread: a program whose screen writes into the journal syncs
// it from a thread of its own, and every step of the sync is done where the journal is.
#pragma once

#include "sync/protocol/replica.hpp"

#include <functional>

namespace bullace::server {

// Runs a task on the thread that owns the journal, and returns when it is done. Where that thread
// takes no more tasks it returns without having run it.
using RunThere = std::function<void(const std::function<void()>&)>;

// Every call is one short task there: at most one batch is stored before the screen has its turn.
class ElsewhereReplica : public sync::Replica {
public:
    // Both must outlive this.
    ElsewhereReplica(sync::Replica& replica, const RunThere& runThere)
        : replica_(replica),
          runThere_(runThere) {}

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
    sync::Replica& replica_;
    const RunThere& runThere_;
};

// What `task` returns; an error where the owner takes no more tasks.
template<typename Task>
auto resultThere(const RunThere& runThere, Task task) -> decltype(task()) {
    decltype(task()) result =
        Error{ErrorCode::Cancelled, "The program is closing; sync again later.", {}};
    runThere([&] { result = task(); });
    return result;
}

} // namespace bullace::server
