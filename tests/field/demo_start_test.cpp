// The demo station on a tablet, as somebody gets it who tries one: every round can be begun.
#include "demo/start.hpp"
#include "field/crosses.hpp"

#include "core/vineyard/label_code.hpp"
#include "support/field_books.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <sstream>
#include <string>

using namespace bullace;
using namespace bullace::test;

namespace {

// At ten in the morning of the day.
void begin(Book& tablet) {
    const auto day = std::chrono::sys_days(demo::startDate()).time_since_epoch();
    tablet.clock().set(std::chrono::duration_cast<std::chrono::milliseconds>(day).count() +
                       15 * 3'600'000);
    std::istringstream lines(demo::startLines());
    const auto report = tablet->database().importLines(lines, "demo", {});
    REQUIRE_MESSAGE(report.ok(), (report ? "" : report.error().message));
    CHECK(report->refusedCount == 0);
    CHECK(report->waitingCount == 0);
    CHECK(report->uncounted == 0);
    REQUIRE(tablet->reload().ok());
    REQUIRE(tablet->today() == demo::startDate());
}

Result<field::WalkPlan> planOf(Book& tablet, const walk::Round& round) {
    field::WalkWish wish;
    wish.author = "im";
    return field::planWalk(tablet->database(), tablet->catalogue(), round, wish, tablet->today());
}

} // namespace

TEST_CASE("on the demo station's first day every round can be walked but the one whose rows are "
          "gone, and the sprayed block is left out") {
    Book tablet;
    begin(tablet);
    const auto rounds = store::roundsOn(tablet->database(), tablet->catalogue(), tablet->today());
    REQUIRE(rounds.ok());
    CHECK(rounds->size() == 9);
    std::size_t cautioned = 0;
    for (const store::RoundProgress& progress : *rounds) {
        const walk::Round& round = *progress.round;
        CAPTURE(round.title);
        CHECK(progress.unknown.empty());
        CHECK(progress.done == 0);
        const auto plan = planOf(tablet, round);
        CHECK(plan.ok() == progress.gone.empty());
        if (plan) {
            CHECK(std::none_of(plan->stops.begin(), plan->stops.end(), [](const auto& stop) {
                return stop.position.starts_with("B3-");
            }));
        }
        cautioned +=
            store::cautionsOf(tablet->catalogue(), round, tablet->today()).empty() ? 0U : 1U;
    }
    CHECK(cautioned == 2); // the stages and the cluster counts go through B3
}

TEST_CASE("a walk on the demo station: values are noted and taken back, and the tablet goes on "
          "after a restart") {
    Book tablet;
    begin(tablet);
    const walk::Round* round = tablet->catalogue().round("R25-1");
    REQUIRE(round != nullptr);
    auto plan = planOf(tablet, *round);
    REQUIRE(plan.ok());
    CHECK(plan->stops.size() == 6 * 30 + 8 * 24);
    REQUIRE(tablet->beginWalk(std::move(*plan)).ok());
    tablet.note(57);
    CHECK(tablet.walk().weighLast().ok());
    tablet.note(55);
    tablet.reopen();
    CHECK(tablet.here() == "B1-01-03");
    CHECK(tablet.says("obs/B1-01-02/2025-05-13/stage") == "settled 55");
    REQUIRE(tablet.walk().undo().ok());
    CHECK(tablet.here() == "B1-01-02");
}

TEST_CASE("on the demo station a typed label leads to its vine, and the planned crosses wait to be "
          "bagged or emasculated") {
    Book tablet;
    begin(tablet);
    const auto position = tablet->catalogue().labelled(vineyard::labelCode(1));
    CHECK(position == "B1-01-01");
    CHECK_FALSE(tablet->catalogue().labelled(vineyard::labelCode(699 + 2)).has_value());
    const auto due = field::crossesDue(tablet->database(), tablet->catalogue(), tablet->today());
    REQUIRE(due.ok());
    REQUIRE(due->size() == 5);
    const auto emasculate = std::count_if(
        due->begin(), due->end(), [](const auto& one) { return one.step == "emasculated"; });
    CHECK(emasculate == 1);
    for (const field::CrossDue& one : *due) {
        CHECK_FALSE(one.pollen.empty());
        CHECK(tablet->catalogue().accessionAt(one.position, tablet->today()) == one.cross->mother);
    }
}
