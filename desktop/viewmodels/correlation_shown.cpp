// Whether one descriptor goes with another: correlations by a mixed model of both, and the
// accessions' means as points.
#include "desk/prediction_shown.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <cmath>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(CorrelationShown)
};

QString correlationText(const std::optional<trials::Correlation>& of) {
    if (!of) {
        return {};
    }
    const QString value = numberText(of->value, 2);
    return of->isAtBoundary ? Tr::tr("%1, on its boundary").arg(value) : value;
}
QString errorText(const std::optional<trials::Correlation>& of) {
    return of && of->standardError ? numberText(*of->standardError, 2) : QString();
}

void addRow(const QString& words,
            const std::string& key,
            const std::optional<trials::Correlation>& correlation,
            Study& study) {
    GridRow row;
    row.key = QStringLiteral("term ") + fromText(key);
    row.cells << words << correlationText(correlation) << errorText(correlation);
    study.rows.push_back(std::move(row));
}

// The mean of each level's records that are there; NaN where none is.
std::vector<double> meansBy(const trials::Factor& factor, const std::vector<double>& values) {
    std::vector<double> sum(factor.levels.size(), 0.0);
    std::vector<double> count(factor.levels.size(), 0.0);
    for (std::size_t row = 0; row < values.size(); ++row) {
        if (std::isfinite(values[row])) {
            sum[factor.of[row]] += values[row];
            count[factor.of[row]] += 1;
        }
    }
    for (std::size_t level = 0; level < sum.size(); ++level) {
        sum[level] /= count[level]; // of none: NaN
    }
    return sum;
}

void addPicture(const ShownCorrelation& shown, Study& study) {
    const trials::Factor& accession = *shown.both.trial.table.factor(season::kAccessionFactor);
    const std::vector<double> one = meansBy(accession, shown.both.trial.table.response);
    const std::vector<double> two = meansBy(accession, shown.both.other);
    report::PlotSeries points;
    points.name = toText(Tr::tr("Means of accessions"));
    for (std::size_t level = 0; level < one.size(); ++level) {
        if (std::isfinite(one[level]) && std::isfinite(two[level])) {
            report::PlotPoint point;
            point.x = one[level];
            point.y = two[level];
            point.label = accession.levels[level];
            points.points.push_back(std::move(point));
        }
    }
    if (points.points.empty()) {
        return;
    }
    report::Plot plot;
    plot.title = toText(study.title);
    plot.x.title = toText(shown.one.title);
    plot.x.unit = shown.one.unit;
    plot.y.title = toText(shown.two.title);
    plot.y.unit = shown.two.unit;
    plot.notes.count = shown.correlated.both;
    plot.notes.missing =
        toText(Tr::tr("Accessions that lack one of the two are not drawn. The count is of records "
                      "that have both."));
    plot.series.push_back(std::move(points));
    study.plot = std::move(plot);
}

} // namespace

void showCorrelation(const ShownCorrelation& shown, Study& study) {
    study.columns = {{Tr::tr("Between"), 24, false, true},
                     {Tr::tr("Correlation"), 24, true},
                     {Tr::tr("SE"), 8, true}};
    for (const trials::TermCorrelation& term : shown.correlated.terms) {
        addRow(termWords(term.name), term.name, term.correlation, study);
    }
    addRow(
        Tr::tr("single records, all together"), "phenotypic", shown.correlated.phenotypic, study);
    const trials::TermCorrelation* accession = shown.correlated.term(season::kAccessionFactor);
    study.words =
        accession != nullptr && accession->correlation
            ? Tr::tr("Among accessions the correlation is %1.")
                  .arg(correlationText(accession->correlation))
            : Tr::tr("One of the two does not vary among accessions: there is no correlation.");
    study.remarks.push_back(
        {BULLACE_SENTENCE("Remark",
                          "Records with both: %1; with the first alone: %2; with the "
                          "second alone: %3."),
         {static_cast<std::int64_t>(shown.correlated.both),
          static_cast<std::int64_t>(shown.correlated.oneAlone),
          static_cast<std::int64_t>(shown.correlated.otherAlone)}});
    addPicture(shown, study);
}

} // namespace bullace::desk
