// The logger's file: its columns guessed, and its lines read.
#include "core/base/numbers.hpp"
#include "core/report/csv.hpp"
#include "core/weather/logger.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <string_view>

namespace bullace::weather {

namespace {

constexpr std::size_t kMostSkipped = 20; // lines of a title above the header
constexpr std::size_t kLinesLookedAt = 60;
constexpr std::size_t kFirstRows = 10;

// A date and what stands behind it: "2026-05-14 13:30", "2026-05-14T13:30:00", "14.05.2026".
std::pair<std::string_view, std::string_view> parted(std::string_view cell) {
    const std::size_t at = cell.find_first_of(" T");
    return at == std::string_view::npos ? std::pair(cell, std::string_view{})
                                        : std::pair(cell.substr(0, at), cell.substr(at + 1));
}

std::optional<unsigned> twoDigits(std::string_view text) {
    const bool areDigits =
        !text.empty() && text.size() <= 2 &&
        std::ranges::all_of(text, [](unsigned char c) { return std::isdigit(c); });
    unsigned number = 0;
    for (const char digit : text) {
        number = 10 * number + static_cast<unsigned>(digit - '0');
    }
    return areDigits ? std::optional(number) : std::nullopt;
}

// "13:30", "13:30:05.250", "1:30 PM", "13:30Z" as minutes after midnight.
std::optional<std::int64_t> clockIn(std::string_view text) {
    const std::size_t colon = text.find(':');
    if (colon == std::string_view::npos) {
        return std::nullopt;
    }
    const auto hour = twoDigits(text.substr(0, colon));
    const auto minute = twoDigits(text.substr(colon + 1, 2));
    if (!hour || !minute || *hour > 24 || *minute > 59) {
        return std::nullopt;
    }
    std::string end(text.substr(std::min(text.size(), colon + 3)));
    std::ranges::transform(
        end, end.begin(), [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
    const bool isAfternoon = end.ends_with("PM") || end.ends_with("P.M.");
    const bool isMorning = end.ends_with("AM") || end.ends_with("A.M.");
    if ((isAfternoon || isMorning) && (*hour < 1 || *hour > 12)) {
        return std::nullopt;
    }
    const unsigned of24 = isAfternoon || isMorning ? *hour % 12 + (isAfternoon ? 12 : 0) : *hour;
    return std::int64_t{of24} * 60 + *minute;
}

std::optional<std::int64_t> minuteIn(const report::CsvRow& row, const LoggerColumns& columns) {
    constexpr std::array kKinds{
        report::CellKind::IsoDate, report::CellKind::DayFirst, report::CellKind::MonthFirst};
    const auto [day, behind] = parted(row.cells[columns.day]);
    const auto date = report::readDateCell(day, kKinds[static_cast<std::size_t>(columns.order)]);
    const auto clock =
        clockIn(columns.clock ? std::string_view(row.cells[*columns.clock]) : behind);
    if (!date || !clock) {
        return std::nullopt;
    }
    return std::int64_t{std::chrono::sys_days(*date).time_since_epoch().count()} * 1440 + *clock;
}

std::string_view behindLines(std::string_view text, std::size_t lines) {
    for (; lines > 0 && !text.empty(); --lines) {
        text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
    }
    return text;
}

std::string_view firstLines(std::string_view text, std::size_t lines) {
    return text.substr(0, text.size() - behindLines(text, lines).size());
}

std::string lowered(std::string_view text) {
    std::string low(text);
    std::ranges::transform(
        low, low.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return low;
}

// A table of the first part of each cell of one column, to ask what dates it holds.
report::CellKind dateKind(const report::CsvTable& table, std::size_t column) {
    report::CsvTable dates;
    for (const report::CsvRow& row : table.rows) {
        dates.rows.push_back({row.line, {std::string(parted(row.cells[column]).first)}});
    }
    return report::guessColumn(dates, 0);
}

bool holdsClock(const report::CsvTable& table, std::size_t column, bool behindDate) {
    return std::ranges::all_of(table.rows, [&](const report::CsvRow& row) {
        const std::string_view cell = row.cells[column];
        return cell.empty() || clockIn(behindDate ? parted(cell).second : cell).has_value();
    });
}

class Guessing {
public:
    explicit Guessing(const report::CsvTable& table) : table_(table) {}

    std::optional<LoggerPreview> guess() {
        const bool hasAll = !table_.rows.empty() && findDay() && findClock() && findNumbers();
        if (!hasAll) {
            return std::nullopt;
        }
        made_.header = table_.header;
        for (std::size_t i = 0; i < std::min(kFirstRows, table_.rows.size()); ++i) {
            made_.firstRows.push_back(table_.rows[i].cells);
        }
        return made_;
    }

private:
    bool findDay() {
        for (std::size_t column = 0; column < table_.header.size(); ++column) {
            const report::CellKind kind = dateKind(table_, column);
            const bool isMonthFirst = kind == report::CellKind::MonthFirst;
            const bool isDayFirst =
                kind == report::CellKind::DayFirst || kind == report::CellKind::EitherDate;
            if (kind == report::CellKind::IsoDate || isMonthFirst || isDayFirst) {
                made_.columns.day = column;
                made_.columns.order = isMonthFirst ? DateOrder::MonthFirst
                                      : isDayFirst ? DateOrder::DayFirst
                                                   : DateOrder::YearFirst;
                made_.isOrderCertain = kind != report::CellKind::EitherDate;
                return true;
            }
        }
        return false;
    }

    bool findClock() {
        if (holdsClock(table_, made_.columns.day, true)) {
            return true;
        }
        for (std::size_t column = 0; column < table_.header.size(); ++column) {
            if (column != made_.columns.day && holdsClock(table_, column, false)) {
                made_.columns.clock = column;
                return true;
            }
        }
        return false;
    }

    // By the header's word; without one the first column of numbers with a point.
    bool findNumbers() {
        std::optional<std::size_t> named;
        std::optional<std::size_t> first;
        for (std::size_t column = 0; column < table_.header.size(); ++column) {
            if (report::guessColumn(table_, column) != report::CellKind::Number) {
                continue;
            }
            const std::string head = lowered(table_.header[column]);
            const bool isHumidity = head.find("hum") != std::string::npos ||
                                    head.starts_with("rh") || head.find("%") != std::string::npos;
            if (isHumidity) {
                made_.columns.humidity = made_.columns.humidity.value_or(column);
            } else if (head.find("temp") != std::string::npos ||
                       head.find("°") != std::string::npos) {
                named = named.value_or(column);
            } else if (hasPoint(column)) {
                first = first.value_or(column);
            }
        }
        if (!named && !first) {
            return false;
        }
        made_.columns.temperature = named.value_or(first.value_or(0));
        readUnit(table_.header[made_.columns.temperature]);
        return true;
    }

    bool hasPoint(std::size_t column) const {
        return std::ranges::any_of(table_.rows, [&](const report::CsvRow& row) {
            return row.cells[column].find_first_of(".,") != std::string::npos;
        });
    }

    void readUnit(const std::string& header) {
        const std::string head = lowered(header);
        const auto says = [&](std::initializer_list<std::string_view> words) {
            return std::ranges::any_of(
                words, [&](std::string_view word) { return head.find(word) != std::string::npos; });
        };
        if (says({"°c", "celsius", "(c)", "[c]", "deg c", "degc"})) {
            made_.unit = TemperatureUnit::Celsius;
        } else if (says({"°f", "fahrenheit", "(f)", "[f]", "deg f", "degf"})) {
            made_.unit = TemperatureUnit::Fahrenheit;
        }
    }

    const report::CsvTable& table_;
    LoggerPreview made_;
};

void findSteps(LoggerRecord& record) {
    std::map<std::int64_t, std::size_t> steps;
    for (std::size_t i = 1; i < record.readings.size(); ++i) {
        ++steps[record.readings[i].minute - record.readings[i - 1].minute];
    }
    if (steps.empty()) {
        return;
    }
    record.everyMinutes =
        std::ranges::max_element(steps, {}, [](const auto& step) { return step.second; })->first;
    for (std::size_t i = 1; i < record.readings.size(); ++i) {
        const std::int64_t from = record.readings[i - 1].minute;
        const std::int64_t to = record.readings[i].minute;
        if (2 * (to - from) > 3 * record.everyMinutes) {
            record.gaps.push_back({from, to});
        }
    }
}

void sortOut(std::vector<std::pair<LoggerReading, std::size_t>>& read, LoggerRecord& record) {
    std::ranges::stable_sort(read, {}, [](const auto& one) { return one.first.minute; });
    for (const auto& [reading, line] : read) {
        const bool isAgain =
            !record.readings.empty() && record.readings.back().minute == reading.minute;
        if (!isAgain) {
            record.readings.push_back(reading);
        } else if (record.readings.back().celsius == reading.celsius) {
            ++record.repeated;
        } else {
            record.unread.push_back(
                {line, "The same minute has another temperature in an earlier line."});
        }
    }
}

void remarkOn(LoggerRecord& record) {
    const auto add = [&record](std::string_view sentence, std::size_t count) {
        if (count > 0) {
            record.remarks.push_back({sentence, {static_cast<std::int64_t>(count)}});
        }
    };
    add(BULLACE_SENTENCE("Remark", "Lines that could not be read are left out (lines: %1)."),
        record.unread.size());
    add(BULLACE_SENTENCE("Remark", "Readings that stand twice count once (readings: %1)."),
        record.repeated);
    add(BULLACE_SENTENCE("Remark", "There are gaps between the readings (gaps: %1)."),
        record.gaps.size());
}

} // namespace

Result<LoggerPreview> previewLogger(BytesView file) {
    for (std::size_t skipped = 0; skipped <= kMostSkipped; ++skipped) {
        const std::string_view part = firstLines(behindLines(file, skipped), kLinesLookedAt);
        const auto table = report::readCsv(part);
        if (!table || table->header.size() < 2 || !table->problems.empty()) {
            continue;
        }
        if (auto preview = Guessing(*table).guess()) {
            preview->columns.skippedLines = skipped;
            return std::move(*preview);
        }
    }
    return Error{ErrorCode::InvalidInput,
                 "No column of this file holds dates with times, or none holds temperatures.",
                 {}};
}

Result<LoggerRecord>
readLogger(BytesView file, const LoggerColumns& columns, TemperatureUnit unit) {
    const auto table = report::readCsv(behindLines(file, columns.skippedLines));
    if (!table) {
        return table.error();
    }
    const std::size_t last = std::max({columns.day,
                                       columns.temperature,
                                       columns.clock.value_or(0),
                                       columns.humidity.value_or(0)});
    if (last >= table->header.size()) {
        return Error{ErrorCode::InvalidInput, "The file has no such column.", {}};
    }
    LoggerRecord record;
    std::vector<std::pair<LoggerReading, std::size_t>> read;
    for (const auto& problem : table->problems) {
        record.unread.push_back({problem.line + columns.skippedLines, problem.message});
    }
    for (const report::CsvRow& row : table->rows) {
        const std::size_t line = row.line + columns.skippedLines;
        const auto minute = minuteIn(row, columns);
        const auto value = readTypedNumber(row.cells[columns.temperature]);
        if (!minute || !value) {
            record.unread.push_back(
                {line,
                 minute ? "The temperature is no number." : "The date and time cannot be read."});
            continue;
        }
        LoggerReading reading{*minute, toCelsius(*value, unit), {}};
        if (columns.humidity) {
            reading.humidity = readTypedNumber(row.cells[*columns.humidity]);
        }
        read.emplace_back(reading, line);
    }
    sortOut(read, record);
    if (record.readings.empty()) {
        return Error{ErrorCode::InvalidInput, "No line of this file could be read.", {}};
    }
    findSteps(record);
    remarkOn(record);
    return record;
}

} // namespace bullace::weather
