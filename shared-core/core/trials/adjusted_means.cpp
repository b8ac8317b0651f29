// Least-squares means of a linear model: linear functions of its coefficients, where the records
// allow them.
#include "core/statistics/distributions.hpp"
#include "core/trials/linear_parts_matrix.hpp"

#include <Eigen/SparseCore>
#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::trials {

namespace {

using Functions = std::vector<std::optional<ColumnSpace::Function>>;

std::vector<double>
covarianceOf(const Functions& functions, const Eigen::VectorXd& groupSizes, double variance) {
    const std::size_t size = functions.size();
    std::vector<double> covariance(size * size, 0.0);
    // Most means weight few groups, often one.
    std::vector<Eigen::SparseVector<double>> groups(size);
    for (std::size_t i = 0; i < size; ++i) {
        if (functions[i]) {
            groups[i] = functions[i]->groups.sparseView();
        }
    }
    for (std::size_t i = 0; i < size; ++i) {
        if (!functions[i]) {
            continue;
        }
        const Eigen::SparseVector<double> shares =
            functions[i]->groups.cwiseQuotient(groupSizes).sparseView();
        for (std::size_t j = 0; j <= i; ++j) {
            if (functions[j]) {
                covariance[i * size + j] =
                    variance *
                    (shares.dot(groups[j]) + functions[i]->basis.dot(functions[j]->basis));
                covariance[j * size + i] = covariance[i * size + j];
            }
        }
    }
    return covariance;
}

} // namespace

double LinearModel::Parts::weight(std::size_t term, std::size_t cell, const FixedLevels& at) const {
    const TermColumns& columnsOf = terms[term];
    double weight = columnsOf.hasCovariate() ? 0 : 1;
    for (std::size_t i = 0; i < columnsOf.factors().size() && weight > 0; ++i) {
        const Factor* factor = columnsOf.factors()[i];
        const auto fixed =
            std::ranges::find_if(at, [factor](const auto& each) { return each.first == factor; });
        weight *= fixed == at.end() ? 1 / static_cast<double>(factor->levels.size())
                  : fixed->second == columnsOf.levelIn(cell, i) ? 1.0
                                                                : 0.0;
    }
    return weight;
}

// Whether a mean takes in combinations of the term's factors that have no record.
bool LinearModel::Parts::needsUnseen(std::size_t term, double seen) const {
    const bool isAbsorbing = absorbed && *absorbed == term;
    const bool counts = isAbsorbing || !isAbsorbed(term, absorbed);
    return counts && terms[term].cells() && !terms[term].hasCovariate() &&
           std::abs(seen - 1) > 1e-7;
}

std::optional<ColumnSpace::Function> LinearModel::Parts::meanFunction(const FixedLevels& at,
                                                                      std::string& inTheWay) const {
    Eigen::VectorXd groups = Eigen::VectorXd::Ones(space->groupSizes().size());
    std::vector<double> seen(terms.size(), 0.0);
    for (Eigen::Index group = 0; absorbed && group < groups.size(); ++group) {
        groups[group] = weight(*absorbed, static_cast<std::size_t>(group), at);
        seen[*absorbed] += groups[group];
    }
    Eigen::VectorXd onColumns(static_cast<Eigen::Index>(columns.size()));
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const auto [term, cell] = columns[i];
        const double share = weight(term, cell, at);
        onColumns[static_cast<Eigen::Index>(i)] = share;
        seen[term] += share;
    }
    for (std::size_t term = 0; term < terms.size(); ++term) {
        if (needsUnseen(term, seen[term])) {
            inTheWay = termName(terms[term].term());
            return {};
        }
    }
    std::size_t violated = 0;
    auto function = space->function(groups, onColumns, violated);
    if (!function) {
        inTheWay = termName(terms[columns[violated].first].term());
    }
    return function;
}

