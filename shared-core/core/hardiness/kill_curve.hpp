// What a freezing test of buds says: the temperatures that kill 10, 50 and 90 %, with limits, or in
// words why they cannot be told. Lower temperatures are colder throughout: of an interval, `low` is
// the colder end.
#pragma once

#include "core/base/remark.hpp"
#include "core/hardiness/common_slope.hpp"
#include "core/hardiness/dose_fit.hpp"
#include "core/hardiness/natural_mortality.hpp"
#include "core/hardiness/spearman_karber.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::hardiness {

struct FreezeRow {
    double temperatureC = 0;
    std::int64_t counted = 0;
    std::int64_t dead = 0;
};

// Which of a point's limits its estimate carries.
enum class LimitsBy {
    Profile,       // of the likelihood
    ScaledFieller, // the counts vary more than chance does: Fieller, widened, with t
    ScaledDelta,   // likewise, where Fieller has no finite limits
};

struct KillPoint {
    double part = 0.5;                 // of the buds
    statistics::Estimate temperatureC; // standard error by the delta method, limits by `limitsBy`
    LimitsBy limitsBy = LimitsBy::Profile;
    bool isBeyondTested = false; // outside of the temperatures that were tested
    statistics::Interval delta{};
    std::optional<statistics::Interval> fieller{};
    std::optional<statistics::Interval> profile{};
    struct Scaled {
        double standardError = 0;
        statistics::Interval delta{};
        std::optional<statistics::Interval> fieller{};
    };
    std::optional<Scaled> scaled{};
};

// The mean killing temperature without a curve.
struct MeanKill {
    statistics::Estimate temperatureC; // no standard error where no temperature killed only a part
    double trim = 0;
};

// Between the coldest temperature that less than half died at and the warmest that at least half
// died at, after the shares were made to rise with frost.
struct KillBracket {
    double warmerC = 0;
    double colderC = 0;
};

struct KillCurve {
    std::size_t rowsUsed = 0;
    std::size_t rowsEmpty = 0; // with nothing counted
    std::int64_t counted = 0;
    std::int64_t dead = 0;
    double warmestC = 0; // tested
    double coldestC = 0;
    Overlap overlap = Overlap::Nothing;
    std::optional<DoseFit> fit{}; // x is degrees of frost; only where its slope is above 0
    std::optional<NaturalMortalityFit> natural{}; // where a control was given
    std::vector<KillPoint> points;                // of the parts asked for; empty without a fit
    std::optional<MeanKill> meanKill{};           // with the least trim that lets it be told
    std::optional<KillBracket> bracket{};         // of 50 %
    Remarks remarks;
};

struct KillCurveOptions {
    Link link = Link::Logit;
    std::optional<Control> control{}; // buds of the same lot that were not frozen
    std::vector<double> parts{0.1, 0.5, 0.9};
};

// Rows in any order; those of one temperature are kept apart (lots that differ show in the
// goodness of fit). Parts above 0 and below 1.
// Errors: InvalidInput naming the first wrong row from 1, the control, or a part.
// Sources: dose_fit.hpp, natural_mortality.hpp, spearman_karber.hpp.
[[nodiscard]] Result<KillCurve> killCurve(std::span<const FreezeRow> rows,
                                          const KillCurveOptions& options);

struct FreezeGroup {
    std::string accession;
    std::vector<FreezeRow> rows;
};
// LT50s of accessions by one slope.
struct KillComparison {
    struct Accession {
        std::string accession;
        statistics::Estimate lt50C;  // Fieller's limits, or unbounded on both sides
        bool isBeyondTested = false; // outside of what this accession was tested at
    };
    struct Difference {
        std::string one;
        std::string other;
        statistics::Estimate lt50C; // of the one minus of the other; below 0: the one is hardier
        double z = 0;
        double p = 1;
        double pHolm = 1; // with regard to the number of differences
    };
    std::optional<CommonSlope> fit{};
    std::vector<Accession> accessions;
    std::vector<Difference> differences;
    Remarks remarks;
};
// Errors: InvalidInput naming the accession and its first wrong row.
[[nodiscard]] Result<KillComparison> compareKill(std::span<const FreezeGroup> groups, Link link);

// "logit", "probit", "complementary log-log".
[[nodiscard]] std::string_view nameOf(Link link);

} // namespace bullace::hardiness
