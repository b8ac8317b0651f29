// Two people with two tablets in one row, and clocks that are changed or wrong: what each noted
// stands, under the date on which the walk began.
#include "core/journal/subject.hpp"
#include "support/field_books.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace bullace;
using namespace bullace::test;

namespace {

constexpr std::int64_t kHourMs = 3'600'000;
constexpr std::int64_t kYearMs = 365 * 24 * kHourMs;
// 2026-11-01 03:50 UTC: ten minutes to midnight of 31 October four hours west of Greenwich, in the
// night on which the clocks go back.
constexpr std::int64_t kBeforeMidnight = 1'793'505'000'000;

// Each tablet gets the other's journal, by file.
void exchange(Book& a, Book& b) {
    const TempFolder folder;
    REQUIRE(a->writeFile(folder.file("a.jsonl")).ok());
    REQUIRE(b->writeFile(folder.file("b.jsonl")).ok());
    for (const auto& [book, file] : {std::pair{&a, "b.jsonl"}, std::pair{&b, "a.jsonl"}}) {
        const auto report = (*book)->readFile(folder.file(file));
        REQUIRE_MESSAGE(report.ok(), (report ? "" : report.error().message));
        CHECK(report->refusedCount == 0);
        CHECK(report->waitingCount == 0);
    }
}

void walkAs(Book& tablet, const char* author, walk::Share share = {}) {
    field::WalkWish wish;
    wish.author = author;
    wish.share = share;
    tablet.begin(wish);
}

// "im 40" for each head, ascending.
std::vector<std::string> headsAt(Book& tablet, const std::string& subject) {
    const auto heads = tablet->database().heads(subject);
    REQUIRE(heads.ok());
    std::vector<std::string> words;
    for (const store::HeadRow& head : *heads) {
        const auto entry = journal::readEntry(head.entry);
        REQUIRE(entry.ok());
        words.push_back(std::string(entry->author) + " " + journal::valueToJson(entry->value));
    }
    std::sort(words.begin(), words.end());
    return words;
}

std::string clustersAt(const std::string& position) {
    return "obs/" + position + "/2026-05-12/clusters";
}

// The dates of all observations of a tablet, each once.
std::vector<std::string> datesOf(Book& tablet) {
    std::vector<std::string> dates;
    REQUIRE(tablet->database()
                .eachState("obs",
                           [&](const store::StateRow& row) {
                               dates.emplace_back(journal::readSubject(row.subject).date);
                               return true;
                           })
                .ok());
    dates.erase(std::unique(dates.begin(), dates.end()), dates.end());
    return dates;
}

} // namespace

TEST_CASE(
    "two people who count the same row apart leave two counts at each vine, on both tablets") {
    Book ida;
    Book tobias;
    const std::vector<std::pair<std::string, std::string>> round{
        {"descriptors", R"(["clusters"])"}};
    ida.plant(1, 3, round);
    tobias.plant(1, 3, round);
    walkAs(ida, "im");
    walkAs(tobias, "tf");
    ida.note(40);
    ida.note(50);
    tobias.note(70);
    tobias.note(50);
    tobias.note(60);
    exchange(ida, tobias);
    CHECK(ida.observations() == tobias.observations());
    for (Book* const tablet : {&ida, &tobias}) {
        CHECK(headsAt(*tablet, clustersAt("B2-01-01")) ==
              std::vector<std::string>{"im 40", "tf 70"});
        CHECK(headsAt(*tablet, clustersAt("B2-01-02")) ==
              std::vector<std::string>{"im 50", "tf 50"});
        CHECK(tablet->at("B2-01-01", "clusters") == "open");
        CHECK(tablet->at("B2-01-02", "clusters") == "agreed 50");
        CHECK(tablet->at("B2-01-03", "clusters") == "settled 60");
    }
    // Each still sees her own values only, goes on where she stood, and corrects only her own.
    CHECK(ida.here() == "B2-01-03");
    REQUIRE(ida.walk().sheet().at(0, "clusters").size() == 1);
    CHECK(ida.walk().sheet().at(0, "clusters")[0]->value == journal::integerValue(40));
    CHECK(ida.walk().sheet().at(2, "clusters").empty());
    REQUIRE(ida.walk().goTo(0).ok());
    ida.note(41);
    exchange(ida, tobias);
    CHECK(headsAt(tobias, clustersAt("B2-01-01")) == std::vector<std::string>{"im 41", "tf 70"});
    REQUIRE(ida.walk().undo().ok());
    exchange(ida, tobias);
    CHECK(headsAt(tobias, clustersAt("B2-01-01")) == std::vector<std::string>{"im 40", "tf 70"});
}

