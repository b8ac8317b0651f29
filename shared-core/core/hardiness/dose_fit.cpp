#include "core/hardiness/dose_fit.hpp"

#include "core/statistics/distributions.hpp"
#include "core/statistics/newton.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::hardiness {

using statistics::Interval;
using statistics::kNormal95;
using statistics::Maximum;
using statistics::Slope;

namespace {

// The rows that count, with their doses in z.
struct ScaledRows {
    std::vector<DoseRow> rows;
    double centre = 0;
    double scale = 1;
};

ScaledRows scaledBy(std::span<const DoseRow> rows, double centre, double scale) {
    ScaledRows scaled{{}, centre, scale};
    scaled.rows.reserve(rows.size());
    for (const DoseRow& row : rows) {
        if (row.counted > 0) {
            scaled.rows.push_back({(row.x - centre) / scale, row.counted, row.dead});
        }
    }
    return scaled;
}

ScaledRows scaledRows(std::span<const DoseRow> rows) {
    double least = statistics::kUnbounded;
    double greatest = -statistics::kUnbounded;
    double sum = 0;
    double counted = 0;
    for (const DoseRow& row : rows) {
        if (row.counted > 0) {
            least = std::min(least, row.x);
            greatest = std::max(greatest, row.x);
            sum += row.x * static_cast<double>(row.counted);
            counted += static_cast<double>(row.counted);
        }
    }
    return scaledBy(rows, sum / counted, greatest - least);
}

double shareDead(std::span<const DoseRow> rows) {
    double counted = 0;
    double dead = 0;
    for (const DoseRow& row : rows) {
        counted += static_cast<double>(row.counted);
        dead += static_cast<double>(row.dead);
    }
    return dead / counted;
}

// Of (a, b) in η = a + b·z.
void lineLikelihood(std::span<const DoseRow> rows,
                    Link link,
                    std::span<const double> at,
                    Slope& out) {
    for (const DoseRow& row : rows) {
        const LogShare log = logLikelihoodAt(row, link, at[0] + at[1] * row.x);
        out.value += log.value;
        out.gradient[0] += log.slope;
        out.gradient[1] += log.slope * row.x;
        out.hessian[0] += log.curvature;
        out.hessian[1] += log.curvature * row.x;
        out.hessian[3] += log.curvature * row.x * row.x;
    }
    out.hessian[2] = out.hessian[1];
}

// Of (m, b) in η = eta + b·(z - m): m is the dose that reaches `eta`.
void pointLikelihood(
    std::span<const DoseRow> rows, Link link, double eta, std::span<const double> at, Slope& out) {
    const double b = at[1];
    for (const DoseRow& row : rows) {
        const double off = row.x - at[0];
        const LogShare log = logLikelihoodAt(row, link, eta + b * off);
        out.value += log.value;
        out.gradient[0] -= log.slope * b;
        out.gradient[1] += log.slope * off;
        out.hessian[0] += log.curvature * b * b;
        out.hessian[1] -= log.curvature * b * off + log.slope;
        out.hessian[3] += log.curvature * off * off;
    }
    out.hessian[2] = out.hessian[1];
}

// The line with its covariance from the expected information; nothing where that is singular.
std::optional<FittedLine> lineOf(std::span<const DoseRow> rows, Link link, double a, double b) {
    double whole = 0;
    double moment = 0;
    for (const DoseRow& row : rows) {
        const double weight = informationAt(row, link, a + b * row.x);
        whole += weight;
        moment += weight * row.x;
    }
    const double mean = moment / whole;
    double square = 0;
    for (const DoseRow& row : rows) {
        square += informationAt(row, link, a + b * row.x) * (row.x - mean) * (row.x - mean);
    }
    if (!(whole > 0) || !(square > 0)) {
        return std::nullopt;
    }
    return FittedLine{a, b, 1 / whole + mean * mean / square, -mean / square, 1 / square};
}

Interval around(double middle, double half) {
    return {middle - half, middle + half};
}

Interval unscaled(const Interval& z, const DoseFit& fit) {
    return {fit.centre + fit.scale * z.low, fit.centre + fit.scale * z.high};
}

std::optional<Interval> unscaled(const std::optional<Interval>& z, const DoseFit& fit) {
    return z ? std::optional(unscaled(*z, fit)) : std::nullopt;
}

Interval profileOf(std::span<const DoseRow> rows, const DoseFit& fit, double eta) {
    const ScaledRows scaled = scaledBy(rows, fit.centre, fit.scale);
    const statistics::LogLikelihood likelihood = [&](std::span<const double> at, Slope& out) {
        pointLikelihood(scaled.rows, fit.link, eta, at, out);
    };
    const double m = crossingOf(fit.line, eta);
    const double error = crossingError(fit.line, eta);
    Maximum top{{m, fit.line.b}, 0, {error * error, 0, 0, fit.line.varianceB}, 0};
    Slope atTop;
    atTop.clear(2);
    likelihood(top.at, atTop);
    top.value = atTop.value;
    return unscaled(statistics::profileLimits(likelihood, top, 0), fit);
}

double xLogRatio(double observed, double expected) {
    return observed > 0 ? observed * std::log(observed / expected) : 0;
}

} // namespace

