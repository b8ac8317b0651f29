#include "core/hardiness/common_slope.hpp"

#include "core/statistics/adjust.hpp"
#include "core/statistics/distributions.hpp"
#include "core/statistics/newton.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::hardiness {

using statistics::kNormal95;
using statistics::Slope;

namespace {

// All rows of the groups that are in, with the group's number and the dose in z.
struct Pile {
    std::vector<DoseRow> rows;
    std::vector<std::size_t> groupOf;
    std::size_t groups = 0;
    double centre = 0;
    double scale = 1;

    [[nodiscard]] double etaAt(std::size_t row, std::span<const double> at) const {
        return at[groupOf[row]] + at[groups] * rows[row].x;
    }
};

Pile pileOf(std::span<const DoseGroup> groups) {
    Pile pile;
    pile.groups = groups.size();
    double sum = 0;
    double counted = 0;
    for (std::size_t group = 0; group < groups.size(); ++group) {
        for (const DoseRow& row : groups[group].rows) {
            if (row.counted > 0) {
                pile.rows.push_back(row);
                pile.groupOf.push_back(group);
                sum += row.x * static_cast<double>(row.counted);
                counted += static_cast<double>(row.counted);
            }
        }
    }
    const auto [least, greatest] = std::ranges::minmax(pile.rows, {}, &DoseRow::x);
    pile.centre = sum / counted;
    pile.scale = greatest.x > least.x ? greatest.x - least.x : 1;
    for (DoseRow& row : pile.rows) {
        row.x = (row.x - pile.centre) / pile.scale;
    }
    return pile;
}

// Of the groups' intercepts and, last, the slope.
void pileLikelihood(const Pile& pile, Link link, std::span<const double> at, Slope& out) {
    const std::size_t slope = pile.groups;
    const std::size_t size = slope + 1;
    for (std::size_t i = 0; i < pile.rows.size(); ++i) {
        const DoseRow& row = pile.rows[i];
        const std::size_t group = pile.groupOf[i];
        const LogShare log = logLikelihoodAt(row, link, pile.etaAt(i, at));
        out.value += log.value;
        out.gradient[group] += log.slope;
        out.gradient[slope] += log.slope * row.x;
        out.hessian[group * size + group] += log.curvature;
        out.hessian[group * size + slope] += log.curvature * row.x;
        out.hessian[slope * size + slope] += log.curvature * row.x * row.x;
    }
    for (std::size_t group = 0; group < slope; ++group) {
        out.hessian[slope * size + group] = out.hessian[group * size + slope];
    }
}

// Inverse of the expected information. With each group's dose centred on its own weighted mean, the
// slope is independent of the intercepts: Var(b) = 1/Σ S, the rest follows.
struct Precision {
    std::vector<double> weight; // of each group
    std::vector<double> mean;   // weighted, of z
    double varianceB = 0;

