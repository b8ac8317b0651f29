// The station's observations as plain tables for the sciences.
#include "office/station_notes_reading.hpp"

#include "store/read_catalogue.hpp"
#include "support/desk_stations.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <string>

using namespace bullace;
using namespace bullace::season;

namespace {

StationNotes notesOf(const std::string& path) {
    auto database = store::Database::open(path, false, store::fileSurroundings());
    REQUIRE(database.ok());
    const auto catalogue = store::readCatalogue(**database);
    REQUIRE(catalogue.ok());
    auto notes = office::readStationNotes(**database, **catalogue, {});
    REQUIRE(notes.ok());
    return std::move(*notes);
}

std::string entry(int seq,
                  const std::string& author,
                  const std::string& subject,
                  const std::string& value,
                  const std::string& more = R"("over":[])") {
    const std::string origin = author == "ip" ? "t0000000000000001.1" : "t0000000000000002.1";
    return R"({"origin":")" + origin + R"(","seq":)" + std::to_string(seq) + R"(,"count":)" +
           std::to_string(seq) + R"(,"author":")" + author + R"(","kind":"observe","subject":")" +
           subject + R"(","value":)" + value + "," + more + "}\n";
}

const std::string kPlan =
    R"({"origin":"s0000000000000009.1","seq":1,"count":1,"author":"ip","kind":"catalog","subject":"block/B1/rows","value":[[1,4]],"over":[]})"
    "\n"
    R"({"origin":"s0000000000000009.1","seq":2,"count":2,"author":"ip","kind":"catalog","subject":"planting/B1-01-01/2020-03-01","value":{"accession":"A001","until":"2024-04-30"},"over":[]})"
    "\n"
    R"({"origin":"s0000000000000009.1","seq":3,"count":3,"author":"ip","kind":"catalog","subject":"planting/B1-01-01/2024-06-01","value":{"accession":"A002","until":null},"over":[]})"
    "\n"
    R"({"origin":"s0000000000000009.1","seq":4,"count":4,"author":"ip","kind":"catalog","subject":"accession/A001/taxon","value":"Vitis munsoniana","over":[]})"
    "\n";

} // namespace

TEST_CASE(
    "every note of the demo goes to the vine that stood there, and nothing is dropped unseen") {
    const test::TempFolder folder;
    const std::string path = folder.file("demo.db");
    test::makeDemoFile(path);
    const StationNotes notes = notesOf(path);
    std::size_t kept = notes.elsewhere;
    for (const auto& [descriptor, of] : notes.of) {
        kept += of.numbers.size() + of.words.size() + of.records.size() + of.missed.size() +
                of.open.size();
        for (const NumberNote& note : of.numbers) {
            REQUIRE(note.vine < notes.vines.size());
            CHECK(note.low <= note.value);
            CHECK(note.value <= note.high);
        }
    }
    // Open stages and percentages are there twice: with their bounds, and as what is open.
    CHECK(kept >= notes.observations);
    CHECK(notes.observations > 10'000);
    CHECK(notes.notesOf("stage").numbers.size() > 1000);
    CHECK_FALSE(notes.notesOf("stage").people.empty());
    CHECK(notes.accession("A001"));
    CHECK_FALSE(notes.accession("Z999"));
}

TEST_CASE("a replanted place is two vines, and a note between them is nobody's") {
    const test::TempFolder folder;
    const std::string path = folder.file("small.db");
    test::makeStationFile(
        path,
        kPlan + entry(1, "ip", "obs/B1-01-01/2023-05-01/vigour", "5") +
            entry(2, "ip", "obs/B1-01-01/2025-05-01/vigour", "7") +
            entry(3, "ip", "obs/B1-01-01/2024-05-15/vigour", "1") +
            entry(4, "ip", "obs/B1-01-01/2025-05-02/vigour", R"({"none":"walked-past"})"));
    const StationNotes notes = notesOf(path);
    const DescriptorNotes& vigour = notes.notesOf("vigour");
    REQUIRE(vigour.numbers.size() == 2);
    CHECK(vigour.numbers[0].vine != vigour.numbers[1].vine);
    CHECK(notes.elsewhere == 1);
    REQUIRE(vigour.missed.size() == 1);
    CHECK(notes.words[vigour.missed[0].word] == "walked-past");
    const auto& first = notes.vines[vigour.numbers[0].vine];
    CHECK(notes.accessions[first.accession].taxon ==
          (notes.accessions[first.accession].id == "A001" ? "Vitis munsoniana" : ""));
}

TEST_CASE(
    "two people's stages bound the vine, also where a rule settled them; other values do not") {
    const test::TempFolder folder;
    const std::string path = folder.file("two.db");
    test::makeStationFile(path,
                          kPlan + entry(1, "ip", "obs/B1-01-01/2023-05-01/stage", "61") +
                              entry(1, "tq", "obs/B1-01-01/2023-05-01/stage", "65") +
                              entry(2, "ip", "obs/B1-01-01/2023-05-01/vigour", "4") +
                              entry(2, "tq", "obs/B1-01-01/2023-05-01/vigour", "5") +
                              entry(3, "ip", "obs/B1-01-01/2023-05-02/vigour", "4") +
                              entry(3, "tq", "obs/B1-01-01/2023-05-02/vigour", "4"));
    const StationNotes notes = notesOf(path);
    const DescriptorNotes& stage = notes.notesOf("stage");
    REQUIRE(stage.numbers.size() == 1);
    CHECK(stage.numbers[0].low == 61);
    CHECK(stage.numbers[0].high == 65);
    CHECK(stage.people.size() == 2);
    const DescriptorNotes& vigour = notes.notesOf("vigour");
    for (const NumberNote& note : vigour.numbers) {
        CHECK(note.low == note.high);
    }
    CHECK(vigour.people.size() == 4); // where they agreed, too
}

TEST_CASE("several berries weighed together are one weight each") {
    const test::TempFolder folder;
    const std::string path = folder.file("berries.db");
    test::makeStationFile(path,
                          kPlan +
                              entry(1,
                                    "ip",
                                    "obs/B1-01-01/2023-08-01/berry-weight/t0000000000000001.1,1",
                                    R"({"g":61.5,"of":10})"));
    const StationNotes notes = notesOf(path);
    const DescriptorNotes& weights = notes.notesOf("berry-weight");
    REQUIRE(weights.numbers.size() == 1);
    CHECK(weights.numbers[0].value == doctest::Approx(6.15));
    CHECK(weights.records.empty());
}

TEST_CASE("weather is read by site and day") {
    const test::TempFolder folder;
    const std::string path = folder.file("weather.db");
    test::makeStationFile(
        path,
        kPlan +
            R"({"origin":"s0000000000000009.1","seq":5,"count":5,"author":"ip","kind":"catalog","subject":"weather/north/2024-02-01/TMIN","value":-3.5,"over":[]})"
            "\n"
            R"({"origin":"s0000000000000009.1","seq":6,"count":6,"author":"ip","kind":"catalog","subject":"weather/north/2024-02-01/TMAX","value":9,"over":[]})"
            "\n");
    const StationNotes notes = notesOf(path);
    REQUIRE(notes.weather.contains("north"));
    const auto& day = notes.weather.at("north").begin()->second;
    CHECK(day.least == -3.5);
    CHECK(day.greatest == 9.0);
    CHECK_FALSE(day.rain);
}
