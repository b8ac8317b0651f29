#include "core/season/onset_limits.hpp"

#include "core/season/onset_likelihood.hpp"
#include "core/statistics/distributions.hpp"
#include "core/statistics/newton.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::season {

namespace {

using statistics::Interval;
using statistics::kUnbounded;

double dropOf(std::size_t onsets, std::size_t coefficients) {
    const auto n = static_cast<double>(onsets);
    const double freedom = n - static_cast<double>(coefficients);
    const double t = statistics::studentTQuantile(0.975, freedom);
    return n / 2 * std::log1p(t * t / freedom);
}

// The likelihood of one location, its scale being the best for it.
class LocationProfile {
public:
    explicit LocationProfile(const OnsetProblem& problem) : problem_(problem) {
        double least = kUnbounded;
        double greatest = -kUnbounded;
        double narrowest = kUnbounded;
        for (const WeighedOnset& one : problem.onsets) {
            latestStart_ = std::max(latestStart_, one.low);
            earliestEnd_ = std::min(earliestEnd_, one.high);
            for (const double bound : {one.low, one.high}) {
                least = std::isfinite(bound) ? std::min(least, bound) : least;
                greatest = std::isfinite(bound) ? std::max(greatest, bound) : greatest;
            }
            narrowest = one.high > one.low ? std::min(narrowest, one.high - one.low) : narrowest;
        }
        least_ = least;
        range_ = greatest > least ? greatest - least : std::max(1.0, std::abs(least)) * 1e-3;
        sharpest_ = 1e4 / std::min(range_, narrowest);
        bluntest_ = 1e-8 / range_;
        sharpness_ = 4 / range_;
        findTop();
    }

    // Where a spread of 0 would put all of them on one known day.
    [[nodiscard]] bool isInfinite() const {
        return problem_.counts.exact > 0 && latestStart_ <= earliestEnd_;
    }

    [[nodiscard]] double limit(double side, double drop) {
        double inside = place_;
        double outside = place_;
        for (double far = range_ / 8; far < 1e4 * range_; far *= 1.6) {
            outside = place_ + side * far;
            if (heightAt(outside) < top_ - drop) {
                return crossing(inside, outside, top_ - drop);
            }
            inside = outside;
        }
        return side * kUnbounded;
    }

private:
    struct Curve {
        double value = 0;
        double slope = 0; // by sharpness, which is 1/scale
        double bend = 0;
    };

    [[nodiscard]] Curve curveAt(double place, double sharpness) const {
        Curve curve;
        double slope = 0;
        double bend = 0;
        for (const WeighedOnset& one : problem_.onsets) {
            const LocalSlope local = localSlope(problem_.law, one, place, 1 / sharpness);
            curve.value += one.weight * local.value;
            slope += one.weight * local.byScale;
            bend += one.weight * local.scaleScale;
        }
        curve.slope = -slope / sharpness;
        curve.bend = (bend + slope) / (sharpness * sharpness);
        return curve;
    }

    // Concave in sharpness: Newton's steps between two bounds.
    [[nodiscard]] double heightAt(double place) {
        double blunt = bluntest_;
        double sharp = sharpest_;
        double at = std::clamp(sharpness_, blunt, sharp);
        Curve curve = curveAt(place, at);
        for (int step = 0; step < 80; ++step) {
            (curve.slope > 0 ? blunt : sharp) = at;
            double next = curve.bend < 0 ? at - curve.slope / curve.bend : sharp;
            if (!(next > blunt) || !(next < sharp)) {
                next = std::sqrt(blunt * sharp);
            }
            const double gain = std::abs(curve.slope * (next - at));
            if (gain < 1e-9 || sharp < blunt * (1 + 1e-12)) {
                break;
            }
            at = next;
            curve = curveAt(place, at);
        }
        sharpness_ = at;
        return curve.value;
    }

    void findTop() {
        if (latestStart_ < earliestEnd_) { // a day that all can share, and a spread of 0
            place_ =
                std::isinf(latestStart_) || std::isinf(earliestEnd_)
                    ? (std::isinf(latestStart_) ? earliestEnd_ - range_ : latestStart_ + range_)
                    : (latestStart_ + earliestEnd_) / 2;
            top_ = heightAt(place_);
        } else if (latestStart_ == earliestEnd_ && problem_.counts.exact == 0) {
            topAtPoint();
        } else {
            topBetween(least_ - 2 * range_, least_ + 3 * range_);
        }
    }

