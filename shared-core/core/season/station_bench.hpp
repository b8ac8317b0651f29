// What was tested at the bench, taken out of the station's records: freezing tests of buds and
// absorbance of juice, each with the accession that it was taken from.
#pragma once

#include "core/fruit/colour_decay.hpp"
#include "core/hardiness/kill_curve.hpp"
#include "core/season/station_notes.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::season {

// Of the vine, or of that from which the lot was taken; nothing where nobody said.
[[nodiscard]] std::optional<std::size_t> accessionOf(const StationNotes& notes,
                                                     const RecordNote& note);

struct FreezeTest {
    std::size_t accession = 0;
    std::int32_t day = 0;
    std::string bud; // primary, secondary or tertiary
    hardiness::FreezeRow row;
};
// Records without a temperature or a count, or whose accession nobody knows, are left out.
[[nodiscard]] std::vector<FreezeTest> freezeTestsIn(const StationNotes& notes);

// The accession stands as its ID; a path of 10 mm and no dilution where nothing is said.
[[nodiscard]] std::vector<fruit::AbsorbanceReading> absorbanceIn(const StationNotes& notes);

} // namespace bullace::season