TEST_CASE("two people who take the odd and the even vines meet at none, and together note all") {
    Book ida;
    Book tobias;
    for (Book* const tablet : {&ida, &tobias}) {
        tablet->plant(2, 5, {{"descriptors", R"(["clusters"])"}});
    }
    walkAs(ida, "im", {0, 2, walk::Share::By::Stops});
    walkAs(tobias, "tf", {1, 2, walk::Share::By::Stops});
    for (Book* const tablet : {&ida, &tobias}) {
        for (std::size_t stops = tablet->walk().plan().stops.size(); stops > 0; --stops) {
            if (tablet->walk().footing().isAtRowEnd) {
                REQUIRE(tablet->walk().nextLeg(false).ok());
            }
            tablet->note(30);
        }
    }
    exchange(ida, tobias);
    for (unsigned row = 1; row <= 2; ++row) {
        for (unsigned vine = 1; vine <= 5; ++vine) {
            const std::string position = vineyard::writePosition({"B2", row, vine, 0});
            CAPTURE(position);
            CHECK(headsAt(ida, clustersAt(position)) ==
                  std::vector<std::string>{vine % 2 == 1 ? "im 30" : "tf 30"});
        }
    }
}

TEST_CASE("two people on the two sides of a row leave two samples at each vine") {
    Book ida;
    Book tobias;
    for (Book* const tablet : {&ida, &tobias}) {
        tablet->plant(1, 2, {{"descriptors", R"(["clusters"])"}, {"both-sides", "true"}});
    }
    walkAs(ida, "im", {0, 2, walk::Share::By::Sides});
    walkAs(tobias, "tf", {1, 2, walk::Share::By::Sides});
    for (const double value : {40.0, 50.0}) {
        ida.note(value);
        tobias.note(value + 5);
    }
    exchange(ida, tobias);
    std::size_t samples = 0;
    REQUIRE(ida->database()
                .eachState("obs/B2-01-01",
                           [&samples](const store::StateRow& row) {
                               samples += row.state == merge::State::Settled ? 1U : 0U;
                               return true;
                           })
                .ok());
    CHECK(samples == 2);
    CHECK(ida.at("B2-01-01", "clusters").empty()); // nothing stands for the other
}

TEST_CASE(
    "a vine that is marked from its other side is marked at that stop, also after a restart") {
    Book tablet;
    tablet.plant(1, 3, {{"descriptors", R"(["clusters"])"}, {"both-sides", "true"}});
    tablet.begin();
    for (const double value : {40.0, 50.0, 60.0}) {
        tablet.note(value);
    }
    REQUIRE(tablet.walk().nextLeg(false).ok());
    tablet.note(45);
    CHECK(tablet.here() == "B2-01-02");
    const std::size_t stop = tablet.walk().footing().stop;
    REQUIRE(tablet.walk().markVine("dead").ok());
    tablet.reopen();
    CHECK(tablet.walk().sheet().vineState(stop) == "dead");
    REQUIRE(tablet.walk().undo().ok());
    CHECK(tablet.walk().footing().stop == stop);
    CHECK(tablet.walk().sheet().vineState(stop).empty());
}

