// The silent look at a value after it was recorded: whether it is so unlike the vine's own history
// and its neighbours that a slip of the hand is likely. It is tuned to speak up at two entries in a
// hundred at most, or nobody would read it.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/descriptors/catalog.hpp"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace bullace::walk {

enum class Doubt {
    OutOfRange,        // other: the limit that was passed
    StageBackwards,    // other, on: the further stage of an earlier day of the season
    FarFromHistory,    // other, on: what was noted last
    FarFromNeighbours, // other: the neighbours' median
    TenTimes,          // other: a tenth of the value, or ten times it, which would fit
    InchForMillimetre, // other: the value with the unit put right, which would fit
};

struct Noted {
    CivilDate date;
    double number = 0;
};

// What is known when a value is weighed. Nothing of it need be there.
struct Background {
    std::string_view code; // of the descriptor
    descriptors::DescriptorKind kind = descriptors::DescriptorKind::Measure;
    std::optional<descriptors::Range> range{};
    std::vector<Noted> history{};          // of this vine, this planting, by ascending date
    std::vector<double> neighbours{};      // noted on this walk, the nearest first
    int decimals = 0;                      // of the descriptor
    std::string_view unit{};               // "mm"; empty: that of the built-in descriptor `code`
    std::vector<std::int64_t> ownStages{}; // a station's own stages in order; empty: BBCH grapevine
};

struct Doubtful {
    Doubt doubt = Doubt::OutOfRange;
    double other = 0;
    std::optional<CivilDate> on{};
};

// Nothing where the value is not unusual, or too little is known to say so.
// - Stages: two steps behind the last earlier day of the same calendar year, or three behind any
//   day of it. While shoots grow and flowers open (BBCH 03 to 69) one step behind a day at least
//   four days ago is enough, since a vine moves on in that time (common practice, no source).
// - Codes (flower sex, chromosomes): unlike all that was noted of the vine.
// - Counts, measures and scores: far from both the vine's own history and its neighbours, in
//   multiples of a spread estimated from median and median absolute deviation and held up by what
//   vines of one row vary anyway. Where only one of both is known, that one decides; where one says
//   that the value is ordinary, it is. A tenfold or an inch-for-millimetre that would fit is named.
// - Percentages, words and texts: the range only.
[[nodiscard]] std::optional<Doubtful>
weigh(const Background& background, CivilDate today, double value);

} // namespace bullace::walk
