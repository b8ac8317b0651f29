// The indices are small systems by Cholesky; matrices that cannot be are found by the eigenvalues
// of their correlations, so that traits' units do not matter.
#include "core/breeding/selection_index.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

namespace bullace::breeding {

namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;
using Index = Eigen::Index;
constexpr double kLeastEigenvalue = 1e-4; // that bending raises to
constexpr double kSingular = 1e-10;       // eigenvalues of correlations below it count as 0

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), ""};
}

Matrix matrixOf(std::span<const double> rows, std::size_t size) {
    const auto n = static_cast<Index>(size);
    return Eigen::Map<const Eigen::Matrix<double, -1, -1, Eigen::RowMajor>>(rows.data(), n, n);
}

Vector vectorOf(std::span<const double> values) {
    return Eigen::Map<const Vector>(values.data(), static_cast<Index>(values.size()));
}

std::vector<double> listOf(const Vector& values) {
    return {values.data(), values.data() + values.size()};
}

struct Variances {
    Matrix phenotypic;
    Matrix genetic;
    Remarks remarks;
};

// Which of the two matrices, and what it has to be.
struct Kind {
    std::string name;
    bool mayBeSingular = false;
};

Status checkNumbers(const Matrix& matrix, const Kind& kind, const TraitVariances& variances) {
    for (Index i = 0; i < matrix.rows(); ++i) {
        const std::string& trait = variances.traits[static_cast<std::size_t>(i)];
        for (Index j = 0; j < matrix.cols(); ++j) {
            const double scale = std::sqrt(std::abs(matrix(i, i) * matrix(j, j)));
            if (!std::isfinite(matrix(i, j)) || !std::isfinite(scale)) {
                return wrong("The " + kind.name + " variances of " + trait + " are no numbers.");
            }
            if (std::abs(matrix(i, j) - matrix(j, i)) > 1e-6 * scale) {
                return wrong("The " + kind.name + " covariance of " + trait + " and " +
                             variances.traits[static_cast<std::size_t>(j)] +
                             " is given with two values.");
            }
        }
        if (matrix(i, i) < 0 || (matrix(i, i) == 0 && !kind.mayBeSingular)) {
            return wrong("The " + kind.name + " variance of " + trait + " is not above 0.");
        }
    }
    return {};
}

// The matrix itself, or bent; an error where it is not positive definite and may not be bent.
Result<Matrix> usable(const Matrix& given, const Kind& kind, Bending bending, Remarks& remarks) {
    const Matrix matrix = (given + given.transpose()) / 2;
    const Vector scale =
        matrix.diagonal().cwiseSqrt().unaryExpr([](double sd) { return sd > 0 ? sd : 1.0; });
    const Matrix correlations =
        scale.cwiseInverse().asDiagonal() * matrix * scale.cwiseInverse().asDiagonal();
    const Eigen::SelfAdjointEigenSolver<Matrix> eigen(correlations);
    const double least = eigen.eigenvalues().minCoeff();
    if (least > kSingular || (kind.mayBeSingular && least > -kSingular)) {
        return matrix;
    }
    if (bending == Bending::Refused) {
        return wrong("The " + kind.name +
                     " variances and covariances contradict one another: some combination of the "
                     "traits would have no variance or a negative one. Estimate them together, "
                     "leave a trait out, or allow bending.");
    }
    remarks.push_back({BULLACE_SENTENCE("Remark",
                                        "The %1 variances contradicted one another and were bent; "
                                        "the least eigenvalue of their correlations was %2."),
                       {kind.name, Remark::Number{least, 4}}});
    const Vector raised = eigen.eigenvalues().cwiseMax(kLeastEigenvalue);
    const Matrix bent =
        eigen.eigenvectors() * raised.asDiagonal() * eigen.eigenvectors().transpose();
    return Matrix(scale.asDiagonal() * bent * scale.asDiagonal());
}

enum class Genetic { MayBeSingular, MustHaveInverse };

Result<Variances> checked(const TraitVariances& given,
                          std::span<const double> weights,
                          Bending bending,
                          Genetic genetic) {
    const std::size_t n = given.traits.size();
    if (n == 0 || given.phenotypic.size() != n * n || given.genetic.size() != n * n ||
        weights.size() != n) {
        return wrong("An index needs at least one trait, and for each a weight and its variances "
                     "and covariances with all.");
    }
    if (!std::ranges::all_of(weights, [](double weight) { return std::isfinite(weight); })) {
        return wrong("A weight is no number.");
    }
    const Kind kinds[] = {{"phenotypic", false}, {"genetic", genetic == Genetic::MayBeSingular}};
    Variances variances{matrixOf(given.phenotypic, n), matrixOf(given.genetic, n), {}};
    Matrix* matrices[] = {&variances.phenotypic, &variances.genetic};
    for (std::size_t k = 0; k < 2; ++k) {
        if (const Status sound = checkNumbers(*matrices[k], kinds[k], given); !sound) {
            return sound.error();
        }
        auto matrix = usable(*matrices[k], kinds[k], bending, variances.remarks);
        if (!matrix) {
            return matrix.error();
        }
        *matrices[k] = std::move(*matrix);
    }
    for (Index i = 0; i < variances.genetic.rows(); ++i) {
        if (variances.genetic(i, i) > variances.phenotypic(i, i) * (1 + 1e-9)) {
            variances.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "The genetic variance of %1 is greater than its phenotypic one: "
                                  "what is expected of the index is too good."),
                 {given.traits[static_cast<std::size_t>(i)]}});
        }
    }
    return variances;
}

