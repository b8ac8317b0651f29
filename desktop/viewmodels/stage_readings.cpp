#include "desk/stage_readings.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(StageReadings)
};

// An estimate can lie anywhere; what lies further off is no day that anybody looks for.
constexpr double kMostDays = 2 * 366;

// The year is said only where it is another one.
QString dayWords(CivilDate date, int year) {
    if (static_cast<int>(date.year()) != year) {
        return quick::dateWords(date);
    }
    const QDate day(year,
                    static_cast<int>(static_cast<unsigned>(date.month())),
                    static_cast<int>(static_cast<unsigned>(date.day())));
    //: a date of a year that is known: day, month in letters
    return QLocale().toString(day, Tr::tr("d MMM"));
}

} // namespace

QString stageWords(const season::AskedStage& stage) {
    const std::array words{Tr::tr("Bud break"),
                           Tr::tr("Bloom begins"),
                           Tr::tr("Full bloom"),
                           Tr::tr("Bloom over"),
                           Tr::tr("First colour"),
                           Tr::tr("Ripe"),
                           Tr::tr("Leaf fall")};
    const auto stages = season::askedStages();
    const auto found = std::ranges::find(stages, stage.key, &season::AskedStage::key);
    const auto at = static_cast<std::size_t>(found - stages.begin());
    return at < words.size() ? words[at] : QString();
}

ChoiceGroup stageChoice() {
    ChoiceGroup group{QStringLiteral("stage"), Tr::tr("Stage"), false, {}};
    for (const season::AskedStage& stage : season::askedStages()) {
        group.lines.push_back({fromText(stage.key), stageWords(stage)});
    }
    return group;
}

std::vector<int> stageSeasons(const season::StationNotes& notes) {
    return season::yearsOf(notes, season::stageDescriptors());
}

ChoiceGroup stageAccessions(const StudyGround& ground) {
    return accessionChoice(ground, season::stageDescriptors(), true);
}

void countStageLeftOut(const season::StationNotes& notes,
                       const season::AskedStage& stage,
                       int season,
                       Study& study) {
    for (const std::string_view code : season::descriptorsOf(stage)) {
        countLeftOut(notes.notesOf(code), season, study);
    }
}

ChoiceGroup siteChoice(const season::StationNotes& notes) {
    ChoiceGroup group{QStringLiteral("site"), Tr::tr("Weather of"), false, {}};
    for (const auto& [site, days] : notes.weather) {
        group.lines.push_back({fromText(site), fromText(site)});
    }
    return group;
}

const weather::DailyDays* weatherOf(const StudyGround& ground, const Chosen& chosen) {
    const auto& sites = ground.notes.weather;
    const auto site = chosen.find(QStringLiteral("site"));
    const auto found = site == chosen.end() ? sites.end() : sites.find(toText(site->second));
    return found != sites.end() ? &found->second : sites.empty() ? nullptr : &sites.begin()->second;
}

weather::HeatRule seasonHeat() {
    return {weather::DegreeDayMethod::SingleSine, {kSeasonBaseC, {}}};
}

std::vector<season::HeatCurve> heatCurves(const weather::DailyDays& record,
                                          std::span<const int> years) {
    std::vector<season::HeatCurve> curves;
    for (const int year : years) {
        auto sum = weather::heatCurve(record, {}, seasonHeat(), year);
        if (sum) {
            curves.push_back({year, std::move(sum->days)});
        }
    }
    return curves;
}

double seasonPlotDay(double day, int year) {
    const double near = std::clamp(day, -kMostDays, kMostDays);
    return report::plotDay(season::dateOfSeason(near, year));
}

QString seasonDayText(double day, int year) {
    return std::isfinite(day) && std::abs(day) <= kMostDays
               ? dayWords(season::dateOfSeason(day, year), year)
               : Tr::tr("beyond any season");
}

QString seasonSpanText(const statistics::Interval& days, int year) {
    const bool hasLow = std::isfinite(days.low);
    const bool hasHigh = std::isfinite(days.high);
    if (hasLow && hasHigh) {
        return Tr::tr("%1 to %2", "days")
            .arg(seasonDayText(days.low, year), seasonDayText(days.high, year));
    }
    return hasLow    ? Tr::tr("after %1", "a day").arg(seasonDayText(days.low, year))
           : hasHigh ? Tr::tr("by %1", "a day").arg(seasonDayText(days.high, year))
                     : Tr::tr("nothing bounds it");
}

} // namespace bullace::desk
