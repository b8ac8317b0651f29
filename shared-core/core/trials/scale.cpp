// Scales for counts, percentages and scores.
#include "core/trials/scale.hpp"

#include "core/statistics/normality.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>
#include <string>

namespace bullace::trials {

namespace {

constexpr double kAnscombe = 0.375;
constexpr std::array<std::pair<Scale, std::string_view>, 5> kNames{{
    {Scale::AsItIs, "as-it-is"},
    {Scale::Logarithm, "logarithm"},
    {Scale::SquareRoot, "square-root"},
    {Scale::Logit, "logit"},
    {Scale::NormalScores, "normal-scores"},
}};

Result<void> checkValues(std::span<const double> values, Scale scale) {
    const bool isCount = scale == Scale::Logarithm || scale == Scale::SquareRoot;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double value = values[i];
        const bool isWrong = (isCount && value < 0) || std::isinf(value) ||
                             (scale == Scale::Logit && (value < 0 || value > 100));
        if (isWrong) {
            return Error{ErrorCode::InvalidInput,
                         "Record " + std::to_string(i + 1) +
                             (isCount ? " is below 0, and has no place on this scale."
                                      : " lies out of the range of this scale."),
                         {}};
        }
    }
    return {};
}

Remark meaningOf(Scale scale) {
    switch (scale) {
    case Scale::Logarithm:
        return {BULLACE_SENTENCE("Remark",
                                 "Analysed as logarithms of the value and 1. Means told back are "
                                 "geometric and lie below the plain ones; differences are ratios."),
                {}};
    case Scale::SquareRoot:
        return {BULLACE_SENTENCE("Remark",
                                 "Analysed as square roots. Means told back lie a little below the "
                                 "plain ones."),
                {}};
    case Scale::Logit:
        return {BULLACE_SENTENCE("Remark",
                                 "Analysed as logits of the percentages. Means told back lie "
                                 "nearer to 0 or 100 than the plain ones; differences are ratios "
                                 "of odds."),
                {}};
    case Scale::NormalScores:
        return {BULLACE_SENTENCE("Remark",
                                 "Analysed as normal scores of the ranks. What is told back is "
                                 "about a median, within what was recorded."),
                {}};
    case Scale::AsItIs:
        break;
    }
    return {"", {}};
}

struct MeanVariance {
    double mean = 0;
    double variance = 0;
};

std::vector<MeanVariance> momentsOf(std::span<const std::vector<double>> groups) {
    std::vector<MeanVariance> found;
    for (const auto& group : groups) {
        const double n = static_cast<double>(group.size());
        MeanVariance moments;
        for (const double value : group) {
            moments.mean += value / n;
        }
        for (const double value : group) {
            moments.variance += (value - moments.mean) * (value - moments.mean) / (n - 1);
        }
        if (group.size() >= 2 && std::isfinite(moments.variance)) {
            found.push_back(moments);
        }
    }
    return found;
}

std::optional<double> taylorSlope(const std::vector<MeanVariance>& groups) {
    std::vector<std::pair<double, double>> logs;
    for (const MeanVariance& group : groups) {
        if (group.mean > 0 && group.variance > 0) {
            logs.emplace_back(std::log(group.mean), std::log(group.variance));
        }
    }
    if (logs.size() < 3) {
        return {};
    }
    double x = 0;
    double y = 0;
    for (const auto& [mean, variance] : logs) {
        x += mean / static_cast<double>(logs.size());
        y += variance / static_cast<double>(logs.size());
    }
    double xx = 0;
    double xy = 0;
    for (const auto& [mean, variance] : logs) {
        xx += (mean - x) * (mean - x);
        xy += (mean - x) * (variance - y);
    }
    return xx > 1e-12 ? std::optional(xy / xx) : std::nullopt;
}

ScaleAdvice byTaylor(ScaleAdvice advice, bool isBelowZero) {
    if (isBelowZero || !advice.taylorSlope) {
        advice.reason = {
            isBelowZero
                ? BULLACE_SENTENCE("Remark", "Values below 0 are analysed as they are.")
                : BULLACE_SENTENCE("Remark",
                                   "There are too few groups to see how the variance goes with "
                                   "the mean: the values are taken as they are."),
            {}};
        return advice;
    }
    const Remark::Part slope = Remark::Number{*advice.taylorSlope, 2};
    if (*advice.taylorSlope <= 0.5) {
        advice.reason = {BULLACE_SENTENCE("Remark",
                                          "The groups vary about alike, whatever their mean (slope "
                                          "%1): the values can be taken as they are."),
                         {slope}};
    } else if (*advice.taylorSlope <= 1.5) {
        advice.scale = Scale::SquareRoot;
        advice.reason = {BULLACE_SENTENCE("Remark",
                                          "The variance grows with the mean (slope %1), as it does "
                                          "in counts: square roots even it out."),
                         {slope}};
    } else {
        advice.scale = Scale::Logarithm;
        advice.reason = {BULLACE_SENTENCE("Remark",
                                          "The standard deviation grows with the mean (slope %1): "
                                          "logarithms even it out."),
                         {slope}};
    }
    return advice;
}

} // namespace

std::string_view nameOf(Scale scale) {
    for (const auto& [each, name] : kNames) {
        if (each == scale) {
            return name;
        }
    }
    return {};
}

