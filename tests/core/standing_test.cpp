// Who may write what: the rights of DESIGN §6 in full, and the bounds.
#include "core/journal/standing.hpp"

#include "support/entries.hpp"

#include <doctest/doctest.h>

#include <array>

using namespace bullace;
using namespace bullace::journal;
using namespace bullace::test;

namespace {

// The device whose first six digits are 00c5a9.
constexpr std::uint64_t kDevice = 0x00c5a91be2f0417dU;
const Origin kTablet{'t', kDevice, 1};
const Origin kOffice{'s', 7, 1};

Standing standingOf(const Note& note) {
    const Bytes bytes = entryOf(note).encode();
    return standing(readEntry(bytes).value());
}

Bytes valueFor(std::string_view kind) {
    return kind == "retract" || kind == "undo" ? nullValue() : integerValue(5);
}

constexpr std::array<const char*, 6> kKinds{
    "observe", "retract", "catalog", "ruling", "undo", "remark"};

// One letter a kind, in the order of kKinds: + counts, - has no right.
std::string rightsOf(const Origin& origin, const std::string& subject) {
    std::string rights;
    for (const char* kind : kKinds) {
        const Standing found = standingOf(
            {.origin = origin, .kind = kind, .subject = subject, .value = valueFor(kind)});
        rights += found == Standing::Counts ? '+' : found == Standing::NoRight ? '-' : '?';
    }
    return rights;
}

} // namespace

TEST_CASE("a field device observes, retracts and undoes below obs/, and remarks anywhere") {
    CHECK(rightsOf(kTablet, "obs/B2-07-14/2026-05-12/stage") == "++--++");
    CHECK(rightsOf(kTablet, "obs/lot:00c5a9-3/2026-05-12/ph") == "++--++");
    CHECK(rightsOf(kTablet, "obs/of no form") == "++--++");
}

TEST_CASE("a field device keeps the catalog only of what it opened itself") {
    for (const char* form : {"cross/", "lot/", "person/", "accession/"}) {
        CAPTURE(form);
        CHECK(rightsOf(kTablet, form + std::string("00c5a9-3/title")) == "--+-++");
        CHECK(rightsOf(kTablet, form + std::string("00c5a8-3/title")) == "-----+");
        CHECK(rightsOf(kTablet, form + std::string("00c5a93/title")) == "-----+");
        CHECK(rightsOf(kTablet, form + std::string("W-17/title")) == "-----+");
        CHECK(rightsOf(kTablet, form + std::string("00c5a9-3")) == "-----+"); // fits no form
    }
    for (const char* subject : {"planting/B2-07-14/2026-05-12",
                                "round/00c5a9-3/rows",
                                "block/B2/title",
                                "descriptor/00c5a9-3/rule",
                                "rulebook/1",
                                "weather/mast/2026-05-12/tmin",
                                "something/else"}) {
        CAPTURE(subject);
        CHECK(rightsOf(kTablet, subject) == "-----+");
    }
}

TEST_CASE("the office observes and retracts below obs/, keeps the catalog of the rest, and rules, "
          "undoes and remarks anywhere") {
    CHECK(rightsOf(kOffice, "obs/B2-07-14/2026-05-12/stage") == "++-+++");
    for (const char* subject : {"planting/B2-07-14/2026-05-12",
                                "cross/00c5a9-3/mother",
                                "accession/W-17/title",
                                "rulebook/1",
                                "descriptor/bunch-rot/rule",
                                "weather/mast/2026-05-12/tmin",
                                "something/else"}) {
        CAPTURE(subject);
        CHECK(rightsOf(kOffice, subject) == "--++++");
    }
}

TEST_CASE("an origin of any other letter has no right to anything") {
    CHECK(rightsOf({'x', kDevice, 1}, "obs/B2-07-14/2026-05-12/stage") == "------");
    CHECK(rightsOf({'a', kDevice, 1}, "cross/00c5a9-3/mother") == "------");
}

