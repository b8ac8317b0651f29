#include "desk/weather_seasons.hpp"

#include "desk/stage_readings.hpp"
#include "desk/study_remarks.hpp"

#include "core/weather/frosts.hpp"
#include "core/weather/hourly.hpp"
#include "core/weather/winkler.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <chrono>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using weather::Hemisphere;
using weather::Period;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(WeatherSeasons)
};

// The half year of the cold before a season: common practice, no source.
Period winterBefore(const AskedWeather& asked, int year) {
    using namespace std::chrono;
    const std::chrono::year of(year);
    return asked.where() == Hemisphere::North
               ? Period{(of - years(1)) / October / 1, of / March / 31}
               : Period{of / April / 1, of / September / 30};
}

// A frost's day, and on which side it may lie where days are lacking.
QString frostText(const std::optional<CivilDate>& frost, bool isCertain, bool isSpring, int year) {
    if (!frost) {
        return isCertain ? Tr::tr("none", "frost") : Tr::tr("not known");
    }
    const QString day = seasonDayText(season::dayOfSeason(*frost, year), year);
    return isCertain  ? day
           : isSpring ? Tr::tr("%1 or later").arg(day)
                      : Tr::tr("%1 or earlier").arg(day);
}

QString heatText(const weather::WinklerSeason& winkler) {
    return winkler.sum && winkler.winklerClass
               ? Tr::tr("%1 (%2)", "degree-days and their class")
                     .arg(numberText(*winkler.sum, 0),
                          fromText(weather::nameOf(*winkler.winklerClass)))
               : QString();
}

// The winter before the season; nothing of a winter with a lacking day.
QStringList chillTexts(const AskedWeather& asked, int year) {
    const auto chill =
        weather::chillBetween(*asked.record, winterBefore(asked, year), asked.latitude);
    if (!chill || !chill->sum) {
        return {QString(), QString(), QString(), QString()};
    }
    return {QString::number(chill->sum->hoursBelow),
            QString::number(chill->sum->hoursBetween),
            numberText(chill->sum->utah, 0),
            numberText(chill->sum->portions, 1)};
}

std::size_t lackingIn(const weather::PeriodDays& days) {
    std::size_t lacking = 0;
    for (const weather::HeatGap& gap : days.gaps) {
        lacking += static_cast<std::size_t>(daysBetween(gap.first, gap.last)) + 1;
    }
    return lacking;
}

GridRow seasonRow(const AskedWeather& asked, int year) {
    AskedWeather of = asked;
    of.season = year;
    const auto winkler =
        weather::winklerOf(*asked.record, year, asked.where(), weather::TemperatureUnit::Celsius);
    // In the south the season that begins in July has its midsummer in the next year.
    const int midsummer = asked.where() == Hemisphere::South ? year + 1 : year;
    const auto frosts = weather::frostsOf(*asked.record, midsummer, asked.where());
    GridRow row;
    row.key = QString::number(year);
    row.isStrong = year == asked.season;
    row.cells << row.key << heatText(winkler)
              << frostText(frosts.lastOfSpring, frosts.isSpringCertain, true, year)
              << frostText(frosts.firstOfAutumn, frosts.isAutumnCertain, false, year)
              << (frosts.daysBetweenThem ? QString::number(*frosts.daysBetweenThem) : QString())
              << (frosts.lowest
                      ? numberText(*frosts.lowest / asked.degrees.factor + asked.degrees.zero, 1)
                      : QString())
              << chillTexts(asked, year)
              << QString::number(lackingIn(weather::daysOf(*asked.record, of.known())));
    return row;
}

void addFreezeRows(const std::vector<weather::Freeze>& freezes,
                   const AskedWeather& asked,
                   Study& study) {
    study.columns = {{Tr::tr("First day"), 16},
                     {Tr::tr("Last day"), 16},
                     {Tr::tr("Days"), 8, true},
                     {Tr::tr("Lowest, %1").arg(fromText(asked.degrees.shown)), 14, true},
                     {Tr::tr("On"), 16},
                     {Tr::tr("Beside it"), 30, false, true}};
    for (const weather::Freeze& freeze : freezes) {
        GridRow row;
        row.key = fromText(writeDate(freeze.first));
        row.cells << quick::dateWords(freeze.first) << quick::dateWords(freeze.last)
                  << QString::number(daysBetween(freeze.first, freeze.last) + 1)
                  << numberText(freeze.lowest / asked.degrees.factor + asked.degrees.zero, 1)
                  << quick::dateWords(freeze.lowestOn)
                  << (freeze.isBesideGap ? Tr::tr("days are lacking; it may have been longer")
                                         : QString());
        study.rows.push_back(std::move(row));
    }
}

} // namespace

void addSeasonTable(const AskedWeather& asked, Study& study) {
    study.columns = {{Tr::tr("Season"), 6},
                     {Tr::tr("Winkler, °C d"), 14, true},
                     {Tr::tr("Last frost"), 15},
                     {Tr::tr("First frost"), 17},
                     {Tr::tr("Between"), 7, true},
                     {Tr::tr("Low, %1").arg(fromText(asked.degrees.shown)), 7, true},
                     {Tr::tr("≤ 7.2 °C, h"), 9, true},
                     {Tr::tr("0–7.2 °C, h"), 9, true},
                     {Tr::tr("Utah"), 6, true},
                     {Tr::tr("Portions"), 7, true},
                     {Tr::tr("Lacking"), 7, true}};
    std::vector<int> years = weather::yearsOf(*asked.record);
    std::ranges::reverse(years);
    for (const int year : years) {
        study.rows.push_back(seasonRow(asked, year));
    }
}

void addFreezes(const AskedWeather& asked, Study& study) {
    const weather::Period season = asked.known();
    const Period period{winterBefore(asked, asked.season).first, season.last};
    const auto freezes = weather::freezesOf(*asked.record, period);
    addRemarks(weather::daysOf(*asked.record, period).remarks, study.remarks);
    addFreezeRows(freezes, asked, study);
    study.words = freezes.empty() ? Tr::tr("No freeze is known from the winter before the season "
                                           "to its end.")
                                  : Tr::tr("%n freeze(s) from the winter before the season to its "
                                           "end.",
                                           nullptr,
                                           static_cast<int>(freezes.size()));
    if (freezes.empty()) {
        return;
    }
    report::Plot plot;
    plot.title = toText(study.title);
    plot.x.kind = report::PlotAxis::Dates;
    plot.x.title = toText(Tr::tr("Day"));
    plot.y.title = toText(Tr::tr("Lowest temperature"));
    plot.y.unit = std::string(asked.degrees.shown);
    report::PlotSeries points{
        report::PlotSeries::Points, toText(Tr::tr("Freezes")), {}, false, false, {}};
    for (const weather::Freeze& freeze : freezes) {
        report::PlotPoint point;
        point.x = report::plotDay(freeze.lowestOn);
        point.xLow = report::plotDay(freeze.first);
        point.xHigh = report::plotDay(freeze.last);
        point.y = freeze.lowest / asked.degrees.factor + asked.degrees.zero;
        point.label = writeDate(freeze.lowestOn);
        points.points.push_back(std::move(point));
    }
    plot.series.push_back(std::move(points));
    plot.marks = {{asked.degrees.zero, toText(Tr::tr("freezing")), true}};
    plot.notes.count = freezes.size();
    plot.notes.from = period.first;
    plot.notes.to = period.last;
    plot.notes.missing = toText(
        Tr::tr("Whiskers go from a freeze's first day to its last; lacking days are named."));
    study.plot = std::move(plot);
}

} // namespace bullace::desk
