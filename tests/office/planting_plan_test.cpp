// A planting plan entered as plantings: one act, refused where the vineyard is another by now, and
// taken back whole.
#include "office/planting_plan.hpp"

#include "office/collection.hpp"
#include "office/settling.hpp"

#include "core/vineyard/position.hpp"
#include "store/read_catalogue.hpp"
#include "support/desk_stations.hpp"
#include "support/fixed_clock.hpp"

#include <algorithm>
#include <map>
#include <set>

using namespace bullace;
using namespace bullace::office;
using namespace bullace::test;

namespace {

constexpr CivilDate kDay = std::chrono::year(2026) / 3 / 14;

// A block of three rows; A9 stands at the second place of the first, and at the third until a year
// before.
std::string vineyard() {
    const char* office = "s00000000000000ff.1";
    return lineOf({office, 1, "hq", "catalog", "block/B2/rows", "[[1,6],[2,6],[3,6]]"}) +
           lineOf({office,
                   2,
                   "hq",
                   "catalog",
                   "planting/B2-01-02/2020-03-01",
                   R"({"accession":"A9","until":null})"}) +
           lineOf({office,
                   3,
                   "hq",
                   "catalog",
                   "planting/B2-01-03/2020-03-01",
                   R"({"accession":"A9","until":"2025-03-01"})"});
}

struct Room {
    Room() {
        const std::string path = folder.file("station.db");
        makeStationFile(path, vineyard());
        auto opened = store::Database::open(path, true, store::fileSurroundings());
        REQUIRE(opened.ok());
        database = std::move(*opened);
        reread();
    }
    void reread() {
        auto read = store::readCatalogue(*database);
        REQUIRE(read.ok());
        catalogue = std::move(*read);
    }
    PlantingPlan plan(const PlanWish& wish) {
        auto made = planPlanting(*database, *catalogue, wish);
        INFO((made ? std::string{} : made.error().message));
        REQUIRE(made.ok());
        return std::move(*made);
    }
    Result<std::vector<journal::Place>> plant(const PlantingPlan& plan) {
        auto written =
            perform(*database, plantPlan(*database, plan, "ed", "the trial of 2026"), clock);
        reread();
        return written;
    }
    void plantOne(const std::string& position, CivilDate day) {
        const auto act = plantRun(
            *database, *catalogue, {position, position, "A7", false, day}, "ed", "by hand");
        REQUIRE(perform(*database, act, clock).ok());
        reread();
    }

    TempFolder folder;
    std::unique_ptr<store::Database> database;
    std::unique_ptr<vineyard::Catalogue> catalogue;
    FixedClock clock;
};

PlanWish fourByThree() {
    PlanWish wish;
    wish.block = "B2";
    wish.rows = {1, 2};
    wish.entries = {"A1", "A2", "A3"};
    wish.replicates = 3;
    wish.seed = 7;
    wish.day = kDay;
    return wish;
}

} // namespace

TEST_CASE("a plan takes the free places, and is planted in one act with its replicates") {
    Room room;
    const PlantingPlan plan = room.plan(fourByThree());
    CHECK(plan.layout.vines.size() == 9);
    CHECK(plan.layout.lost.size() == 1); // B2-01-02
    const auto written = room.plant(plan);
    REQUIRE(written.ok());
    CHECK(written->size() == 10);
    std::map<std::pair<unsigned, std::string>, int> seen;
    for (const trials::PlannedVine& vine : plan.layout.vines) {
        const std::string& position = plan.positions[vine.position];
        CHECK(room.catalogue->accessionAt(position, kDay) == vine.entry);
        const auto at = vineyard::readPosition(position);
        const auto replicate = vineyard::replicateAt(*room.catalogue->block("B2"), *at);
        REQUIRE(replicate);
        CHECK(*replicate == vine.replicate);
        ++seen[{*replicate, vine.entry}];
    }
    CHECK(seen.size() == 9); // every entry once in every replicate
    CHECK(room.catalogue->accessionAt("B2-01-02", kDay) == "A9");
    REQUIRE(undoLast(*room.database, "ed", room.clock).ok());
    room.reread();
    CHECK(room.catalogue->accessionAt(plan.positions[plan.layout.vines[0].position], kDay).empty());
    CHECK(room.catalogue->block("B2")->replicates.empty());
    CHECK(room.catalogue->accessionAt("B2-01-02", kDay) == "A9");
}

TEST_CASE("a plan is refused whole where something stands at one of its places by now") {
    for (const int days : {0, -10, 10}) { // planted on that day, before, and later
        INFO(days);
        Room room;
        const PlantingPlan plan = room.plan(fourByThree());
        room.plantOne(plan.positions[plan.layout.vines[4].position], addDays(kDay, days));
        const auto refused = room.plant(plan);
        REQUIRE_FALSE(refused.ok());
        CHECK(refused.error().code == ErrorCode::Outdated);
        CHECK(room.catalogue->accessionAt(plan.positions[plan.layout.vines[0].position], kDay)
                  .empty());
        CHECK(room.plan(fourByThree()).layout.lost.size() == 2);
    }
}

TEST_CASE("a plan whose block got other replicates since is refused; a second trial is numbered "
          "after the first") {
    Room room;
    PlanWish third = fourByThree();
    third.rows = {3};
    third.replicates = 2;
    const PlantingPlan first = room.plan(fourByThree());
    const PlantingPlan second = room.plan(third);
    REQUIRE(room.plant(first).ok());
    const auto refused = room.plant(second);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().code == ErrorCode::Outdated);
    REQUIRE(room.plant(room.plan(third)).ok());
    std::set<unsigned> replicates;
    for (const vineyard::ReplicateRun& run : room.catalogue->block("B2")->replicates) {
        replicates.insert(run.replicate);
    }
    CHECK(replicates == std::set<unsigned>{1, 2, 3, 4, 5});
}

TEST_CASE("an augmented plan has each check once in a block, and each selection once") {
    Room room;
    PlanWish wish = fourByThree();
    wish.kind = trials::LayoutKind::Augmented;
    wish.rows = {};
    wish.checks = {"A9"};
    wish.entries = {"S1", "S2", "S3", "S4", "S5", "S6"};
    const PlantingPlan plan = room.plan(wish);
    CHECK(plan.layout.vines.size() == 9);
    CHECK(std::ranges::count(plan.layout.vines, true, &trials::PlannedVine::isCheck) == 3);
    REQUIRE(room.plant(plan).ok());
}

TEST_CASE("what cannot be planned is said: no such block or row, too few places") {
    Room room;
    PlanWish wish = fourByThree();
    wish.block = "B7";
    CHECK(planPlanting(*room.database, *room.catalogue, wish).error().message ==
          "There is no block B7. Give it its rows first.");
    wish = fourByThree();
    wish.rows = {1, 8};
    CHECK(planPlanting(*room.database, *room.catalogue, wish).error().message ==
          "Block B2 has no row 8.");
    wish = fourByThree();
    wish.replicates = 4;
    CHECK(planPlanting(*room.database, *room.catalogue, wish)
              .error()
              .message.find(
                  "There are 11 usable positions, too few for 4 replicates of 3 entries") == 0);
}
