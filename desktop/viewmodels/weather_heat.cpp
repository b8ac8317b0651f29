// A season's heat against the band of other years.
#include "desk/stage_readings.hpp"
#include "desk/study_remarks.hpp"
#include "desk/weather_seasons.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace bullace::desk {

using quick::toText;
using weather::HeatBand;
using weather::HeatSum;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(WeatherHeat)
};

report::PlotPoint pointAt(CivilDate first, int day, double sum) {
    report::PlotPoint point;
    point.x = report::plotDay(addDays(first, day - 1));
    point.y = sum;
    return point;
}

void addBand(const HeatBand& band, CivilDate first, report::Plot& plot) {
    const auto years = static_cast<int>(band.curves.size());
    report::PlotSeries all{report::PlotSeries::Band,
                           toText(Tr::tr("Least to greatest of %n other year(s)", nullptr, years)),
                           {},
                           true,
                           false,
                           0};
    report::PlotSeries half{
        report::PlotSeries::Band, toText(Tr::tr("Middle half of them")), {}, true, false, 0};
    report::PlotSeries median{
        report::PlotSeries::Line, toText(Tr::tr("Their median")), {}, true, false, 0};
    for (const weather::BandDay& day : band.days) {
        report::PlotPoint point = pointAt(first, day.day, day.median);
        median.points.push_back(point);
        point.yLow = day.least;
        point.yHigh = day.greatest;
        all.points.push_back(point);
        point.yLow = day.lowerQuartile;
        point.yHigh = day.upperQuartile;
        half.points.push_back(std::move(point));
    }
    for (report::PlotSeries* series : {&all, &half, &median}) {
        plot.series.push_back(std::move(*series));
    }
}

QString wordsOf(const HeatSum& sum, const HeatBand& band) {
    if (sum.days.empty()) {
        return Tr::tr("The first day of the season is lacking: it has no sum.");
    }
    const weather::HeatDay& last = sum.days.back();
    const QString words =
        Tr::tr("%1 °C days by %2.").arg(numberText(last.sum, 0), quick::dateWords(last.day));
    const std::size_t day = sum.days.size() - 1;
    if (day >= band.days.size()) {
        return words;
    }
    return words + QLatin1Char(' ') +
           Tr::tr("By that day the median of %n other year(s) is %1.",
                  nullptr,
                  static_cast<int>(band.curves.size()))
               .arg(numberText(band.days[day].median, 0));
}

} // namespace

weather::SeasonSpan AskedWeather::span() const {
    return {where() == weather::Hemisphere::South ? std::chrono::July / 1
                                                  : std::chrono::January / 1,
            365};
}

weather::Period AskedWeather::known() const {
    const weather::SeasonSpan of = span();
    const CivilDate first = std::chrono::year(season) / of.from.month() / of.from.day();
    const CivilDate end =
        addDays(std::chrono::year(season + 1) / of.from.month() / of.from.day(), -1);
    const CivilDate last = record->empty() ? first : record->rbegin()->first;
    return {first, std::min(end, std::max(first, last))};
}

void addHeat(const AskedWeather& asked, Study& study) {
    const auto sum = weather::heatCurve(*asked.record, asked.span(), asked.rule, asked.season);
    const auto band = weather::heatBand(*asked.record, asked.span(), asked.rule, asked.season);
    if (!sum || !band) {
        study.words = quick::errorWords(sum ? band.error() : sum.error());
        return;
    }
    const weather::Period known = asked.known();
    const weather::PeriodDays days = weather::daysOf(*asked.record, known);
    study.words = wordsOf(*sum, *band);
    addRemarks(days.remarks, study.remarks);
    addRemarks(band->remarks, study.remarks);
    report::Plot plot;
    plot.title = toText(study.title);
    plot.x.kind = report::PlotAxis::Dates;
    plot.x.title = toText(Tr::tr("Day"));
    plot.y.title = toText(Tr::tr("Degree-days, %1").arg(asked.ruleWords));
    plot.y.unit = "°C days";
    plot.y.beginsAtZero = true;
    if (!band->days.empty()) {
        addBand(*band, known.first, plot);
    }
    report::PlotSeries line{
        report::PlotSeries::Line, toText(QString::number(asked.season)), {}, false, false, 1};
    for (std::size_t i = 0; i < sum->days.size(); ++i) {
        line.points.push_back(pointAt(known.first, static_cast<int>(i) + 1, sum->days[i].sum));
    }
    if (!line.points.empty()) {
        plot.series.push_back(std::move(line));
    }
    if (plot.series.empty()) {
        return;
    }
    plot.notes.count = sum->days.size();
    plot.notes.from = known.first;
    plot.notes.to = known.last;
    plot.notes.missing = toText(
        Tr::tr("n counts this season's days; its curve ends where the first day is lacking."));
    study.plot = std::move(plot);
}

} // namespace bullace::desk