    [[nodiscard]] FittedLine lineOf(std::size_t group, std::span<const double> at) const {
        const double m = mean[group];
        return {at[group],
                at[mean.size()],
                1 / weight[group] + m * m * varianceB,
                -m * varianceB,
                varianceB};
    }
};

std::optional<Precision> precisionOf(const Pile& pile, Link link, std::span<const double> at) {
    Precision precision{
        std::vector<double>(pile.groups, 0.0), std::vector<double>(pile.groups, 0.0), 0};
    for (std::size_t i = 0; i < pile.rows.size(); ++i) {
        const double weight = informationAt(pile.rows[i], link, pile.etaAt(i, at));
        precision.weight[pile.groupOf[i]] += weight;
        precision.mean[pile.groupOf[i]] += weight * pile.rows[i].x;
    }
    for (std::size_t group = 0; group < pile.groups; ++group) {
        if (!(precision.weight[group] > 0)) {
            return std::nullopt;
        }
        precision.mean[group] /= precision.weight[group];
    }
    double squares = 0;
    for (std::size_t i = 0; i < pile.rows.size(); ++i) {
        const double off = pile.rows[i].x - precision.mean[pile.groupOf[i]];
        squares += informationAt(pile.rows[i], link, pile.etaAt(i, at)) * off * off;
    }
    if (!(squares > 0)) {
        return std::nullopt;
    }
    precision.varianceB = 1 / squares;
    return precision;
}

bool isWithout(Overlap overlap) {
    return overlap == Overlap::Nothing || overlap == Overlap::NoneDead ||
           overlap == Overlap::AllDead;
}

// The slope is finite where some group's dead and living overlap in either direction. A group of
// one dose alone says nothing of the slope.
bool hasFiniteSlope(const std::vector<Overlap>& overlaps) {
    const auto boundsAbove = [](Overlap overlap) {
        return overlap == Overlap::Overlapping || overlap == Overlap::ReversedSeparation;
    };
    const auto boundsBelow = [](Overlap overlap) {
        return overlap == Overlap::Overlapping || overlap == Overlap::Separated ||
               overlap == Overlap::QuasiSeparated;
    };
    return std::ranges::any_of(overlaps, boundsAbove) && std::ranges::any_of(overlaps, boundsBelow);
}

CommonSlope::Difference differenceOf(const CommonSlope& fit,
                                     std::size_t one,
                                     std::size_t other,
                                     const Precision& precision,
                                     const Pile& pile) {
    CommonSlope::Difference difference;
    difference.one = fit.groups[one].name;
    difference.other = fit.groups[other].name;
    difference.x50 = fit.groups[one].x50 - fit.groups[other].x50;
    // x50 = (c - a)/b with a of group k = its mean η minus b·its mean z: of a difference only the
    // distance of x50 from the group's mean dose is left to the slope.
    const double b = fit.slope;
    const double offOne = (fit.groups[one].x50 - pile.centre) / pile.scale - precision.mean[one];
    const double offOther =
        (fit.groups[other].x50 - pile.centre) / pile.scale - precision.mean[other];
    const double scaledB = b * pile.scale;
    const double variance = 1 / precision.weight[one] + 1 / precision.weight[other] +
                            (offOne - offOther) * (offOne - offOther) * precision.varianceB;
    difference.error = pile.scale * std::sqrt(variance) / std::abs(scaledB);
    difference.z = difference.x50 / difference.error;
    difference.p = std::min(1.0, 2 * statistics::normalBelow(-std::abs(difference.z)));
    const double half = kNormal95 * difference.error;
    difference.interval = {difference.x50 - half, difference.x50 + half};
    return difference;
}

void addDifferences(CommonSlope& fit, const Precision& precision, const Pile& pile) {
    std::vector<double> ps;
    for (std::size_t one = 0; one < fit.groups.size(); ++one) {
        for (std::size_t other = one + 1; other < fit.groups.size(); ++other) {
            fit.differences.push_back(differenceOf(fit, one, other, precision, pile));
            ps.push_back(fit.differences.back().p);
        }
    }
    const std::vector<double> adjusted = statistics::holm(ps);
    for (std::size_t i = 0; i < adjusted.size(); ++i) {
        fit.differences[i].pHolm = adjusted[i];
    }
}

// A group of one dose has no slope of its own: its supremum is the same with any.
CommonSlope::Parallelism parallelismOf(std::span<const DoseGroup> groups,
                                       const std::vector<Overlap>& overlaps,
                                       const CommonSlope& common) {
    CommonSlope::Parallelism test;
    double apart = 0;
    int slopes = 0;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const auto own = fitDoses(groups[i].rows, common.link);
        apart += own ? own->logLikelihood : supremumLogLikelihood(groups[i].rows);
        slopes += overlaps[i] == Overlap::OneDose ? 0 : 1;
    }
    test.statistic = std::max(0.0, 2 * (apart - common.logLikelihood));
    test.degreesOfFreedom = slopes - 1;
    test.p = statistics::chiSquaredAbove(test.statistic, test.degreesOfFreedom);
    return test;
}

CommonSlope::Group groupOf(const std::string& name, const FittedLine& line, Link link) {
    CommonSlope::Group group;
    group.name = name;
    const double eta = linked(link, 0.5);
    group.x50 = crossingOf(line, eta);
    group.error = crossingError(line, eta);
    group.g = fiellerG(line, kNormal95);
    group.fieller = fiellerLimits(line, eta, kNormal95);
    return group;
}

