#include "core/season/onset_comparison.hpp"

#include "core/season/onset_limits.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace bullace::season {

namespace {

using statistics::Estimate;
using statistics::Interval;

using ByYear = std::map<int, std::vector<OnsetInterval>>;

ByYear byYear(std::span<const YearOnset> onsets) {
    ByYear years;
    for (const YearOnset& one : onsets) {
        years[one.year].push_back(one.onset);
    }
    return years;
}

// A year of which some vine bounds the mean, or different ones do on either side.
bool boundsBothSides(const OnsetCounts& counts) {
    return counts.within + counts.exact > 0 || (counts.left > 0 && counts.right > 0);
}

// Onsets with a row of covariates each.
struct Rows {
    std::size_t columns = 0;
    std::vector<OnsetInterval> onsets;
    std::vector<double> covariates;

    void add(const OnsetInterval& onset, std::vector<double> row) {
        onsets.push_back(onset);
        columns = row.size();
        covariates.insert(covariates.end(), row.begin(), row.end());
    }
    [[nodiscard]] OnsetDesign design() const { return {onsets, covariates, columns}; }
};

std::vector<OnsetInterval> onsetsOf(std::span<const YearOnset> onsets) {
    std::vector<OnsetInterval> all;
    for (const YearOnset& one : onsets) {
        all.push_back(one.onset);
    }
    return all;
}

void remarkOnLeftOut(const std::vector<int>& years, Remarks& remarks) {
    for (const int year : years) {
        remarks.push_back({BULLACE_SENTENCE("Remark",
                                            "%1 is left out: its vines do not bound the date on "
                                            "both sides, or only one of the two was seen."),
                           {static_cast<std::int64_t>(year)}});
    }
}

// The mean over years first, then each year's distance from it; the last year's is what the others
// leave.
std::vector<double> rowOfMean(std::size_t year, std::size_t years) {
    std::vector<double> row(years, 0.0);
    row[0] = 1;
    for (std::size_t k = 1; k < years; ++k) {
        row[k] = year + 1 == years ? -1 : (k == year + 1 ? 1 : 0);
    }
    return row;
}

void describe(const OnsetFit& fit, OverYears& over) {
    double squares = 0;
    for (std::size_t k = 0; k < over.years.size(); ++k) {
        over.yearly.emplace_back(over.years[k], fit.combination(rowOfMean(k, over.years.size())));
        const double apart = over.yearly.back().second.value - fit.coefficients[0];
        squares += apart * apart;
    }
    over.spread = fit.scale;
    if (over.years.size() > 1) {
        over.betweenYears = std::sqrt(squares / static_cast<double>(over.years.size() - 1));
    }
}

} // namespace

Result<OverYears> overYears(std::span<const YearOnset> onsets) {
    OverYears over;
    over.counts = countsOf(onsetsOf(onsets));
    const ByYear years = byYear(onsets);
    for (const auto& [year, vines] : years) {
        (boundsBothSides(countsOf(vines)) ? over.years : over.leftOut).push_back(year);
    }
    remarkOnLeftOut(over.leftOut, over.remarks);
    Rows rows;
    for (std::size_t k = 0; k < over.years.size(); ++k) {
        for (const OnsetInterval& onset : years.at(over.years[k])) {
            rows.add(onset, rowOfMean(k, over.years.size()));
        }
    }
    if (rows.onsets.empty()) {
        over.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "There is no year whose visits bound the date."), {}});
        return over;
    }
    const auto fitting = fitOnset(OnsetLaw::Normal, rows.design());
    if (!fitting) {
        return fitting.error();
    }
    over.remarks.insert(over.remarks.end(), fitting->remarks.begin(), fitting->remarks.end());
    if (fitting->fit) {
        describe(*fitting->fit, over);
        over.mean = fitting->fit->coefficient(0);
        const auto limits = coefficientLimits(*fitting->fit, rows.design(), 0);
        if (!limits) {
            return limits.error();
        }
        over.mean->interval = *limits;
    }
    return over;
}

