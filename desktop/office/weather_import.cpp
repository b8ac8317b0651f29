#include "office/weather_import.hpp"

#include "core/base/units.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/standing.hpp"
#include "core/weather/weather_tables.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>
#include <utility>

namespace bullace::office {

using weather::DailyDays;
using weather::DailyWeather;
using weather::TemperatureUnit;

namespace {

constexpr std::size_t kGreatestSite = 56; // as long as an ID may be
constexpr int kStoredDecimals = 2;        // whole °F come back from them

void tidy(std::optional<double>& value) {
    if (value) {
        value = roundTo(*value, kStoredDecimals);
    }
}

Result<WeatherIntake>
readDailyFile(BytesView file, const WeatherLook& look, const WeatherWish& wish) {
    auto table = weather::readDaily(file, *look.daily, wish.unit, wish.where);
    if (!table) {
        return table.error();
    }
    WeatherIntake made;
    made.station = std::move(table->record.station);
    made.days = std::move(table->record.days);
    made.failedQuality = table->record.failedQuality;
    made.otherElements = std::move(table->record.otherElements);
    made.remarks = std::move(table->remarks);
    return made;
}

// A logger in the wrong unit has an impossible summer; its numbers as they stand tell it.
std::optional<Remark>
doubtOf(const weather::LoggerDays& days, TemperatureUnit unit, weather::Hemisphere where) {
    const auto asItStands = [unit](const std::optional<double>& celsius) {
        return celsius && unit == TemperatureUnit::Fahrenheit ? std::optional(*celsius * 1.8 + 32)
                                                              : celsius;
    };
    std::vector<weather::DayTemperatures> stand;
    for (const auto& [date, day] : days.days) {
        stand.push_back({date, asItStands(day.least), asItStands(day.greatest)});
    }
    return weather::doubtUnit(stand, unit, where);
}

Result<WeatherIntake>
readLoggerFile(BytesView file, const WeatherLook& look, const WeatherWish& wish) {
    const TemperatureUnit unit = look.logger->unit.value_or(wish.unit);
    weather::LoggerColumns columns = look.logger->columns;
    columns.order = wish.order.value_or(columns.order);
    auto record = weather::readLogger(file, columns, unit);
    if (!record) {
        return record.error();
    }
    weather::LoggerDays days = weather::daysOf(*record, 0);
    WeatherIntake made;
    made.unread = std::move(record->unread);
    made.remarks = std::move(record->remarks);
    made.remarks.insert(made.remarks.end(), days.remarks.begin(), days.remarks.end());
    if (auto doubt = doubtOf(days, unit, wish.where)) {
        made.remarks.push_back(std::move(*doubt));
    }
    made.days = std::move(days.days);
    return made;
}

// What stands at the site now, by subject.
struct Standing {
    std::string json;
    std::vector<journal::Place> heads;
};
using Standings = std::map<std::string, Standing>;

Result<Standings> standingAt(store::Database& database, const std::string& site) {
    Standings standings;
    const std::string under = "weather/" + site;
    const Status read = database.eachStateBetween(
        under + "/", under + "0", [&standings](const store::StateRow& row) { // '0' follows '/'
            standings[row.subject] = {row.valueJson, row.heads};
            return true;
        });
    return read ? Result<Standings>(std::move(standings)) : Result<Standings>(read.error());
}

bool isSame(const Standing& standing, double value) {
    const Result<Bytes> stored =
        standing.json.empty() ? Result<Bytes>(Bytes{}) : store::readJson(standing.json);
    return stored && !stored->empty() && journal::isSameValue(*stored, journal::numberValue(value));
}

class Planning {
public:
    Planning(Standings standings, std::string author, std::string why)
        : standings_(std::move(standings)),
          author_(std::move(author)),
          why_(std::move(why)) {}

