// Station databases for tests of the desk: the whole demo station, and small ones typed in few
// words.
#pragma once

#include "demo/json_lines.hpp"
#include "demo/station.hpp"

#include "store/database.hpp"
#include "support/temp_folder.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <memory>
#include <sstream>
#include <string>

namespace bullace::test {

inline const demo::DemoStation& demoStation() {
    static const demo::DemoStation station = demo::makeStation();
    return station;
}

// A new station's database with these lines of JSON in it; closed again.
inline void makeStationFile(const std::string& path, const std::string& lines) {
    store::Founding founding;
    founding.role = store::Role::Station;
    founding.station = "Marrowby Station";
    founding.zone = "Etc/GMT+5";
    founding.device = 0xdecade;
    auto database = store::Database::create(path, founding, store::fileSurroundings());
    REQUIRE(database.ok());
    std::istringstream in(lines);
    const auto report = (*database)->importLines(in, "lines", {});
    REQUIRE(report.ok());
    INFO((report->refused.empty() ? std::string{} : report->refused.front().message));
    CHECK(report->refusedCount == 0);
    CHECK(report->waitingCount == 0);
}

// The demo station after its third season, made once for a test program and copied from then on.
inline void makeDemoFile(const std::string& path) {
    static const TempFolder folder;
    const std::string first = folder.file("demo.db");
    if (!std::filesystem::exists(first)) {
        std::string lines;
        for (const demo::Journal& journal : demoStation().journals) {
            lines += demo::journalLines(journal.entries);
        }
        makeStationFile(first, lines);
    }
    for (const char* end : {"", "-wal", "-token"}) {
        if (std::filesystem::exists(first + end)) {
            std::filesystem::copy_file(first + end, path + end);
        }
    }
}

// One line of an export.
struct Line {
    std::string origin; // "t0000000000000001.1"
    int seq = 1;
    std::string author = "im";
    std::string kind = "observe";
    std::string subject;
    std::string json;        // the value
    std::string over = "[]"; // [["t0000000000000001.1",1]]
    std::int64_t wallMs = 1'778'572'800'000;
};
inline std::string lineOf(const Line& line) {
    return R"({"origin":")" + line.origin + R"(","seq":)" + std::to_string(line.seq) +
           R"(,"count":)" + std::to_string(line.seq) + R"(,"wall":[)" +
           std::to_string(line.wallMs) + R"(,-300],"author":")" + line.author + R"(","kind":")" +
           line.kind + R"(","subject":")" + line.subject + R"(","value":)" + line.json +
           R"(,"over":)" + line.over + "}\n";
}

} // namespace bullace::test
