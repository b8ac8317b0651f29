#include "office/overruled.hpp"

#include "core/journal/json_value.hpp"
#include "core/merge/settle.hpp"

#include <algorithm>
#include <set>
#include <vector>

namespace bullace::office {

using journal::EntryView;
using journal::Kind;
using journal::Place;

namespace {

constexpr std::size_t kAtOnce = 512; // entries of one reading
constexpr std::size_t kBytesAtOnce = 1 << 20;

class Counting {
public:
    Counting(store::Database& database, const Token& token) : database_(database), token_(token) {}

    Result<std::map<RuleOf, Overruled>> count() {
        Status read = countStanding();
        read = read ? findDecided() : std::move(read);
        for (const std::string& subject : decided_) {
            read = read ? countDecided(subject) : std::move(read);
        }
        if (read && token_.isCancelled()) {
            read = Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
        }
        return read ? Result<std::map<RuleOf, Overruled>>(std::move(counts_))
                    : Result<std::map<RuleOf, Overruled>>(read.error());
    }

private:
    Overruled& of(std::string_view subject) {
        const journal::Subject parts = journal::readSubject(subject);
        return counts_[ruleOf(database_.rulebook().matchFor(parts).number, parts.descriptor)];
    }

    // What a rule decides now, and nobody touched.
    Status countStanding() {
        return database_.eachContested([this](std::string_view subject,
                                              merge::State state,
                                              const std::vector<store::HeadRow>&) {
            if (state == merge::State::Ruled && journal::isBelowObs(subject)) {
                ++of(subject).proposals;
            }
            return !token_.isCancelled();
        });
    }

    // Subjects about which an office decided between values: people do that there alone.
    Status findDecided() {
        std::set<journal::Origin> origins;
        for (const journal::BranchEnd& end : database_.vector()) {
            if (end.origin.letter == 's') {
                origins.insert(end.origin);
            }
        }
        for (const journal::Origin& origin : origins) {
            for (const journal::Segment& segment : database_.segments(origin)) {
                if (Status read = findIn(segment); !read) {
                    return read;
                }
            }
        }
        return {};
    }

    Status findIn(const journal::Segment& segment) {
        for (std::uint64_t seq = segment.first; seq <= segment.last && !token_.isCancelled();) {
            const auto run = database_.readRun(segment, seq, kAtOnce, kBytesAtOnce);
            if (!run) {
                return run.error();
            }
            for (const Bytes& bytes : run->entries) {
                const auto entry = journal::readEntry(bytes);
                if (entry && decides(*entry)) {
                    decided_.insert(std::string(entry->subject));
                }
            }
            seq += run->entries.size();
        }
        return {};
    }

    static bool decides(const EntryView& entry) {
        const bool isKind = entry.kind == Kind::Ruling || entry.kind == Kind::Observe ||
                            entry.kind == Kind::Retract;
        return isKind && entry.overCount >= 2 && journal::isBelowObs(entry.subject);
    }

    Status countDecided(const std::string& subject) {
        const auto rows = database_.entries(subject);
        if (!rows) {
            return rows.error();
        }
        std::vector<EntryView> entries;
        std::set<Place> undone;
        for (const store::EntryRow& row : *rows) {
            const auto entry = journal::readEntry(row.entry);
            entries.push_back(entry ? *entry : EntryView{});
            if (entry && entry->kind == Kind::Undo && !row.uncounted) {
                const auto edges = entry->edges();
                undone.insert(edges.begin(), edges.end());
            }
        }
        for (std::size_t i = 0; i < entries.size(); ++i) {
            const bool isStanding = !(*rows)[i].uncounted && !undone.contains((*rows)[i].place);
            if (isStanding && entries[i].origin.letter == 's' && decides(entries[i])) {
                weigh(subject, *rows, entries, entries[i]);
            }
        }
        return {};
    }

    // What the rule would have said about the values that the decision was made between.
    void weigh(const std::string& subject,
               const std::vector<store::EntryRow>& rows,
               const std::vector<EntryView>& entries,
               const EntryView& decision) {
        const std::vector<Place> over = decision.edges();
        std::vector<merge::Member> members;
        for (std::size_t i = 0; i < entries.size(); ++i) {
            const bool isBefore = std::find(over.begin(), over.end(), rows[i].place) != over.end();
            if (isBefore && !rows[i].uncounted) {
                members.push_back({&entries[i], &rows[i].digest, true});
            }
        }
        if (members.size() < 2) {
            return;
        }
        std::sort(members.begin(), members.end(), merge::comesBefore);
        const merge::Outcome outcome = merge::settle(subject, members, database_.rulebook());
        if (outcome.rule) {
            Overruled& counts = of(subject);
            ++counts.proposals;
            counts.overruled += journal::isSameValue(outcome.value, decision.value) ? 0U : 1U;
        }
    }

    store::Database& database_;
    const Token& token_;
    std::map<RuleOf, Overruled> counts_;
    std::set<std::string> decided_;
};

} // namespace

RuleOf ruleOf(std::optional<std::uint64_t> number, std::string_view descriptor) {
    return {number, number ? std::string{} : std::string(descriptor)};
}

Result<std::map<RuleOf, Overruled>> readOverruled(store::Database& database, const Token& token) {
    return Counting(database, token).count();
}

} // namespace bullace::office