    // Some end where others begin: with a spread towards 0 around that point, each side gets its
    // share of them.
    void topAtPoint() {
        double before = 0;
        double behind = 0;
        for (const WeighedOnset& one : problem_.onsets) {
            before += one.high == earliestEnd_ ? one.weight : 0;
            behind += one.low == latestStart_ ? one.weight : 0;
        }
        const double all = before + behind;
        top_ = before * std::log(before / all) + behind * std::log(behind / all);
        const double aside = before > behind ? -1 : before < behind ? 1 : 0;
        place_ = earliestEnd_ + aside * range_ * 1e-4;
    }

    // Golden section: the profile has one hill.
    void topBetween(double low, double high) {
        constexpr double kGolden = 0.6180339887498949;
        double a = high - kGolden * (high - low);
        double b = low + kGolden * (high - low);
        double atA = heightAt(a);
        double atB = heightAt(b);
        for (int step = 0; step < 60 && high - low > 1e-5 * range_; ++step) {
            if (atA >= atB) {
                high = b;
                b = a;
                atB = atA;
                a = high - kGolden * (high - low);
                atA = heightAt(a);
            } else {
                low = a;
                a = b;
                atA = atB;
                b = low + kGolden * (high - low);
                atB = heightAt(b);
            }
        }
        place_ = (low + high) / 2;
        top_ = heightAt(place_);
    }

    // Where the profile falls to a height, by secants of the root of its fall and halving.
    [[nodiscard]] double crossing(double inside, double outside, double height) {
        const auto depth = [&](double place) {
            return std::sqrt(std::max(0.0, top_ - heightAt(place)));
        };
        const double wanted = std::sqrt(top_ - height);
        double atInside = depth(inside);
        double atOutside = depth(outside);
        for (int step = 0; step < 60 && std::abs(outside - inside) > 1e-6 * range_; ++step) {
            double part = atOutside > atInside ? (wanted - atInside) / (atOutside - atInside) : 0.5;
            part = step % 3 == 2 ? 0.5 : std::clamp(part, 0.02, 0.98);
            const double between = inside + part * (outside - inside);
            const double at = depth(between);
            (at < wanted ? inside : outside) = between;
            (at < wanted ? atInside : atOutside) = at;
        }
        return (inside + outside) / 2;
    }

    const OnsetProblem& problem_;
    double latestStart_ = -kUnbounded;
    double earliestEnd_ = kUnbounded;
    double least_ = 0;
    double range_ = 1;
    double sharpest_ = 1;
    double bluntest_ = 1;
    double sharpness_ = 1;
    double place_ = 0;
    double top_ = 0;
};

} // namespace

Result<std::optional<Interval>> locationLimits(OnsetLaw law,
                                               std::span<const OnsetInterval> onsets) {
    const auto problem = problemOf(law, {onsets});
    if (!problem) {
        return problem.error();
    }
    if (problem->counts.telling() < 2) {
        return std::optional<Interval>();
    }
    LocationProfile profile(*problem);
    if (profile.isInfinite()) {
        return std::optional<Interval>();
    }
    const double drop = dropOf(problem->counts.telling(), 1);
    const Interval limits{profile.limit(-1, drop), profile.limit(1, drop)};
    return std::isinf(limits.low) && std::isinf(limits.high) ? std::optional<Interval>()
                                                             : std::optional(limits);
}

Result<Interval>
coefficientLimits(const OnsetFit& fit, const OnsetDesign& design, std::size_t coefficient) {
    const auto problem = problemOf(fit.law, design);
    if (!problem) {
        return problem.error();
    }
    statistics::Maximum maximum{fit.coefficients, fit.logLikelihood, fit.covariance, 0};
    if (fit.logScaleError) {
        maximum.at.push_back(std::log(fit.scale));
    }
    const Interval limits =
        statistics::profileLimits([&](std::span<const double> at,
                                      statistics::Slope& out) { likelihoodAt(*problem, at, out); },
                                  maximum,
                                  coefficient,
                                  dropOf(fit.counts.telling(), fit.coefficients.size()));
    const bool isFollowed = std::isfinite(limits.low) && std::isfinite(limits.high);
    return isFollowed ? limits : fit.coefficient(coefficient).interval.value_or(limits);
}

} // namespace bullace::season
