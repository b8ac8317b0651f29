#include "core/weather/weather_tables.hpp"

#include "core/base/numbers.hpp"
#include "core/report/csv.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace bullace::weather {

namespace {

constexpr int kMissing = -9999;

Error fault(std::size_t line, std::size_t column, const std::string& what) {
    return {ErrorCode::InvalidInput,
            "Line " + std::to_string(line) + ", column " + std::to_string(column) + ": " + what +
                ".",
            {}};
}

std::optional<int> wholeIn(std::string_view text) {
    int number = 0;
    const auto [end, bad] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool isWhole = bad == std::errc{} && end == text.data() + text.size() && !text.empty();
    return isWhole ? std::optional(number) : std::nullopt;
}

std::optional<CivilDate> compactDate(std::string_view text) {
    if (text.size() != 8) {
        return std::nullopt;
    }
    return readDate(std::string(text.substr(0, 4)) + "-" + std::string(text.substr(4, 2)) + "-" +
                    std::string(text.substr(6, 2)));
}

// HHMM as minutes after midnight.
std::optional<int> observedAt(std::string_view text) {
    const auto number = wholeIn(text);
    const bool isTime =
        number && text.size() == 4 && *number >= 0 && *number / 100 <= 24 && *number % 100 < 60;
    return isTime ? std::optional(*number / 100 % 24 * 60 + *number % 100) : std::nullopt;
}

using Member = std::optional<double> DailyWeather::*;
Member memberOf(std::string_view element) {
    return element == "TMAX"   ? &DailyWeather::greatest
           : element == "TMIN" ? &DailyWeather::least
           : element == "PRCP" ? &DailyWeather::rain
                               : nullptr;
}

std::vector<std::string_view> split(std::string_view line) {
    std::vector<std::string_view> fields;
    while (true) {
        const std::size_t comma = std::min(line.find(','), line.size());
        fields.push_back(line.substr(0, comma));
        if (comma == line.size()) {
            return fields;
        }
        line.remove_prefix(comma + 1);
    }
}

// A value into its day. False where another stands there already.
bool put(DailyTable& table, CivilDate day, Member into, double value) {
    std::optional<double>& cell = table.record.days[day].*into;
    if (cell) {
        table.repeated += *cell == value ? 1U : 0U;
        return *cell == value;
    }
    cell = value;
    return true;
}

void remarkOnRepeated(DailyTable& table) {
    if (table.repeated > 0) {
        table.remarks.push_back(
            {BULLACE_SENTENCE(
                 "Remark", "Some values stand twice in the file, and are the same (values: %1)."),
             {static_cast<std::int64_t>(table.repeated)}});
    }
    if (table.record.failedQuality > 0) {
        table.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Values that did not pass the quality check are not used (values: "
                              "%1)."),
             {static_cast<std::int64_t>(table.record.failedQuality)}});
    }
}

Status takeLine(DailyTable& table, std::string_view line, std::size_t number) {
    const auto fields = split(line);
    if (fields.size() != 8) {
        return fault(number, 1, "there are " + std::to_string(fields.size()) + " fields, not 8");
    }
    DailyRecord& record = table.record;
    if (record.station.empty()) {
        record.station = fields[0];
    }
    if (fields[0].empty() || fields[0] != record.station) {
        return fault(number, 1, "another station than " + record.station + ", or none");
    }
    const auto day = compactDate(fields[1]);
    const auto value = wholeIn(fields[3]);
    if (!day || !value) {
        return day ? fault(number, 4, "\"" + std::string(fields[3]) + "\" is no number")
                   : fault(number, 2, "\"" + std::string(fields[1]) + "\" is no day");
    }
    const Member into = memberOf(fields[2]);
    if (into == nullptr) {
        record.otherElements.emplace(fields[2]);
        return {};
    }
    if (*value == kMissing) {
        return {};
    }
    if (!fields[5].empty()) {
        ++record.failedQuality;
        return {};
    }
    if (!put(table, *day, into, *value / 10.0)) {
        return fault(number, 4, std::string(fields[2]) + " of this day stands twice, differently");
    }
    if (const auto hour = observedAt(fields[7]); hour && into != &DailyWeather::rain) {
        record.days[*day].observedAt = hour;
    }
    return {};
}

bool isDigits(std::string_view text) {
    return std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

// Station 1-11, year 12-15, month 16-17, element 18-21.
bool isFixedWidth(std::string_view line) {
    return line.size() >= 26 && isDigits(line.substr(11, 6)) &&
           line.find(',') == std::string_view::npos;
}

// Station, YYYYMMDD, element, value, three flags and the hour.
bool isByStation(std::string_view line) {
    const std::size_t comma = line.find(',');
    return std::ranges::count(line, ',') == 7 && line.size() > comma + 9 &&
           line[comma + 9] == ',' && isDigits(line.substr(comma + 1, 8));
}

bool isOrdered(std::string_view line) {
    const auto has = [line](std::string_view word) {
        return line.find(word) != std::string_view::npos;
    };
    return has("DATE") && (has("TMAX") || has("TMIN") || has("PRCP"));
}

} // namespace

