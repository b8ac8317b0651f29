// Spreadsheets taken in and written out: nothing half, nothing twice.
#include "office/table_export.hpp"
#include "office/table_import.hpp"

#include "core/journal/json_value.hpp"
#include "store/read_catalogue.hpp"
#include "support/desk_stations.hpp"
#include "support/fixed_clock.hpp"

#include <sstream>

using namespace bullace;
using namespace bullace::office;
using namespace bullace::test;

namespace {

struct Station {
    Station()
        : Station(
              lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,12]]"})) {}
    explicit Station(const std::string& lines) : path(folder.file("station.db")) {
        makeStationFile(path, lines);
        open();
    }
    void open() {
        auto opened = store::Database::open(path, true, store::fileSurroundings());
        REQUIRE(opened.ok());
        database = std::move(*opened);
        auto read = store::readCatalogue(*database);
        REQUIRE(read.ok());
        catalogue = std::move(*read);
    }
    TablePlan plan(const std::string& file, StageScale scale = StageScale::Bbch) {
        const auto table = report::readCsv(file);
        REQUIRE(table.ok());
        TableWish wish = guessWish(*table, *catalogue);
        wish.author = "ed";
        wish.why = "a test's file";
        wish.scale = scale;
        auto plan = planTable(*database, *catalogue, *table, wish);
        INFO((plan ? std::string{} : plan.error().message));
        REQUIRE(plan.ok());
        return *plan;
    }
    std::size_t take(const std::string& file) {
        const TablePlan planned = plan(file);
        for (const TableLine& problem : planned.problems) {
            FAIL_CHECK(problem.line << ": " << problem.message);
        }
        const auto written = importTable(*database, planned, clock);
        REQUIRE(written.ok());
        auto read = store::readCatalogue(*database);
        REQUIRE(read.ok());
        catalogue = std::move(*read);
        return *written;
    }
    std::string at(const std::string& subject) {
        const auto row = database->state(subject);
        REQUIRE(row.ok());
        return *row ? std::string(merge::stateWord((*row)->state)) + " " + (*row)->valueJson
                    : std::string{};
    }
    std::string exported(TableKind kind, WildSites sites = WildSites::Included) {
        std::ostringstream out;
        REQUIRE(exportTable(*database, *catalogue, kind, sites, out).ok());
        return out.str();
    }

    TempFolder folder;
    std::string path;
    std::unique_ptr<store::Database> database;
    std::unique_ptr<vineyard::Catalogue> catalogue;
    FixedClock clock;
};

} // namespace

TEST_CASE(
    "last year's sugar comes in wide, with semicolons, decimal commas, a mark and serial dates") {
    Station station;
    CHECK(station.take("\xEF\xBB\xBFVine;Date;clusters;ph\r\nB2-01-01;45880;41;3,35\r\nB2-01-02;"
                       "45880;;3,4\r\n") == 3);
    CHECK(station.at("obs/B2-01-01/2025-08-11/clusters") == "settled 41");
    CHECK(station.at("obs/B2-01-01/2025-08-11/ph") == "settled 3.35");
    CHECK(station.at("obs/B2-01-02/2025-08-11/ph") == "settled 3.4");
    CHECK(station.at("obs/B2-01-02/2025-08-11/clusters").empty());
}

TEST_CASE("the same file twice changes nothing, samples among it") {
    Station station;
    const std::string file = "position,date,descriptor,value,observer\n"
                             "B2-01-01,2025-08-11,berry-diameter,24.5,im\n"
                             "B2-01-01,2025-08-11,berry-diameter,24.5,im\n"
                             "B2-01-01,2025-08-11,berry-diameter,25.1,im\n"
                             "B2-01-01,2025-08-11,flavour,7,tf\n";
    CHECK(station.take(file) == 4);
    const TablePlan again = station.plan(file);
    CHECK(again.drafts.empty());
    CHECK(again.there == 4);
    CHECK(again.conflicting == 0);
    CHECK_FALSE(importTable(*station.database, again, station.clock).ok());
}

TEST_CASE(
    "a value that stands against another becomes a conflict, and is not imported a second time") {
    Station station(lineOf({"t0000000000000001.1",
                            1,
                            "im",
                            "observe",
                            "obs/B2-01-01/2025-08-11/berry-colour",
                            R"("red")"}));
    const std::string file = "position,date,berry-colour\nB2-01-01,2025-08-11,black\n";
    CHECK(station.plan(file).conflicting == 1);
    CHECK(station.take(file) == 1);
    CHECK(station.at("obs/B2-01-01/2025-08-11/berry-colour") == "open ");
    CHECK(station.plan(file).drafts.empty());
}

