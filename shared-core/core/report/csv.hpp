// Tables as text with a separator between cells, as spreadsheets write them: read whatever a
// spreadsheet made of it, and written in one plain way.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/civil_date.hpp"
#include "core/base/result.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::report {

enum class CsvEncoding { Utf8, Windows1252, Utf16Little, Utf16Big };

// How the file was written, as far as it can be told from the file.
struct CsvDialect {
    char separator = ','; // or ';' or a tab
    CsvEncoding encoding = CsvEncoding::Utf8;
    bool hasByteOrderMark = false;
    bool usesDecimalComma = false; // numbers like 24,5 were seen, and none like 24.5
};

struct CsvRow {
    std::size_t line = 0;           // of the file, from 1, where the row begins
    std::vector<std::string> cells; // UTF-8, without spaces around them
};

struct CsvTable {
    CsvDialect dialect;
    std::vector<std::string> header; // the first row that is not empty
    std::vector<CsvRow> rows; // each with as many cells as the header; empty lines are left out
    struct Problem {
        std::size_t line = 0;
        std::string message; // one sentence
    };
    std::vector<Problem> problems; // rows with more cells than the header, and texts without an end
};

inline constexpr std::size_t kGreatestCsv = std::size_t{256} * 1024 * 1024; // bytes
inline constexpr std::size_t kMostCsvColumns = 1000;

// Reads a whole file. Cells may be quoted (RFC 4180), with line ends and doubled quotes in them. A
// row with too few cells gets empty ones at its end; one with too many is a problem, and is left
// out. Errors: BeyondLimit; InvalidInput where it is no text (it holds U+0000), or has no header;
// the message says what it may be instead.
[[nodiscard]] Result<CsvTable> readCsv(BytesView file);

// One row: commas, quotes where they are needed, a line feed. UTF-8.
void appendCsvRow(std::string& out, const std::vector<std::string>& cells);

// What the cells of a column may be, guessed from those that are not empty.
enum class CellKind {
    Empty,
    Number,     // with a point or a comma
    IsoDate,    // 2026-05-14
    DayFirst,   // 14.05.2026, 14/5/2026: some day is greater than 12
    MonthFirst, // 5/14/2026: likewise
    EitherDate, // 5/4/2026: nobody can tell which is the month
    SerialDate, // 46156: days since 1899-12-30, as spreadsheets count them
    Position,   // B2-07-14
    Text
};
[[nodiscard]] CellKind guessColumn(const CsvTable& table, std::size_t column);

// A date cell of that kind; EitherDate is read as DayFirst. A serial number may have a time of day
// behind its point. Nothing where it is none, or no day of the calendar.
[[nodiscard]] std::optional<CivilDate> readDateCell(std::string_view cell, CellKind kind);

} // namespace bullace::report
