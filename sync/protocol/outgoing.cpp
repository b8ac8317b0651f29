#include "sync/protocol/outgoing.hpp"

#include "core/base/planted.hpp"
#include "sync/protocol/messages.hpp"

#include <algorithm>
#include <limits>
#include <map>

namespace bullace::sync {

namespace {

constexpr std::size_t kPartsAtOnce = 64;
constexpr std::size_t kFrameHeadBytes = 32; // type, number and count of a batch

bool isAmong(const std::vector<journal::Origin>& list, const journal::Origin& origin) {
    return std::find(list.begin(), list.end(), origin) != list.end();
}

#ifdef BULLACE_PLANTED
std::map<journal::Origin, std::uint64_t>& plantedSends() {
    thread_local std::map<journal::Origin, std::uint64_t> sends;
    return sends;
}
#endif

// Deliberate bug: goes on behind what was sent in an earlier session.
void skipWhatWasSent([[maybe_unused]] std::deque<Part>& parts) {
#ifdef BULLACE_PLANTED
    if (!planted(Bug::ResendDropsRest)) {
        return;
    }
    for (Part& part : parts) {
        part.from = std::max(part.from, plantedSends()[part.segment.origin] + 1);
    }
    std::erase_if(parts, [](const Part& part) { return part.from > part.segment.last; });
#endif
}

void rememberSend([[maybe_unused]] const journal::Run& run) {
#ifdef BULLACE_PLANTED
    plantedSends()[run.origin] = run.last();
#endif
}

} // namespace

#ifdef BULLACE_PLANTED
void forgetPlantedSends() {
    plantedSends().clear();
}
#endif

std::int64_t clockDifference(std::int64_t theirsMs, std::int64_t oursMs) {
    std::int64_t difference = 0;
    if (__builtin_sub_overflow(theirsMs, oursMs, &difference)) {
        return theirsMs < 0 ? std::numeric_limits<std::int64_t>::min()
                            : std::numeric_limits<std::int64_t>::max();
    }
    return difference;
}

void noteOnce(std::vector<journal::Origin>& list, const journal::Origin& origin) {
    if (!isAmong(list, origin)) {
        list.push_back(origin);
    }
}

void Outgoing::begin(std::vector<Part> parts) {
    parts_.assign(parts.begin(), parts.end());
    skipWhatWasSent(parts_);
    isBegun_ = true;
}

std::optional<ReadAsk> Outgoing::nextRead() {
    if (!isBegun_ || isReading_ || parts_.empty() || onTheirWay_.size() >= kWindow) {
        return std::nullopt;
    }
    isReading_ = true;
    const std::size_t number = std::min(kPartsAtOnce, parts_.size());
    ReadAsk ask;
    ask.parts.assign(parts_.begin(), parts_.begin() + static_cast<std::ptrdiff_t>(number));
    ask.mostEntries = kBatchEntries;
    ask.mostBytes = kBatchBytes - kFrameHeadBytes;
    return ask;
}

void Outgoing::advance(const ReadBatch& read) {
    const std::size_t whole = std::min(read.partsRead, parts_.size());
    parts_.erase(parts_.begin(), parts_.begin() + static_cast<std::ptrdiff_t>(whole));
    if (read.nextFrom != 0 && !parts_.empty()) {
        parts_.front().from = read.nextFrom;
    }
}

void Outgoing::drop(const journal::Origin& origin) {
    noteOnce(ended_, origin);
    std::erase_if(parts_, [&origin](const Part& part) { return part.segment.origin == origin; });
}

std::optional<Bytes> Outgoing::onRead(ReadBatch read, Summary& summary) {
    isReading_ = false;
    advance(read);
    for (const journal::Origin& origin : read.damaged) {
        noteOnce(summary.damaged, origin);
        drop(origin);
    }
    // An origin may have ended while this batch was being read.
    for (const journal::Origin& origin : ended_) {
        drop(origin);
    }
    std::erase_if(read.runs, [this, &summary](const journal::Run& run) {
        return isAmong(ended_, run.origin) && !isAmong(summary.damaged, run.origin);
    });
    if (read.runs.empty()) {
        return std::nullopt;
    }
    Flight flight{nextNumber_++, 0, {}};
    for (const journal::Run& run : read.runs) {
        flight.entries += run.entries.size();
        flight.origins.push_back(run.origin);
        rememberSend(run);
    }
    entries_ += flight.entries;
    Bytes frame = encodeBatch(flight.number, read.runs);
    onTheirWay_.push_back(std::move(flight));
    return frame;
}

bool Outgoing::onAck(const Ack& ack, Summary& summary) {
    if (onTheirWay_.empty() || onTheirWay_.front().number != ack.number ||
        onTheirWay_.front().origins.size() != ack.runs.size()) {
        return false;
    }
    const Flight flight = std::move(onTheirWay_.front());
    onTheirWay_.pop_front();
    for (std::size_t i = 0; i < ack.runs.size(); ++i) {
        const journal::RunReport& report = ack.runs[i];
        const journal::Origin& origin = flight.origins[i];
        summary.newThere += report.added;
        if (report.isForked) {
            noteOnce(summary.forked, origin);
        }
        if (report.outcome == journal::RunOutcome::Unlinked) {
            noteOnce(summary.unlinkedThere, origin);
            drop(origin);
        } else if (report.outcome == journal::RunOutcome::Apart) {
            noteOnce(summary.apartThere, origin);
        }
    }
    summary.sentEntries += flight.entries;
    return true;
}

} // namespace bullace::sync