SelectionIndex described(std::string method,
                         const Vector& b,
                         const std::optional<Vector>& weights,
                         Variances&& variances,
                         const TraitVariances& given) {
    const Matrix& p = variances.phenotypic;
    const Matrix& g = variances.genetic;
    SelectionIndex index;
    index.method = std::move(method);
    index.traits = given.traits;
    index.coefficients = listOf(b);
    index.variance = std::max(b.dot(p * b), 0.0);
    const double sd = std::sqrt(index.variance);
    const double objective = weights ? weights->dot(g * *weights) : 0;
    if (weights) {
        index.weights = listOf(*weights);
        index.objectiveVariance = std::max(objective, 0.0);
        index.objectiveResponse = sd > 0 ? b.dot(g * *weights) / sd : 0;
    }
    if (sd > 0) {
        index.heritability = b.dot(g * b) / index.variance;
        index.traitResponse = listOf(g * b / sd);
    } else {
        index.traitResponse.assign(given.traits.size(), 0);
        index.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "The index has no variance: it ranks nobody."), {}});
    }
    if (sd > 0 && objective > 0) {
        index.accuracy = b.dot(g * *weights) / (sd * std::sqrt(objective));
    }
    index.variances.traits = given.traits;
    for (Index i = 0; i < p.rows(); ++i) {
        for (Index j = 0; j < p.cols(); ++j) {
            index.variances.phenotypic.push_back(p(i, j));
            index.variances.genetic.push_back(g(i, j));
        }
    }
    index.remarks.insert(index.remarks.end(), variances.remarks.begin(), variances.remarks.end());
    return index;
}

// Of a candidate: index and accuracy from the traits measured, as weights on those.
struct Pattern {
    std::vector<Index> measured;
    Vector coefficients;
    std::optional<double> accuracy;
};

Pattern patternOf(const SelectionIndex& index, const std::vector<bool>& isMeasured) {
    const Matrix p = matrixOf(index.variances.phenotypic, index.traits.size());
    const Vector b = vectorOf(index.coefficients);
    Pattern pattern;
    for (std::size_t t = 0; t < isMeasured.size(); ++t) {
        if (isMeasured[t]) {
            pattern.measured.push_back(static_cast<Index>(t));
        }
    }
    const Matrix own = p(pattern.measured, pattern.measured);
    const Vector covariance = (p * b)(pattern.measured);
    pattern.coefficients = own.llt().solve(covariance);
    const double variance = pattern.coefficients.dot(covariance);
    if (index.accuracy && variance > 0) {
        const Vector withObjective =
            matrixOf(index.variances.genetic, index.traits.size()) * vectorOf(index.weights);
        pattern.accuracy = pattern.coefficients.dot(withObjective(pattern.measured).eval()) /
                           std::sqrt(variance * *index.objectiveVariance);
    }
    return pattern;
}

Status checkCandidates(const SelectionIndex& index,
                       std::span<const IndexCandidate> candidates,
                       std::span<const double> means) {
    if (!means.empty() && means.size() != index.traits.size()) {
        return wrong("The means to centre at are not as many as the traits.");
    }
    std::set<std::string> ids;
    for (const IndexCandidate& candidate : candidates) {
        if (candidate.values.size() != index.traits.size()) {
            return wrong(candidate.id + " has not one value or gap for each trait.");
        }
        if (!ids.insert(candidate.id).second) {
            return wrong("The candidate " + candidate.id + " is there twice.");
        }
        for (const std::optional<double>& value : candidate.values) {
            if (value && !std::isfinite(*value)) {
                return wrong("A value of " + candidate.id + " is no number.");
            }
        }
    }
    return {};
}

std::vector<double> meansOf(std::span<const IndexCandidate> candidates, std::size_t traits) {
    std::vector<double> means(traits, 0);
    for (std::size_t t = 0; t < traits; ++t) {
        double n = 0;
        for (const IndexCandidate& candidate : candidates) {
            if (candidate.values[t]) {
                n += 1;
                means[t] += (*candidate.values[t] - means[t]) / n;
            }
        }
    }
    return means;
}

