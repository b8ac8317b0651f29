// One column a candidate; a pair that is too closely related is a row of its own.
#include "core/breeding/selection.hpp"

#include "core/statistics/distributions.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace bullace::breeding {

namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;
using Index = Eigen::Index;

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), ""};
}

bool isFinite(std::span<const double> values) {
    return std::ranges::all_of(values, [](double value) { return std::abs(value) < 1e9; });
}

Matrix matrixOf(std::span<const double> rows, std::size_t n) {
    return Eigen::Map<const Matrix>(rows.data(), static_cast<Index>(n), static_cast<Index>(n));
}

Status check(std::span<const double> merits,
             std::span<const double> kinship,
             const SelectionLimits& limits) {
    const std::size_t n = merits.size();
    if (limits.selected < 1 || limits.selected > n) {
        return wrong("At least one and at most all of the candidates can be selected.");
    }
    const bool isLimited = limits.mostKinship || limits.mostMeanKinship;
    if (!isFinite(merits) || (isLimited && kinship.size() != n * n) ||
        (!kinship.empty() && kinship.size() != n * n)) {
        return wrong("Each candidate needs a merit, and for a limit its kinship with all others.");
    }
    for (std::size_t k = 0; k < kinship.size(); ++k) {
        if (!(kinship[k] >= 0 && kinship[k] <= 1) ||
            std::abs(kinship[k] - kinship[k % n * n + k / n]) > 1e-9) {
            return wrong("A kinship is not between 0 and 1, or not the same both ways.");
        }
    }
    const Matrix raised =
        matrixOf(kinship, limits.mostMeanKinship ? n : 0) +
        1e-8 * Matrix::Identity(static_cast<Index>(limits.mostMeanKinship ? n : 0),
                                static_cast<Index>(limits.mostMeanKinship ? n : 0));
    return raised.size() == 0 || raised.llt().info() == Eigen::Success
               ? Status()
               : wrong("The kinships contradict one another, so that their mean cannot be "
                       "limited. Take them from one pedigree.");
}

Programme programmeOf(std::span<const double> merits,
                      std::span<const double> kinship,
                      const SelectionLimits& limits) {
    Programme programme;
    const auto n = static_cast<std::uint32_t>(merits.size());
    const auto selected = static_cast<double>(limits.selected);
    ProgrammeRow number{selected, selected, {}};
    for (std::uint32_t i = 0; i < n; ++i) {
        programme.columns.push_back({merits[i], 0, 1, true});
        number.elements.emplace_back(i, 1);
    }
    programme.rows.push_back(std::move(number));
    for (std::uint32_t i = 0; limits.mostKinship && i < n; ++i) {
        for (std::uint32_t j = 0; j < i; ++j) {
            if (kinship[i * n + j] > *limits.mostKinship + 1e-12) {
                programme.rows.push_back({-statistics::kUnbounded, 1, {{i, 1}, {j, 1}}});
            }
        }
    }
    return programme;
}

// The plane that touches x'Kx / k² at these values.
FindBroken withinMean(const Matrix& kinship, double limit, double selected) {
    return [&kinship, limit, selected](
               std::span<const double> values, double margin, std::vector<ProgrammeRow>& broken) {
        const Vector x = Eigen::Map<const Vector>(values.data(), kinship.rows()) / selected;
        const Vector slope = 2 * (kinship * x);
        const double here = x.dot(slope) / 2;
        const double most = limit * (1 - margin);
        if (here <= most) {
            return;
        }
        const double scale = 100 / std::max(most, 1e-6);
        ProgrammeRow row;
        row.upper = scale * (most + here);
        for (Index i = 0; i < slope.size(); ++i) {
            row.elements.emplace_back(static_cast<std::uint32_t>(i), scale * slope[i] / selected);
        }
        broken.push_back(std::move(row));
    };
}

// A square root of the errors' covariance: errors are it times independent normal numbers. Empty
// where it is no covariance.
Matrix rootOf(std::span<const double> covariance, std::size_t n) {
    if (covariance.size() == n) {
        const Vector variances = Eigen::Map<const Vector>(covariance.data(), static_cast<Index>(n));
        return (variances.array() < 0).any() ? Matrix()
                                             : Matrix(variances.cwiseSqrt().asDiagonal());
    }
    const Matrix given = matrixOf(covariance, n);
    const double scale = std::max(given.cwiseAbs().maxCoeff(), 1e-300);
    const Eigen::SelfAdjointEigenSolver<Matrix> eigen((given + given.transpose()) / 2);
    const bool isSound = (given - given.transpose()).cwiseAbs().maxCoeff() <= 1e-8 * scale &&
                         eigen.eigenvalues().minCoeff() >= -1e-8 * scale;
    return isSound ? Matrix(eigen.eigenvectors() *
                            eigen.eigenvalues().cwiseMax(0.0).cwiseSqrt().asDiagonal())
                   : Matrix();
}

} // namespace