LogShare logLikelihoodAt(const DoseRow& row, Link link, double eta) {
    LogShare sum;
    const auto add = [&sum](std::int64_t times, const LogShare& log) {
        const auto n = static_cast<double>(times);
        sum.value += n * log.value;
        sum.slope += n * log.slope;
        sum.curvature += n * log.curvature;
    };
    if (row.dead > 0) {
        add(row.dead, logKilledAt(link, eta));
    }
    if (row.dead < row.counted) {
        add(row.counted - row.dead, logSurvivingAt(link, eta));
    }
    return sum;
}

double informationAt(const DoseRow& row, Link link, double eta) {
    const double density = densityAt(link, eta);
    const double variance = killedAt(link, eta) * survivingAt(link, eta);
    return variance > 0 ? static_cast<double>(row.counted) * density * density / variance : 0;
}

GoodnessOfFit
goodnessOf(std::span<const DoseRow> rows, std::span<const double> etas, Link link, int parameters) {
    std::vector<ExpectedShare> shares;
    shares.reserve(etas.size());
    for (const double eta : etas) {
        shares.push_back({killedAt(link, eta), survivingAt(link, eta)});
    }
    return goodnessOfShares(rows, shares, parameters);
}

GoodnessOfFit goodnessOfShares(std::span<const DoseRow> rows,
                               std::span<const ExpectedShare> shares,
                               int parameters) {
    GoodnessOfFit fit;
    std::size_t used = 0;
    for (const DoseRow& row : rows) {
        if (row.counted == 0) {
            continue;
        }
        const ExpectedShare& share = shares[used++];
        const auto n = static_cast<double>(row.counted);
        const auto dead = static_cast<double>(row.dead);
        const double killed = n * share.killed;
        const double living = n * share.living;
        fit.deviance += 2 * (xLogRatio(dead, killed) + xLogRatio(n - dead, living));
        // (dead - killed)²·(1/killed + 1/living), of which either count may be 0 to binary64.
        const double off = dead > n / 2 ? living - (n - dead) : dead - killed;
        fit.pearson += off == 0 ? 0 : off / killed * off + off / living * off;
    }
    fit.degreesOfFreedom = static_cast<int>(used) - parameters;
    if (fit.degreesOfFreedom > 0 && std::isfinite(fit.pearson) && std::isfinite(fit.deviance)) {
        fit.deviance = std::max(0.0, fit.deviance);
        fit.devianceP = statistics::chiSquaredAbove(fit.deviance, fit.degreesOfFreedom);
        fit.pearsonP = statistics::chiSquaredAbove(fit.pearson, fit.degreesOfFreedom);
        fit.heterogeneity = fit.pearson / fit.degreesOfFreedom;
    }
    return fit;
}

std::optional<DoseFit> fitDoses(std::span<const DoseRow> rows, Link link) {
    if (overlapOf(pooledDoses(rows)) != Overlap::Overlapping) {
        return std::nullopt;
    }
    const ScaledRows scaled = scaledRows(rows);
    const statistics::LogLikelihood likelihood = [&](std::span<const double> at, Slope& out) {
        lineLikelihood(scaled.rows, link, at, out);
    };
    const auto top = statistics::maximise(likelihood, {linked(link, shareDead(scaled.rows)), 0.0});
    const auto line = top ? lineOf(scaled.rows, link, top->at[0], top->at[1]) : std::nullopt;
    if (!line) {
        return std::nullopt;
    }
    DoseFit fit;
    fit.link = link;
    fit.centre = scaled.centre;
    fit.scale = scaled.scale;
    fit.line = *line;
    const double shift = fit.centre / fit.scale; // z = x/scale - shift
    fit.slope = line->b / fit.scale;
    fit.intercept = line->a - line->b * shift;
    fit.slopeError = std::sqrt(line->varianceB) / fit.scale;
    fit.interceptError = std::sqrt(std::max(
        0.0, line->varianceA - 2 * shift * line->covariance + shift * shift * line->varianceB));
    fit.covariance = (line->covariance - shift * line->varianceB) / fit.scale;
    fit.logLikelihood = top->value;
    std::vector<double> etas;
    for (const DoseRow& row : scaled.rows) {
        etas.push_back(line->a + line->b * row.x);
        fit.fitted.push_back(killedAt(link, etas.back()));
        fit.logLikelihood +=
            statistics::logChoose(static_cast<double>(row.counted), static_cast<double>(row.dead));
    }
    fit.goodness = goodnessOf(scaled.rows, etas, link, 2);
    return fit;
}

DosePoint pointOf(std::span<const DoseRow> rows, const DoseFit& fit, double part) {
    const double eta = linked(fit.link, part);
    const double z = crossingOf(fit.line, eta);
    DosePoint point;
    point.part = part;
    point.x = fit.centre + fit.scale * z;
    point.error = fit.scale * crossingError(fit.line, eta);
    point.delta = around(point.x, kNormal95 * point.error);
    point.g = fiellerG(fit.line, kNormal95);
    point.fieller = unscaled(fiellerLimits(fit.line, eta, kNormal95), fit);
    point.profile = profileOf(rows, fit, eta);
    if (fit.goodness.heterogeneity) {
        const FittedLine wide = fit.line.spread(*fit.goodness.heterogeneity);
        const double t = statistics::studentTQuantile(0.975, fit.goodness.degreesOfFreedom);
        const double error = fit.scale * crossingError(wide, eta);
        point.scaled = DosePoint::Scaled{
            error, around(point.x, t * error), unscaled(fiellerLimits(wide, eta, t), fit)};
    }
    return point;
}

} // namespace bullace::hardiness
