#include "core/hardiness/shoot_growth.hpp"

#include "core/statistics/distributions.hpp"
#include "core/statistics/newton.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::hardiness {

using statistics::Estimate;
using statistics::Maximum;
using statistics::Slope;

namespace {

constexpr double kMostCm = 1e5;
constexpr double kEndInLogits = 2.94443897916644; // ln 19: 95 % of the asymptote

// Lengths as parts of the greatest, days as parts of the time that was followed.
struct Scaled {
    double t = 0;
    double y = 0;
};

// Minus half of the squares, of (asymptote, midpoint, rate), which is the normal likelihood but for
// its variance; with exact second derivatives.
void squaresAt(std::span<const Scaled> points, std::span<const double> at, Slope& out) {
    for (const Scaled& point : points) {
        const double off = point.t - at[1];
        const double s = 1 / (1 + std::exp(-at[2] * off));
        const double turn = s * (1 - s);
        const double bend = turn * (1 - 2 * s);
        const double miss = point.y - at[0] * s;
        const double first[] = {s, -at[0] * turn * at[2], at[0] * turn * off};
        const double second[] = {0,
                                 -turn * at[2],
                                 turn * off,
                                 at[0] * bend * at[2] * at[2],
                                 -at[0] * (bend * off * at[2] + turn),
                                 at[0] * bend * off * off};
        out.value -= miss * miss / 2;
        std::size_t pair = 0;
        for (std::size_t i = 0; i < 3; ++i) {
            out.gradient[i] += miss * first[i];
            for (std::size_t j = i; j < 3; ++j) {
                out.hessian[i * 3 + j] += miss * second[pair++] - first[i] * first[j];
            }
        }
    }
    out.hessian[3] = out.hessian[1];
    out.hessian[6] = out.hessian[2];
    out.hessian[7] = out.hessian[5];
}

std::optional<Maximum> bestCurve(std::span<const Scaled> points) {
    const statistics::LogLikelihood likelihood = [points](std::span<const double> at, Slope& out) {
        squaresAt(points, at, out);
    };
    std::optional<Maximum> best;
    for (const double asymptote : {1.0, 1.3}) {
        for (const double middle : {0.2, 0.5, 0.8}) {
            for (const double rate : {4.0, 10.0, 25.0}) {
                auto found = statistics::maximise(likelihood, {asymptote, middle, rate});
                const bool isCurve = found && found->at[0] > 0 && found->at[2] > 0;
                if (isCurve && (!best || found->value > best->value)) {
                    best = std::move(found);
                }
            }
        }
    }
    return best;
}

std::size_t distinctDays(std::span<const ShootLength> sorted) {
    std::size_t days = 0;
    for (std::size_t i = 0; i < sorted.size(); ++i) {
        if (i == 0 || sorted[i].day != sorted[i - 1].day) {
            ++days;
        }
    }
    return days;
}

// A number of the parameters with its gradient in them, in scaled units.
struct Combination {
    double value = 0;
    double by[3] = {};
};

Estimate estimateOf(const Combination& of, const Maximum& top, double variance, double t) {
    double sum = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t j = 0; j < 3; ++j) {
            sum += of.by[i] * of.by[j] * top.covarianceOf(i, j);
        }
    }
    return statistics::estimateAround(of.value, std::sqrt(std::max(0.0, sum * variance)), t);
}

// From the scaled fit to cm and days.
void describe(ShootGrowth& growth, const Maximum& top, double days) {
    const auto freedom = static_cast<double>(growth.lengths) - 3;
    const double variance = std::max(0.0, -2 * top.value) / freedom;
    const double t = statistics::studentTQuantile(0.975, freedom);
    const double cm = growth.greatestCm;
    const double asymptote = top.at[0];
    const double rate = top.at[2];
    const auto estimate = [&](const Combination& of) { return estimateOf(of, top, variance, t); };
    growth.residualSdCm = std::sqrt(variance) * cm;
    growth.asymptoteCm = estimate({asymptote * cm, {cm, 0, 0}});
    growth.midpointDay = estimate({top.at[1] * days, {0, days, 0}});
    growth.ratePerDay = estimate({rate / days, {0, 0, 1 / days}});
    const double perDay = cm / days / 4;
    growth.greatestGrowthCmPerDay =
        estimate({asymptote * rate * perDay, {rate * perDay, 0, asymptote * perDay}});
    growth.endDay = estimate({(top.at[1] + kEndInLogits / rate) * days,
                              {0, days, -kEndInLogits / (rate * rate) * days}});
}