// From z to x.
void unscale(CommonSlope::Group& group, const FittedLine& line, const Pile& pile) {
    group.intercept = line.a - line.b * pile.centre / pile.scale;
    group.x50 = pile.centre + pile.scale * group.x50;
    group.error *= pile.scale;
    const double half = kNormal95 * group.error;
    group.delta = {group.x50 - half, group.x50 + half};
    if (group.fieller) {
        group.fieller = statistics::Interval{pile.centre + pile.scale * group.fieller->low,
                                             pile.centre + pile.scale * group.fieller->high};
    }
}

void addFit(CommonSlope& fit, const Pile& pile, std::span<const double> at) {
    std::vector<double> etas;
    for (std::size_t i = 0; i < pile.rows.size(); ++i) {
        etas.push_back(pile.etaAt(i, at));
        fit.logLikelihood += statistics::logChoose(static_cast<double>(pile.rows[i].counted),
                                                   static_cast<double>(pile.rows[i].dead));
    }
    fit.goodness = goodnessOf(pile.rows, etas, fit.link, static_cast<int>(pile.groups) + 1);
}

std::optional<CommonSlope>
fitCommon(std::span<const DoseGroup> groups, const std::vector<Overlap>& overlaps, Link link) {
    const Pile pile = pileOf(groups);
    const statistics::LogLikelihood likelihood = [&](std::span<const double> at, Slope& out) {
        pileLikelihood(pile, link, at, out);
    };
    std::vector<double> start;
    for (const DoseGroup& group : groups) {
        double counted = 0;
        double dead = 0;
        for (const DoseRow& row : group.rows) {
            counted += static_cast<double>(row.counted);
            dead += static_cast<double>(row.dead);
        }
        start.push_back(linked(link, dead / counted));
    }
    start.push_back(0);
    const auto top = statistics::maximise(likelihood, start);
    const auto precision = top ? precisionOf(pile, link, top->at) : std::nullopt;
    if (!precision || !(top->at.back() > 0)) {
        return std::nullopt;
    }
    CommonSlope fit;
    fit.link = link;
    fit.slope = top->at.back() / pile.scale;
    fit.slopeError = std::sqrt(precision->varianceB) / pile.scale;
    fit.logLikelihood = top->value;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const FittedLine line = precision->lineOf(i, top->at);
        fit.groups.push_back(groupOf(groups[i].name, line, link));
        fit.groups.back().overlap = overlaps[i];
        unscale(fit.groups.back(), line, pile);
    }
    addFit(fit, pile, top->at);
    addDifferences(fit, *precision, pile);
    const auto hasSlope = [](Overlap overlap) { return overlap != Overlap::OneDose; };
    if (std::ranges::count_if(overlaps, hasSlope) > 1) {
        fit.parallelism = parallelismOf(groups, overlaps, fit);
    }
    return fit;
}

} // namespace

Result<SlopeComparison> compareBySlope(std::vector<DoseGroup> groups, Link link) {
    std::ranges::sort(groups, {}, &DoseGroup::name);
    const auto twice = std::ranges::adjacent_find(groups, {}, &DoseGroup::name);
    if (twice != groups.end()) {
        return Error{
            ErrorCode::InvalidInput, "Two groups are both called " + twice->name + ".", {}};
    }
    SlopeComparison comparison;
    std::vector<DoseGroup> kept;
    std::vector<Overlap> overlaps;
    for (DoseGroup& group : groups) {
        const Overlap overlap = overlapOf(pooledDoses(group.rows));
        if (isWithout(overlap)) {
            comparison.leftOut.emplace_back(group.name, overlap);
        } else {
            kept.push_back(std::move(group));
            overlaps.push_back(overlap);
        }
    }
    if (kept.size() < 2) {
        comparison.lack = SlopeComparison::Lack::TooFewGroups;
    } else if (!hasFiniteSlope(overlaps)) {
        comparison.lack = SlopeComparison::Lack::NoFiniteSlope;
    } else {
        comparison.fit = fitCommon(kept, overlaps, link);
        comparison.lack =
            comparison.fit ? SlopeComparison::Lack::None : SlopeComparison::Lack::NoRise;
    }
    return comparison;
}

} // namespace bullace::hardiness
