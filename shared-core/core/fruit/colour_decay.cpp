#include "core/fruit/colour_decay.hpp"

#include "core/statistics/adjust.hpp"
#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <utility>

namespace bullace::fruit {

using statistics::Estimate;
using statistics::Interval;

namespace {

using Key = std::pair<std::string, ReadingConditions>; // accession first
struct Point {
    double day = 0;
    double log = 0;
};

std::string troubleOf(const AbsorbanceReading& reading) {
    const ReadingConditions& at = reading.conditions;
    const auto isWild = [](double value) { return !(std::abs(value) <= 1e9); };
    if (isWild(reading.absorbance) || isWild(at.nm) || isWild(at.ph.value_or(0)) ||
        isWild(at.storageC.value_or(0))) {
        return "has a value that is no measurement.";
    }
    if (!(reading.day >= 0) || isWild(reading.day)) {
        return "has a day of storage below 0, or none.";
    }
    if (!(at.dilution > 0) || !(at.pathMm > 0) || isWild(at.dilution) || isWild(at.pathMm)) {
        return "has a dilution or path that is not above 0.";
    }
    return {};
}

struct Line {
    double meanDay = 0;
    double meanLog = 0;
    double squares = 0; // of days about their mean
    double slope = 0;
    double residual = 0; // sum of squares
};

Line lineThrough(const std::vector<Point>& points) {
    Line line;
    const auto n = static_cast<double>(points.size());
    for (const Point& point : points) {
        line.meanDay += point.day / n;
        line.meanLog += point.log / n;
    }
    double product = 0;
    for (const Point& point : points) {
        const double off = point.day - line.meanDay;
        line.squares += off * off;
        product += off * (point.log - line.meanLog);
    }
    line.slope = line.squares > 0 ? product / line.squares : 0;
    for (const Point& point : points) {
        const double off = point.log - line.meanLog - line.slope * (point.day - line.meanDay);
        line.residual += off * off;
    }
    return line;
}

void addHalfLife(ColourDecay& decay) {
    if (!decay.perDay->interval) {
        decay.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Two readings alone: how sure the decay is cannot be told, and no "
                              "half-life is given."),
             {}});
        return;
    }
    const Interval limits = *decay.perDay->interval;
    if (!(limits.low > 0)) {
        decay.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "No decay could be shown in these %1 readings: the half-life is not "
                              "bounded."),
             {static_cast<std::int64_t>(decay.readings)}});
        return;
    }
    const double halfLife = std::numbers::ln2 / decay.perDay->value;
    decay.halfLifeDays =
        Estimate{halfLife,
                 halfLife * *decay.perDay->standardError / decay.perDay->value,
                 Interval{std::numbers::ln2 / limits.high, std::numbers::ln2 / limits.low}};
    if (halfLife > decay.lastDay - decay.firstDay) {
        decay.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The half-life is longer than the %1 days that were followed: it is "
                              "extrapolated."),
             {Remark::Number{decay.lastDay - decay.firstDay, 0}}});
    }
}

void fit(ColourDecay& decay, const std::vector<Point>& points) {
    decay.readings = points.size();
    if (!points.empty()) {
        const auto [first, last] = std::ranges::minmax(points, {}, &Point::day);
        decay.firstDay = first.day;
        decay.lastDay = last.day;
    }
    if (!(decay.lastDay > decay.firstDay)) {
        decay.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Readings of two different days are needed to tell how fast the "
                              "colour goes."),
             {}});
        return;
    }
    const Line line = lineThrough(points);
    const auto n = static_cast<double>(points.size());
    decay.perDay = Estimate{-line.slope + 0.0, {}, {}};
    const double logStart = line.meanLog - line.slope * line.meanDay;
    decay.start = Estimate{std::exp(logStart), {}, {}};
    if (points.size() > 2) {
        const double variance = line.residual / (n - 2);
        const double t = statistics::studentTQuantile(0.975, n - 2);
        decay.residualSd = std::sqrt(variance);
        decay.perDay =
            statistics::estimateAround(decay.perDay->value, std::sqrt(variance / line.squares), t);
        const double error =
            std::sqrt(variance * (1 / n + line.meanDay * line.meanDay / line.squares));
        decay.start =
            Estimate{std::exp(logStart),
                     std::exp(logStart) * error,
                     Interval{std::exp(logStart - t * error), std::exp(logStart + t * error)}};
    }
    if (!std::isfinite(decay.start->value) ||
        (decay.start->interval && !std::isfinite(decay.start->interval->high))) {
        decay.start.reset();
    }
    addHalfLife(decay);
}

