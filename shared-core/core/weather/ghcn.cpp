#include "core/weather/ghcn.hpp"

#include <algorithm>
#include <charconv>
#include <tuple>

namespace bullace::weather {

namespace {

constexpr std::size_t kIdWidth = 11;
constexpr std::size_t kYearAt = 11; // columns from 0
constexpr std::size_t kMonthAt = 15;
constexpr std::size_t kElementAt = 17;
constexpr std::size_t kValuesAt = 21;
constexpr std::size_t kValueWidth = 5;
constexpr std::size_t kDayWidth = 8; // the value and three flags
constexpr std::size_t kQualityAt = 6;
constexpr unsigned kMostDays = 31;
constexpr std::size_t kLineWidth = kValuesAt + kMostDays * kDayWidth;
constexpr int kMissing = -9999;

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(' ');
    const std::size_t last = text.find_last_not_of(' ');
    return first == std::string_view::npos ? std::string_view{}
                                           : text.substr(first, last - first + 1);
}

std::optional<int> wholeIn(std::string_view text) {
    text = trimmed(text);
    int number = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
    return fault == std::errc{} && end == text.data() + text.size() && !text.empty()
               ? std::optional(number)
               : std::nullopt;
}

class Reading {
public:
    Status takeLine(std::string_view line) {
        ++number_;
        if (trimmed(line).empty()) {
            return {};
        }
        std::string padded(line);
        padded.resize(std::max(padded.size(), kLineWidth), ' ');
        const std::string id(trimmed(std::string_view(padded).substr(0, kIdWidth)));
        if (made_.station.empty()) {
            made_.station = id;
        }
        if (id.size() != kIdWidth || id != made_.station) {
            return fault(0, "another station than " + made_.station + ", or none");
        }
        const auto year = wholeIn(std::string_view(padded).substr(kYearAt, 4));
        const auto month = wholeIn(std::string_view(padded).substr(kMonthAt, 2));
        if (!year || *year < 0 || !month || *month < 1 || *month > 12) {
            return fault(kYearAt, "no year and month");
        }
        const std::string element(std::string_view(padded).substr(kElementAt, 4));
        if (!lines_.insert({*year, *month, element}).second) {
            return fault(kElementAt, element + " of this month is there twice");
        }
        return takeDays(padded, std::chrono::year(*year) / *month, element);
    }

    Result<DailyRecord> finish() {
        if (made_.station.empty()) {
            return Error{ErrorCode::InvalidInput, "There is no line of daily weather in it.", {}};
        }
        std::erase_if(made_.days, [](const auto& day) { return day.second == DailyWeather{}; });
        return std::move(made_);
    }

private:
    Status
    takeDays(const std::string& line, std::chrono::year_month month, const std::string& element) {
        std::optional<double> DailyWeather::*into = element == "TMAX"   ? &DailyWeather::greatest
                                                    : element == "TMIN" ? &DailyWeather::least
                                                    : element == "PRCP" ? &DailyWeather::rain
                                                                        : nullptr;
        if (into == nullptr) {
            made_.otherElements.insert(element);
            return {};
        }
        for (unsigned day = 1; day <= kMostDays; ++day) {
            const std::size_t at = kValuesAt + (day - 1) * kDayWidth;
            const auto text = std::string_view(line).substr(at, kValueWidth);
            const auto value = trimmed(text).empty() ? std::optional(kMissing) : wholeIn(text);
            const CivilDate date = month / std::chrono::day(day);
            if (!value || (*value != kMissing && !date.ok())) {
                return fault(at,
                             value ? "a value on a day that the month does not have"
                                   : "\"" + std::string(text) + "\" is no number");
            }
            if (*value == kMissing) {
                continue;
            }
            if (line[at + kQualityAt] != ' ') {
                ++made_.failedQuality;
                continue;
            }
            made_.days[date].*into = *value / 10.0;
        }
        return {};
    }

    Error fault(std::size_t column, const std::string& what) const {
        return {ErrorCode::InvalidInput,
                "Line " + std::to_string(number_) + ", column " + std::to_string(column + 1) +
                    ": " + what + ".",
                {}};
    }

    DailyRecord made_;
    std::size_t number_ = 0;
    std::set<std::tuple<int, int, std::string>> lines_;
};

} // namespace

Result<DailyRecord> readGhcnDaily(std::string_view text) {
    Reading reading;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        if (line.ends_with('\r')) {
            line.remove_suffix(1);
        }
        if (Status taken = reading.takeLine(line); !taken) {
            return taken.error();
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return reading.finish();
}

} // namespace bullace::weather
