// Columns of a file as a trial's table; tables of variance and means as parts of a document.
#include "console/trial_file.hpp"

#include <limits>

namespace bullace::console {

namespace {

Result<std::vector<double>> numbersOf(const WorkFile& file, const std::string& name) {
    const auto column = file.column(name);
    if (!column) {
        return column.error();
    }
    std::vector<double> values;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const auto number = file.numberIfThere(row, *column);
        if (!number) {
            return number.error();
        }
        values.push_back(number->value_or(std::numeric_limits<double>::quiet_NaN()));
    }
    return values;
}

void describePairs(const trials::AdjustedMeans& means,
                   const trials::Comparisons& compared,
                   Document& into) {
    DocumentList& pairs = into.list("differences");
    for (const trials::Difference& pair : compared.pairs) {
        Document& of = pairs.add();
        of.text("of", means.levels[pair.one].level).text("minus", means.levels[pair.other].level);
        of.number("value", pair.value).number("standard error", pair.standardError);
        of.number("t", pair.t).number("p", pair.p);
        of.number("least significant difference", pair.leastSignificant);
        of.number("p of Tukey", pair.pTukey);
        of.number("least difference of Tukey", pair.leastTukey);
        of.interval("limits of Tukey", pair.tukey);
        of.number("p after Holm", pair.pHolm).number("p after Bonferroni", pair.pBonferroni);
        of.number("p by false discovery rate", pair.pFalseDiscovery);
    }
    DocumentList& toReference = into.list("differences from the reference");
    for (const trials::ReferenceDifference& each : compared.toReference) {
        Document& of = toReference.add();
        of.text("of", means.levels[each.level].level);
        of.estimate("value", each.value);
        of.number("t", each.t).number("p of Dunnett", each.p);
    }
}

void describeCompared(const trials::Comparisons& compared, Document& into) {
    into.number("level of significance", compared.alpha);
    into.number("degrees of freedom", compared.degreesOfFreedom);
    into.number("quantile of t", compared.tQuantile);
    into.number("quantile of the studentized range", compared.rangeQuantile);
    into.number("quantile of Dunnett", compared.dunnettQuantile);
    into.number("standard error of a difference", compared.meanError);
    into.number("least standard error of a difference", compared.leastError);
    into.number("greatest standard error of a difference", compared.greatestError);
    into.number("least significant difference", compared.leastSignificant);
    into.number("least difference of Tukey", compared.leastTukey);
}

} // namespace

Result<trials::TrialTable> trialTableOf(const WorkFile& file, const TrialColumns& columns) {
    trials::TrialTable table;
    table.responseName = columns.response;
    auto response = numbersOf(file, columns.response);
    if (!response) {
        return response.error();
    }
    table.response = std::move(*response);
    for (const std::string& name : columns.covariates) {
        auto values = numbersOf(file, name);
        if (!values) {
            return values.error();
        }
        table.covariates.push_back({name, std::move(*values)});
    }
    for (const std::string& name : columns.factors) {
        if (name.empty() || table.factor(name) != nullptr) {
            continue;
        }
        const auto column = file.column(name);
        if (!column) {
            return column.error();
        }
        std::vector<std::string> cells;
        for (std::size_t row = 0; row < file.rows(); ++row) {
            cells.push_back(file.isMissing(row, *column) ? std::string() : file.text(row, *column));
        }
        table.factors.push_back(trials::makeFactor(name, cells));
    }
    return table;
}

void describeLines(std::string_view name,
                   const std::vector<trials::VarianceLine>& lines,
                   Document& into) {
    DocumentList& list = into.list(name);
    for (const trials::VarianceLine& line : lines) {
        Document& of = list.add();
        of.text("term", line.term).count("degrees of freedom", line.degreesOfFreedom);
        of.number("sum of squares", line.sumOfSquares).number("mean square", line.meanSquare);
        if (line.term != "Residuals") {
            of.number("F", line.f).number("p", line.p);
        }
    }
}

void describeMeans(const trials::AdjustedMeans& means,
                   const trials::Comparisons* comparisons,
                   Document& into) {
    into.text("term", means.term);
    DocumentList& levels = into.list("means");
    for (std::size_t i = 0; i < means.levels.size(); ++i) {
        const trials::AdjustedMean& level = means.levels[i];
        Document& of = levels.add();
        of.text("level", level.level).count("records", level.n);
        of.number("plain mean", level.rawMean).estimate("mean", level.mean);
        if (comparisons != nullptr && i < comparisons->letters.size()) {
            of.text("letters of Tukey", comparisons->letters[i]);
            of.text("letters by least significant difference", comparisons->lettersByT[i]);
        }
    }
    if (comparisons != nullptr) {
        describeCompared(*comparisons, into);
        describePairs(means, *comparisons, into);
    }
}

} // namespace bullace::console