    void add(const std::string& subject, const std::optional<double>& value) {
        if (!value) {
            return;
        }
        const auto found = standings_.find(subject);
        if (found != standings_.end() && isSame(found->second, *value)) {
            ++plan_.there;
            return;
        }
        ++(found == standings_.end() ? plan_.fresh : plan_.replaced);
        store::Draft draft;
        draft.author = author_;
        draft.kind = journal::Kind::Catalog;
        draft.subject = subject;
        draft.value = journal::numberValue(*value);
        if (found != standings_.end()) {
            draft.over = found->second.heads;
        }
        if (!why_.empty()) {
            draft.why = why_;
        }
        if (plan_.acts.empty() || plan_.acts.back().drafts.size() >= journal::kGreatestGroup) {
            plan_.acts.emplace_back();
        }
        plan_.acts.back().seen.push_back({subject, draft.over});
        plan_.acts.back().drafts.push_back(std::move(draft));
    }
    [[nodiscard]] WeatherPlan plan() { return std::move(plan_); }

private:
    Standings standings_;
    std::string author_;
    std::string why_;
    WeatherPlan plan_;
};

} // namespace

Result<WeatherLook> lookAtWeather(BytesView file) {
    if (const auto daily = weather::dailyFormOf(file)) {
        return WeatherLook{daily, daily == weather::DailyForm::Ordered, {}};
    }
    auto logger = weather::previewLogger(file);
    if (!logger) {
        return Error{ErrorCode::InvalidInput,
                     "This is no file of weather that is known: neither NOAA's daily record (as "
                     ".dly, or as CSV) nor a logger's table with times and temperatures.",
                     logger.error().message};
    }
    const bool needsUnit = !logger->unit;
    return WeatherLook{std::nullopt, needsUnit, std::move(*logger)};
}

Result<WeatherIntake>
readWeatherFile(BytesView file, const WeatherLook& look, const WeatherWish& wish) {
    auto made = look.daily ? readDailyFile(file, look, wish) : readLoggerFile(file, look, wish);
    if (!made) {
        return made;
    }
    if (made->days.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "The file has no day with a temperature or with rain that can be used.",
                     {}};
    }
    for (auto& [date, day] : made->days) {
        for (std::optional<double>* value : {&day.greatest, &day.least, &day.rain}) {
            tidy(*value);
        }
    }
    const weather::Period period{made->days.begin()->first, made->days.rbegin()->first};
    weather::PeriodDays days = weather::daysOf(made->days, period);
    made->gaps = std::move(days.gaps);
    return made;
}

std::string siteFault(const std::string& site) {
    const bool isPlain = std::ranges::all_of(site, [](char c) {
        const auto code = static_cast<unsigned char>(c);
        return code >= 0x20 && code != 0x7F && c != '/';
    });
    return site.empty() || site.size() > kGreatestSite || !isPlain
               ? "A site's name has 1 to 56 letters, and no /."
               : "";
}

Result<WeatherPlan> planWeather(store::Database& database,
                                const WeatherIntake& intake,
                                const std::string& site,
                                const std::string& author,
                                const std::string& why) {
    if (std::string fault = siteFault(site); !fault.empty()) {
        return Error{ErrorCode::InvalidInput, std::move(fault), {}};
    }
    auto standings = standingAt(database, site);
    if (!standings) {
        return standings.error();
    }
    Planning planning(std::move(*standings), author, why);
    for (const auto& [date, day] : intake.days) {
        const std::string under = "weather/" + site + "/" + writeDate(date) + "/";
        planning.add(under + "TMAX", day.greatest);
        planning.add(under + "TMIN", day.least);
        planning.add(under + "PRCP", day.rain);
    }
    return planning.plan();
}

Result<std::size_t>
takeInWeather(store::Database& database, const WeatherPlan& plan, const Clock& clock) {
    std::size_t written = 0;
    for (const Act& act : plan.acts) {
        const auto places = perform(database, act, clock);
        if (!places) {
            return places.error();
        }
        written += places->size();
    }
    return written;
}

} // namespace bullace::office