namespace {

struct Pair {
    const ByYear& accession;
    const ByYear& reference;
    const std::vector<int>& years;
};

// Intercept, accession, a column for each year but the first, and with `apart` one more for each of
// these years' own difference.
std::vector<double> rowOfPair(bool isAccession, std::size_t year, std::size_t years, bool apart) {
    std::vector<double> row(apart ? 2 * years : years + 1, 0.0);
    row[0] = 1;
    row[1] = isAccession ? 1 : 0;
    if (year > 0) {
        row[1 + year] = 1;
        if (apart && isAccession) {
            row[years + year] = 1;
        }
    }
    return row;
}

Rows rowsOf(const Pair& pair, bool apart) {
    Rows rows;
    for (std::size_t k = 0; k < pair.years.size(); ++k) {
        for (const bool isAccession : {false, true}) {
            const ByYear& side = isAccession ? pair.accession : pair.reference;
            for (const OnsetInterval& onset : side.at(pair.years[k])) {
                rows.add(onset, rowOfPair(isAccession, k, pair.years.size(), apart));
            }
        }
    }
    return rows;
}

// What the limits of both means leave possible, as the mean over years.
std::optional<Interval> boundsOf(const Pair& pair) {
    Interval sum{0, 0};
    for (const int year : pair.years) {
        const auto one = locationLimits(OnsetLaw::Normal, pair.accession.at(year));
        const auto other = locationLimits(OnsetLaw::Normal, pair.reference.at(year));
        if (!one || !other || !*one || !*other) {
            return std::nullopt;
        }
        sum.low += (*one)->low - (*other)->high;
        sum.high += (*one)->high - (*other)->low;
    }
    const auto count = static_cast<double>(pair.years.size());
    const bool isBounded = std::isfinite(sum.low) || std::isfinite(sum.high);
    return isBounded ? std::optional(Interval{sum.low / count, sum.high / count}) : std::nullopt;
}

void testYears(const Pair& pair, const OnsetFit& fit, OnsetDifference& made) {
    if (pair.years.size() < 2) {
        return;
    }
    const Rows rows = rowsOf(pair, true);
    const auto apart = fitOnset(OnsetLaw::Normal, rows.design());
    if (!apart || !apart->fit) {
        return;
    }
    const double ratio = 2 * std::max(0.0, apart->fit->logLikelihood - fit.logLikelihood);
    made.sameEveryYearP =
        statistics::chiSquaredAbove(ratio, static_cast<double>(pair.years.size() - 1));
    if (*made.sameEveryYearP < 0.05) {
        made.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The difference was not the same in all years: as a mean of them it "
                              "is less certain than its interval."),
             {}});
    }
}

Result<OnsetDifference> differenceOf(const Pair& pair, OnsetDifference made) {
    const Rows rows = rowsOf(pair, false);
    const auto fitting = fitOnset(OnsetLaw::Normal, rows.design());
    if (!fitting) {
        return fitting.error();
    }
    made.remarks.insert(made.remarks.end(), fitting->remarks.begin(), fitting->remarks.end());
    if (!fitting->fit) {
        made.bounds = boundsOf(pair);
        return made;
    }
    made.difference = fitting->fit->coefficient(1);
    const auto limits = coefficientLimits(*fitting->fit, rows.design(), 1);
    if (!limits) {
        return limits.error();
    }
    made.difference->interval = *limits;
    testYears(pair, *fitting->fit, made);
    return made;
}

std::vector<OnsetInterval> joined(const std::vector<OnsetInterval>& one,
                                  const std::vector<OnsetInterval>& other) {
    std::vector<OnsetInterval> all = one;
    all.insert(all.end(), other.begin(), other.end());
    return all;
}

// Both are told of, and together they bound the year.
bool isShared(const ByYear& accession, const ByYear& reference, int year) {
    const auto one = accession.find(year);
    const auto other = reference.find(year);
    return one != accession.end() && other != reference.end() &&
           countsOf(one->second).telling() > 0 && countsOf(other->second).telling() > 0 &&
           boundsBothSides(countsOf(joined(one->second, other->second)));
}

} // namespace

Result<OnsetDifference> differenceTo(std::span<const YearOnset> accession,
                                     std::span<const YearOnset> reference) {
    OnsetDifference made;
    made.counts = countsOf(onsetsOf(accession));
    made.referenceCounts = countsOf(onsetsOf(reference));
    const ByYear ofAccession = byYear(accession);
    const ByYear ofReference = byYear(reference);
    std::set<int> all;
    for (const ByYear* side : {&ofAccession, &ofReference}) {
        for (const auto& [year, vines] : *side) {
            all.insert(year);
        }
    }
    for (const int year : all) {
        (isShared(ofAccession, ofReference, year) ? made.years : made.leftOut).push_back(year);
    }
    remarkOnLeftOut(made.leftOut, made.remarks);
    if (made.years.empty()) {
        made.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "There is no year in which both were seen: they cannot be compared."),
             {}});
        return made;
    }
    const std::vector<int> years = made.years;
    return differenceOf({ofAccession, ofReference, years}, std::move(made));
}

namespace {

// The sum at the end of a day of season; nothing behind the curve's end.
std::optional<double> sumAt(const HeatCurve& curve, double day) {
    if (!std::isfinite(day)) {
        return day;
    }
    const auto behind = std::ranges::upper_bound(
        curve.days, day, {}, [&](const auto& one) { return dayOfSeason(one.day, curve.year); });
    if (behind == curve.days.end() &&
        (curve.days.empty() || dayOfSeason(curve.days.back().day, curve.year) < std::floor(day))) {
        return std::nullopt;
    }
    return behind == curve.days.begin() ? 0 : std::prev(behind)->sum;
}

} // namespace

OnHeat onHeat(std::span<const YearOnset> onsets, std::span<const HeatCurve> curves) {
    OnHeat made;
    for (const YearOnset& one : onsets) {
        const auto curve = std::ranges::find(curves, one.year, &HeatCurve::year);
        const auto after = curve == curves.end() ? std::nullopt : sumAt(*curve, one.onset.after);
        const auto by = curve == curves.end() ? std::nullopt : sumAt(*curve, one.onset.by);
        if (after && by) {
            made.onsets.push_back({one.year, {*after, *by}});
        } else {
            ++made.leftOut;
        }
    }
    if (made.leftOut > 0) {
        made.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Some vines are left out of the degree-days: the weather of their "
                              "visits is not known without a gap (vines: %1)."),
             {static_cast<std::int64_t>(made.leftOut)}});
    }
    return made;
}

} // namespace bullace::season
