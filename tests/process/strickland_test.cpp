// The whole chain on data from outside: the yields of 155 vine places, through a journal, a sync
// and an export.
//
// Source: Strickland 1932, "A vine uniformity trial", J. Agr. Victoria 30:584-593: yield in pounds
// of single vines by row and column. Read from ../shared/checks beside the project, where it is
// there; nothing of it is kept here.
#include "process/programs.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

using namespace bullace::test;

namespace {

const std::string kData =
    std::string(BULLACE_SOURCE) + "/../shared/checks/vine-yield-strickland-1932.tsv";

// Place ("B1-01-01") to yield in pounds as text, "NA" for a missing vine.
std::map<std::string, std::string> readPlaces() {
    std::map<std::string, std::string> places;
    std::ifstream in(kData);
    std::string header;
    std::getline(in, header);
    int row = 0;
    int column = 0;
    std::string yield;
    while (in >> row >> column >> yield) {
        const auto padded = [](int number) {
            return (number < 10 ? "0" : "") + std::to_string(number);
        };
        places["B1-" + padded(row) + "-" + padded(column)] = yield;
    }
    return places;
}

std::string fieldLines(const std::map<std::string, std::string>& places,
                       const std::string& device) {
    std::string lines;
    int seq = 0;
    for (const auto& [place, yield] : places) {
        ++seq;
        // One decimal, as the descriptor says: 5 is noted as 5.0 and stays a float.
        const std::string value = yield == "NA"                          ? R"({"none":"no-vine"})"
                                  : yield.find('.') == std::string::npos ? yield + ".0"
                                                                         : yield;
        lines += R"({"origin":"t)" + device + R"(.1","seq":)" + std::to_string(seq) +
                 R"(,"count":)" + std::to_string(seq) +
                 R"(,"author":"as","kind":"observe","subject":"obs/)" + place +
                 R"(/1932-03-01/yield-lb","value":)" + value + "}\n";
    }
    return lines;
}

std::string descriptorLines() {
    const std::pair<const char*, const char*> fields[] = {
        {"title", "\"yield\""}, {"kind", "\"measure\""}, {"unit", "\"lb\""}, {"decimals", "1"}};
    std::string lines;
    int seq = 0;
    for (const auto& [field, value] : fields) {
        ++seq;
        lines += R"({"origin":"s00000000000000aa.1","seq":)" + std::to_string(seq) +
                 R"(,"count":)" + std::to_string(seq) +
                 R"(,"author":"ed","kind":"catalog","subject":"descriptor/yield-lb/)" + field +
                 R"(","value":)" + value + "}\n";
    }
    return lines;
}

} // namespace

TEST_CASE(
    "the yields of Strickland 1932 come through a journal, a sync and an export as they were") {
    if (!std::filesystem::exists(kData)) {
        MESSAGE(
            "left out: ../shared/checks/vine-yield-strickland-1932.tsv is not beside the project");
        return;
    }
    const auto places = readPlaces();
    REQUIRE(places.size() == 155);
    Folder folder;
    const std::string station = folder.file("station.db");
    const std::string tablet = folder.file("tablet.db");
    const std::string device = "00000000000000bb";
    REQUIRE(console({"create", station, "--station", "Invented", "--zone", "UTC"}).status == 0);
    REQUIRE(console({"import", station, "-"}, descriptorLines()).status == 0);
    REQUIRE(console({"create", tablet, "--field", "--device", device}).status == 0);
    REQUIRE(console({"import", tablet, "-"}, fieldLines(places, device)).status == 0);
    Server server(station);
    REQUIRE(console({"pair", tablet, "--at", server.address(), "--code", server.code(station)})
                .status == 0);
    REQUIRE(console({"sync", tablet}).status == 0);
    CHECK(server.stop().status == 0);

    std::istringstream lines(console({"state", station, "--under", "obs"}).out);
    std::map<std::string, std::string> found;
    std::vector<double> yields;
    for (std::string line; std::getline(lines, line);) {
        const std::string place = line.substr(line.find("obs/") + 4, 8);
        const std::size_t at = line.find("\"value\":") + 8;
        const std::string value = line.substr(at, line.find(",\"rule\"", at) - at);
        found[place] = value == R"({"none":"no-vine"})" ? "NA" : value;
        if (found[place] != "NA") {
            yields.push_back(std::stod(value));
        }
    }
    REQUIRE(found.size() == 155);
    for (const auto& [place, yield] : places) {
        CAPTURE(place);
        CHECK((yield == "NA" ? found[place] == "NA" : std::stod(found[place]) == std::stod(yield)));
    }
    CHECK(yields.size() == 125);
    double sum = 0;
    for (const double yield : yields) {
        sum += yield;
    }
    const double mean = sum / 125;
    double squares = 0;
    for (const double yield : yields) {
        squares += (yield - mean) * (yield - mean);
    }
    CHECK(std::round(mean * 1000) / 1000 == doctest::Approx(5.944));
    CHECK(std::round(std::sqrt(squares / 124) * 1000) / 1000 == doctest::Approx(2.585));
    CHECK(console({"export", station}).out == console({"export", tablet}).out);
}