bool isSound(const std::optional<Estimate>& estimate) {
    return estimate && std::isfinite(estimate->value) && std::isfinite(estimate->interval->low) &&
           std::isfinite(estimate->interval->high);
}

// No curve that is of any use: what the days do not bound is not told as though they did.
void sayNoCurve(ShootGrowth& growth) {
    growth.asymptoteCm.reset();
    growth.midpointDay.reset();
    growth.ratePerDay.reset();
    growth.greatestGrowthCmPerDay.reset();
    growth.endDay.reset();
    growth.endDate.reset();
    growth.residualSdCm.reset();
    growth.remarks.push_back(
        {BULLACE_SENTENCE("Remark",
                          "These lengths lead to no one curve with a start and a plateau: its "
                          "asymptote and the end of growth cannot be told."),
         {}});
}

void addEnd(ShootGrowth& growth) {
    constexpr double kMostDays = 3660; // ten years: no shoot's end lies there
    if (std::abs(growth.endDay->value) > kMostDays) {
        sayNoCurve(growth);
        return;
    }
    growth.endDate = addDays(growth.firstDay, static_cast<int>(std::lround(growth.endDay->value)));
    growth.isEndBeyondMeasured = *growth.endDate > growth.lastDay;
    if (growth.isEndBeyondMeasured) {
        growth.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The plateau was not seen: on %1, the last day measured, the curve "
                              "has not reached 95 % of its asymptote. Asymptote and end are "
                              "extrapolated."),
             {growth.lastDay}});
    }
}

void fitSorted(ShootGrowth& growth, std::span<const ShootLength> sorted) {
    const auto days = static_cast<double>(daysBetween(growth.firstDay, growth.lastDay));
    std::vector<Scaled> points;
    for (const ShootLength& length : sorted) {
        points.push_back(
            {daysBetween(growth.firstDay, length.day) / days, length.cm / growth.greatestCm});
    }
    const auto top = bestCurve(points);
    if (top) {
        describe(growth, *top, days);
    }
    if (isSound(growth.asymptoteCm) && isSound(growth.midpointDay) && isSound(growth.endDay) &&
        isSound(growth.ratePerDay) && isSound(growth.greatestGrowthCmPerDay)) {
        addEnd(growth);
    } else {
        sayNoCurve(growth);
    }
}

} // namespace

Result<ShootGrowth> fitShootGrowth(std::span<const ShootLength> lengths) {
    ShootGrowth growth;
    growth.lengths = lengths.size();
    std::vector<ShootLength> sorted(lengths.begin(), lengths.end());
    std::ranges::sort(sorted, {}, &ShootLength::day);
    for (const ShootLength& length : sorted) {
        if (!(length.cm >= 0 && length.cm <= kMostCm)) {
            return Error{ErrorCode::InvalidInput,
                         "The shoot's length of " + writeDate(length.day) + " cannot be one.",
                         {}};
        }
        growth.greatestCm = std::max(growth.greatestCm, length.cm);
    }
    if (!sorted.empty()) {
        growth.firstDay = sorted.front().day;
        growth.lastDay = sorted.back().day;
    }
    if (distinctDays(sorted) < 4 || !(growth.greatestCm > 0)) {
        growth.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "A growth curve needs lengths above 0 of at least four days; there "
                              "are %1 days."),
             {static_cast<std::int64_t>(distinctDays(sorted))}});
        return growth;
    }
    fitSorted(growth, sorted);
    return growth;
}

std::optional<Estimate> daysBeforeFrost(const ShootGrowth& growth, CivilDate firstFrost) {
    if (!growth.endDay) {
        return std::nullopt;
    }
    const double frost = daysBetween(growth.firstDay, firstFrost);
    const statistics::Interval end = *growth.endDay->interval;
    return Estimate{frost - growth.endDay->value,
                    growth.endDay->standardError,
                    statistics::Interval{frost - end.high, frost - end.low}};
}

} // namespace bullace::hardiness
