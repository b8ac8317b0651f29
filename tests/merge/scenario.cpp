#include "merge/scenario.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <map>
#include <random>
#include <string>

namespace bullace::test {

using namespace journal;

namespace {

class Maker {
public:
    explicit Maker(std::uint64_t seed) : dice_(seed) {}

    std::vector<MadeEntry> make(std::size_t count) {
        while (made_.size() < count) {
            const std::size_t tail = pickTail();
            if (roll(8) == 0) {
                writeGroup(tail);
            } else {
                put(tail, act());
            }
        }
        return std::move(made_);
    }

private:
    std::size_t roll(std::size_t sides) {
        return std::uniform_int_distribution<std::size_t>(0, sides - 1)(dice_);
    }

    template<typename T>
    const T& pick(const std::vector<T>& all) {
        return all[roll(all.size())];
    }

    // The index + 1 of the entry to follow on, with the origin in origin_; now and then not an end,
    // which makes a fork.
    std::size_t pickTail() {
        static const std::vector<Origin> origins{{'t', 1, 1},
                                                 {'t', 1, 2},
                                                 {'t', 2, 1},
                                                 {'t', 3, 10},
                                                 {'s', 7, 1},
                                                 {'s', 8, 1},
                                                 {'x', 9, 1}};
        origin_ = pick(origins);
        std::vector<std::size_t> own;
        for (std::size_t i = 0; i < made_.size(); ++i) {
            if (made_[i].origin == origin_) {
                own.push_back(i + 1);
            }
        }
        if (own.empty() || roll(40) == 0) {
            return 0;
        }
        return roll(15) == 0 ? pick(own) : own.back();
    }

    std::string subject() {
        static const std::vector<std::string> all{
            "obs/B2-07-14/2026-05-12/stage",
            "obs/B2-07-14/2026-05-12/stage",
            "obs/B2-07-14/2026-05-12/clusters",
            "obs/B2-07-14/2026-05-12/clusters",
            "obs/B2-07-15/2026-05-13/vigour",
            "obs/B3-01-02/2026-05-12/vigour",
            "obs/B3-01-02/2026-05-12/note",
            "obs/B3-01-02/2026-05-12/yield",
            "obs/lot:L1/2026-09-01/soluble-solids",
            "obs/B2-07-14/2026-05-12/moon",
            "obs/B2-07-14/2026-02-30/stage",
            "rulebook/1",
            "rulebook/2",
            "descriptor/vigour/rule",
            "descriptor/moon/kind",
            "descriptor/moon/codes",
            "accession/A1/name",
            "cross/000000-1/mother",
            "obs/B2-07-14/2026-05-12/berries-per-cluster/t0000000000000001.1,1",
            "odd/path"};
        return pick(all);
    }

    Bytes observed(const std::string& about) {
        if (about.ends_with("/stage")) {
            return integerValue(pick(std::vector<std::int64_t>{61, 63, 65, 65, 69, 71, 10}));
        }
        if (about.ends_with("/note") || roll(12) == 0) {
            return textValue(pick(std::vector<std::string>{"leaf spot", "broken", "é"}));
        }
        switch (roll(7)) {
        case 0:
            return noneValue("no-crop");
        case 1:
            return floatValue(pick(std::vector<double>{7.0, 5.0, 5.5, -0.0, 1e15, 0.1}));
        case 2:
            return listValue({integerValue(5), floatValue(5.0)});
        default:
            return integerValue(pick(std::vector<std::int64_t>{0, 5, 5, 6, 7, 100}));
        }
    }

    Bytes cataloged(const std::string& about) {
        static const std::vector<std::string> rules{
            "ask", "later", "advanced", "greatest", "least", "mean", "all", "newest"};
        MapValue rule;
        rule.add("rule", textValue(pick(rules)));
        if (roll(2) == 0) {
            rule.add("within",
                     roll(3) == 0 ? MapValue().add("percent", integerValue(20)).bytes()
                                  : integerValue(pick(std::vector<std::int64_t>{0, 1, 2, 50, -1})));
        }
        if (about.starts_with("rulebook/")) {
            if (roll(2) == 0) {
                rule.add("where",
                         textValue(pick(
                             std::vector<std::string>{"*", "B2-*", "B2-07-*", "B2-07-14", "B2*"})));
            }
            if (roll(4) == 0) {
                rule.add("from", textValue("2026-05-13"));
            }
            if (roll(3) == 0) {
                rule.add("descriptors", listValue({textValue("clusters"), textValue("note")}));
            }
            return roll(10) == 0 ? nullValue() : rule.bytes();
        }
        if (about.ends_with("/rule")) {
            return roll(8) == 0 ? nullValue() : rule.bytes();
        }
        if (about.ends_with("/kind")) {
            return textValue(pick(std::vector<std::string>{"stage", "count", "code", "text"}));
        }
        if (about.ends_with("/codes")) {
            return listValue({integerValue(7), integerValue(5), integerValue(6)});
        }
        return roll(8) == 0 ? nullValue() : textValue(pick(std::vector<std::string>{"a", "b"}));
    }

