// The bench: what is typed into its grid, row sheets that are typed twice, numbers for what the
// field opened.
#include "office/bench.hpp"

#include "office/paper_typing.hpp"

#include "core/journal/json_value.hpp"
#include "store/read_catalogue.hpp"
#include "support/desk_stations.hpp"
#include "support/fixed_clock.hpp"

using namespace bullace;
using namespace bullace::office;
using namespace bullace::test;

namespace {

constexpr const char* kTablet = "t0000000000000001.1";
constexpr CivilDate kDay{std::chrono::year(2026), std::chrono::month(9), std::chrono::day(14)};

std::string benchStation() {
    const char* office = "s00000000000000ff.1";
    int seq = 0;
    std::string lines;
    const auto add = [&](const char* subject, const char* json) {
        lines += lineOf({office, ++seq, "hq", "catalog", subject, json});
    };
    add("block/B2/rows", "[[1,4]]");
    add("person/im/name", R"("Ines Moor")");
    add("accession/A1/name", R"("Brindlecap")");
    add("planting/B2-01-01/2020-03-01", R"({"accession":"A1","until":null})");
    add("planting/B2-01-02/2020-03-01", R"({"accession":"A1","until":null})");
    add("lot/J1/kind", R"("juice")");
    add("lot/J1/from", R"("B2-01-01")");
    add("lot/J1/number", R"("J26-009")");
    add("cross/X1/number", R"("X26-013")");
    seq = 0;
    lines += lineOf({kTablet, ++seq, "im", "catalog", "cross/000000-1/mother", R"("A1")"});
    lines += lineOf({kTablet, ++seq, "im", "catalog", "lot/000000-2/kind", R"("berries")"});
    lines += lineOf(
        {kTablet, ++seq, "im", "observe", "obs/lot:J1/2026-09-14/titratable-acidity", "5.25"});
    lines += lineOf({kTablet,
                     ++seq,
                     "im",
                     "observe",
                     "obs/lot:J1/2026-09-14/soluble-solids/t0000000000000001.1,1",
                     "15.5"});
    return lines;
}

struct Bench {
    Bench() {
        const std::string path = folder.file("station.db");
        makeStationFile(path, benchStation());
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
    const vineyard::Asked& asked(const char* code) const {
        REQUIRE(catalogue->descriptor(code) != nullptr);
        return *catalogue->descriptor(code);
    }
    BenchGrid grid(const BenchPlan& plan) {
        auto read = readBench(*database, *catalogue, plan);
        REQUIRE(read.ok());
        return std::move(*read);
    }
    Status write(const Result<Act>& act) {
        if (!act) {
            return act.error();
        }
        const auto written = perform(*database, *act, clock);
        return written ? Status() : Status(written.error());
    }
    std::string at(const std::string& subject) {
        const auto row = database->state(subject);
        REQUIRE(row.ok());
        return *row ? (*row)->valueJson : std::string{};
    }

    TempFolder folder;
    FixedClock clock;
    std::unique_ptr<store::Database> database;
    std::shared_ptr<const vineyard::Catalogue> catalogue;
};

const BenchPlan kPlan{{"lot:J1"}, kDay, {"soluble-solids", "titratable-acidity", "ph"}, 2};

PaperTyping sheetOf(std::vector<std::string> first, std::vector<std::string> second) {
    PaperTyping typing;
    typing.code = "ROW/B2-01/F/1";
    typing.observer = "im";
    typing.day = kDay;
    typing.places = {"B2-01-01", "B2-01-02"};
    typing.columns = {{"clusters", 0}};
    typing.clear();
    for (std::size_t i = 0; i < first.size(); ++i) {
        typing.passes[0][i][0] = first[i];
        typing.passes[1][i][0] = second[i];
    }
    typing.pass = 2;
    return typing;
}

} // namespace

TEST_CASE("the grid shows what stands on the day, samples side by side, whoever noted them") {
    Bench bench;
    const BenchGrid grid = bench.grid(kPlan);
    REQUIRE(grid.columns.size() == 4);
    CHECK(grid.columns[0].sample == 1);
    CHECK(grid.columns[1].sample == 2);
    CHECK(grid.columns[2].sample == 0);
    CHECK(journal::valueToJson(grid.rows[0][0].value) == "15.5");
    CHECK(grid.rows[0][1].value.empty());
    CHECK(grid.rows[0][1].subject.empty());
    CHECK(journal::valueToJson(grid.rows[0][2].value) == "5.25");
    CHECK(grid.rows[0][3].value.empty());
}

TEST_CASE("a further sample becomes one of this computer's, and another value needs a reason") {
    Bench bench;
    BenchGrid grid = bench.grid(kPlan);
    const auto brix = readTyped(bench.asked("soluble-solids"), "16,2", {});
    REQUIRE(brix.ok());
    CHECK(bench.write(noteAtBench(
        *bench.database, "lot:J1", kDay, grid.columns[1], grid.rows[0][1], *brix, "im", {})));
    grid = bench.grid(kPlan);
    // In the order of their subjects: an office's before a tablet's.
    CHECK(grid.columns.size() == 4);
    std::multiset<std::string> samples{journal::valueToJson(grid.rows[0][0].value),
                                       journal::valueToJson(grid.rows[0][1].value)};
    CHECK(samples == std::multiset<std::string>{"15.5", "16.2"});

    const auto acid = readTyped(bench.asked("titratable-acidity"), "6.25", {});
    REQUIRE(acid.ok());
    const auto note = [&](const std::string& why) {
        return noteAtBench(
            *bench.database, "lot:J1", kDay, grid.columns[2], grid.rows[0][2], *acid, "im", why);
    };
    CHECK(note({}).error().code == ErrorCode::InvalidInput);
    CHECK(bench.write(note("burette read a row off")));
    CHECK(bench.at("obs/lot:J1/2026-09-14/titratable-acidity") == "6.25");
    // What was on the screen is not there any more: nothing is written blind.
    CHECK(bench.write(note("again")).error().code == ErrorCode::Outdated);
}

TEST_CASE("rows, runs, kinds of lots, numbers and accessions are places that can be meant") {
    Bench bench;
    const auto meant = [&](const char* text) {
        const auto places = placesMeant(*bench.catalogue, text, kDay);
        return places ? *places : std::vector<std::string>{};
    };
    using Places = std::vector<std::string>;
    CHECK(meant("B2-01").size() == 4);
    CHECK(meant("B2-01-02 B2-01-03") == Places{"B2-01-02", "B2-01-03"});
    CHECK(meant("juice") == Places{"lot:J1"});
    CHECK(meant("J26-009") == Places{"lot:J1"});
    CHECK(meant("A1") == Places{"B2-01-01", "B2-01-02"});
    CHECK(meant("B9-01").empty());
    CHECK(meant("B2-01-03 B2-01-09").empty()); // four vines stand in the row
    CHECK(meant("B9-01-01 B9-01-03").empty());
    CHECK(meant("nonsense").empty());
}

TEST_CASE("two typings differ in value, not in spelling, and are written only when they agree") {
    Bench bench;
    const PaperTyping typing = sheetOf({"41", "7"}, {"41.0", "17"});
    const auto differences = differencesOf(*bench.catalogue, typing, {});
    REQUIRE(differences.size() == 1);
    CHECK(differences[0].place == 1);
    CHECK(sheetAct(*bench.database, *bench.catalogue, typing, {}).error().code ==
          ErrorCode::InvalidInput);

    const PaperTyping agreed = sheetOf({"41", "17"}, {"41.0", "17"});
    CHECK(bench.write(sheetAct(*bench.database, *bench.catalogue, agreed, {})));
    CHECK(bench.at("obs/B2-01-01/2026-09-14/clusters") == "41");
    CHECK(bench.at("obs/B2-01-02/2026-09-14/clusters") == "17");
    CHECK_FALSE(sheetAct(*bench.database, *bench.catalogue, sheetOf({}, {}), {}).ok());
}

TEST_CASE(
    "a sheet stands beside what a tablet noted that day: where they differ, a conflict waits") {
    Bench bench;
    std::istringstream in(lineOf(
        {"t0000000000000002.1", 1, "tf", "observe", "obs/B2-01-01/2026-09-14/clusters", "90"}));
    REQUIRE(bench.database->importLines(in, "tablet", {}).ok());
    CHECK(bench.write(
        sheetAct(*bench.database, *bench.catalogue, sheetOf({"41", ""}, {"41", ""}), {})));
    const auto row = bench.database->state("obs/B2-01-01/2026-09-14/clusters");
    REQUIRE((row.ok() && *row));
    CHECK((*row)->state == merge::State::Open);
    CHECK((*row)->heads.size() == 2);
}

TEST_CASE("a word's number on the sheet's list stands for the word") {
    Bench bench;
    const auto second = readPaper(bench.asked("berry-colour"), "2", {});
    REQUIRE(second.ok());
    CHECK(journal::textOf(second->value) == bench.asked("berry-colour").known.codes[1]);
    CHECK_FALSE(readPaper(bench.asked("berry-colour"), "99", {}).ok());
}

TEST_CASE("typing that was begun is found again, and put away when it is written") {
    Bench bench;
    PaperTyping typing = sheetOf({"41", ""}, {"", ""});
    typing.pass = 0;
    REQUIRE(keepTyping(*bench.database, typing));
    const auto kept = readTyping(*bench.database);
    REQUIRE((kept.ok() && *kept));
    CHECK((*kept)->passes[0] == typing.passes[0]);
    CHECK((*kept)->passes[1] == typing.passes[1]);
    CHECK((*kept)->places == typing.places);
    CHECK((*kept)->day == kDay);
    REQUIRE(keepTyping(*bench.database, std::nullopt));
    CHECK_FALSE(*readTyping(*bench.database));
}

TEST_CASE("what tablets opened gets the number after the office's last, and no number twice") {
    Bench bench;
    const auto opened = openedInField(*bench.catalogue);
    REQUIRE(opened.size() == 2);
    CHECK(opened[0].kind == CardKind::Cross);
    CHECK(opened[0].suggested == "X26-014");
    CHECK(opened[1].kind == CardKind::Lot);
    CHECK(opened[1].suggested == "J26-010");
    const auto confirm = [&](const std::string& number) {
        return confirmWith(*bench.database, *bench.catalogue, opened[0], number, "im");
    };
    CHECK(confirm("X26-013").error().code == ErrorCode::InvalidInput);
    CHECK(confirm("").error().code == ErrorCode::InvalidInput);
    CHECK(bench.write(confirm("X26-014")));
    bench.reread();
    const auto left = openedInField(*bench.catalogue);
    REQUIRE(left.size() == 1);
    CHECK(left[0].id == "000000-2");
}
