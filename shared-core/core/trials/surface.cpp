#include "core/trials/surface.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace bullace::trials {

namespace {

using Eigen::MatrixXd;

constexpr std::size_t kMostSegments = 10;
constexpr std::size_t kFewestForBends = 4; // different numbers

// One side of the block: its numbers from -1 to 1, and the columns of what bends along it.
struct Side {
    std::vector<double> straight; // NaN where it is not known; empty where there is one number
    MatrixXd bends;               // records × columns
};

// The four cubic B-splines that are not 0 at `at`, which lies within a segment from 0 to 1.
std::array<double, 4> splinesAt(double at) {
    const double rest = 1 - at;
    return {rest * rest * rest / 6,
            (3 * at * at * at - 6 * at * at + 4) / 6,
            (-3 * at * at * at + 3 * at * at + 3 * at + 1) / 6,
            at * at * at / 6};
}

// The directions in which second differences are not 0, each divided by its size: coefficients of
// variance 1 along them are penalised as P-splines are.
MatrixXd bendingDirections(Eigen::Index splines) {
    MatrixXd differences = MatrixXd::Zero(splines - 2, splines);
    for (Eigen::Index i = 0; i < splines - 2; ++i) {
        differences(i, i) = 1;
        differences(i, i + 1) = -2;
        differences(i, i + 2) = 1;
    }
    const Eigen::SelfAdjointEigenSolver<MatrixXd> axes(differences.transpose() * differences);
    // Two are 0: a constant and a straight line.
    return axes.eigenvectors().rightCols(splines - 2) *
           axes.eigenvalues().tail(splines - 2).cwiseSqrt().cwiseInverse().asDiagonal();
}

Side sideOf(std::span<const double> numbers) {
    std::set<double> different;
    for (const double number : numbers) {
        if (std::isfinite(number)) {
            different.insert(number);
        }
    }
    Side side;
    if (different.size() < 2) {
        return side;
    }
    const double first = *different.begin();
    const double length = *different.rbegin() - first;
    for (const double number : numbers) {
        side.straight.push_back(2 * (number - first) / length - 1);
    }
    if (different.size() < kFewestForBends) {
        return side;
    }
    const std::size_t segments = std::clamp<std::size_t>(different.size() / 2, 2, kMostSegments);
    const auto splines = static_cast<Eigen::Index>(segments + 3);
    MatrixXd basis = MatrixXd::Zero(static_cast<Eigen::Index>(numbers.size()), splines);
    for (Eigen::Index record = 0; record < basis.rows(); ++record) {
        const double at = side.straight[static_cast<std::size_t>(record)];
        if (!std::isfinite(at)) {
            continue;
        }
        const double along = (at + 1) / 2 * static_cast<double>(segments);
        const double segment = std::min(std::floor(along), static_cast<double>(segments) - 1);
        const std::array<double, 4> values = splinesAt(along - segment);
        for (std::size_t i = 0; i < values.size(); ++i) {
            basis(record, static_cast<Eigen::Index>(segment) + static_cast<Eigen::Index>(i)) =
                values[i];
        }
    }
    side.bends = basis * bendingDirections(splines);
    return side;
}

std::vector<double> product(const std::vector<double>& one, const std::vector<double>& other) {
    std::vector<double> values(one.size());
    std::ranges::transform(one, other, values.begin(), std::multiplies{});
    return values;
}

std::vector<double> columnOf(const MatrixXd& matrix, Eigen::Index column) {
    return {matrix.col(column).data(), matrix.col(column).data() + matrix.rows()};
}

// A side's bends, each times a number of every record.
SmoothTerm bendsOf(const std::string& name, const Side& side, const std::vector<double>& times) {
    SmoothTerm term{name, {}};
    for (Eigen::Index column = 0; column < side.bends.cols(); ++column) {
        std::vector<double> values = columnOf(side.bends, column);
        term.columns.push_back(times.empty() ? std::move(values) : product(values, times));
    }
    return term;
}

} // namespace

Result<Surface> surfaceOf(std::span<const double> row, std::span<const double> place) {
    if (row.size() != place.size() ||
        std::ranges::none_of(row, [](double number) { return std::isfinite(number); })) {
        return Error{ErrorCode::InvalidInput,
                     "A surface needs the row and the place in it of each record.",
                     {}};
    }
    const Side along = sideOf(row);
    const Side across = sideOf(place);
    Surface surface;
    if (!along.straight.empty()) {
        surface.straight.push_back({"row trend", along.straight});
    }
    if (!across.straight.empty()) {
        surface.straight.push_back({"place trend", across.straight});
    }
    const bool isBoth = surface.straight.size() == 2;
    if (isBoth) {
        surface.straight.push_back({"row × place trend", product(along.straight, across.straight)});
    }
    const auto add = [&surface](SmoothTerm term) {
        if (!term.columns.empty()) {
            surface.bends.push_back(std::move(term));
        }
    };
    add(bendsOf("bends along rows' order", along, {}));
    add(bendsOf("bends along places", across, {}));
    if (isBoth) {
        add(bendsOf("bends along rows' order, turning with places", along, across.straight));
        add(bendsOf("bends along places, turning with rows' order", across, along.straight));
        SmoothTerm both{"bends along both", {}};
        for (Eigen::Index column = 0; column < across.bends.cols(); ++column) {
            const SmoothTerm part = bendsOf("", along, columnOf(across.bends, column));
            both.columns.insert(both.columns.end(), part.columns.begin(), part.columns.end());
        }
        add(std::move(both));
    }
    return surface;
}

void addSurface(const Surface& surface, TrialTable& table, MixedSpec& spec) {
    for (const Covariate& straight : surface.straight) {
        table.covariates.push_back(straight);
        spec.fixed.push_back({straight.name});
    }
    spec.smooth.insert(spec.smooth.end(), surface.bends.begin(), surface.bends.end());
}

std::vector<double> trendOf(const Surface& surface, const MixedFit& fit) {
    if (surface.straight.empty()) {
        return {};
    }
    std::vector<double> trend(surface.straight.front().values.size());
    for (const Covariate& straight : surface.straight) {
        const auto effect = std::ranges::find_if(
            fit.fixed, [&](const FixedEffect& each) { return each.name == straight.name; });
        for (std::size_t i = 0; i < trend.size(); ++i) {
            trend[i] += straight.values[i] * (effect == fit.fixed.end() ? 0 : effect->value);
        }
    }
    for (const SmoothTerm& term : surface.bends) {
        const RandomPredictions* predictions = fit.predictionsOf(term.name);
        for (std::size_t column = 0; predictions != nullptr && column < term.columns.size();
             ++column) {
            for (std::size_t i = 0; i < trend.size(); ++i) {
                trend[i] += term.columns[column][i] * predictions->levels[column].value;
            }
        }
    }
    double sum = 0;
    double n = 0;
    for (const double value : trend) {
        sum += std::isfinite(value) ? value : 0;
        n += std::isfinite(value) ? 1 : 0;
    }
    for (double& value : trend) {
        value -= sum / std::max(n, 1.0);
    }
    return trend;
}

} // namespace bullace::trials
