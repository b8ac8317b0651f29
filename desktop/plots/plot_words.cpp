#include "plots/plot_words.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>
#include <QLocale>

#include <cmath>
#include <type_traits>

namespace bullace::plots {

namespace {

using quick::dateWords;
using quick::fromText;
using report::PlotTable;

class Plots { // the context of their words
    Q_DECLARE_TR_FUNCTIONS(Plots)

public:
    static QString titled(const QString& title, const QString& unit) {
        //: A measure with its unit: Yield (kg)
        return tr("%1 (%2)").arg(title, unit);
    }
    static QString count(std::size_t count) {
        //: How many observations a plot is made of; n is the sign for it in statistics.
        return tr("n = %1").arg(QLocale().toString(static_cast<qulonglong>(count)));
    }
    static QString fromTo(const QString& from, const QString& to) {
        return from == to ? from : tr("%1 to %2").arg(from, to);
    }
    static QString since(const QString& from) { return tr("from %1").arg(from); }
    static QString until(const QString& to) { return tr("until %1").arg(to); }
    static QString nothing() { return tr("Nothing was noted for this yet."); }
    static QString against(const QString& y, const QString& x) { return tr("%1 by %2.").arg(y, x); }
    static QString points(int count) { return tr("%n point(s)", nullptr, count); }
    static QString series(const QString& name, const QString& points) {
        return tr("%1: %2").arg(name, points);
    }
    static QString runs(const QString& first, const QString& last) {
        return tr("from %1 to %2").arg(first, last);
    }
    static QString at(const QString& y, const QString& x) {
        //: A value and where it is: 5 kg at 14 May
        return tr("%1 at %2").arg(y, x);
    }
    static QString lowest(const QString& point) { return tr("lowest %1").arg(point); }
    static QString highest(const QString& point) { return tr("highest %1").arg(point); }
    static QString low(const QString& title) { return tr("%1, low end").arg(title); }
    static QString high(const QString& title) { return tr("%1, high end").arg(title); }
    static QString boxLow(const QString& title) { return tr("%1, lower quartile").arg(title); }
    static QString boxHigh(const QString& title) { return tr("%1, upper quartile").arg(title); }
    static QString seriesTitle() { return tr("Series"); }
    static QString labelTitle() { return tr("What"); }
    static QString weightTitle() { return tr("n"); }
};

QString numberText(double value) {
    return QLocale().toString(value, 'g', 4);
}

QString cellText(const PlotTable::Cell& cell) {
    return std::visit(
        [](const auto& value) -> QString {
            using Kind = std::decay_t<decltype(value)>;
            if constexpr (std::is_same_v<Kind, double>) {
                return numberText(value);
            } else if constexpr (std::is_same_v<Kind, CivilDate>) {
                return dateWords(value);
            } else if constexpr (std::is_same_v<Kind, std::string>) {
                return fromText(value);
            } else {
                return {};
            }
        },
        cell);
}

QString valueText(const report::PlotAxis& axis, double value) {
    if (axis.kind == report::PlotAxis::Dates) {
        return dateWords(report::dateOfPlotDay(value));
    }
    if (axis.kind == report::PlotAxis::Names) {
        const auto at = static_cast<std::size_t>(std::max(0.0, value));
        return at < axis.names.size() ? fromText(axis.names[at]) : QString();
    }
    return axis.unit.empty() ? numberText(value)
                             : numberText(value) + QLatin1Char(' ') + fromText(axis.unit);
}

QString pointText(const report::Plot& plot, const report::PlotPoint& point) {
    return Plots::at(valueText(plot.y, point.y), valueText(plot.x, point.x));
}

QString seriesText(const report::Plot& plot, const report::PlotSeries& series) {
    const auto facts = report::factsOf(series);
    const int count = facts ? static_cast<int>(facts->points) : 0;
    QStringList words(Plots::points(count));
    if (facts) {
        words << Plots::runs(pointText(plot, facts->first), pointText(plot, facts->last))
              << Plots::lowest(pointText(plot, facts->least))
              << Plots::highest(pointText(plot, facts->greatest));
    }
    return Plots::series(fromText(series.name), words.join(QStringLiteral(", "))) +
           QLatin1Char('.');
}

QString columnTitle(const report::Plot& plot, PlotTable::Column column) {
    const QString x = axisTitle(plot.x);
    const QString y = axisTitle(plot.y);
    switch (column) {
    case PlotTable::Series:
        return Plots::seriesTitle();
    case PlotTable::Label:
        return Plots::labelTitle();
    case PlotTable::X:
        return x;
    case PlotTable::XLow:
        return Plots::low(x);
    case PlotTable::XHigh:
        return Plots::high(x);
    case PlotTable::Y:
        return y;
    case PlotTable::YLow:
        return Plots::low(y);
    case PlotTable::YHigh:
        return Plots::high(y);
    case PlotTable::BoxLow:
        return Plots::boxLow(y);
    case PlotTable::BoxHigh:
        return Plots::boxHigh(y);
    case PlotTable::Weight:
        return Plots::weightTitle();
    }
    return {};
}

} // namespace

QString axisTitle(const report::PlotAxis& axis) {
    const QString title = fromText(axis.title);
    return axis.unit.empty() ? title : Plots::titled(title, fromText(axis.unit));
}

QString tickWords(const report::PlotTick& tick) {
    if (const auto* number = std::get_if<double>(&tick.says)) {
        QLocale locale;
        locale.setNumberOptions(QLocale::OmitGroupSeparator);
        return locale.toString(*number + 0.0, 'f', tick.decimals)
            .replace(QLatin1Char('-'), QChar(0x2212));
    }
    if (const auto* name = std::get_if<std::string>(&tick.says)) {
        return fromText(*name);
    }
    const CivilDate date = std::get<CivilDate>(tick.says);
    const bool isNewYear =
        date.month() == std::chrono::January && date.day() == std::chrono::day(1);
    const QString words = dateWords(date);
    return isNewYear ? words : words.left(words.lastIndexOf(QLatin1Char(' ')));
}

QStringList noteLines(const report::PlotNotes& notes) {
    QStringList first;
    if (notes.count) {
        first << Plots::count(*notes.count);
    }
    if (notes.from && notes.to) {
        first << Plots::fromTo(dateWords(*notes.from), dateWords(*notes.to));
    } else if (notes.from || notes.to) {
        first << (notes.from ? Plots::since(dateWords(*notes.from))
                             : Plots::until(dateWords(*notes.to)));
    }
    QStringList lines;
    if (!first.isEmpty()) {
        lines << first.join(QStringLiteral(" · "));
    }
    if (!notes.missing.empty()) {
        lines << fromText(notes.missing);
    }
    for (const std::string& caution : notes.cautions) {
        lines << fromText(caution);
    }
    return lines;
}

QString plotSummary(const report::Plot& plot) {
    QStringList sentences;
    if (!plot.title.empty()) {
        sentences << fromText(plot.title) + QLatin1Char('.');
    }
    sentences << Plots::against(axisTitle(plot.y), axisTitle(plot.x));
    bool isEmpty = true;
    for (const report::PlotSeries& series : plot.series) {
        isEmpty = isEmpty && series.points.empty();
        sentences << seriesText(plot, series);
    }
    if (isEmpty) {
        sentences << Plots::nothing();
    }
    for (const QString& line : noteLines(plot.notes)) {
        sentences << (line.endsWith(QLatin1Char('.')) ? line : line + QLatin1Char('.'));
    }
    return sentences.join(QLatin1Char(' '));
}

QString nothingNoted() {
    return Plots::nothing();
}

PlotTableText plotTableText(const report::Plot& plot) {
    const PlotTable table = report::tableOf(plot);
    PlotTableText text;
    for (const PlotTable::Column column : table.columns) {
        text.header << columnTitle(plot, column);
    }
    for (const auto& row : table.rows) {
        QStringList cells;
        for (const PlotTable::Cell& cell : row) {
            cells << cellText(cell);
        }
        text.rows.push_back(std::move(cells));
    }
    return text;
}

} // namespace bullace::plots
