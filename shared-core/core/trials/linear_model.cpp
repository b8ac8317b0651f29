// Least squares over the space of a model's columns: taking the records, solving, and the
// residuals.
#include "core/trials/linear_model.hpp"

#include "core/trials/linear_parts_matrix.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::trials {

namespace {

constexpr double kGreatestResponse = 1e150;
constexpr double kMostCells = 1e8; // numbers of the basis

Error invalid(const std::string& message) {
    return {ErrorCode::InvalidInput, message, {}};
}

Result<void> checkTerms(std::span<const Term> terms) {
    std::set<std::set<std::string>> seen;
    for (const Term& term : terms) {
        if (!seen.insert({term.begin(), term.end()}).second) {
            return invalid("The term " + termName(term) + " stands twice in the model.");
        }
    }
    return {};
}

} // namespace

TermIndices LinearModel::Parts::all() const {
    TermIndices chosen;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        chosen.push_back(i);
    }
    return chosen;
}

std::optional<std::size_t> LinearModel::Parts::largest(const TermIndices& chosen) const {
    std::optional<std::size_t> found;
    for (const std::size_t i : chosen) {
        const bool isPlain = terms[i].cells() && !terms[i].hasCovariate();
        if (isPlain &&
            (!found || terms[i].cells()->levels.size() > terms[*found].cells()->levels.size())) {
            found = i;
        }
    }
    return found;
}

const Factor* LinearModel::Parts::cellsOf(std::optional<std::size_t> term) const {
    return term ? &*terms[*term].cells() : nullptr;
}

// Whether the groups span the term already.
bool LinearModel::Parts::isAbsorbed(std::size_t term, std::optional<std::size_t> into) const {
    return into && !terms[term].hasCovariate() && terms[term].isWithin(terms[*into]);
}

double LinearModel::Parts::work() const {
    double count = 0;
    const auto into = largest(all());
    for (std::size_t i = 0; i < terms.size(); ++i) {
        count += isAbsorbed(i, into) ? 0 : static_cast<double>(terms[i].columns(Coding::Cells));
    }
    return count;
}

Explained LinearModel::Parts::leftBy(const ColumnSpace& of) const {
    const double squares = of.residuals(y).squaredNorm();
    return {squares > noise ? squares : 0, of.rank()};
}

const Explained& LinearModel::Parts::explained(const TermIndices& chosen) {
    const auto found = known.find(chosen);
    if (found != known.end()) {
        return found->second;
    }
    const auto into = largest(chosen);
    ColumnSpace small(y.size(), cellsOf(into));
    for (const std::size_t i : chosen) {
        const std::size_t count = isAbsorbed(i, into) ? 0 : terms[i].columns(Coding::Cells);
        for (std::size_t column = 0; column < count; ++column) {
            small.add(terms[i].column(Coding::Cells, column), ColumnSpace::Keep::Basis);
        }
    }
    return known.emplace(chosen, leftBy(small)).first->second;
}

Result<void> LinearModel::Parts::take(const TrialTable& from,
                                      std::span<const std::size_t> complete,
                                      std::span<const Term> names) {
    table = rowsOf(from, complete);
    shift = table.response.front();
    y.resize(static_cast<Eigen::Index>(complete.size()));
    for (std::size_t i = 0; i < complete.size(); ++i) {
        const double value = table.response[i];
        if (std::abs(value) > kGreatestResponse) {
            return invalid("A value of " + table.responseName + " is too large to be true.");
        }
        y[static_cast<Eigen::Index>(i)] = value - shift;
        rows.push_back(FittedRow{complete[i], 0, 0, 0, {}});
    }
    const double n = static_cast<double>(complete.size());
    const double greatest = y.cwiseAbs().maxCoeff();
    noise = 1e-26 * greatest * greatest * n;
    for (const Term& term : names) {
        terms.emplace_back(table, term);
    }
    const double columnCount = std::min(work(), n);
    if (columnCount * columnCount * n > kMostWork || columnCount * n > kMostCells) {
        return Error{ErrorCode::BeyondLimit,
                     "The model has too many levels beside its largest factor to be solved as "
                     "fixed terms. Take the larger terms as random, in a mixed model.",
                     {}};
    }
    summary.leftOut = from.rows() - complete.size();
    tellLeftOut(summary.leftOut, summary.remarks);
    return {};
}

