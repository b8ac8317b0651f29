#include "sync/server/elsewhere.hpp"

namespace bullace::server {

Result<sync::HistoryId> ElsewhereReplica::history() {
    return resultThere(runThere_, [&] { return replica_.history(); });
}

Result<journal::Vector> ElsewhereReplica::vector() {
    return resultThere(runThere_, [&] { return replica_.vector(); });
}

Result<bool> ElsewhereReplica::holds(const journal::BranchEnd& end) {
    return resultThere(runThere_, [&] { return replica_.holds(end); });
}

Status ElsewhereReplica::onUnknownEnds(const journal::Vector& ends) {
    return resultThere(runThere_, [&] { return replica_.onUnknownEnds(ends); });
}

Result<std::uint32_t> ElsewhereReplica::greatestEpoch(std::uint64_t device) {
    return resultThere(runThere_, [&] { return replica_.greatestEpoch(device); });
}

Result<std::vector<sync::Part>>
ElsewhereReplica::missing(const journal::Origin& origin, std::span<const journal::BranchEnd> held) {
    return resultThere(runThere_, [&] { return replica_.missing(origin, held); });
}

Result<journal::Run> ElsewhereReplica::readRun(const journal::Segment& segment,
                                               std::uint64_t from,
                                               std::size_t mostEntries,
                                               std::size_t mostBytes) {
    return resultThere(runThere_,
                       [&] { return replica_.readRun(segment, from, mostEntries, mostBytes); });
}

Result<std::vector<journal::RunReport>> ElsewhereReplica::store(const journal::Batch& batch,
                                                                const sync::Sender& sender) {
    return resultThere(runThere_, [&] { return replica_.store(batch, sender); });
}

Result<std::vector<sync::LackedPhoto>> ElsewhereReplica::lackedPhotos(const Digest& after,
                                                                      std::size_t most) {
    return resultThere(runThere_, [&] { return replica_.lackedPhotos(after, most); });
}

Result<sync::PhotoPiece>
ElsewhereReplica::readPiece(const Digest& photo, std::uint64_t offset, std::size_t most) {
    return resultThere(runThere_, [&] { return replica_.readPiece(photo, offset, most); });
}

Status ElsewhereReplica::storePiece(const Digest& photo,
                                    std::uint64_t total,
                                    std::uint64_t offset,
                                    BytesView bytes) {
    return resultThere(runThere_, [&] { return replica_.storePiece(photo, total, offset, bytes); });
}

} // namespace bullace::server