Result<DailyTable> readStationTable(BytesView text) {
    DailyTable table;
    for (std::size_t number = 1; !text.empty(); ++number) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        if (line.ends_with('\r')) {
            line.remove_suffix(1);
        }
        if (!line.empty()) {
            if (Status taken = takeLine(table, line, number); !taken) {
                return taken.error();
            }
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    if (table.record.station.empty()) {
        return Error{ErrorCode::InvalidInput, "There is no line of daily weather in it.", {}};
    }
    remarkOnRepeated(table);
    return table;
}

namespace {

struct Column {
    std::string_view name;
    std::optional<std::size_t> at{};
    std::optional<std::size_t> attributes{};
};

class OrderedTable {
public:
    OrderedTable(const report::CsvTable& csv, TemperatureUnit unit) : csv_(csv), unit_(unit) {}

    Result<DailyTable> read() {
        const auto date = find("DATE");
        station_ = find("STATION");
        for (Column& column : columns_) {
            column.at = find(column.name);
            column.attributes = find(std::string(column.name) + "_ATTRIBUTES");
        }
        if (!date || !(columns_[0].at || columns_[1].at || columns_[2].at)) {
            return fault(1, 1, "the header has no DATE with one of TMAX, TMIN and PRCP");
        }
        if (!csv_.problems.empty()) {
            return fault(csv_.problems.front().line, 1, csv_.problems.front().message);
        }
        for (const report::CsvRow& row : csv_.rows) {
            if (Status taken = takeRow(row, *date); !taken) {
                return taken.error();
            }
        }
        return std::move(made_);
    }
    [[nodiscard]] const std::vector<DayTemperatures>& asTheyStand() const { return asTheyStand_; }

private:
    std::optional<std::size_t> find(std::string_view name) const {
        const auto found = std::ranges::find(csv_.header, name);
        return found == csv_.header.end()
                   ? std::nullopt
                   : std::optional(static_cast<std::size_t>(found - csv_.header.begin()));
    }

    Status takeRow(const report::CsvRow& row, std::size_t date) {
        const auto day = readDate(row.cells[date]);
        if (!day) {
            return fault(
                row.line, date + 1, "\"" + row.cells[date] + "\" is no day like 2010-04-01");
        }
        if (station_) {
            std::string& station = made_.record.station;
            station = station.empty() ? row.cells[*station_] : station;
            if (row.cells[*station_] != station) {
                return fault(row.line, *station_ + 1, "another station than " + station);
            }
        }
        asTheyStand_.push_back({*day, {}, {}});
        for (const Column& column : columns_) {
            if (Status taken = takeCell(row, column, *day); !taken) {
                return taken;
            }
        }
        return {};
    }

    Status takeCell(const report::CsvRow& row, const Column& column, CivilDate day) {
        if (!column.at || row.cells[*column.at].empty()) {
            return {};
        }
        const std::string& cell = row.cells[*column.at];
        const auto number = readTypedNumber(cell);
        if (!number) {
            return fault(row.line, *column.at + 1, "\"" + cell + "\" is no number");
        }
        if (*number == kMissing) {
            return {};
        }
        const auto attributes = column.attributes ? split(row.cells[*column.attributes])
                                                  : std::vector<std::string_view>{};
        if (attributes.size() > 1 && !attributes[1].empty()) {
            ++made_.record.failedQuality;
            return {};
        }
        const Member into = memberOf(column.name);
        if (!put(made_, day, into, converted(*number, into))) {
            return fault(row.line,
                         *column.at + 1,
                         std::string(column.name) + " of this day stands twice, differently");
        }
        DayTemperatures& stands = asTheyStand_.back();
        stands.greatest = into == &DailyWeather::greatest ? number : stands.greatest;
        stands.least = into == &DailyWeather::least ? number : stands.least;
        if (attributes.size() > 3 && into != &DailyWeather::rain) {
            made_.record.days[day].observedAt = observedAt(attributes[3]);
        }
        return {};
    }

    double converted(double value, Member into) const {
        if (into == &DailyWeather::rain) {
            return unit_ == TemperatureUnit::Celsius ? value : value * 25.4;
        }
        return toCelsius(value, unit_);
    }

    const report::CsvTable& csv_;
    TemperatureUnit unit_;
    std::optional<std::size_t> station_;
    std::array<Column, 3> columns_{{{"TMAX"}, {"TMIN"}, {"PRCP"}}};
    std::vector<DayTemperatures> asTheyStand_;
    DailyTable made_;
};

} // namespace

Result<DailyTable> readOrderedTable(BytesView text, TemperatureUnit unit, Hemisphere where) {
    const auto csv = report::readCsv(text);
    if (!csv) {
        return csv.error();
    }
    OrderedTable table(*csv, unit);
    auto made = table.read();
    if (!made) {
        return made;
    }
    remarkOnRepeated(*made);
    if (auto doubt = doubtUnit(table.asTheyStand(), unit, where)) {
        made->remarks.push_back(std::move(*doubt));
    }
    return made;
}

std::optional<DailyForm> dailyFormOf(BytesView text) {
    std::string_view line = text.substr(0, text.find('\n'));
    if (line.ends_with('\r')) {
        line.remove_suffix(1);
    }
    if (isFixedWidth(line)) {
        return DailyForm::FixedWidth;
    }
    if (isByStation(line)) {
        return DailyForm::ByStation;
    }
    return isOrdered(line) ? std::optional(DailyForm::Ordered) : std::nullopt;
}

Result<DailyTable>
readDaily(BytesView text, DailyForm form, TemperatureUnit unit, Hemisphere where) {
    switch (form) {
    case DailyForm::ByStation:
        return readStationTable(text);
    case DailyForm::Ordered:
        return readOrderedTable(text, unit, where);
    case DailyForm::FixedWidth:
        break;
    }
    auto record = readGhcnDaily(text);
    return record ? Result<DailyTable>(DailyTable{std::move(*record), 0, {}})
                  : Result<DailyTable>(record.error());
}

} // namespace bullace::weather