std::optional<DecayDifference> differenceOf(const ColourDecay& one, const ColourDecay& other) {
    if (one.conditions != other.conditions || !one.residualSd || !other.residualSd) {
        return std::nullopt;
    }
    const double a = *one.perDay->standardError * *one.perDay->standardError;
    const double b = *other.perDay->standardError * *other.perDay->standardError;
    const double error = std::sqrt(a + b);
    if (!(error > 0)) {
        return std::nullopt; // readings that lie on their lines exactly leave nothing to test with
    }
    const double freedom = (a + b) * (a + b) /
                           (a * a / (static_cast<double>(one.readings) - 2) +
                            b * b / (static_cast<double>(other.readings) - 2));
    const double value = one.perDay->value - other.perDay->value;
    DecayDifference difference{
        one.accession,
        other.accession,
        one.conditions,
        statistics::estimateAround(value, error, statistics::studentTQuantile(0.975, freedom)),
        statistics::studentTBothTails(value / error, freedom),
        1};
    return difference;
}

void addDifferences(ColourComparison& comparison) {
    std::map<ReadingConditions, std::vector<DecayDifference>> byConditions;
    for (std::size_t one = 0; one < comparison.decays.size(); ++one) {
        for (std::size_t other = one + 1; other < comparison.decays.size(); ++other) {
            auto difference = differenceOf(comparison.decays[one], comparison.decays[other]);
            if (difference) {
                byConditions[difference->conditions].push_back(std::move(*difference));
            }
        }
    }
    for (auto& [conditions, differences] : byConditions) {
        std::vector<double> ps;
        for (const DecayDifference& difference : differences) {
            ps.push_back(difference.p);
        }
        const std::vector<double> adjusted = statistics::holm(ps);
        for (std::size_t i = 0; i < differences.size(); ++i) {
            differences[i].pHolm = adjusted[i];
            comparison.differences.push_back(std::move(differences[i]));
        }
    }
}

// Conditions of one wavelength that differ in anything else.
bool doConditionsDiffer(const std::vector<ColourDecay>& decays) {
    for (const ColourDecay& one : decays) {
        for (const ColourDecay& other : decays) {
            if (one.conditions.nm == other.conditions.nm && one.conditions != other.conditions) {
                return true;
            }
        }
    }
    return false;
}

ColourComparison fitted(const std::map<Key, std::vector<Point>>& groups,
                        const std::map<Key, std::size_t>& leftOut) {
    ColourComparison comparison;
    for (const auto& [key, points] : groups) {
        ColourDecay decay;
        decay.accession = key.first;
        decay.conditions = key.second;
        const auto without = leftOut.find(key);
        decay.leftOut = without == leftOut.end() ? 0 : without->second;
        if (decay.leftOut > 0) {
            decay.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "Readings that are not above 0 have no logarithm, left out: %1."),
                 {static_cast<std::int64_t>(decay.leftOut)}});
        }
        fit(decay, points);
        comparison.decays.push_back(std::move(decay));
    }
    return comparison;
}

} // namespace

Result<ColourComparison> colourDecay(std::span<const AbsorbanceReading> readings) {
    std::map<Key, std::vector<Point>> groups;
    std::map<Key, std::size_t> leftOut;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const AbsorbanceReading& reading = readings[i];
        const std::string trouble = troubleOf(reading);
        if (!trouble.empty()) {
            return Error{
                ErrorCode::InvalidInput, "Reading " + std::to_string(i + 1) + " " + trouble, {}};
        }
        std::vector<Point>& points = groups[{reading.accession, reading.conditions}];
        if (reading.absorbance > 0) {
            points.push_back({reading.day, std::log(reading.absorbance)});
        } else {
            ++leftOut[{reading.accession, reading.conditions}];
        }
    }
    ColourComparison comparison = fitted(groups, leftOut);
    addDifferences(comparison);
    comparison.remarks.push_back(
        {BULLACE_SENTENCE("Remark",
                          "Decay of the first order by least squares of logarithms, which takes "
                          "errors to be in proportion to the absorbance."),
         {}});
    if (doConditionsDiffer(comparison.decays)) {
        comparison.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Readings differ in dilution, path, pH or storage temperature: they "
                              "are fitted apart and not compared with one another."),
             {}});
    }
    return comparison;
}

} // namespace bullace::fruit
