// The weather at the station: degree-days against other years, Winkler's sum, frosts and chill by
// season, and freezes; from here weather is taken in.
#include "desk/stage_readings.hpp"
#include "desk/study_views.hpp"
#include "desk/weather_seasons.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace bullace::desk {

using quick::fromText;
using weather::DegreeDayMethod;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(WeatherStudy)
};

const QString kPicture = QStringLiteral("picture");
const QString kFreezes = QStringLiteral("freezes");
const QString kMethod = QStringLiteral("method");
const QString kThresholds = QStringLiteral("thresholds");
const QString kLatitude = QStringLiteral("latitude");

struct MethodChoice {
    const char* key;
    DegreeDayMethod method;
    QString words;
};
std::array<MethodChoice, 6> methods() {
    return {{{"sine", DegreeDayMethod::SingleSine, Tr::tr("single sine")},
             {"double-sine", DegreeDayMethod::DoubleSine, Tr::tr("double sine")},
             {"triangle", DegreeDayMethod::SingleTriangle, Tr::tr("single triangle")},
             {"double-triangle", DegreeDayMethod::DoubleTriangle, Tr::tr("double triangle")},
             {"mean", DegreeDayMethod::MeanClamped, Tr::tr("the day's mean")},
             {"limits", DegreeDayMethod::LimitsClamped, Tr::tr("mean of clamped extremes")}}};
}

struct ThresholdChoice {
    const char* key;
    weather::Thresholds celsius;
};
constexpr std::array<ThresholdChoice, 6> kBounds{{{"10", {10, {}}},
                                                  {"0", {0, {}}},
                                                  {"4", {4, {}}},
                                                  {"7", {7, {}}},
                                                  {"10-30", {10, 30}},
                                                  {"10-35", {10, 35}}}};
QString boundsWords(const weather::Thresholds& bounds) {
    return bounds.upper ? Tr::tr("%1 to %2 °C", "thresholds")
                              .arg(numberText(bounds.lower, 0), numberText(*bounds.upper, 0))
                        : Tr::tr("above %1 °C").arg(numberText(bounds.lower, 0));
}

// The middle of where muscadines grow comes first.
constexpr std::array<int, 11> kLatitudes{34, 26, 28, 30, 32, 36, 38, 40, -28, -32, -36};

class WeatherView : public StudyView {
public:
    QString key() const override { return QStringLiteral("weather"); }
    QString title() const override { return Tr::tr("Weather"); }
    QString help() const override {
        return Tr::tr(
            "The season's degree-days against up to ten other complete years: the least and "
            "greatest, the middle half and the median. A lacking day ends the curve: it is named, "
            "and nothing is summed over it. The table has for each season Winkler's sum (1 April "
            "to 31 October) with its class, the frosts and the days between them, the "
            "lowest temperature, and the chill of the winter before (1 October "
            "to 31 March): hours at or below 7.2 °C, from 0 to 7.2 °C, Utah units and portions of "
            "the Dynamic Model, from hours between the days' extremes at the latitude that is "
            "chosen. The other picture has the lowest temperature of each freeze. I takes a file "
            "of weather in.");
    }
    std::vector<StudyAction> actions() const override {
        return {{QStringLiteral("weather-intake"), Tr::tr("Take in weather"), QStringLiteral("I")}};
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        if (ground.notes.weather.empty()) {
            return {};
        }
        ChoiceGroup picture{
            kPicture,
            Tr::tr("Picture"),
            false,
            {{QStringLiteral("heat"), Tr::tr("degree-days")}, {kFreezes, Tr::tr("freezes")}}};
        std::vector<ChoiceGroup> groups{std::move(picture)};
        if (ground.notes.weather.size() > 1) {
            groups.push_back(siteChoice(ground.notes));
            settleChoice(chosen, groups.back());
        }
        std::vector<int> years = weather::yearsOf(*weatherOf(ground, chosen));
        std::ranges::reverse(years);
        groups.push_back(seasonChoice(years));
        ChoiceGroup bounds{kThresholds, Tr::tr("Thresholds"), false, {}};
        for (const ThresholdChoice& one : kBounds) {
            bounds.lines.push_back({QLatin1String(one.key), boundsWords(one.celsius)});
        }
        ChoiceGroup method{kMethod, Tr::tr("Method"), false, {}};
        for (const MethodChoice& one : methods()) {
            method.lines.push_back({QLatin1String(one.key), one.words});
        }
        ChoiceGroup latitude{kLatitude, Tr::tr("Latitude"), false, {}};
        for (const int degrees : kLatitudes) {
            latitude.lines.push_back({QString::number(degrees),
                                      degrees < 0 ? Tr::tr("%1° south").arg(-degrees)
                                                  : Tr::tr("%1° north").arg(degrees)});
        }
        groups.push_back(std::move(bounds));
        groups.push_back(std::move(method));
        groups.push_back(std::move(latitude));
        for (const ChoiceGroup& group : groups) {
            settleChoice(chosen, group);
        }
        return groups;
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        study.cautions << Tr::tr("Daily values of one place. Official forecasts and warnings of "
                                 "frost and freeze come first.");
        if (ground.notes.weather.empty()) {
            study.words = Tr::tr("No weather has been taken in yet: I takes a file in.");
            return study;
        }
        const AskedWeather asked = askedOf(ground, chosen);
        const bool isFreezes = chosen.at(kPicture) == kFreezes;
        study.title = (isFreezes ? Tr::tr("Freezes, %1") : Tr::tr("Degree-days, %1"))
                          .arg(QString::number(asked.season));
        study.tableName = study.title;
        if (isFreezes) {
            addFreezes(asked, study);
            study.method =
                Tr::tr("A freeze is a run of days whose least temperature is at or below "
                       "0 °C.");
            return study;
        }
        addHeat(asked, study);
        addSeasonTable(asked, study);
        study.method =
            Tr::tr("Curves: %1. Winkler's sum from daily means above 10 °C, classes of Jones et "
                   "al. 2010. Chill from hours between the days' extremes (Linvill 1990).")
                .arg(asked.ruleWords);
        return study;
    }

private:
    static AskedWeather askedOf(const StudyGround& ground, const Chosen& chosen) {
        AskedWeather asked;
        asked.record = weatherOf(ground, chosen);
        asked.season = chosen.at(QStringLiteral("season")).toInt();
        asked.latitude = chosen.at(kLatitude).toInt();
        asked.today = ground.today;
        asked.degrees = unitFor("°C", ground.units);
        const auto all = methods();
        const auto method = std::ranges::find_if(all, [&](const MethodChoice& one) {
            return chosen.at(kMethod) == QLatin1String(one.key);
        });
        const auto bounds = std::ranges::find_if(kBounds, [&](const ThresholdChoice& one) {
            return chosen.at(kThresholds) == QLatin1String(one.key);
        });
        asked.rule = {method->method, bounds->celsius};
        asked.ruleWords = Tr::tr("%1 %2", "a method and its thresholds")
                              .arg(method->words, boundsWords(bounds->celsius));
        return asked;
    }
};

} // namespace

std::unique_ptr<StudyView> makeWeatherView() {
    return std::make_unique<WeatherView>();
}

} // namespace bullace::desk