TEST_CASE("more samples that were wished for are still wished for after a restart") {
    Book tablet;
    tablet.plant(
        2, 3, {{"descriptors", R"(["berry-diameter"])"}, {"samples", R"({"berry-diameter":2})"}});
    tablet.begin();
    tablet.note(20);
    tablet.note(21);
    REQUIRE(tablet.walk().takeMore(0, 0, 2).ok());
    tablet.note(22);
    tablet.reopen();
    CHECK(tablet.here() == "B2-01-01");
    CHECK_FALSE(tablet.walk().isDone(0));
    tablet.note(23);
    CHECK(tablet.here() == "B2-01-02");
    // In a row that is then walked from its other end the wish stays with its vine.
    REQUIRE(tablet.walk().takeMore(3, 0, 1).ok());
    const std::string wished = tablet.here();
    REQUIRE(tablet.walk().goTo(2).ok());
    REQUIRE(tablet.walk().nextLeg(true).ok());
    tablet.reopen();
    for (std::size_t stop = 3; stop < 6; ++stop) {
        CHECK(tablet.walk().wanted(stop, 0) ==
              (tablet.walk().plan().stops[stop].position == wished ? 3 : 2));
    }
}

TEST_CASE("over midnight and over the hour that comes twice, all of a walk stays on its day") {
    Book tablet;
    tablet.clock().set(kBeforeMidnight);
    tablet.clock().setOffset(-240);
    tablet.plant(1, 6, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    CHECK(writeDate(tablet.walk().plan().date) == "2026-10-31");
    tablet.note(3);
    tablet.clock().pass(kHourMs); // 0:50 on 1 November
    tablet.note(4);
    tablet.clock().pass(kHourMs); // 1:50
    tablet.note(5);
    tablet.clock().setOffset(-300);
    tablet.clock().pass(kHourMs / 2); // 1:20, again
    tablet.note(6);
    tablet.reopen();
    REQUIRE(tablet.walk().undo().ok());
    tablet.note(7);
    tablet.clock().pass(24 * kHourMs);
    tablet.reopen();
    tablet.note(8);
    CHECK(datesOf(tablet) == std::vector<std::string>{"2026-10-31"});
    CHECK(tablet.says("obs/B2-01-04/2026-10-31/vigour") == "settled 7");
    CHECK(tablet.says("obs/B2-01-05/2026-10-31/vigour") == "settled 8");
    // What the clock said is kept beside: the instants go on, the offset changes once.
    std::vector<journal::Wall> walls;
    REQUIRE(tablet->database()
                .eachEntry([&walls](const Digest&, BytesView bytes) {
                    const auto entry = journal::readEntry(bytes);
                    if (entry && entry->wall && entry->origin.letter == 't') {
                        walls.push_back(*entry->wall);
                    }
                    return true;
                })
                .ok());
    REQUIRE(walls.size() == 7);
    for (std::size_t i = 1; i < walls.size(); ++i) {
        CHECK(walls[i].ms >= walls[i - 1].ms);
    }
    CHECK(walls[2].minutes == -240);
    CHECK(walls[3].minutes == -300);
}

TEST_CASE("a clock that jumps, or is put right in the middle of a walk, moves no value to another "
          "day, and the next walk has the new one") {
    Book tablet;
    tablet.clock().pass(-kYearMs); // 2025-05-12, as nobody has noticed
    tablet.plant(1, 8, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    tablet.note(3);
    field::Settings settings = tablet->settings();
    settings.clockCorrectionMs = kYearMs;
    REQUIRE(tablet->change(settings).ok());
    CHECK(writeDate(tablet->today()) == "2026-05-12");
    tablet.note(4);
    tablet.clock().set(0); // the battery was out: 1970
    tablet.note(5);
    tablet.reopen();
    tablet.note(6);
    tablet.clock().set(kBeforeMidnight + 3 * kYearMs);
    tablet.note(7);
    REQUIRE(tablet.walk().undo().ok());
    tablet.note(8);
    CHECK(datesOf(tablet) == std::vector<std::string>{"2025-05-12"});
    CHECK(tablet.walk().legReport(0).done == 5);
    REQUIRE(tablet->endWalk().ok());
    tablet.clock().set(FixedClock().nowMs() - kYearMs);
    tablet.begin();
    CHECK(writeDate(tablet.walk().plan().date) == "2026-05-12");
}
