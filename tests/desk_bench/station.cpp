#include "station.hpp"

#include "bench/measure.hpp"
#include "bench/origin_writer.hpp"
#include "bench/served.hpp"
#include "bench/station_past.hpp"

#include "core/journal/json_value.hpp"

#include <array>
#include <cstdio>
#include <vector>

namespace bullace::desk_bench {

using bench::must;
using journal::integerValue;
using journal::Kind;
using journal::textValue;

namespace {

constexpr std::size_t kMillion = 1'000'000;
constexpr std::uint64_t kTablet = 0x42;

std::string noted(const std::string& position, const char* dateAndDescriptor) {
    return "obs/" + position + "/" + dateAndDescriptor;
}

// The position of number `i` of `count` that lie evenly among all.
const std::string&
spread(const std::vector<std::string>& positions, std::size_t i, std::size_t count) {
    return positions[i * positions.size() / count];
}

} // namespace

void makeStation(const std::string& path) {
    const auto station = bench::makeStation(path);
    bench::fillWithPast(*station, kMillion);
    const std::vector<std::string> positions = bench::pastPositions();
    bench::OriginWriter other(*station, {'t', 0x13, 1});
    for (std::size_t i = 0; i < kConflicts; ++i) {
        other.write("ed",
                    Kind::Observe,
                    noted(spread(positions, i, kConflicts), "2025-06-12/clusters"),
                    integerValue(301));
    }
    for (std::size_t i = 0; i < kRuled; ++i) {
        const std::string& position = spread(positions, i, kRuled);
        // One step of the scale further.
        const std::int64_t stage = bench::stageOf(position, *readDate("2026-05-10"));
        other.write("ed", Kind::Observe, noted(position, "2026-05-05/stage"), integerValue(stage));
    }
    for (std::size_t i = 0; i < kNotes; ++i) {
        const std::string words = i == kNotes / 2 ? std::string("a ") + kRareWord + " on the cane"
                                                  : "shoot " + std::to_string(i) + " tied up";
        other.write("ed",
                    Kind::Observe,
                    noted(spread(positions, i, kNotes), "2025-07-08/note"),
                    textValue(words));
    }
    other.flush();
    bench::OriginWriter office(*station, {'s', 0x2, 1});
    office.write("hq", Kind::Catalog, "person/ed/name", textValue("Edda Marl"));
    office.flush();
    const auto counts = station->counts();
    must(counts && counts->open == kConflicts && counts->uncounted == 0, "the station as planned");
}

void makeTablet(const std::string& path) {
    constexpr std::array kDays{"2026-05-06", "2026-05-07", "2026-05-08", "2026-05-09"};
    constexpr std::array kAsked{"stage", "caps-off", "clusters", "vigour", "disease"};
    constexpr std::size_t kApartEvery = 50;
    const auto tablet = bench::makeJournal(path, kTablet);
    bench::OriginWriter writer(*tablet, {'t', kTablet, 1});
    const std::vector<std::string> positions = bench::pastPositions();
    for (std::size_t i = 0; i < kPushed; ++i) {
        if (i % kApartEvery == 0) {
            const std::size_t vine = i / kApartEvery * 3 + 1;
            writer.write("im",
                         Kind::Observe,
                         noted(positions[vine % positions.size()], "2024-06-12/clusters"),
                         integerValue(302));
            continue;
        }
        const std::size_t turn = i / positions.size();
        const std::string what =
            std::string(kDays[turn % kDays.size()]) + "/" + kAsked[turn / kDays.size()];
        writer.write("im",
                     Kind::Observe,
                     noted(positions[i % positions.size()], what.c_str()),
                     integerValue(5));
    }
    writer.flush();
}

int pushFrom(const std::string& path, const std::string& at, const std::string& code) {
    const auto tablet = bench::openJournal(path);
    const sync::net::Cancel cancel;
    const auto paired = server::pairDevice(*tablet, {at, code, "Field tablet", 't'}, cancel);
    must(paired.ok(), paired ? "" : paired.error().message);
    sync::Summary summary;
    const double seconds = bench::secondsOf([&] { summary = bench::syncNow(*tablet, at); });
    must(summary.newThere == kPushed, "all of the tablet's entries are new to the station");
    std::printf("%.3f\n", seconds);
    return 0;
}

} // namespace bullace::desk_bench
