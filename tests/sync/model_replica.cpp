#include "model_replica.hpp"

#include <algorithm>
#include <cstring>

namespace bullace::test {

using journal::BranchEnd;
using journal::Origin;

std::size_t ModelReplica::DigestHash::operator()(const Digest& digest) const {
    std::size_t value = 0;
    std::memcpy(&value, digest.bytes.data(), sizeof value);
    return value;
}

const ModelReplica::Node*
ModelReplica::add(Book& book, const Node* before, const Digest& digest, const Bytes& bytes) {
    const std::uint64_t seq = before == nullptr ? 1 : before->seq + 1;
    const auto [at, isNew] = book.nodes.try_emplace(digest, Node{seq, bytes, digest, before, true});
    if (isNew) {
        std::erase(book.ends, before);
        book.ends.push_back(&at->second);
        if (before != nullptr) {
            book.nodes.at(before->digest).isEnd = false;
        }
    }
    return &at->second;
}

void ModelReplica::write(const Origin& origin, std::size_t number, const std::string& author) {
    Book& book = books_[origin];
    const Node* last = book.ends.empty() ? nullptr : book.ends.front();
    for (std::size_t i = 0; i < number; ++i) {
        journal::Entry entry;
        entry.origin = origin;
        entry.seq = last == nullptr ? 1 : last->seq + 1;
        entry.count = entry.seq;
        entry.author = author;
        entry.kind = "observe";
        entry.subject = "obs/B2-07-14/2026-05-12/stage";
        entry.value = Bytes("\x18\x41");
        const Bytes bytes = entry.encode();
        last = add(book,
                   last,
                   journal::chainDigest(last == nullptr ? Digest{} : last->digest, bytes),
                   bytes);
    }
}

void ModelReplica::forget(const Origin& origin) {
    books_.erase(origin);
    chain_.clear();
    chainOf_ = {};
}

std::size_t ModelReplica::count() const {
    std::size_t number = 0;
    for (const auto& [origin, book] : books_) {
        number += book.nodes.size();
    }
    return number;
}

std::size_t ModelReplica::count(const Origin& origin) const {
    const auto at = books_.find(origin);
    return at == books_.end() ? 0 : at->second.nodes.size();
}

std::set<Bytes> ModelReplica::entries() const {
    std::set<Bytes> all;
    for (const auto& [origin, book] : books_) {
        for (const auto& [digest, node] : book.nodes) {
            all.insert(node.bytes + digest.hex());
        }
    }
    return all;
}

Result<journal::Vector> ModelReplica::vector() {
    journal::Vector ends;
    for (const auto& [origin, book] : books_) {
        for (const Node* end : book.ends) {
            ends.push_back({origin, end->seq, end->digest});
        }
    }
    std::sort(ends.begin(), ends.end());
    return ends;
}

Result<bool> ModelReplica::holds(const BranchEnd& end) {
    const auto book = books_.find(end.origin);
    if (book == books_.end()) {
        return false;
    }
    const auto node = book->second.nodes.find(end.digest);
    return node != book->second.nodes.end() && node->second.seq == end.seq;
}

Result<std::uint32_t> ModelReplica::greatestEpoch(std::uint64_t device) {
    std::uint32_t greatest = 0;
    for (const auto& [origin, book] : books_) {
        if (origin.device == device) {
            greatest = std::max(greatest, origin.epoch);
        }
    }
    return greatest;
}

Result<std::vector<sync::Part>> ModelReplica::missing(const Origin& origin,
                                                      std::span<const BranchEnd> held) {
    std::vector<sync::Part> parts;
    Book& book = books_[origin];
    std::set<const Node*> covered;
    for (const BranchEnd& end : held) {
        const auto at = book.nodes.find(end.digest);
        const Node* node = at == book.nodes.end() ? nullptr : &at->second;
        for (; node != nullptr && covered.insert(node).second; node = node->before) {
        }
    }
    for (const Node* end : book.ends) {
        std::uint64_t first = end->seq + 1;
        for (const Node* node = end; node != nullptr && covered.insert(node).second;
             node = node->before) {
            first = node->seq;
        }
        if (first <= end->seq) {
            parts.push_back({{origin, first, end->seq, end->digest}, first});
        }
    }
    return parts;
}

Result<journal::Run> ModelReplica::readRun(const journal::Segment& segment,
                                           std::uint64_t from,
                                           std::size_t mostEntries,
                                           std::size_t mostBytes) {
    if (damaged_.contains(segment.origin)) {
        return Error{ErrorCode::Damaged, "An entry does not agree with its digest.", {}};
    }
    if (chainOf_ != segment.lastDigest) {
        chain_.clear();
        const Node* node = &books_[segment.origin].nodes.at(segment.lastDigest);
        for (; node != nullptr; node = node->before) {
            chain_.push_back(node);
        }
        std::reverse(chain_.begin(), chain_.end());
        chainOf_ = segment.lastDigest;
    }
    journal::Run run{segment.origin, from, {}, {}};
    std::size_t bytes = 0;
    for (std::uint64_t seq = from; seq <= segment.last && run.entries.size() < mostEntries; ++seq) {
        const Node* node = chain_[static_cast<std::size_t>(seq - 1)];
        bytes += node->bytes.size();
        if (!run.entries.empty() && bytes > mostBytes) {
            break;
        }
        run.entries.push_back(node->bytes);
        run.lastDigest = node->digest;
    }
    return run;
}

std::optional<std::vector<Digest>> ModelReplica::follow(const journal::Run& run,
                                                        const Digest& before) {
    std::vector<Digest> digests;
    Digest last = before;
    for (const Bytes& entry : run.entries) {
        last = journal::chainDigest(last, entry);
        digests.push_back(last);
    }
    return last == run.lastDigest ? std::optional(std::move(digests)) : std::nullopt;
}

std::vector<const ModelReplica::Node*> ModelReplica::predecessors(Book& book, std::uint64_t seq) {
    std::vector<const Node*> found;
    for (const Node* end : book.ends) {
        const Node* node = end;
        while (node != nullptr && node->seq > seq) {
            node = node->before;
        }
        if (node != nullptr && node->seq == seq &&
            std::find(found.begin(), found.end(), node) == found.end()) {
            found.push_back(node);
        }
    }
    return found;
}

journal::RunReport ModelReplica::storeRun(const journal::Run& run, const sync::Sender& sender) {
    if (sender.way == sync::Way::Relayed && run.origin.letter == 's' &&
        run.origin.device != sender.device) {
        return {journal::RunOutcome::Apart, 0, false};
    }
    Book& book = books_[run.origin];
    auto candidates = predecessors(book, run.first - 1);
    if (run.first == 1) {
        candidates.push_back(nullptr);
    }
    for (const Node* before : candidates) {
        const auto digests = follow(run, before == nullptr ? Digest{} : before->digest);
        if (!digests) {
            continue;
        }
        const std::size_t held = book.nodes.size();
        for (std::size_t i = 0; i < run.entries.size(); ++i) {
            before = add(book, before, (*digests)[i], run.entries[i]);
        }
        const std::uint64_t added = book.nodes.size() - held;
        return {added > 0 ? journal::RunOutcome::Taken : journal::RunOutcome::Held,
                added,
                book.ends.size() > 1};
    }
    if (book.nodes.empty()) {
        books_.erase(run.origin);
    }
    return {journal::RunOutcome::Unlinked, 0, false};
}

Result<std::vector<journal::RunReport>> ModelReplica::store(const journal::Batch& batch,
                                                            const sync::Sender& sender) {
    ++storeCalls_;
    if (nextFailure_) {
        const Error error = *nextFailure_;
        nextFailure_.reset();
        return error;
    }
    std::vector<journal::RunReport> reports;
    for (const journal::Run& run : batch) {
        reports.push_back(storeRun(run, sender));
    }
    return reports;
}

Result<std::vector<sync::LackedPhoto>> ModelReplica::lackedPhotos(const Digest& after,
                                                                  std::size_t most) {
    std::vector<sync::LackedPhoto> photos;
    for (auto at = lacked_.upper_bound(after); at != lacked_.end() && photos.size() < most; ++at) {
        photos.push_back({at->first, at->second.size()});
    }
    return photos;
}

Result<sync::PhotoPiece>
ModelReplica::readPiece(const Digest& photo, std::uint64_t offset, std::size_t most) {
    const auto at = photos_.find(photo);
    if (at == photos_.end() || offset > at->second.size()) {
        return sync::PhotoPiece{};
    }
    return sync::PhotoPiece{at->second.size(),
                            at->second.substr(static_cast<std::size_t>(offset), most)};
}

Status ModelReplica::storePiece(const Digest& photo,
                                std::uint64_t total,
                                std::uint64_t offset,
                                BytesView bytes) {
    Bytes& here = lacked_[photo];
    if (offset != here.size()) {
        return Error{ErrorCode::Internal, "A piece of a photo came out of order.", {}};
    }
    here.append(bytes);
    if (here.size() < total) {
        return {};
    }
    if (sha256(here) != photo) {
        here.clear();
        return Error{ErrorCode::Damaged, "The photo is not what its name says.", {}};
    }
    photos_[photo] = std::move(here);
    lacked_.erase(photo);
    return {};
}

} // namespace bullace::test
