#include "core/hardiness/natural_mortality.hpp"

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

// Below this share in logits, what dies anyway cannot be told from none.
constexpr double kNoneInLogits = -16;

// The parameters are m, b and u: η = eta + b·(z - m), c = 1/(1 + exp(-u)); m is the dose in z that
// reaches `eta`.
struct Model {
    std::vector<DoseRow> rows; // x in z
    Control control;
    Link link = Link::Logit;
    double eta = 0;
    double centre = 0;
    double scale = 1;
};

// p of one row and 1 - p, with the derivatives of p by η and u.
struct Chance {
    double dead = 0;
    double living = 0;
    double byEta = 0;
    double byU = 0;
    double byEtaEta = 0;
    double byEtaU = 0;
    double byUU = 0;
};

Chance chanceAt(Link link, double eta, double u) {
    const double natural = killedAt(Link::Logit, u);
    const double rest = killedAt(Link::Logit, -u);
    const double density = densityAt(link, eta);
    const double surviving = survivingAt(link, eta);
    const double turn = natural * rest; // dc/du
    return {natural + rest * killedAt(link, eta),
            rest * surviving,
            rest * density,
            surviving * turn,
            rest * densitySlopeAt(link, eta),
            -density * turn,
            surviving * turn * (rest - natural)};
}

struct RowDerivatives {
    double value = 0;
    double byEta = 0;
    double byU = 0;
    double byEtaEta = 0;
    double byEtaU = 0;
    double byUU = 0;
};

// dead·log p + living·log(1 - p).
RowDerivatives likelihoodOf(const DoseRow& row, const Chance& chance) {
    const auto dead = static_cast<double>(row.dead);
    const auto living = static_cast<double>(row.counted - row.dead);
    const double perDead = dead > 0 ? dead / chance.dead : 0;
    const double perLiving = living > 0 ? living / chance.living : 0;
    const double first = perDead - perLiving;
    const double second =
        -(dead > 0 ? perDead / chance.dead : 0) - (living > 0 ? perLiving / chance.living : 0);
    return {(dead > 0 ? dead * std::log(chance.dead) : 0) +
                (living > 0 ? living * std::log(chance.living) : 0),
            first * chance.byEta,
            first * chance.byU,
            first * chance.byEtaEta + second * chance.byEta * chance.byEta,
            first * chance.byEtaU + second * chance.byEta * chance.byU,
            first * chance.byUU + second * chance.byU * chance.byU};
}

void likelihoodAt(const Model& model, std::span<const double> at, Slope& out) {
    const double b = at[1];
    for (const DoseRow& row : model.rows) {
        const double off = row.x - at[0];
        const RowDerivatives of =
            likelihoodOf(row, chanceAt(model.link, model.eta + b * off, at[2]));
        out.value += of.value;
        out.gradient[0] -= of.byEta * b;
        out.gradient[1] += of.byEta * off;
        out.gradient[2] += of.byU;
        out.hessian[0] += of.byEtaEta * b * b;
        out.hessian[1] -= of.byEtaEta * b * off + of.byEta;
        out.hessian[2] -= of.byEtaU * b;
        out.hessian[4] += of.byEtaEta * off * off;
        out.hessian[5] += of.byEtaU * off;
        out.hessian[8] += of.byUU;
    }
    const auto dead = static_cast<double>(model.control.dead);
    const auto counted = static_cast<double>(model.control.counted);
    const LogShare log = logKilledAt(Link::Logit, at[2]);
    const LogShare rest = logSurvivingAt(Link::Logit, at[2]);
    out.value += dead * log.value + (counted - dead) * rest.value;
    out.gradient[2] += dead * log.slope + (counted - dead) * rest.slope;
    out.hessian[8] += dead * log.curvature + (counted - dead) * rest.curvature;
    out.hessian[3] = out.hessian[1];
    out.hessian[6] = out.hessian[2];
    out.hessian[7] = out.hessian[5];
}

Model modelOf(std::span<const DoseRow> rows, const Control& control, Link link) {
    Model model{{}, control, link, linked(link, 0.5), 0, 1};
    double sum = 0;
    double counted = 0;
    for (const DoseRow& row : rows) {
        if (row.counted > 0) {
            model.rows.push_back(row);
            sum += row.x * static_cast<double>(row.counted);
            counted += static_cast<double>(row.counted);
        }
    }
    if (model.rows.empty()) {
        return model;
    }
    const auto [least, greatest] = std::ranges::minmax(model.rows, {}, &DoseRow::x);
    model.centre = sum / counted;
    model.scale = greatest.x > least.x ? greatest.x - least.x : 1;
    for (DoseRow& row : model.rows) {
        row.x = (row.x - model.centre) / model.scale;
    }
    return model;
}

// Where a search may begin: half of the kill between the mildest and the harshest, a steepness from
// gentle to steep, and what died in the control.
std::vector<std::vector<double>> startsOf(const Model& model) {
    const double anyway = (static_cast<double>(model.control.dead) + 0.5) /
                          (static_cast<double>(model.control.counted) + 1);
    const double u = linked(Link::Logit, std::clamp(anyway, 0.001, 0.5));
    std::vector<std::vector<double>> starts;
    for (const double steepness : {5.0, 15.0, 40.0}) {
        for (const double middle : {0.0, -0.25, 0.25}) {
            starts.push_back({middle, steepness, u});
        }
    }
    return starts;
}

// The best of the searches that end at one finite maximum.
std::optional<Maximum> highest(const Model& model, const statistics::LogLikelihood& likelihood) {
    std::optional<Maximum> best;
    for (std::vector<double>& start : startsOf(model)) {
        auto found = statistics::maximise(likelihood, std::move(start));
        if (found && found->at[1] > 0 && found->at[2] > kNoneInLogits &&
            (!best || found->value > best->value)) {
            best = std::move(found);
        }
    }
    return best;
}

