// The demo's notes as the sciences take them, and how often an interval holds the truth behind
// them.
#pragma once

#include "office/station_notes_reading.hpp"

#include "core/statistics/estimate.hpp"
#include "store/read_catalogue.hpp"
#include "support/desk_stations.hpp"

#include <doctest/doctest.h>

#include <optional>
#include <string>
#include <utility>

namespace bullace::test {

inline const season::StationNotes& demoNotes() {
    static const season::StationNotes made = [] {
        const TempFolder folder;
        const std::string path = folder.file("demo.db");
        makeDemoFile(path);
        auto database = store::Database::open(path, false, store::fileSurroundings());
        REQUIRE(database.ok());
        const auto catalogue = store::readCatalogue(**database);
        REQUIRE(catalogue.ok());
        auto read = office::readStationNotes(**database, **catalogue, {});
        REQUIRE(read.ok());
        return std::move(*read);
    }();
    return made;
}

inline bool holds(const std::optional<statistics::Interval>& interval, double value) {
    REQUIRE(interval.has_value());
    return interval->low <= value && value <= interval->high;
}

// How many of the intervals hold their truth.
struct Coverage {
    std::size_t held = 0;
    std::size_t of = 0;
    void add(bool isHeld) {
        held += isHeld ? 1U : 0U;
        ++of;
    }
    [[nodiscard]] double share() const {
        return static_cast<double>(held) / static_cast<double>(of);
    }
};

} // namespace bullace::test
