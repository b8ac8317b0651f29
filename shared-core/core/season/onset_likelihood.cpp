#include "core/season/onset_likelihood.hpp"

#include "core/season/onset_laws.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace bullace::season {

namespace {

using statistics::kUnbounded;
using statistics::Slope;

Error refused(std::size_t onset, const char* what) {
    return {ErrorCode::InvalidInput, "Onset " + std::to_string(onset + 1) + " " + what, {}};
}

// On the axis of the law; nothing where a time cannot be on it.
std::optional<WeighedOnset> onAxis(OnsetLaw law, const OnsetInterval& onset) {
    if (!isOfLogarithm(law)) {
        return WeighedOnset{onset.after, onset.by, 1, 0};
    }
    if (!(onset.by > 0)) {
        return std::nullopt;
    }
    return WeighedOnset{
        onset.after > 0 ? std::log(onset.after) : -kUnbounded, std::log(onset.by), 1, 0};
}

bool isOrdered(const OnsetInterval& onset) {
    return onset.after <= onset.by && onset.after < kUnbounded && onset.by > -kUnbounded;
}

void joinEqual(OnsetProblem& problem) {
    const auto before = [&problem](const WeighedOnset& a, const WeighedOnset& b) {
        if (a.low != b.low || a.high != b.high) {
            return std::pair(a.low, a.high) < std::pair(b.low, b.high);
        }
        return std::ranges::lexicographical_compare(problem.row(a), problem.row(b));
    };
    std::ranges::sort(problem.onsets, before);
    std::size_t kept = 0;
    for (std::size_t i = 1; i < problem.onsets.size(); ++i) {
        if (!before(problem.onsets[kept], problem.onsets[i])) {
            problem.onsets[kept].weight += 1;
        } else {
            problem.onsets[++kept] = problem.onsets[i];
        }
    }
    problem.onsets.resize(std::min(problem.onsets.size(), kept + 1));
}

LocalSlope ofPoint(OnsetLaw law, double z, double scale) {
    const LawPoint point = lawPoint(law, z);
    const double bend = point.curvature - point.slope * point.slope;
    LocalSlope local;
    local.value = point.logDensity - std::log(scale);
    local.byPlace = -point.slope / scale;
    local.byScale = -1 - z * point.slope;
    local.placePlace = bend / (scale * scale);
    local.placeScale = (point.slope + z * bend) / scale;
    local.scaleScale = z * point.slope + z * z * bend;
    return local;
}

LocalSlope ofPiece(OnsetLaw law, double low, double high, double scale) {
    const LawPiece piece = lawPiece(law, low, high);
    // a, b, c: differences between the ends of f, z f and f', z f', z² f', divided by the mass.
    double a = 0, b = 0, slope = 0, moment = 0, second = 0;
    const auto end = [&](double z, double density, double sign) {
        if (density > 0) {
            const double fall = density * lawSlope(law, z);
            a += sign * density;
            b += sign * z * density;
            slope += sign * fall;
            moment += sign * z * fall;
            second += sign * z * z * fall;
        }
    };
    end(high, piece.atHigh, 1);
    end(low, piece.atLow, -1);
    LocalSlope local;
    local.value = piece.logMass;
    local.byPlace = -a / scale;
    local.byScale = -b;
    local.placePlace = (slope - a * a) / (scale * scale);
    local.placeScale = (a + moment - a * b) / scale;
    local.scaleScale = b + second - b * b;
    return local;
}

void addTo(Slope& out, const LocalSlope& local, double weight, std::span<const double> row) {
    const std::size_t p = row.size();
    const std::size_t all = out.gradient.size();
    out.value += weight * local.value;
    for (std::size_t i = 0; i < p; ++i) {
        out.gradient[i] += weight * local.byPlace * row[i];
        for (std::size_t j = 0; j < p; ++j) {
            out.hessian[i * all + j] += weight * local.placePlace * row[i] * row[j];
        }
    }
    if (all == p) {
        return;
    }
    out.gradient[p] += weight * local.byScale;
    out.hessian[p * all + p] += weight * local.scaleScale;
    for (std::size_t i = 0; i < p; ++i) {
        out.hessian[i * all + p] += weight * local.placeScale * row[i];
        out.hessian[p * all + i] += weight * local.placeScale * row[i];
    }
}

} // namespace

Result<OnsetProblem> problemOf(OnsetLaw law, const OnsetDesign& design) {
    const std::size_t n = design.onsets.size();
    OnsetProblem problem{law, design.columns, {}, {}, 0, countsOf(design.onsets)};
    problem.covariates.assign(design.covariates.begin(), design.covariates.end());
    if (problem.covariates.empty() && design.columns == 1) {
        problem.covariates.assign(n, 1.0);
    }
    if (design.columns == 0 || problem.covariates.size() != n * design.columns ||
        !std::ranges::all_of(problem.covariates, [](double x) { return std::isfinite(x); })) {
        return Error{ErrorCode::InvalidInput,
                     "The covariates do not fit the onsets, or one of them is no number.",
                     {}};
    }
    for (std::size_t i = 0; i < n; ++i) {
        if (!isOrdered(design.onsets[i])) {
            return refused(i, "ends before it begins, or a bound of it is no number.");
        }
        auto placed = onAxis(law, design.onsets[i]);
        if (!placed) {
            return refused(i, "is not above 0, as a law of the logarithm asks.");
        }
        placed->row = i;
        if (!design.onsets[i].isUnseen()) {
            problem.jacobian -= isOfLogarithm(law) && placed->low == placed->high ? placed->low : 0;
            problem.onsets.push_back(*placed);
        }
    }
    joinEqual(problem);
    return problem;
}

LocalSlope localSlope(OnsetLaw law, const WeighedOnset& onset, double place, double scale) {
    const double low = (onset.low - place) / scale;
    const double high = (onset.high - place) / scale;
    return onset.low == onset.high ? ofPoint(law, low, scale) : ofPiece(law, low, high, scale);
}

void likelihoodAt(const OnsetProblem& problem, std::span<const double> at, Slope& out) {
    const double scale = problem.hasScale() ? std::exp(at[problem.columns]) : 1;
    for (const WeighedOnset& one : problem.onsets) {
        const auto row = problem.row(one);
        double place = 0;
        for (std::size_t i = 0; i < row.size(); ++i) {
            place += at[i] * row[i];
        }
        addTo(out, localSlope(problem.law, one, place, scale), one.weight, row);
    }
    out.value += problem.jacobian;
}

} // namespace bullace::season
