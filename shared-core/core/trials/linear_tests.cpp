// What the terms of a linear model explain: types I, II and III as differences between what smaller
// and larger models leave.
#include "core/statistics/distributions.hpp"
#include "core/trials/linear_parts_matrix.hpp"

#include <algorithm>
#include <set>

namespace bullace::trials {

VarianceLine
LinearModel::Parts::line(std::size_t term, const Explained& without, const Explained& with) const {
    VarianceLine line{termName(terms[term].term()), with.rank - without.rank};
    const double squares = without.residualSquares - with.residualSquares;
    line.sumOfSquares = line.degreesOfFreedom > 0 && squares > noise ? squares : 0;
    if (line.degreesOfFreedom == 0) {
        return line;
    }
    const double df = static_cast<double>(line.degreesOfFreedom);
    line.meanSquare = line.sumOfSquares / df;
    if (summary.residualVariance && *summary.residualVariance > 0) {
        line.f = *line.meanSquare / *summary.residualVariance;
        line.p = statistics::fAbove(*line.f, df, static_cast<double>(summary.degreesOfFreedom));
    }
    return line;
}

VarianceLine LinearModel::Parts::residualLine() const {
    return {"Residuals",
            summary.degreesOfFreedom,
            summary.residualSquares,
            summary.residualVariance,
            {},
            {}};
}

void LinearModel::Parts::testOne() {
    TermIndices before;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        const Explained without = explained(before);
        before.push_back(i);
        summary.typeOne.push_back(line(i, without, explained(before)));
    }
    summary.typeOne.push_back(residualLine());
}

void LinearModel::Parts::testTwo() {
    for (std::size_t i = 0; i < terms.size(); ++i) {
        TermIndices others;
        for (std::size_t j = 0; j < terms.size(); ++j) {
            if (!terms[i].isWithin(terms[j])) {
                others.push_back(j);
            }
        }
        const Explained without = explained(others);
        others.push_back(i);
        std::ranges::sort(others);
        summary.typeTwo.push_back(line(i, without, explained(others)));
    }
    summary.typeTwo.push_back(residualLine());
}

bool LinearModel::Parts::hasAllMargins() const {
    std::set<std::set<std::string>> there;
    for (const TermColumns& term : terms) {
        there.insert({term.term().begin(), term.term().end()});
    }
    return std::ranges::all_of(there, [&there](const std::set<std::string>& term) {
        return std::ranges::all_of(term, [&](const std::string& name) {
            std::set<std::string> margin = term;
            margin.erase(name);
            return margin.empty() || there.contains(margin);
        });
    });
}

std::optional<std::size_t> LinearModel::Parts::firstWithEmptyCells() const {
    for (std::size_t i = 0; i < terms.size(); ++i) {
        const auto& cells = terms[i].cells();
        if (cells && static_cast<double>(cells->levels.size()) < terms[i].possibleCells() - 0.5) {
            return i;
        }
    }
    return {};
}

Explained LinearModel::Parts::withoutSums(std::size_t left) const {
    ColumnSpace small(y.size(), nullptr);
    for (std::size_t i = 0; i < terms.size(); ++i) {
        const std::size_t count = i == left ? 0 : terms[i].columns(Coding::SumToZero);
        for (std::size_t column = 0; column < count; ++column) {
            small.add(terms[i].column(Coding::SumToZero, column), ColumnSpace::Keep::Basis);
        }
    }
    return leftBy(small);
}

void LinearModel::Parts::testThree() {
    const bool isMargin = std::ranges::any_of(terms, [this](const TermColumns& one) {
        return std::ranges::any_of(terms, [&one](const TermColumns& other) {
            return &one != &other && one.isWithin(other);
        });
    });
    if (!isMargin) {
        summary.typeThree = summary.typeTwo;
        return;
    }
    if (!hasAllMargins()) {
        return; // effects nested in others: there is no weighting of cells to speak of
    }
    if (const auto empty = firstWithEmptyCells()) {
        summary.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Some combinations of %1 have no record, so there is no type III "
                              "table: it would weight combinations that nobody has seen."),
             {termName(terms[*empty].term())}});
        return;
    }
    const double rank = static_cast<double>(summary.rank);
    if (rank * rank * static_cast<double>(y.size() * static_cast<Eigen::Index>(terms.size())) >
        kMostWork) {
        summary.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "The model is too large for a type III table."), {}});
        return;
    }
    for (std::size_t i = 0; i < terms.size(); ++i) {
        const bool isPart = std::ranges::any_of(terms, [this, i](const TermColumns& other) {
            return &other != &terms[i] && terms[i].isWithin(other);
        });
        summary.typeThree.push_back(isPart ? line(i, withoutSums(i), known.at(all()))
                                           : summary.typeTwo[i]);
    }
    summary.typeThree.push_back(residualLine());
}

void LinearModel::Parts::nameWhatIsConfounded() {
    for (std::size_t i = 0; i < terms.size(); ++i) {
        TermIndices margins;
        for (std::size_t j = 0; j < i; ++j) {
            if (terms[j].isWithin(terms[i])) {
                margins.push_back(j);
            }
        }
        const std::size_t before = explained(margins).rank;
        margins.push_back(i);
        const std::size_t alone = explained(margins).rank - before;
        const std::size_t found = summary.typeOne[i].degreesOfFreedom;
        if (found >= alone) {
            continue;
        }
        const std::string name = termName(terms[i].term());
        summary.notSeparable.push_back(name);
        summary.remarks.push_back(
            found == 0
                ? Remark{BULLACE_SENTENCE("Remark",
                                          "%1 cannot be told from the terms before it: it is "
                                          "confounded with them and was left out."),
                         {name}}
                : Remark{
                      BULLACE_SENTENCE("Remark",
                                       "%1 is partly confounded with the terms before it: of "
                                       "%2 degrees of freedom %3 can be estimated."),
                      {name, static_cast<std::int64_t>(alone), static_cast<std::int64_t>(found)}});
    }
}

} // namespace bullace::trials
