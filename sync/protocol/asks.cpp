#include "sync/protocol/asks.hpp"

#include "sync/protocol/limits.hpp"

#include <algorithm>

namespace bullace::sync {

namespace {

using journal::BranchEnd;
using journal::Origin;

constexpr std::size_t kRunHeadBytes = 64; // bounds what a run costs besides its entries
constexpr std::size_t kEntryHeadBytes = 3;

// Calls a function for each stretch of equal origins in two ascending vectors.
template<typename Visit>
void forEachOrigin(std::span<const BranchEnd> a, std::span<const BranchEnd> b, Visit visit) {
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < a.size() || j < b.size()) {
        const bool isOfA = j == b.size() || (i < a.size() && a[i].origin <= b[j].origin);
        const Origin origin = isOfA ? a[i].origin : b[j].origin;
        const std::size_t firstA = i;
        const std::size_t firstB = j;
        while (i < a.size() && a[i].origin == origin) {
            ++i;
        }
        while (j < b.size() && b[j].origin == origin) {
            ++j;
        }
        visit(origin, firstA, i, firstB, j);
    }
}

Result<bool> lacksPhotos(Replica& replica) {
    const auto lacked = replica.lackedPhotos(Digest{}, 1);
    if (!lacked) {
        return lacked.error();
    }
    return !lacked->empty();
}

AnswerBody greet(Replica& replica) {
    const auto history = replica.history();
    if (!history) {
        return history.error();
    }
    auto ends = replica.vector();
    if (!ends) {
        return ends.error();
    }
    const auto lacks = lacksPhotos(replica);
    if (!lacks) {
        return lacks.error();
    }
    if (ends->size() > kVectorEnds) {
        return Error{ErrorCode::BeyondLimit,
                     "This journal knows more devices than a sync can tell of. Nothing was lost; "
                     "export it and ask for help.",
                     {}};
    }
    return Greeting{*history, *lacks, std::move(*ends)};
}

Result<std::vector<bool>> whichAreHeld(Replica& replica, const journal::Vector& ends) {
    std::vector<bool> held(ends.size());
    for (std::size_t i = 0; i < ends.size(); ++i) {
        const auto isHeld = replica.holds(ends[i]);
        if (!isHeld) {
            return isHeld.error();
        }
        held[i] = *isHeld;
    }
    return held;
}

// The station's history, once it knows which ends it does not hold.
Result<HistoryId>
tellUnknown(Replica& replica, const journal::Vector& theirs, const std::vector<bool>& held) {
    journal::Vector unknown;
    for (std::size_t i = 0; i < theirs.size(); ++i) {
        if (!held[i]) {
            unknown.push_back(theirs[i]);
        }
    }
    if (Status told = unknown.empty() ? Status{} : replica.onUnknownEnds(unknown); !told) {
        return told.error();
    }
    return replica.history();
}

AnswerBody compare(Replica& replica, const CompareAsk& ask) {
    AnswerBody greeting = greet(replica);
    if (!std::holds_alternative<Greeting>(greeting)) {
        return greeting;
    }
    auto& mine = std::get<Greeting>(greeting);
    const auto epoch = replica.greatestEpoch(ask.hello.device);
    if (!epoch) {
        return epoch.error();
    }
    const journal::Vector& theirs = ask.hello.ends;
    Comparison result{mine.ends == theirs, mine.history, *epoch, mine.lacksPhotos, {}, {}};
    if (result.isEqual) {
        return result;
    }
    auto held = whichAreHeld(replica, theirs);
    if (!held) {
        return held.error();
    }
    const auto history = tellUnknown(replica, theirs, *held);
    if (!history) {
        return history.error();
    }
    result.history = *history;
    result.held = std::move(*held);
    forEachOrigin(
        mine.ends,
        theirs,
        [&](const Origin&, std::size_t a, std::size_t aEnd, std::size_t b, std::size_t bEnd) {
            const auto at = [](const journal::Vector& ends, std::size_t i) {
                return ends.begin() + static_cast<std::ptrdiff_t>(i);
            };
            if (!std::equal(
                    at(mine.ends, a), at(mine.ends, aEnd), at(theirs, b), at(theirs, bEnd))) {
                result.ends.insert(result.ends.end(), at(mine.ends, a), at(mine.ends, aEnd));
            }
        });
    return result;
}

// Adds what is to be sent of one origin.
Status addMissing(Replica& replica,
                  const Origin& origin,
                  const std::vector<BranchEnd>& held,
                  std::vector<Part>& parts) {
    auto missing = replica.missing(origin, held);
    if (!missing) {
        return missing.error();
    }
    parts.insert(parts.end(), missing->begin(), missing->end());
    return {};
}

AnswerBody planClient(Replica& replica, const ClientPlanAsk& ask) {
    const auto heldHere = whichAreHeld(replica, ask.theirs);
    if (!heldHere) {
        return heldHere.error();
    }
    Plan plan;
    for (std::size_t i = 0; i < ask.theirs.size(); ++i) {
        if (!(*heldHere)[i]) {
            plan.wanted.push_back(static_cast<std::uint32_t>(i));
        }
    }
    Status status;
    forEachOrigin(ask.mine,
                  ask.theirs,
                  [&](const Origin& origin,
                      std::size_t a,
                      std::size_t aEnd,
                      std::size_t b,
                      std::size_t bEnd) {
                      std::vector<BranchEnd> held;
                      for (std::size_t i = a; i < aEnd; ++i) {
                          if (ask.heldThere[i]) {
                              held.push_back(ask.mine[i]);
                          }
                      }
                      const bool isLacking = held.size() < aEnd - a;
                      if (!isLacking || !status ||
                          !(ask.isRelay || isOwnOrigin(origin, ask.letter, ask.device))) {
                          return;
                      }
                      held.insert(held.end(),
                                  ask.theirs.begin() + static_cast<std::ptrdiff_t>(b),
                                  ask.theirs.begin() + static_cast<std::ptrdiff_t>(bEnd));
                      status = addMissing(replica, origin, held, plan.parts);
                  });
    if (!status) {
        return status.error();
    }
    return plan;
}

AnswerBody planStation(Replica& replica, const StationPlanAsk& ask) {
    Plan plan;
    Status status;
    auto wanted = ask.wanted.begin();
    forEachOrigin(ask.listed,
                  ask.theirs,
                  [&](const Origin& origin,
                      std::size_t a,
                      std::size_t aEnd,
                      std::size_t b,
                      std::size_t bEnd) {
                      std::vector<BranchEnd> held;
                      bool isWanted = false;
                      for (std::size_t i = a; i < aEnd; ++i) {
                          if (wanted != ask.wanted.end() && *wanted == i) {
                              isWanted = true;
                              ++wanted;
                          } else {
                              held.push_back(ask.listed[i]);
                          }
                      }
                      if (!isWanted || !status) {
                          return;
                      }
                      for (std::size_t i = b; i < bEnd; ++i) {
                          if (ask.heldHere[i]) {
                              held.push_back(ask.theirs[i]);
                          }
                      }
                      status = addMissing(replica, origin, held, plan.parts);
                  });
    if (!status) {
        return status.error();
    }
    return plan;
}

std::size_t sentBytes(const journal::Run& run) {
    std::size_t bytes = kRunHeadBytes;
    for (const Bytes& entry : run.entries) {
        bytes += entry.size() + kEntryHeadBytes;
    }
    return bytes;
}

AnswerBody read(Replica& replica, const ReadAsk& ask) {
    ReadBatch batch;
    std::size_t entries = ask.mostEntries;
    std::size_t bytes = ask.mostBytes;
    for (const Part& part : ask.parts) {
        const std::size_t heads = kRunHeadBytes + entries * kEntryHeadBytes;
        // A further run is begun only where any first entry would fit.
        if (!batch.runs.empty() && (entries == 0 || bytes < heads + journal::kGreatestEntryBytes)) {
            break;
        }
        auto run = replica.readRun(part.segment, part.from, entries, bytes - heads);
        if (!run && run.error().code != ErrorCode::Damaged) {
            return run.error();
        }
        if (!run || run->entries.empty()) {
            batch.damaged.push_back(part.segment.origin);
            break;
        }
        const std::uint64_t last = run->last();
        const std::size_t used = sentBytes(*run);
        entries -= std::min(entries, run->entries.size());
        bytes -= std::min(bytes, used);
        batch.runs.push_back(std::move(*run));
        if (last < part.segment.last) {
            batch.nextFrom = last + 1;
            break;
        }
        ++batch.partsRead;
    }
    return batch;
}

AnswerBody readPiece(Replica& replica, const PieceReadAsk& ask) {
    auto read = replica.readPiece(ask.photo, ask.offset, kPieceBytes);
    if (!read) {
        return read.error();
    }
    if (read->total == 0 || read->total > kGreatestPhotoBytes || read->bytes.empty()) {
        return Piece{ask.photo, 0, 0, {}};
    }
    return Piece{ask.photo, read->total, ask.offset, std::move(read->bytes)};
}

AnswerBody storePiece(Replica& replica, const Piece& piece) {
    const Status status = replica.storePiece(piece.photo, piece.total, piece.offset, piece.bytes);
    if (!status && status.error().code != ErrorCode::Damaged) {
        return status.error();
    }
    return PieceStored{!status.ok()};
}

struct Performer {
    Replica& replica;