double binomialCoefficients(std::span<const DoseRow> rows, const Control& control) {
    double sum = statistics::logChoose(static_cast<double>(control.counted),
                                       static_cast<double>(control.dead));
    for (const DoseRow& row : rows) {
        sum +=
            statistics::logChoose(static_cast<double>(row.counted), static_cast<double>(row.dead));
    }
    return sum;
}

GoodnessOfFit goodnessAt(const Maximum& top, const Model& model) {
    std::vector<DoseRow> rows = model.rows;
    std::vector<ExpectedShare> shares;
    for (const DoseRow& row : rows) {
        const double eta = model.eta + top.at[1] * (row.x - top.at[0]);
        const Chance chance = chanceAt(model.link, eta, top.at[2]);
        shares.push_back({chance.dead, chance.living});
    }
    rows.push_back({0, model.control.counted, model.control.dead});
    shares.push_back({killedAt(Link::Logit, top.at[2]), killedAt(Link::Logit, -top.at[2])});
    return goodnessOfShares(rows, shares, 3);
}

NaturalMortalityFit
fitAt(const Maximum& top, const Model& model, const statistics::LogLikelihood& likelihood) {
    NaturalMortalityFit fit;
    fit.link = model.link;
    const double middle = model.centre + model.scale * top.at[0]; // x of `eta`
    fit.slope = top.at[1] / model.scale;
    fit.intercept = model.eta - fit.slope * middle;
    fit.slopeError = top.standardError(1) / model.scale;
    // intercept = eta - b·x: x and b each with their errors and their covariance.
    const double byM = -top.at[1];
    const double byB = -middle / model.scale;
    fit.interceptError = std::sqrt(std::max(0.0,
                                            byM * byM * top.covarianceOf(0, 0) +
                                                2 * byM * byB * top.covarianceOf(0, 1) +
                                                byB * byB * top.covarianceOf(1, 1)));
    fit.natural = killedAt(Link::Logit, top.at[2]);
    fit.naturalError = fit.natural * (1 - fit.natural) * top.standardError(2);
    const Interval logits = statistics::profileLimits(likelihood, top, 2);
    fit.naturalLimits = {std::isfinite(logits.low) ? killedAt(Link::Logit, logits.low) : 0,
                         std::isfinite(logits.high) ? killedAt(Link::Logit, logits.high) : 1};
    fit.logLikelihood = top.value + binomialCoefficients(model.rows, model.control);
    fit.goodness = goodnessAt(top, model);
    return fit;
}

NaturalMortalityPoint pointAt(const Maximum& top, Model model, double part) {
    const double off = (linked(model.link, part) - model.eta) / top.at[1];
    model.eta = linked(model.link, part);
    const statistics::LogLikelihood likelihood = [&](std::span<const double> at, Slope& out) {
        likelihoodAt(model, at, out);
    };
    Maximum moved = top;
    moved.at[0] += off;
    // m of this part = m of 50 % + (difference of η)/b.
    const double byB = -off / top.at[1];
    const double variance = top.covarianceOf(0, 0) + 2 * byB * top.covarianceOf(0, 1) +
                            byB * byB * top.covarianceOf(1, 1);
    moved.covariance[0] = variance;
    NaturalMortalityPoint point;
    point.part = part;
    point.x = model.centre + model.scale * moved.at[0];
    point.error = model.scale * std::sqrt(std::max(0.0, variance));
    point.delta = {point.x - kNormal95 * point.error, point.x + kNormal95 * point.error};
    const Interval profile = statistics::profileLimits(likelihood, moved, 0);
    point.profile = {model.centre + model.scale * profile.low,
                     model.centre + model.scale * profile.high};
    return point;
}

// With nothing that died anyway: at the edge of what the share may be. Its upper limit is that of
// the control alone, where its likelihood has fallen by 1.92; wider than need be, never narrower.
std::optional<NaturalMortality> atTheEdge(std::span<const DoseRow> rows,
                                          const Control& control,
                                          Link link,
                                          std::span<const double> parts) {
    const auto plain = control.dead == 0 ? fitDoses(rows, link) : std::nullopt;
    if (!plain || !(plain->slope > 0)) {
        return std::nullopt;
    }
    NaturalMortality found;
    found.fit = {link,
                 plain->intercept,
                 plain->slope,
                 0,
                 plain->interceptError,
                 plain->slopeError,
                 {},
                 {0, 1},
                 plain->logLikelihood,
                 plain->goodness};
    if (control.counted > 0) {
        // (1 - c)^n of the control alone bounds it; the mild doses can only bound it further.
        found.fit.naturalLimits.high =
            -std::expm1(-1.920729410347062 / static_cast<double>(control.counted));
    }
    for (const double part : parts) {
        const DosePoint point = pointOf(rows, *plain, part);
        found.points.push_back({part, point.x, point.error, point.delta, point.profile});
    }
    return found;
}

} // namespace

std::optional<NaturalMortality> fitNaturalMortality(std::span<const DoseRow> rows,
                                                    const Control& control,
                                                    Link link,
                                                    std::span<const double> parts) {
    const Model model = modelOf(rows, control, link);
    if (model.rows.empty()) {
        return std::nullopt;
    }
    const statistics::LogLikelihood likelihood = [&](std::span<const double> at, Slope& out) {
        likelihoodAt(model, at, out);
    };
    const auto top = highest(model, likelihood);
    if (!top) {
        return atTheEdge(rows, control, link, parts);
    }
    NaturalMortality found;
    found.fit = fitAt(*top, model, likelihood);
    for (const double part : parts) {
        found.points.push_back(pointAt(*top, model, part));
    }
    return found;
}

} // namespace bullace::hardiness