std::optional<Scale> scaleOf(std::string_view name) {
    for (const auto& [scale, each] : kNames) {
        if (each == name) {
            return scale;
        }
    }
    return {};
}

Result<ScaledResponse> ScaledResponse::of(std::span<const double> values, Scale scale) {
    if (const auto checked = checkValues(values, scale); !checked) {
        return checked.error();
    }
    ScaledResponse response;
    response.scale_ = scale;
    std::vector<double> known;
    for (const double value : values) {
        if (!std::isnan(value)) {
            known.push_back(value);
        }
    }
    response.count_ = static_cast<double>(known.size());
    response.areEndsMoved_ =
        scale == Scale::Logit &&
        std::ranges::any_of(known, [](double percent) { return percent <= 0 || percent >= 100; });
    const std::vector<double> scores =
        scale == Scale::NormalScores ? statistics::normalScores(known) : std::vector<double>();
    std::size_t next = 0;
    for (const double value : values) {
        double on = value;
        if (std::isnan(value)) {
            response.values_.push_back(value);
            continue;
        }
        if (scale == Scale::Logarithm) {
            on = std::log1p(value);
        } else if (scale == Scale::SquareRoot) {
            on = std::sqrt(value + kAnscombe);
        } else if (scale == Scale::Logit) {
            const double n = response.count_;
            const double p = response.areEndsMoved_ ? (value * (n - 1) + 50) / n : value;
            on = std::log(p / (100 - p));
        } else if (scale == Scale::NormalScores) {
            on = scores[next];
            response.scores_.emplace_back(on, value);
        }
        ++next;
        response.values_.push_back(on);
    }
    std::ranges::sort(response.scores_);
    if (scale != Scale::AsItIs) {
        response.remarks_.push_back(meaningOf(scale));
    }
    if (response.areEndsMoved_) {
        response.remarks_.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Percentages of 0 or 100 have no logit: all were drawn a little "
                              "towards 50 first."),
             {}});
    }
    return response;
}

double ScaledResponse::fromScores(double score) const {
    if (scores_.empty()) {
        return score;
    }
    const auto above = std::ranges::lower_bound(scores_, std::pair(score, -1e308));
    if (above == scores_.begin()) {
        return scores_.front().second;
    }
    if (above == scores_.end()) {
        return scores_.back().second;
    }
    const auto below = above - 1;
    const double share = (score - below->first) / (above->first - below->first);
    return below->second + share * (above->second - below->second);
}

double ScaledResponse::back(double onScale) const {
    switch (scale_) {
    case Scale::Logarithm:
        return std::max(0.0, std::expm1(onScale));
    case Scale::SquareRoot:
        return onScale > 0 ? std::max(0.0, onScale * onScale - kAnscombe) : 0.0;
    case Scale::Logit: {
        const double p = 100 / (1 + std::exp(-onScale));
        const bool isMoved = areEndsMoved_ && count_ > 1;
        return std::clamp(isMoved ? (p * count_ - 50) / (count_ - 1) : p, 0.0, 100.0);
    }
    case Scale::NormalScores:
        return fromScores(onScale);
    case Scale::AsItIs:
        break;
    }
    return onScale;
}

statistics::Estimate ScaledResponse::back(const statistics::Estimate& onScale) const {
    if (scale_ == Scale::AsItIs) {
        return onScale;
    }
    statistics::Estimate told{back(onScale.value)};
    if (onScale.interval) {
        told.interval =
            statistics::Interval{back(onScale.interval->low), back(onScale.interval->high)};
    }
    return told;
}

ScaleAdvice adviseScale(std::span<const std::vector<double>> groups, ResponseKind kind) {
    const std::vector<MeanVariance> moments = momentsOf(groups);
    ScaleAdvice advice;
    advice.taylorSlope = taylorSlope(moments);
    std::set<double> steps;
    for (const auto& group : groups) {
        steps.insert(group.begin(), group.end());
    }
    if (kind == ResponseKind::Percentage) {
        const bool isWithin = std::ranges::all_of(
            moments, [](const MeanVariance& each) { return each.mean >= 20 && each.mean <= 80; });
        advice.scale = isWithin ? Scale::AsItIs : Scale::Logit;
        advice.reason = {isWithin ? BULLACE_SENTENCE("Remark",
                                                     "All means lie between 20 and 80 %: the "
                                                     "percentages can be taken as they are.")
                                  : BULLACE_SENTENCE("Remark",
                                                     "Some means lie near 0 or 100 %, where "
                                                     "percentages cannot vary freely: logits can."),
                         {}};
        return advice;
    }
    if (kind == ResponseKind::Score) {
        const bool isFine = steps.size() >= 5;
        advice.scale = isFine ? Scale::AsItIs : Scale::NormalScores;
        advice.reason = {isFine ? BULLACE_SENTENCE("Remark",
                                                   "Steps of the score in use: %1. They can be "
                                                   "taken as numbers.")
                                : BULLACE_SENTENCE("Remark",
                                                   "Steps of the score in use: %1. So few are "
                                                   "better taken by their ranks."),
                         {static_cast<std::int64_t>(steps.size())}};
        return advice;
    }
    return byTaylor(advice, !steps.empty() && *steps.begin() < 0);
}

} // namespace bullace::trials
