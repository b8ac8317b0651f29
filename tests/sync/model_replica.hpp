// A replica in memory, as plain as it can be: entries by their digest, each with the one before it.
#pragma once

#include "core/journal/entry.hpp"
#include "sync/protocol/replica.hpp"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

namespace bullace::test {

class ModelReplica : public sync::Replica {
public:
    explicit ModelReplica(std::uint8_t life = 1) { history_.fill(life); }

    // Writes `number` entries at the end of the origin (at the end given, where it is forked), as
    // its device would.
    void write(const journal::Origin& origin, std::size_t number, const std::string& author = "mk");
    void forget(const journal::Origin& origin);
    void become(std::uint8_t life) { history_.fill(life); }
    // The next call of store() fails with this and stores nothing.
    void failNextStore(Error error) { nextFailure_ = std::move(error); }
    void damage(const journal::Origin& origin) { damaged_.insert(origin); }
    void addPhoto(const Bytes& bytes) { photos_[sha256(bytes)] = bytes; }
    void lackPhoto(const Digest& photo) { lacked_[photo]; }

    [[nodiscard]] std::size_t count() const;
    [[nodiscard]] std::size_t count(const journal::Origin& origin) const;
    // All entries, whatever the order in which they came.
    [[nodiscard]] std::set<Bytes> entries() const;
    [[nodiscard]] bool hasPhoto(const Digest& photo) const { return photos_.contains(photo); }
    [[nodiscard]] std::size_t storeCalls() const { return storeCalls_; }

    Result<sync::HistoryId> history() override { return history_; }
    Result<journal::Vector> vector() override;
    Result<bool> holds(const journal::BranchEnd& end) override;
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
    struct DigestHash {
        std::size_t operator()(const Digest& digest) const;
    };
    struct Node {
        std::uint64_t seq = 0;
        Bytes bytes;
        Digest digest;
        const Node* before = nullptr;
        bool isEnd = true;
    };
    struct Book {
        std::unordered_map<Digest, Node, DigestHash> nodes;
        std::vector<const Node*> ends;
        std::vector<Node*> findEnds();
    };
    const Node* add(Book& book, const Node* before, const Digest& digest, const Bytes& bytes);
    journal::RunReport storeRun(const journal::Run& run, const sync::Sender& sender);
    // The digests through the run, where they start behind `before` and arrive at its last digest.
    static std::optional<std::vector<Digest>> follow(const journal::Run& run, const Digest& before);
    static std::vector<const Node*> predecessors(Book& book, std::uint64_t seq);

    sync::HistoryId history_{};
    std::map<journal::Origin, Book> books_;
    std::set<journal::Origin> damaged_;
    std::map<Digest, Bytes> photos_;
    std::map<Digest, Bytes> lacked_; // what is here of them
    std::optional<Error> nextFailure_;
    std::size_t storeCalls_ = 0;
    Digest chainOf_; // the last of the chain that was read last
    std::vector<const Node*> chain_;
};

// The origins of the tests.
[[nodiscard]] inline journal::Origin
origin(char letter, std::uint64_t device, std::uint32_t epoch = 1) {
    return {letter, device, epoch};
}

} // namespace bullace::test