namespace {

// The factors of a mean, which must be those of the model.
Result<std::vector<const Factor*>>
factorsOf(const Term& term, const TrialTable& table, const std::vector<TermColumns>& terms) {
    std::vector<const Factor*> factors;
    for (const std::string& name : term) {
        const Factor* factor = table.factor(name);
        const bool isThere =
            factor != nullptr && std::ranges::any_of(terms, [&](const TermColumns& each) {
                return std::ranges::find(each.factors(), factor) != each.factors().end();
            });
        if (!isThere || std::ranges::find(factors, factor) != factors.end()) {
            return Error{ErrorCode::InvalidInput,
                         "There are no means of \"" + name +
                             "\": it is no factor of the model, or named twice.",
                         {}};
        }
        factors.push_back(factor);
    }
    if (factors.empty()) {
        return Error{ErrorCode::InvalidInput, "Means of which factor? None is named.", {}};
    }
    return factors;
}

// Numbers of records and plain means.
std::vector<AdjustedMean> rawMeans(const Factor& cells, const std::vector<double>& response) {
    std::vector<AdjustedMean> means(cells.levels.size());
    const double origin = response.front();
    for (std::size_t row = 0; row < response.size(); ++row) {
        AdjustedMean& mean = means[cells.of[row]];
        ++mean.n;
        mean.rawMean += response[row] - origin;
    }
    for (std::size_t level = 0; level < means.size(); ++level) {
        means[level].level = cells.levels[level];
        means[level].rawMean = origin + means[level].rawMean / static_cast<double>(means[level].n);
    }
    return means;
}

} // namespace

Result<AdjustedMeans> LinearModel::means(const Term& term) const {
    const Parts& parts = *parts_;
    const auto factors = factorsOf(term, parts.table, parts.terms);
    if (!factors) {
        return factors.error();
    }
    const TermColumns target(parts.table, term);
    AdjustedMeans result;
    result.term = termName(term);
    result.degreesOfFreedom = static_cast<double>(parts.summary.degreesOfFreedom);
    result.levels = rawMeans(*target.cells(), parts.table.response);
    const auto& variance = parts.summary.residualVariance;
    const double t = variance ? statistics::studentTQuantile(0.975, result.degreesOfFreedom) : 0;
    Functions functions(result.levels.size());
    std::set<std::string> inTheWay;
    for (std::size_t level = 0; level < functions.size(); ++level) {
        FixedLevels at;
        for (std::size_t i = 0; i < factors->size(); ++i) {
            at.emplace_back((*factors)[i], target.levelIn(level, i));
        }
        std::string missed;
        const auto function = parts.meanFunction(at, missed);
        if (!function) {
            inTheWay.insert(missed);
            continue;
        }
        const double value = parts.shift + function->groups.dot(parts.groupMeans) +
                             function->basis.dot(parts.products);
        const double unit =
            function->groups.cwiseAbs2().cwiseQuotient(parts.space->groupSizes()).sum() +
            function->basis.squaredNorm();
        result.levels[level].mean =
            variance ? statistics::estimateAround(value, std::sqrt(*variance * unit), t)
                     : statistics::Estimate{value};
        functions[level] = function;
    }
    for (const std::string& name : inTheWay) {
        result.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Some adjusted means of %1 cannot be estimated: what they would need "
                              "of %2 has no record, or cannot be told from other terms."),
             {result.term, name}});
    }
    if (variance && functions.size() <= kMostCovariances) {
        result.covariance = covarianceOf(functions, parts.space->groupSizes(), *variance);
    }
    return result;
}

std::optional<double> AdjustedMeans::differenceError(std::size_t one, std::size_t other) const {
    if (covariance.empty() || !levels[one].mean || !levels[other].mean) {
        return {};
    }
    const std::size_t size = levels.size();
    const double variance = covariance[one * size + one] + covariance[other * size + other] -
                            2 * covariance[one * size + other];
    return std::sqrt(std::max(variance, 0.0));
}

} // namespace bullace::trials
