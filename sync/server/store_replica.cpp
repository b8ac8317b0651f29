#include "sync/server/store_replica.hpp"

#include "store/photos.hpp"

#include <algorithm>

namespace bullace::server {

Result<sync::HistoryId> StoreReplica::history() {
    sync::HistoryId id{};
    const Bytes& held = database_.about().history;
    std::copy_n(held.begin(), std::min(held.size(), id.size()), id.begin());
    return id;
}

Result<journal::Vector> StoreReplica::vector() {
    if (Status ready = database_.ready(); !ready) {
        return ready.error();
    }

    return database_.vector();
}

Result<bool> StoreReplica::holds(const journal::BranchEnd& end) {
    return database_.holds(end);
}

Status StoreReplica::onUnknownEnds(const journal::Vector& ends) {
    const journal::Origin own = database_.about().own;
    std::uint32_t greatest = 0;
    for (const journal::BranchEnd& end : ends) {
        if (end.origin.isSameDevice(own)) {
            greatest = std::max(greatest, end.origin.epoch);
        }
    }
    if (greatest < own.epoch) {
        return {}; // of an epoch that was left already: what it lacks, it has asked for
    }
    // The history first: whatever breaks off between the two is found again at the next sync.
    if (Status taken = database_.takeNewHistory(); !taken) {
        return taken;
    }
    return database_.takeNewEpoch(greatest);
}

Result<std::uint32_t> StoreReplica::greatestEpoch(std::uint64_t device) {
    return database_.greatestEpoch(device);
}

Result<std::vector<sync::Part>> StoreReplica::missing(const journal::Origin& origin,
                                                      std::span<const journal::BranchEnd> held) {
    return database_.missing(origin, held);
}

Result<journal::Run> StoreReplica::readRun(const journal::Segment& segment,
                                           std::uint64_t from,
                                           std::size_t mostEntries,
                                           std::size_t mostBytes) {
    return database_.readRun(segment, from, mostEntries, mostBytes);
}

Result<std::vector<journal::RunReport>> StoreReplica::store(const journal::Batch& batch,
                                                            const sync::Sender& sender) {
    return database_.merge(batch,
                           {.letter = sender.letter,
                            .device = sender.device,
                            .isRelay = sender.way == sync::Way::Relayed,
                            .isStation = sender.way == sync::Way::FromStation});
}

Result<std::vector<sync::LackedPhoto>> StoreReplica::lackedPhotos(const Digest& after,
                                                                  std::size_t most) {
    const auto lacking = store::lackingPhotos(database_, after, most);
    if (!lacking) {
        return lacking.error();
    }
    std::vector<sync::LackedPhoto> photos;
    for (const store::LackingPhoto& photo : *lacking) {
        photos.push_back({photo.digest, photo.held});
    }
    return photos;
}

Result<sync::PhotoPiece>
StoreReplica::readPiece(const Digest& photo, std::uint64_t offset, std::size_t most) {
    auto part = store::photoPart(database_, photo, offset, most);
    if (!part) {
        return part.error();
    }
    return sync::PhotoPiece{part->total, std::move(part->bytes)};
}

Status StoreReplica::storePiece(const Digest& photo,
                                std::uint64_t total,
                                std::uint64_t offset,
                                BytesView bytes) {
    return store::addPhotoPiece(database_, photo, total, offset, bytes);
}

} // namespace bullace::server