void rank(std::vector<CandidateIndex>& candidates) {
    std::ranges::sort(candidates, [](const CandidateIndex& a, const CandidateIndex& b) {
        constexpr double kLast = -std::numeric_limits<double>::infinity();
        const double one = a.index.value_or(kLast);
        const double other = b.index.value_or(kLast);
        return one != other ? one > other : a.id < b.id;
    });
    for (std::size_t i = 0; i < candidates.size() && candidates[i].index; ++i) {
        const bool isTied = i > 0 && candidates[i].index == candidates[i - 1].index;
        candidates[i].rank = isTied ? candidates[i - 1].rank : i + 1;
    }
}

} // namespace

Result<SelectionIndex>
smithHazel(const TraitVariances& given, std::span<const double> weights, Bending bending) {
    return restrictedIndex(given, weights, {}, bending);
}

Result<SelectionIndex>
baseIndex(const TraitVariances& given, std::span<const double> weights, Bending bending) {
    auto variances = checked(given, weights, bending, Genetic::MayBeSingular);
    if (!variances) {
        return variances.error();
    }
    const Vector w = vectorOf(weights);
    return described("base index (Williams 1962)", w, w, std::move(*variances), given);
}

Result<SelectionIndex>
desiredGains(const TraitVariances& given, std::span<const double> gains, Bending bending) {
    auto variances = checked(given, gains, bending, Genetic::MustHaveInverse);
    if (!variances) {
        return variances.error();
    }
    const Vector b = variances->genetic.llt().solve(vectorOf(gains));
    return described("desired gains (Pesek and Baker 1969)", b, {}, std::move(*variances), given);
}

Result<SelectionIndex> restrictedIndex(const TraitVariances& given,
                                       std::span<const double> weights,
                                       std::span<const std::size_t> held,
                                       Bending bending) {
    auto variances = checked(given, weights, bending, Genetic::MayBeSingular);
    if (!variances) {
        return variances.error();
    }
    std::vector<Index> columns;
    for (const std::size_t trait : held) {
        const auto column = static_cast<Index>(trait);
        if (trait >= given.traits.size() || std::ranges::count(columns, column) > 0) {
            return wrong("A trait to be held is not there, or named twice.");
        }
        columns.push_back(column);
    }
    if (held.size() >= given.traits.size()) {
        return wrong("If every trait is held there is nothing left to select for.");
    }
    const Vector w = vectorOf(weights);
    const Eigen::LLT<Matrix> p(variances->phenotypic);
    Vector b = p.solve(variances->genetic * w);
    if (held.empty()) {
        return described("Smith (1936) and Hazel (1943)", b, w, std::move(*variances), given);
    }
    const Matrix c = variances->genetic(Eigen::all, columns);
    const Matrix pc = p.solve(c);
    // Rank-revealing: two held traits may be one genetically.
    b -= pc * (c.transpose() * pc).completeOrthogonalDecomposition().solve(c.transpose() * b);
    return described(
        "restricted index (Kempthorne and Nordskog 1959)", b, w, std::move(*variances), given);
}

Result<RankedCandidates> rankByIndex(const SelectionIndex& index,
                                     std::span<const IndexCandidate> candidates,
                                     std::span<const double> means) {
    if (const Status sound = checkCandidates(index, candidates, means); !sound) {
        return sound.error();
    }
    RankedCandidates result;
    const std::size_t traits = index.traits.size();
    result.means = means.empty() ? meansOf(candidates, traits)
                                 : std::vector<double>(means.begin(), means.end());
    std::map<std::vector<bool>, Pattern> patterns;
    std::int64_t incomplete = 0;
    std::int64_t unmeasured = 0;
    for (const IndexCandidate& candidate : candidates) {
        CandidateIndex of;
        of.id = candidate.id;
        std::vector<bool> isMeasured;
        for (const std::optional<double>& value : candidate.values) {
            isMeasured.push_back(value.has_value());
            of.measured += value ? 1U : 0U;
        }
        incomplete += of.measured > 0 && of.measured < traits ? 1 : 0;
        unmeasured += of.measured == 0 ? 1 : 0;
        if (of.measured > 0) {
            auto at = patterns.find(isMeasured);
            if (at == patterns.end()) {
                at = patterns.emplace(isMeasured, patternOf(index, isMeasured)).first;
            }
            const Pattern& pattern = at->second;
            double sum = 0;
            for (std::size_t k = 0; k < pattern.measured.size(); ++k) {
                const auto t = static_cast<std::size_t>(pattern.measured[k]);
                sum += pattern.coefficients[static_cast<Index>(k)] *
                       (*candidate.values[t] - result.means[t]);
            }
            of.index = sum;
            of.accuracy = pattern.accuracy;
        }
        result.candidates.push_back(std::move(of));
    }
    rank(result.candidates);
    if (incomplete > 0) {
        result.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Candidates of which not every trait was measured: %1. Their index "
                              "is from the measured traits, and less accurate."),
             {incomplete}});
    }
    if (unmeasured > 0) {
        result.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                   "Candidates of which nothing was measured: %1. "
                                                   "They have no index."),
                                  {unmeasured}});
    }
    return result;
}

} // namespace bullace::breeding