TEST_CASE("a field device undoes entries of all its own epochs, and of nobody else") {
    const auto undo = [](const Origin& origin, std::vector<Place> over) {
        return standingOf(
            {.origin = origin, .kind = "undo", .value = nullValue(), .over = std::move(over)});
    };
    const Origin earlier{'t', kDevice, 9};
    const Origin other{'t', kDevice + 1, 1};
    CHECK(undo(kTablet, {{kTablet, 1}, {earlier, 4}}) == Standing::Counts);
    CHECK(undo(kTablet, {{kTablet, 1}, {other, 1}}) == Standing::NoRight);
    CHECK(undo(kTablet, {{{'s', kDevice, 1}, 1}}) == Standing::NoRight);
    CHECK(undo(kOffice, {{kTablet, 1}, {other, 1}}) == Standing::Counts);
}

TEST_CASE("an observation of nothing and a retraction of something count for nothing") {
    for (const Origin& origin : {kTablet, kOffice}) {
        CHECK(standingOf({.origin = origin, .value = nullValue()}) == Standing::NoRight);
        CHECK(standingOf({.origin = origin, .kind = "retract"}) == Standing::NoRight);
        CHECK(standingOf({.origin = origin, .value = noneValue("no-vine")}) == Standing::Counts);
    }
    // Keeping both values of a conflict rules null.
    CHECK(standingOf({.origin = kOffice, .kind = "ruling", .value = nullValue()}) ==
          Standing::Counts);
}

TEST_CASE("an unknown kind is kept for a version that knows it, whoever wrote it") {
    CHECK(standingOf({.origin = kTablet, .kind = "dream"}) == Standing::UnknownKind);
    CHECK(standingOf({.origin = {'x', 1, 1}, .kind = "dream"}) == Standing::UnknownKind);
}

TEST_CASE("an entry at a bound counts, and one beyond it does not") {
    const auto limited = [](const Note& note) { return standingOf(note); };
    CHECK(limited({.seq = kGreatestSeq}) == Standing::Counts);
    CHECK(limited({.seq = kGreatestSeq + 1}) == Standing::BeyondLimit);
    CHECK(limited({.count = kGreatestCount}) == Standing::Counts);
    CHECK(limited({.count = kGreatestCount + 1}) == Standing::BeyondLimit);
    const std::vector<Place> edges(kMostEdges, Place{kTablet, 1});
    CHECK(limited({.over = edges}) == Standing::Counts);
    std::vector<Place> more = edges;
    more.push_back({kTablet, 2});
    CHECK(limited({.over = more}) == Standing::BeyondLimit);
    CHECK(limited({.subject = "obs/" + std::string(508, 'a')}) == Standing::Counts);
    CHECK(limited({.subject = "obs/" + std::string(509, 'a')}) == Standing::BeyondLimit);
    const auto byAuthor = [](std::size_t length) {
        journal::Entry entry = entryOf({});
        entry.author = std::string(length, 'a');
        const Bytes bytes = entry.encode();
        return standing(readEntry(bytes).value());
    };
    CHECK(byAuthor(64) == Standing::Counts);
    CHECK(byAuthor(65) == Standing::BeyondLimit);
}

TEST_CASE("a group's numbers must be able to be true") {
    const auto inGroup = [](std::uint64_t seq, std::uint64_t first, std::uint64_t n) {
        return standingOf({.seq = seq, .group = Group{first, n}});
    };
    CHECK(inGroup(5, 5, 1) == Standing::Counts);
    CHECK(inGroup(5, 4, 2) == Standing::Counts);
    CHECK(inGroup(5, 3, 2) == Standing::BeyondLimit);
    CHECK(inGroup(5, 6, 2) == Standing::BeyondLimit);
    CHECK(inGroup(5, 0, 9) == Standing::BeyondLimit);
    CHECK(inGroup(5, 5, 0) == Standing::BeyondLimit);
    CHECK(inGroup(5, 1, kGreatestGroup) == Standing::Counts);
    CHECK(inGroup(5, 1, kGreatestGroup + 1) == Standing::BeyondLimit);
}

TEST_CASE("each standing has a word for listings and a sentence for people") {
    for (const Standing each : {Standing::Counts,
                                Standing::UnknownKind,
                                Standing::BeyondLimit,
                                Standing::NoRight,
                                Standing::GroupNotWhole}) {
        CHECK_FALSE(standingWord(each).empty());
        CHECK(standingSentence(each).ends_with('.'));
    }
    CHECK(fieldPrefix(kDevice) == "00c5a9");
}