    // An act on some subject: its edges name what is there on it, or whatever else.
    Entry act() {
        Entry entry;
        entry.subject = subject();
        const bool isObs = entry.subject.starts_with("obs/");
        const std::size_t kind = roll(20);
        entry.kind = kind < 11   ? (isObs ? "observe" : "catalog")
                     : kind < 13 ? "retract"
                     : kind < 15 ? "undo"
                     : kind < 17 ? "ruling"
                     : kind < 18 ? "remark"
                     : kind < 19 ? "catalog"
                                 : "dream";
        const bool isNothing = entry.kind == "retract" || entry.kind == "undo";
        entry.value = isNothing && roll(10) != 0 ? nullValue()
                      : entry.kind == "catalog"  ? cataloged(entry.subject)
                                                 : observed(entry.subject);
        if (roll(2) == 0 || isNothing || entry.kind == "ruling") {
            for (std::size_t edges = roll(3) + 1; edges > 0; --edges) {
                entry.over.push_back(edge(entry.subject));
            }
        }
        return entry;
    }

    Place edge(const std::string& about) {
        std::vector<Place> same;
        std::vector<Place> all;
        for (const MadeEntry& made : made_) {
            const EntryView view = *readEntry(made.bytes);
            all.push_back(view.place());
            if (view.subject == about) {
                same.push_back(view.place());
            }
        }
        if (!same.empty() && roll(10) != 0) {
            return pick(same);
        }
        return all.empty() || roll(2) == 0 ? Place{{'t', 2, 1}, roll(20) + 1} : pick(all);
    }

    void put(std::size_t tail, Entry entry, std::optional<Group> group = std::nullopt) {
        const MadeEntry* before = tail == 0 ? nullptr : &made_[tail - 1];
        entry.origin = origin_;
        entry.seq = before == nullptr ? 1 : before->seq + 1;
        // Mostly a Lamport counter as it should be; now and then whatever a broken clock of them
        // gives.
        greatestCount_ += 1;
        entry.count = roll(6) == 0 ? roll(20) : greatestCount_;
        entry.author = pick(std::vector<std::string>{"mk", "jr"});
        if (roll(3) != 0) {
            entry.wall = Wall{static_cast<std::int64_t>(roll(5)) * 1000, 0};
        }
        entry.group = group;
        MadeEntry made{origin_,
                       entry.seq,
                       entry.encode(),
                       before == nullptr ? Digest{} : before->digest,
                       {},
                       tail};
        made.digest = chainDigest(made.before, made.bytes);
        const auto isSame = [&made](const MadeEntry& other) { return other.digest == made.digest; };
        if (std::none_of(made_.begin(), made_.end(), isSame)) {
            made_.push_back(std::move(made));
        }
    }

    void writeGroup(std::size_t tail) {
        const std::size_t count = roll(3) + 1;
        const std::uint64_t first = tail == 0 ? 1 : made_[tail - 1].seq + 1;
        Group group{first, count};
        const std::size_t fault = roll(6);
        if (fault == 0) {
            group.n += 1; // never whole
        } else if (fault == 1) {
            group.first += 1; // not even plausible
        }
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t size = made_.size();
            put(tail, act(), fault == 2 && i + 1 == count ? std::nullopt : std::optional(group));
            tail = made_.size() > size ? made_.size() : tail;
        }
    }

    std::mt19937_64 dice_;
    std::vector<MadeEntry> made_;
    Origin origin_;
    std::uint64_t greatestCount_ = 0;
};

} // namespace

std::vector<MadeEntry> makeScenario(std::uint64_t seed, std::size_t count) {
    return Maker(seed).make(count);
}

std::vector<std::size_t> anotherOrder(const std::vector<MadeEntry>& entries, std::uint64_t seed) {
    std::mt19937_64 dice(seed);
    std::vector<std::size_t> order;
    std::vector<bool> isOut(entries.size());
    std::vector<std::size_t> left(entries.size());
    for (std::size_t i = 0; i < left.size(); ++i) {
        left[i] = i;
    }
    while (!left.empty()) {
        const std::size_t at = std::uniform_int_distribution<std::size_t>(0, left.size() - 1)(dice);
        const std::size_t i = left[at];
        if (entries[i].follows != 0 && !isOut[entries[i].follows - 1]) {
            continue;
        }
        isOut[i] = true;
        order.push_back(i);
        left.erase(left.begin() + static_cast<std::ptrdiff_t>(at));
        if (dice() % 5 == 0) {
            order.push_back(order[dice() % order.size()]);
        }
    }
    return order;
}

} // namespace bullace::test
