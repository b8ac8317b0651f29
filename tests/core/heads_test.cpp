// Which entries stand at the end of a subject's history.
#include "core/merge/heads.hpp"

#include "support/entries.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>

using namespace bullace;
using namespace bullace::journal;
using namespace bullace::merge;
using namespace bullace::test;

namespace {

const Origin kA{'t', 1, 1};
const Origin kB{'t', 2, 1};
const Origin kOffice{'s', 9, 1};

// The entries of one subject; `worked` gives the heads as texts "a1 b2" for places.
class History {
public:
    History& add(const Note& note, bool counts = true) {
        held_.add(note);
        counts_.push_back(counts);
        return *this;
    }

    [[nodiscard]] std::vector<Member> members() const {
        std::vector<Member> all;
        for (std::size_t i = 0; i < counts_.size(); ++i) {
            all.push_back({&held_.views()[i], &held_.digests()[i], counts_[i]});
        }
        return all;
    }

    // The heads, in their order, whatever order the entries stand in: tried in all of them.
    [[nodiscard]] std::string heads() const {
        std::vector<Member> all = members();
        std::vector<std::size_t> order(all.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::optional<std::string> first;
        do {
            std::vector<Member> shuffled;
            for (const std::size_t i : order) {
                shuffled.push_back(all[i]);
            }
            const std::string found = textOf(shuffled, workSubject(shuffled).heads);
            if (first && *first != found) {
                return "depends on the order";
            }
            first = found;
        } while (std::next_permutation(order.begin(), order.end()));
        return first.value_or("");
    }
    [[nodiscard]] std::string loose() const {
        std::string text;
        for (const LooseEdge& edge : workSubject(members()).loose) {
            text += nameOf(members()[edge.member].entry->place()) + ">" + nameOf(edge.names) + " ";
        }
        return text;
    }

private:
    static std::string nameOf(const Place& place) {
        const std::string letter = place.origin == kA ? "a" : place.origin == kB ? "b" : "s";
        return letter + std::to_string(place.seq);
    }
    static std::string textOf(const std::vector<Member>& members,
                              const std::vector<std::size_t>& heads) {
        std::string text;
        for (const std::size_t i : heads) {
            text += (text.empty() ? "" : " ") + nameOf(members[i].entry->place());
        }
        return text;
    }

    Held held_;
    std::vector<bool> counts_;
};

Note note(const Origin& origin,
          std::uint64_t seq,
          std::uint64_t count,
          std::vector<Place> over = {},
          const char* kind = "observe") {
    const bool isEmpty = std::string(kind) == "retract" || std::string(kind) == "undo";
    return {.origin = origin,
            .seq = seq,
            .count = count,
            .kind = kind,
            .value = isEmpty ? nullValue() : integerValue(static_cast<std::int64_t>(count)),
            .over = std::move(over)};
}

} // namespace

TEST_CASE("two people who noted the same vine apart leave two heads") {
    CHECK(History().add(note(kA, 1, 1)).add(note(kB, 1, 1)).heads() == "a1 b1");
}

TEST_CASE("an edit replaces what its author had seen, and nothing else") {
    CHECK(History().add(note(kA, 1, 1)).add(note(kA, 2, 2, {{kA, 1}})).heads() == "a2");
    CHECK(
        History().add(note(kA, 1, 1)).add(note(kB, 1, 1)).add(note(kA, 2, 2, {{kA, 1}})).heads() ==
        "a2 b1");
    CHECK(History()
              .add(note(kA, 1, 1))
              .add(note(kB, 1, 1))
              .add(note(kOffice, 1, 2, {{kA, 1}, {kB, 1}}, "ruling"))
              .heads() == "s1");
}

TEST_CASE("an edge counts only to an entry with a smaller count, so cycles leave both heads") {
    const History cycle =
        std::move(History().add(note(kA, 1, 3, {{kB, 1}})).add(note(kB, 1, 3, {{kA, 1}})));
    CHECK(cycle.heads() == "a1 b1");
    CHECK(cycle.loose() == "a1>b1 b1>a1 ");
    CHECK(History().add(note(kA, 1, 5)).add(note(kA, 2, 2, {{kA, 1}})).heads() == "a1 a2");
    CHECK(History().add(note(kA, 1, 1, {{kA, 1}})).heads() == "a1");
}

TEST_CASE("an edge to what is not here yet is kept, and counts once it is") {
    History history;
    history.add(note(kA, 2, 2, {{kA, 1}}));
    CHECK(history.heads() == "a2");
    CHECK(history.loose() == "a2>a1 ");
    history.add(note(kA, 1, 1));
    CHECK(history.heads() == "a2");
    CHECK(history.loose().empty());
}

TEST_CASE("what does not count replaces nothing and is no head") {
    CHECK(History().add(note(kA, 1, 1)).add(note(kB, 1, 2, {{kA, 1}}), false).heads() == "a1");
    CHECK(History().add(note(kA, 1, 1), false).heads().empty());
}

TEST_CASE("a remark and an unknown kind are no heads and replace nothing") {
    CHECK(History().add(note(kA, 1, 1)).add(note(kB, 1, 2, {{kA, 1}}, "remark")).heads() == "a1");
    CHECK(History().add(note(kA, 1, 1, {}, "remark")).heads().empty());
}

TEST_CASE("an undo gives back what was before") {
    CHECK(History()
              .add(note(kA, 1, 1))
              .add(note(kA, 2, 2, {{kA, 1}}))
              .add(note(kA, 3, 3, {{kA, 2}}, "undo"))
              .heads() == "a1");
    CHECK(History().add(note(kA, 1, 1)).add(note(kA, 2, 2, {{kA, 1}}, "undo")).heads().empty());
}

TEST_CASE("an undo that is undone itself leaves things as they were, however long the chain") {
    History history;
    history.add(note(kA, 1, 1)).add(note(kA, 2, 2, {{kA, 1}}));
    CHECK(history.heads() == "a2");
    history.add(note(kA, 3, 3, {{kA, 2}}, "undo"));
    CHECK(history.heads() == "a1");
    history.add(note(kA, 4, 4, {{kA, 3}}, "undo"));
    CHECK(history.heads() == "a2");
    history.add(note(kA, 5, 5, {{kA, 4}}, "undo"));
    CHECK(history.heads() == "a1");
}

TEST_CASE("an undo reaches only earlier entries, and one that does not count takes back nothing") {
    CHECK(History().add(note(kA, 1, 4)).add(note(kA, 2, 4, {{kA, 1}}, "undo")).heads() == "a1");
    CHECK(History().add(note(kA, 1, 1)).add(note(kA, 2, 2, {{kA, 1}}, "undo"), false).heads() ==
          "a1");
}

TEST_CASE("undoing an edit made apart leaves the other person's edit standing") {
    CHECK(History()
              .add(note(kA, 1, 1))
              .add(note(kA, 2, 2, {{kA, 1}}))
              .add(note(kB, 1, 2, {{kA, 1}}))
              .add(note(kA, 3, 3, {{kA, 2}}, "undo"))
              .heads() == "b1");
}

TEST_CASE("at a fork an edge names the place in every branch") {
    Note other = note(kA, 1, 1);
    other.value = integerValue(8);
    CHECK(History().add(note(kA, 1, 1)).add(other).heads() == "a1 a1");
    CHECK(History()
              .add(note(kA, 1, 1))
              .add(other)
              .add(note(kOffice, 1, 2, {{kA, 1}}, "ruling"))
              .heads() == "s1");
}

TEST_CASE("heads stand in the order of origin, number and digest") {
    CHECK(History()
              .add(note({'t', 2, 1}, 10, 1))
              .add(note({'t', 2, 1}, 9, 1))
              .add(note({'s', 9, 1}, 1, 1))
              .add(note({'t', 1, 1}, 1, 1))
              .heads() == "s1 a1 b9 b10");
}