Result<Selection> selectWithin(std::span<const double> merits,
                               std::span<const double> kinship,
                               const SelectionLimits& limits) {
    if (const Status sound = check(merits, kinship, limits); !sound) {
        return sound.error();
    }
    const Matrix matrix = matrixOf(kinship, kinship.empty() ? 0 : merits.size());
    const auto selected = static_cast<double>(limits.selected);
    const ProgrammeSolution solution = solveProgramme(
        programmeOf(merits, kinship, limits),
        limits.seconds,
        limits.mostMeanKinship ? withinMean(matrix, *limits.mostMeanKinship, selected)
                               : FindBroken());
    Selection selection;
    selection.status = solution.status;
    selection.bound = solution.bound;
    for (std::size_t i = 0; i < solution.values.size(); ++i) {
        if (solution.values[i] > 0.5) {
            selection.selected.push_back(i);
            selection.sum += merits[i];
        }
    }
    std::ranges::stable_sort(
        selection.selected, std::greater<>(), [&merits](std::size_t i) { return merits[i]; });
    for (const std::size_t i : selection.selected) {
        for (const std::size_t j : selection.selected) {
            selection.meanKinship +=
                kinship.empty() ? 0 : kinship[i * merits.size() + j] / (selected * selected);
        }
    }
    if (selection.status == ProgrammeStatus::Infeasible) {
        selection.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "No %1 candidates keep the limit on kinship."),
             {static_cast<std::int64_t>(limits.selected)}});
    } else if (selection.status != ProgrammeStatus::Optimal) {
        selection.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The time was up before the selection was proven the best."),
             {}});
    }
    return selection;
}

Result<std::vector<AmongBest>> amongBest(std::span<const double> predictions,
                                         std::span<const double> errorCovariance,
                                         std::size_t k,
                                         std::size_t draws) {
    const std::size_t n = predictions.size();
    const bool hasSize = errorCovariance.size() == n || errorCovariance.size() == n * n;
    if (k < 1 || k > n || draws < 1 || !hasSize || !isFinite(predictions) ||
        !isFinite(errorCovariance)) {
        return wrong("The best of candidates need a prediction for each, with the variances of "
                     "their errors, and are at least one and at most all.");
    }
    const Matrix root = rootOf(errorCovariance, n);
    if (root.size() == 0) {
        return wrong("The variances of the predictions' errors contradict one another.");
    }
    const Vector mean = Eigen::Map<const Vector>(predictions.data(), static_cast<Index>(n));
    std::mt19937_64 dice(20250917);
    std::vector<std::size_t> hits(n, 0);
    std::vector<std::size_t> order(n);
    Vector normal(static_cast<Index>(n));
    Vector value(static_cast<Index>(n));
    for (std::size_t draw = 0; draw < draws; ++draw) {
        for (Index i = 0; i < normal.size(); ++i) {
            const double even = (static_cast<double>(dice() >> 11) + 0.5) * 0x1p-53;
            normal[i] = statistics::normalQuantile(even);
        }
        value.noalias() = mean + root * normal;
        std::iota(order.begin(), order.end(), std::size_t{0});
        const auto last = order.begin() + static_cast<std::ptrdiff_t>(k);
        std::nth_element(order.begin(), last, order.end(), [&value](std::size_t a, std::size_t b) {
            const double one = value[static_cast<Index>(a)];
            const double other = value[static_cast<Index>(b)];
            return one != other ? one > other : a < b;
        });
        std::for_each(order.begin(), last, [&hits](std::size_t i) { ++hits[i]; });
    }
    std::vector<AmongBest> chances;
    for (const std::size_t hit : hits) {
        const double p = static_cast<double>(hit) / static_cast<double>(draws);
        // With a half added to both, so that no draw in thousands is not told as an error of 0.
        const double kept = (static_cast<double>(hit) + 0.5) / (static_cast<double>(draws) + 1);
        chances.push_back({p, std::sqrt(kept * (1 - kept) / static_cast<double>(draws))});
    }
    return chances;
}

} // namespace bullace::breeding