void LinearModel::Parts::solve() {
    absorbed = largest(all());
    space.emplace(y.size(), cellsOf(absorbed));
    for (std::size_t i = 0; i < terms.size(); ++i) {
        const std::size_t count = isAbsorbed(i, absorbed) ? 0 : terms[i].columns(Coding::Cells);
        for (std::size_t column = 0; column < count; ++column) {
            space->add(terms[i].column(Coding::Cells, column), ColumnSpace::Keep::Coefficients);
            columns.emplace_back(i, terms[i].cells() ? terms[i].order()[column] : 0);
        }
    }
    known.emplace(all(), leftBy(*space));
    groupMeans = space->groupMeans(y);
    products = space->basisProducts(y);
}

void LinearModel::Parts::summarise() {
    const Explained full = known.at(all());
    summary.n = static_cast<std::size_t>(y.size());
    summary.rank = full.rank;
    summary.degreesOfFreedom = summary.n - full.rank;
    summary.mean = shift + y.mean();
    summary.totalSquares = explained({}).residualSquares;
    summary.residualSquares = summary.degreesOfFreedom > 0 ? full.residualSquares : 0;
    if (summary.degreesOfFreedom > 0) {
        summary.residualVariance =
            summary.residualSquares / static_cast<double>(summary.degreesOfFreedom);
    }
    if (summary.residualVariance && summary.mean > 0) {
        summary.cvPercent = 100 * std::sqrt(*summary.residualVariance) / summary.mean;
    }
    if (summary.totalSquares > 0) {
        summary.rSquared = 1 - summary.residualSquares / summary.totalSquares;
    }
    sayWhatCannotBeTested();
}

void LinearModel::Parts::sayWhatCannotBeTested() {
    if (summary.degreesOfFreedom == 0) {
        summary.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "There are as many terms to estimate as records: nothing is left to "
                              "judge the error by, so there are no tests and no standard errors."),
             {}});
    }
    if (summary.totalSquares == 0) {
        summary.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "All records have the same value: nothing can be tested."),
             {}});
    } else if (summary.degreesOfFreedom > 0 && summary.residualSquares == 0) {
        summary.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The terms fit the records without any error: nothing can be "
                              "tested. Were the values calculated rather than measured?"),
             {}});
    }
}

void LinearModel::Parts::fillRows() {
    const Eigen::VectorXd left = space->residuals(y);
    const Eigen::VectorXd leverage = space->leverages();
    const double df = static_cast<double>(summary.degreesOfFreedom) - 1;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto at = static_cast<Eigen::Index>(i);
        FittedRow& row = rows[i];
        row.residual = left[at];
        row.fitted = shift + (y[at] - left[at]);
        row.leverage = std::clamp(leverage[at], 0.0, 1.0);
        const double free = 1 - row.leverage;
        if (free < 1e-9 || df < 1) {
            continue;
        }
        // Without this row the residual sum of squares is less by r²/(1 - h).
        const double others = summary.residualSquares - row.residual * row.residual / free;
        if (others > std::max(noise, 1e-12 * summary.residualSquares)) {
            row.studentised = row.residual / std::sqrt(others / df * free);
        }
    }
}

Result<LinearModel> LinearModel::fit(const TrialTable& table, std::span<const Term> terms) {
    const auto rows = completeRows(table, terms);
    const auto checked = checkTerms(terms);
    if (!rows || !checked) {
        return rows ? checked.error() : rows.error();
    }
    if (rows->empty()) {
        return invalid(table.rows() == 0 ? "There are no records."
                                         : "No record has a value of " + table.responseName +
                                               " and of every column of the model.");
    }
    auto parts = std::make_unique<Parts>();
    if (const auto taken = parts->take(table, *rows, terms); !taken) {
        return taken.error();
    }
    parts->solve();
    parts->summarise();
    parts->fillRows();
    parts->testOne();
    parts->testTwo();
    parts->nameWhatIsConfounded();
    parts->testThree();
    return LinearModel(std::move(parts));
}

LinearModel::LinearModel(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
LinearModel::LinearModel(LinearModel&&) noexcept = default;
LinearModel& LinearModel::operator=(LinearModel&&) noexcept = default;
LinearModel::~LinearModel() = default;

const ModelSummary& LinearModel::summary() const {
    return parts_->summary;
}

const std::vector<FittedRow>& LinearModel::rows() const {
    return parts_->rows;
}

} // namespace bullace::trials
