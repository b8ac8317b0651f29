#include "office/day_heat.hpp"

#include "core/journal/subject.hpp"
#include "core/weather/heat_band.hpp"

#include <charconv>
#include <string_view>
#include <vector>

namespace bullace::office {

namespace {

using Sites = std::vector<std::string>;

// One look for each site: what lies between is not read.
Result<Sites> sitesOf(store::Database& database) {
    Sites sites;
    std::string from = "weather/";
    while (true) {
        std::string site;
        const Status read =
            database.eachSubjectBetween(from, "weather0", [&site](std::string_view path) {
                site = std::string(journal::readSubject(path).id);
                return false;
            });
        if (!read) {
            return read.error();
        }
        if (site.empty()) {
            return sites;
        }
        from = "weather/" + site + "0"; // '0' follows '/'
        sites.push_back(std::move(site));
    }
}

std::optional<double> plainNumber(std::string_view json) {
    double value = 0;
    const auto [end, error] = std::from_chars(json.data(), json.data() + json.size(), value);
    return error == std::errc() && end == json.data() + json.size() ? std::optional(value)
                                                                    : std::nullopt;
}

Result<weather::DailyDays>
daysBetweenOf(store::Database& database, const std::string& site, CivilDate first, CivilDate last) {
    const std::string under = "weather/" + site + "/";
    weather::DailyDays days;
    const Status read =
        database.eachStateBetween(under + writeDate(first),
                                  under + writeDate(addDays(last, 1)),
                                  [&days](const store::StateRow& row) {
                                      const journal::Subject subject =
                                          journal::readSubject(row.subject);
                                      const auto date = readDate(subject.date);
                                      const auto number = plainNumber(row.valueJson);
                                      if (date && number && subject.field == "TMAX") {
                                          days[*date].greatest = number;
                                      } else if (date && number && subject.field == "TMIN") {
                                          days[*date].least = number;
                                      }
                                      return true;
                                  });
    return read ? Result<weather::DailyDays>(std::move(days))
                : Result<weather::DailyDays>(read.error());
}

} // namespace

Result<std::optional<DayHeat>> heatUntil(store::Database& database, CivilDate day) {
    const auto sites = sitesOf(database);
    if (!sites) {
        return sites.error();
    }
    const CivilDate first = day.year() / std::chrono::January / 1;
    const auto count = static_cast<std::size_t>(daysBetween(first, day)) + 1;
    for (const std::string& site : *sites) {
        const auto record = daysBetweenOf(database, site, first, day);
        if (!record) {
            return record.error();
        }
        const weather::PeriodDays known = weather::daysOf(*record, {first, day});
        const auto sum =
            weather::heatSum(weather::DegreeDayMethod::SingleSine, known.days, {kHeatBaseC, {}});
        if (sum && sum->days.size() == count) {
            return std::optional(DayHeat{sum->days.back().sum, site, sites->size() == 1});
        }
    }
    return std::optional<DayHeat>();
}

} // namespace bullace::office
