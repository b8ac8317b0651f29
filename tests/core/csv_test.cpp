// Spreadsheets' CSV files as they come: separators, encodings, quotes, dates, ragged lines.
#include "core/report/csv.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

using namespace bullace;
using namespace bullace::report;

namespace {

CsvTable read(const std::string& text) {
    auto table = readCsv(text);
    REQUIRE(table.ok());
    return *table;
}

} // namespace

TEST_CASE(
    "semicolons, decimal commas and a byte order mark, as a spreadsheet writes them in Europe") {
    const CsvTable table =
        read("\xEF\xBB\xBFvine;brix;note\r\nB2-01-01;14,5;süß\r\nB2-01-02;15,25;\r\n");
    CHECK(table.dialect.separator == ';');
    CHECK(table.dialect.hasByteOrderMark);
    CHECK(table.dialect.usesDecimalComma);
    REQUIRE(table.rows.size() == 2);
    CHECK(table.header == std::vector<std::string>{"vine", "brix", "note"});
    CHECK(table.rows[0].cells == std::vector<std::string>{"B2-01-01", "14,5", "süß"});
    CHECK(table.rows[1].line == 3);
}

TEST_CASE("Windows-1252 becomes UTF-8, its own letters among them") {
    const CsvTable table = read("name,note\nP\xFArpura,\x93good\x94 \x80 5\n");
    CHECK(table.dialect.encoding == CsvEncoding::Windows1252);
    CHECK(table.rows[0].cells == std::vector<std::string>{"Púrpura", "“good” € 5"});
}

TEST_CASE("UTF-16 with its mark, little and big") {
    const std::string little("\xFF\xFE"
                             "a\0,\0b\0\n\0\xE9\0,\0"
                             "1\0\n\0",
                             18);
    CHECK(read(little).rows[0].cells == std::vector<std::string>{"é", "1"});
    const std::string big("\xFE\xFF\0a\0,\0b\0\n\0\xE9\0,\0"
                          "1\0\n",
                          18);
    CHECK(read(big).rows[0].cells == std::vector<std::string>{"é", "1"});
}

// RFC 4180, section 2, rules 5 to 7.
TEST_CASE("quoted cells hold separators, line ends and doubled quotes") {
    const CsvTable table = read("a,b,c\n\"aaa\",\"b\r\nbb\",\"c\"\"cc, d\"\n1,2,3\n");
    REQUIRE(table.rows.size() == 2);
    CHECK(table.rows[0].cells == std::vector<std::string>{"aaa", "b\nbb", "c\"cc, d"});
    CHECK(table.rows[1].line == 4);
}

TEST_CASE("ragged lines: too short gets empty cells, too long is a problem by its line, blank is "
          "nothing") {
    const CsvTable table = read("a,b,c\n1,2\n\n,,\n1,2,3,4\n1,2,3,,,\n");
    REQUIRE(table.rows.size() == 2);
    CHECK(table.rows[0].cells == std::vector<std::string>{"1", "2", ""});
    REQUIRE(table.problems.size() == 1);
    CHECK(table.problems[0].line == 5);
    CHECK(table.problems[0].message.find("4 cells") != std::string::npos);
}

TEST_CASE("a quote that never ends is told by the line where it began") {
    const CsvTable table = read("a,b\n1,2\n3,\"four\nfive\n");
    REQUIRE(table.problems.size() == 1);
    CHECK(table.problems[0].line == 3);
}

TEST_CASE("what is no CSV file is refused, with what to do") {
    CHECK_FALSE(readCsv("").ok());
    CHECK_FALSE(readCsv("\n\n  \n").ok());
    const auto zip = readCsv("PK\x03\x04rest");
    REQUIRE_FALSE(zip.ok());
    CHECK(zip.error().message.find("CSV") != std::string::npos);
    CHECK_FALSE(readCsv(std::string("a,b\n\0\1\2", 7)).ok());
}

TEST_CASE("columns are told apart: positions, numbers, dates in every order, serial dates") {
    const CsvTable table = read("p;n;iso;df;mf;either;serial;text;none\n"
                                "B2-07-14;3,5;2026-05-14;14.05.2026;5/14/2026;4/5/2026;46156;aa;\n"
                                "B2-07-15;4;2026-06-01;1.6.2026;6/1/2026;5/5/2026;46157,5;3;\n");
    const CellKind wanted[] = {CellKind::Position,
                               CellKind::Number,
                               CellKind::IsoDate,
                               CellKind::DayFirst,
                               CellKind::MonthFirst,
                               CellKind::EitherDate,
                               CellKind::SerialDate,
                               CellKind::Text,
                               CellKind::Empty};
    for (std::size_t i = 0; i < table.header.size(); ++i) {
        INFO(table.header[i]);
        CHECK(guessColumn(table, i) == wanted[i]);
    }
}

// ECMA-376 part 1, 18.17.4.1: in the 1900 date system serial 60 is the day that never was; from 61,
// 1900-03-01, on days count from 1899-12-30. 2008-01-01 is 39448 (the standard's own support
// pages).
TEST_CASE("serial dates are the days that spreadsheets mean, a time of day aside") {
    CHECK(writeDate(*readDateCell("39448", CellKind::SerialDate)) == "2008-01-01");
    CHECK(writeDate(*readDateCell("39448.75", CellKind::SerialDate)) == "2008-01-01");
    CHECK(writeDate(*readDateCell("46156", CellKind::SerialDate)) == "2026-05-14");
    CHECK_FALSE(readDateCell("17", CellKind::SerialDate));
    CHECK_FALSE(readDateCell("30.2.2026", CellKind::DayFirst));
    CHECK_FALSE(readDateCell("14.05.26", CellKind::DayFirst));
}

TEST_CASE("what is written is read back as it was, whatever the cells hold") {
    std::mt19937 dice(4180);
    constexpr std::string_view kLetters = "ab,;\"\n\t .é1";
    for (int round = 0; round < 500; ++round) {
        std::vector<std::string> cells(3);
        for (std::string& cell : cells) {
            for (std::size_t n = dice() % 6; n > 0; --n) {
                cell += kLetters.substr(dice() % kLetters.size(), 1);
            }
            // Spaces around a cell are not kept, nor are bytes that are half a letter.
            cell.erase(std::remove_if(cell.begin(), cell.end(), [](char c) { return c < 0; }),
                       cell.end());
            cell.erase(cell.find_last_not_of(" \n\t") + 1);
            cell.erase(0, std::min(cell.find_first_not_of(" \n\t"), cell.size()));
        }
        cells[0] += "x"; // a row of empty cells is no row
        std::string file;
        appendCsvRow(file, {"one", "two", "three"});
        appendCsvRow(file, cells);
        const CsvTable table = read(file);
        REQUIRE(table.rows.size() == 1);
        CHECK(table.rows[0].cells == cells);
    }
}
