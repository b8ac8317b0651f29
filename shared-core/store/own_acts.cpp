#include "store/own_acts.hpp"

#include <algorithm>

namespace bullace::store {

namespace {

constexpr std::uint64_t kAtOnce = 256; // entries

// The newest life first; within a life the branch that was written last is the last segment.
std::vector<journal::Segment> ownSegments(Database& database) {
    std::vector<journal::Segment> segments;
    std::set<journal::Origin> seen;
    std::vector<journal::Origin> origins;
    for (const journal::BranchEnd& end : database.vector()) {
        if (end.origin.device == database.about().own.device && seen.insert(end.origin).second) {
            origins.push_back(end.origin);
        }
    }
    std::sort(origins.begin(), origins.end(), [](const auto& a, const auto& b) {
        return a.epoch > b.epoch;
    });
    for (const journal::Origin& origin : origins) {
        std::vector<journal::Segment> of = database.segments(origin);
        segments.insert(segments.end(), of.rbegin(), of.rend());
    }
    return segments;
}

} // namespace

// One pass from the newest entry back, which gathers groups and leaves out what is undone.
class OwnActs::Reader {
public:
    explicit Reader(Database& database) : database_(database) {
        for (const journal::Segment& segment : ownSegments(database)) {
            stretches_.push_back({segment, segment.last});
        }
    }

    void stopAt(const journal::Vector& before) {
        for (Stretch& stretch : stretches_) {
            for (const journal::BranchEnd& end : before) {
                if (end.origin == stretch.segment.origin) {
                    stretch.segment.first = std::max(stretch.segment.first, end.seq + 1);
                }
            }
        }
    }

    // The next older act; nothing at the beginning of the journal.
    Result<std::optional<OwnAct>> next() {
        OwnAct act;
        while (true) {
            const Result<const journal::Entry*> entry = peek();
            if (!entry) {
                return entry.error();
            }
            if (*entry == nullptr || !belongs(act, **entry)) {
                std::reverse(act.entries.begin(), act.entries.end());
                return act.entries.empty() ? std::optional<OwnAct>{} : std::optional(act);
            }
            take(act);
        }
    }

private:
    static bool belongs(const OwnAct& act, const journal::Entry& entry) {
        if (act.entries.empty()) {
            return true;
        }
        const journal::Entry& newest = act.entries.back();
        return newest.group && newest.group == entry.group && newest.origin == entry.origin;
    }

    // An undo that is not undone itself takes what it names out of what follows, which is older.
    void take(OwnAct& act) {
        journal::Entry entry = std::move(chunk_.back());
        chunk_.pop_back();
        const bool isUndone = undone_.count({entry.origin, entry.seq}) > 0;
        const journal::Kind kind = journal::kindOf(entry.kind);
        if (kind == journal::Kind::Undo && !isUndone) {
            undone_.insert(entry.over.begin(), entry.over.end());
        }
        if (!isUndone && kind != journal::Kind::Undo && kind != journal::Kind::Remark) {
            act.entries.push_back(std::move(entry));
        }
    }

    Result<const journal::Entry*> peek() {
        while (chunk_.empty() && !stretches_.empty()) {
            Stretch& stretch = stretches_.front();
            if (stretch.next < stretch.segment.first) {
                stretches_.pop_front();
                continue;
            }
            const std::uint64_t from =
                std::max(stretch.segment.first,
                         stretch.next >= kAtOnce ? stretch.next - kAtOnce + 1 : std::uint64_t{1});
            if (Status read = readChunk(stretch, from); !read) {
                return read.error();
            }
            stretch.next = from - 1;
        }
        return chunk_.empty() ? nullptr : &chunk_.back();
    }

    Status readChunk(const Stretch& stretch, std::uint64_t from) {
        std::uint64_t at = from;
        while (at <= stretch.next) {
            const Result<journal::Run> run =
                database_.readRun(stretch.segment,
                                  at,
                                  static_cast<std::size_t>(stretch.next - at + 1),
                                  kAtOnce * journal::kGreatestEntryBytes);
            if (!run) {
                return run.error();
            }
            for (const Bytes& bytes : run->entries) {
                const Result<journal::EntryView> entry = journal::readEntry(bytes);
                if (!entry) {
                    return entry.error();
                }
                chunk_.push_back(entry->owned());
            }
            at += run->entries.size();
        }
        return {};
    }

    Database& database_;
    std::deque<Stretch> stretches_;
    std::vector<journal::Entry> chunk_; // ascending; taken from its end
    std::set<journal::Place> undone_;
};

Result<std::optional<OwnAct>> OwnActs::last() {
    return Reader(database_).next();
}

Status OwnActs::eachSince(const journal::Vector& before,
                          const std::function<bool(const OwnAct&)>& act) {
    Reader reader(database_);
    reader.stopAt(before);
    while (true) {
        const Result<std::optional<OwnAct>> next = reader.next();
        if (!next) {
            return next.error();
        }
        if (!*next || !act(**next)) {
            return {};
        }
    }
}

} // namespace bullace::store