TEST_CASE("a line that cannot be taken is told by its number, and nothing of the file is taken") {
    Station station;
    const TablePlan plan = station.plan("position,date,descriptor,value\n"
                                        "B2-01-01,2025-08-11,clusters,41\n"
                                        "B2-1-1,2025-08-11,clusters,41\n"
                                        "B2-01-02,2025-13-11,clusters,41\n"
                                        "B2-01-03,2025-08-11,clusters,many\n"
                                        "B2-01-04,2025-08-11,grapes,41\n"
                                        "B2-01-05,2025-08-11,soluble-solids,145\n"
                                        "B2-01-06,2025-08-11,clusters,41,7\n");
    CHECK(plan.problemCount == 6);
    std::vector<std::size_t> lines;
    for (const TableLine& problem : plan.problems) {
        lines.push_back(problem.line);
        CHECK(problem.message.back() == '.');
    }
    CHECK(lines == std::vector<std::size_t>{3, 4, 5, 6, 7, 8});
    CHECK_FALSE(importTable(*station.database, plan, station.clock).ok());
    CHECK(station.at("obs/B2-01-01/2025-08-11/clusters").empty());
}

TEST_CASE("what was written between looking and importing is noticed, and nothing is taken") {
    Station station;
    const TablePlan plan = station.plan("position,date,clusters\nB2-01-01,2025-08-11,41\n");
    store::Draft other;
    other.author = "im";
    other.subject = "obs/B2-01-01/2025-08-11/clusters";
    other.value = journal::integerValue(40);
    REQUIRE(station.database->append(std::vector{other}, std::nullopt).ok());
    const auto written = importTable(*station.database, plan, station.clock);
    REQUIRE_FALSE(written.ok());
    CHECK(written.error().code == ErrorCode::Outdated);
}

// The correspondence of IFV Occitanie's table (see bbchOfEichhornLorenz): 4 bud burst, 23 full
// bloom, 38 ripe; 34 is not converted.
TEST_CASE(
    "stages in the modified Eichhorn-Lorenz scale are converted by table, and kept as they were") {
    Station station;
    const std::string file = "position,date,stage\nB2-01-01,2024-03-20,4\nB2-01-02,2024-05-20,"
                             "23\nB2-01-03,2024-09-01,38\n";
    const TablePlan plan = station.plan(file, StageScale::ModifiedEichhornLorenz);
    REQUIRE(plan.drafts.size() == 3);
    CHECK(plan.drafts[0].value == journal::integerValue(9));
    CHECK(plan.drafts[1].value == journal::integerValue(65));
    CHECK(plan.drafts[2].value == journal::integerValue(89));
    CHECK(plan.drafts[1].as == "E-L 23 (Coombe 1995)");
    CHECK_FALSE(bbchOfEichhornLorenz(34));
    CHECK(station
              .plan("position,date,stage\nB2-01-01,2024-08-01,34\n",
                    StageScale::ModifiedEichhornLorenz)
              .problemCount == 1);
}

TEST_CASE("accessions by their MCPD names, checked as the standard says") {
    Station station;
    CHECK(station.take("ACCENUMB,ACCENAME,GENUS,SPECIES,SAMPSTAT,ACQDATE\nW7,Sallow "
                       "Ditch,Vitis,rotundifolia,110,197506--\n") == 5);
    CHECK(station.at("accession/W7/name") == R"(settled "Sallow Ditch")");
    CHECK(station.at("accession/W7/sampstat") == R"(settled "110")");
    const TablePlan bad = station.plan("ACCENUMB,SAMPSTAT,ACQDATE\nW8,425,1975\n");
    CHECK(bad.problemCount == 2);
}

TEST_CASE(
    "plantings, rows and people come in, and a row of the file takes the place of its like only") {
    Station station;
    CHECK(station.take("block,row,vines\nB2,2,20\nB3,1,8\n") == 2);
    CHECK(station.at("block/B2/rows") == "settled [[1,12],[2,20]]");
    CHECK(station.take("position,accession,from,until\nB2-02-01,W7,2024-03-01,\n") == 1);
    CHECK(station.at("planting/B2-02-01/2024-03-01") ==
          R"(settled {"until":null,"accession":"W7"})");
    CHECK(station.take("code,name\ned,Edda Marl\n") == 1);
}

TEST_CASE("everything that is exported comes back as nothing new") {
    std::string lines;
    for (const demo::Journal& journal : demoStation().journals) {
        lines += demo::journalLines(journal.entries);
    }
    Station station(lines);
    for (const TableKind kind :
         {TableKind::Accessions, TableKind::Plantings, TableKind::Rows, TableKind::People}) {
        const TablePlan plan = station.plan(station.exported(kind));
        CHECK(plan.problemCount == 0);
        CHECK(plan.drafts.empty());
        CHECK(plan.there > 0);
    }
    // Of observations those that are settled as one value; open ones and lists have none of their
    // own.
    const TablePlan plan = station.plan(station.exported(TableKind::ObservationsLong));
    for (const TableLine& problem : plan.problems) {
        INFO(problem.line << ": " << problem.message);
        CHECK(plan.problemCount == 0);
    }
    CHECK(plan.drafts.empty());
}

TEST_CASE("exact wild sites are left out of an export unless they are asked for") {
    Station station;
    station.take("ACCENUMB,COLLSITE,DECLATITUDE,ORIGCTY\nW7,behind the mill,31.5,USA\n");
    const std::string without = station.exported(TableKind::Accessions, WildSites::LeftOut);
    CHECK(without.find("mill") == std::string::npos);
    CHECK(without.find("31.5") == std::string::npos);
    CHECK(without.find("USA") != std::string::npos);
    CHECK(station.exported(TableKind::Accessions).find("behind the mill") != std::string::npos);
}
