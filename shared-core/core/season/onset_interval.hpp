// When a stage began, as far as visits can say: visits are days apart, so a date is an interval.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/remark.hpp"
#include "core/statistics/estimate.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::season {

// Not yet at `after`, reached at `by`: (after, by]. Day of season, degree-days, or days of length;
// ±kUnbounded where no visit bounds it. Both the same: known exactly.
struct OnsetInterval {
    double after = -statistics::kUnbounded;
    double by = statistics::kUnbounded;

    [[nodiscard]] bool isLeft() const { return after == -statistics::kUnbounded && hasEnd(); }
    [[nodiscard]] bool isRight() const { return hasStart() && by == statistics::kUnbounded; }
    [[nodiscard]] bool isExact() const { return after == by; }
    [[nodiscard]] bool isUnseen() const { return !hasStart() && !hasEnd(); }
    friend bool operator==(const OnsetInterval&, const OnsetInterval&) = default;

private:
    [[nodiscard]] bool hasStart() const { return after > -statistics::kUnbounded; }
    [[nodiscard]] bool hasEnd() const { return by < statistics::kUnbounded; }
};

// How many of each kind; `unseen` tell nothing and are in no fit.
struct OnsetCounts {
    std::size_t within = 0; // bounded on both sides
    std::size_t left = 0;   // reached before the first visit
    std::size_t right = 0;  // not yet at the last visit
    std::size_t exact = 0;
    std::size_t unseen = 0;

    [[nodiscard]] std::size_t telling() const { return within + left + right + exact; }
};
[[nodiscard]] OnsetCounts countsOf(std::span<const OnsetInterval> onsets);

// 1 for 1 January of `year`; days of the next year go on counting, so that a season may pass into
// it.
[[nodiscard]] double dayOfSeason(CivilDate day, int year);
[[nodiscard]] CivilDate dateOfSeason(double day, int year); // rounded to the nearest day

// What one person wrote down of one vine at one visit.
enum class Organs {
    MostAdvanced, // the descriptor "stage", and the percentages
    LeastAdvanced // "stage-least": on an everbearing vine, which has all stages at once
};
struct StageReading {
    enum class Kind { Stage, Percent };
    CivilDate day;
    Kind kind = Kind::Stage;
    double value = 0; // BBCH code, or percent of caps off, berries coloured or ripe, leaves fallen
    Organs organs = Organs::MostAdvanced;
};

// What is asked for: the stage with at least this code. A percentage answers too where one is named
// that means the same: 50 % of caps off is code 65 (Lorenz et al. 1995, Aust. J. Grape Wine Res.
// 1:100-103: code 60 + p/10 for p of 10 to 80 %).
struct StageQuestion {
    double code = 65;
    std::optional<double> percent{}; // 0 to 100, above 0
};

struct VineOnset {
    OnsetInterval days; // of the season
    std::size_t visits = 0;
    std::size_t divided = 0;    // visits at which one value says "reached" and another "not yet"
    bool runsBack = false;      // a visit said "not yet" after one that had said "reached"
    bool isEverbearing = false; // least advanced organs were noted at some visit
};

// From the last visit of which all values say "not yet", with none before it that says "reached",
// to the first of which all say "reached", with none after it that says "not yet". Where two people
// differ, or a value runs back, both bound the date: it lies in the wider interval.
// `readings` of one vine and season in any order; only those of `organs` are looked at. Numbers
// that are not finite are passed over.
[[nodiscard]] VineOnset onsetOf(std::span<const StageReading> readings,
                                const StageQuestion& question,
                                int year,
                                Organs organs = Organs::MostAdvanced);

// From a stage to a later one of the same vine: at least from the first's latest day to the
// second's earliest, at most the other way round. No length is below 0; where nothing bounds it, or
// the later stage was reached before the earlier one, it is unseen.
[[nodiscard]] OnsetInterval lengthBetween(const OnsetInterval& first, const OnsetInterval& second);

} // namespace bullace::season
