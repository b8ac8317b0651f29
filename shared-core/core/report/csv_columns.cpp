// What the columns of a spreadsheet hold.
#include "core/report/csv.hpp"
#include "core/vineyard/position.hpp"

#include <charconv>

namespace bullace::report {

namespace {

// Days that spreadsheets count from 1899-12-30; what lies outside of 1955 to 2119 is a plain
// number.
constexpr double kLeastSerial = 20'000;
constexpr double kGreatestSerial = 80'000;

std::optional<double> numberIn(std::string_view cell) {
    std::string plain(cell);
    for (char& c : plain) {
        c = c == ',' ? '.' : c;
    }
    double number = 0;
    const auto [end, fault] = std::from_chars(plain.data(), plain.data() + plain.size(), number);
    return fault == std::errc{} && end == plain.data() + plain.size() ? std::optional(number)
                                                                      : std::nullopt;
}

struct ThreeNumbers {
    int first = 0;
    int second = 0;
    int third = 0;
};

// Three numbers with the same mark between them: . / or -
std::optional<ThreeNumbers> threeIn(std::string_view cell) {
    ThreeNumbers three;
    int* const into[] = {&three.first, &three.second, &three.third};
    char mark = 0;
    std::size_t at = 0;
    for (int part = 0; part < 3; ++part) {
        const char* begin = cell.data() + at;
        const auto [end, fault] = std::from_chars(begin, cell.data() + cell.size(), *into[part]);
        if (fault != std::errc{} || end == begin || *into[part] < 0) {
            return std::nullopt;
        }
        at = static_cast<std::size_t>(end - cell.data());
        if (part == 2) {
            break;
        }
        const char now = at < cell.size() ? cell[at] : '\0';
        if ((now != '.' && now != '/' && now != '-') || (mark != 0 && now != mark)) {
            return std::nullopt;
        }
        mark = now;
        ++at;
    }
    return at == cell.size() ? std::optional(three) : std::nullopt;
}

std::optional<CivilDate> dateOf(int year, int month, int day) {
    if (year < 100) {
        return std::nullopt; // nobody knows which century
    }
    const CivilDate date{std::chrono::year(year),
                         std::chrono::month(static_cast<unsigned>(month)),
                         std::chrono::day(static_cast<unsigned>(day))};
    return month >= 1 && month <= 12 && day >= 1 && date.ok() ? std::optional(date) : std::nullopt;
}

// What one cell can be; for dates with the year last both orders are told.
struct CellCan {
    bool number = false;
    bool iso = false;
    bool dayFirst = false;
    bool monthFirst = false;
    bool serial = false;
    bool position = false;
};

CellCan canBe(std::string_view cell) {
    CellCan can;
    const auto number = numberIn(cell);
    can.number = number.has_value();
    can.serial = number && *number >= kLeastSerial && *number < kGreatestSerial;
    can.iso = readDate(cell).has_value();
    if (const auto three = threeIn(cell); three && !can.iso) {
        can.dayFirst = dateOf(three->third, three->second, three->first).has_value();
        can.monthFirst = dateOf(three->third, three->first, three->second).has_value();
    }
    can.position = vineyard::readPosition(cell).has_value();
    return can;
}

} // namespace

CellKind guessColumn(const CsvTable& table, std::size_t column) {
    CellCan all{true, true, true, true, true, true};
    std::size_t seen = 0;
    for (const CsvRow& row : table.rows) {
        const std::string& cell = row.cells[column];
        if (cell.empty()) {
            continue;
        }
        ++seen;
        const CellCan can = canBe(cell);
        all.number = all.number && can.number;
        all.iso = all.iso && can.iso;
        all.dayFirst = all.dayFirst && can.dayFirst;
        all.monthFirst = all.monthFirst && can.monthFirst;
        all.serial = all.serial && can.serial;
        all.position = all.position && can.position;
    }
    return seen == 0                        ? CellKind::Empty
           : all.position                   ? CellKind::Position
           : all.iso                        ? CellKind::IsoDate
           : all.dayFirst && all.monthFirst ? CellKind::EitherDate
           : all.dayFirst                   ? CellKind::DayFirst
           : all.monthFirst                 ? CellKind::MonthFirst
           : all.serial                     ? CellKind::SerialDate
           : all.number                     ? CellKind::Number
                                            : CellKind::Text;
}

std::optional<CivilDate> readDateCell(std::string_view cell, CellKind kind) {
    if (const auto iso = readDate(cell)) {
        return iso;
    }
    if (kind == CellKind::SerialDate) {
        const auto number = numberIn(cell);
        if (!number || *number < kLeastSerial || *number >= kGreatestSerial) {
            return std::nullopt;
        }
        const CivilDate first{
            std::chrono::year(1899), std::chrono::month(12), std::chrono::day(30)};
        return addDays(first, static_cast<int>(*number));
    }
    const auto three = threeIn(cell);
    if (!three) {
        return std::nullopt;
    }
    return kind == CellKind::MonthFirst ? dateOf(three->third, three->first, three->second)
                                        : dateOf(three->third, three->second, three->first);
}

} // namespace bullace::report