    AnswerBody operator()(const GreetAsk& /*ask*/) const { return greet(replica); }
    AnswerBody operator()(const CompareAsk& ask) const { return compare(replica, ask); }
    AnswerBody operator()(const ClientPlanAsk& ask) const { return planClient(replica, ask); }
    AnswerBody operator()(const StationPlanAsk& ask) const { return planStation(replica, ask); }
    AnswerBody operator()(const ReadAsk& ask) const { return read(replica, ask); }
    AnswerBody operator()(const StoreAsk& ask) const {
        auto reports = replica.store(ask.runs, ask.sender);
        return reports ? AnswerBody(Stored{std::move(*reports)}) : AnswerBody(reports.error());
    }
    AnswerBody operator()(const LackedAsk& ask) const {
        auto photos = replica.lackedPhotos(ask.after, ask.most);
        return photos ? AnswerBody(Lacked{std::move(*photos)}) : AnswerBody(photos.error());
    }
    AnswerBody operator()(const PieceReadAsk& ask) const { return readPiece(replica, ask); }
    AnswerBody operator()(const PieceStoreAsk& ask) const { return storePiece(replica, ask.piece); }
};

} // namespace

bool isOwnOrigin(const Origin& origin, char letter, std::uint64_t device) {
    return origin.device == device &&
           (origin.letter == letter || (letter == 's' && origin.letter == 't'));
}

Answer perform(Replica& replica, const Ask& ask) {
    return {ask.ticket, std::visit(Performer{replica}, ask.body)};
}

} // namespace bullace::sync
