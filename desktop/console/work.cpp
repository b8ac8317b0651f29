#include "console/work.hpp"

#include "core/base/numbers.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <fstream>
#include <iterator>

namespace bullace::console {

namespace {

std::string folded(std::string_view text) {
    std::string small(text);
    std::ranges::transform(small, small.begin(), [](unsigned char letter) {
        return static_cast<char>(std::tolower(letter));
    });
    return small;
}

std::string quoted(const std::string& text) {
    return "\"" + text + "\"";
}

// A number as other programs write it too: 1e-05 beside what a person types.
std::optional<double> readNumber(const std::string& cell) {
    if (const auto typed = readTypedNumber(cell)) {
        return typed;
    }
    double value = 0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    const bool isWhole = error == std::errc() && end == cell.data() + cell.size();
    return isWhole && std::isfinite(value) ? std::optional(value) : std::nullopt;
}

} // namespace

Result<std::string> readWhole(const std::string& path, Terminal& terminal) {
    if (path == "-") {
        return std::string(std::istreambuf_iterator<char>(terminal.in), {});
    }
    std::ifstream in(path, std::ios::binary);
    if (!in) {
        return Error{ErrorCode::NotFound, "The file " + path + " cannot be opened.", ""};
    }
    std::string text(std::istreambuf_iterator<char>(in), {});
    if (in.bad() || (text.empty() && in.fail() && !in.eof())) {
        return Error{ErrorCode::Io, "The file " + path + " cannot be read.", ""};
    }
    if (text.size() > report::kGreatestCsv) {
        return Error{ErrorCode::BeyondLimit, path + " is larger than 256 MiB.", ""};
    }
    return text;
}

Result<WorkFile> WorkFile::read(const std::string& path, Terminal& terminal) {
    const Result<std::string> text = readWhole(path, terminal);
    return text ? of(path, *text) : Result<WorkFile>(text.error());
}

Result<WorkFile> WorkFile::of(const std::string& path, const std::string& text) {
    Result<report::CsvTable> table = report::readCsv(text);
    if (!table) {
        return Error{table.error().code, path + ": " + table.error().message, ""};
    }
    if (!table->problems.empty()) {
        const auto& problem = table->problems.front();
        return Error{ErrorCode::InvalidInput,
                     path + ", line " + std::to_string(problem.line) + ": " + problem.message,
                     ""};
    }
    WorkFile file;
    file.path_ = path;
    file.table_ = std::move(*table);
    return file;
}

std::optional<std::size_t> WorkFile::columnIfThere(std::string_view name) const {
    const auto found = std::ranges::find_if(table_.header, [&name](const std::string& header) {
        return folded(header) == folded(name);
    });
    return found == table_.header.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(found - table_.header.begin()));
}

Result<std::size_t> WorkFile::column(std::string_view name) const {
    if (const auto found = columnIfThere(name)) {
        return *found;
    }
    std::string there;
    for (const std::string& header : table_.header) {
        there += (there.empty() ? "" : ", ") + header;
    }
    return Error{ErrorCode::InvalidInput,
                 path_ + ", line 1: there is no column " + quoted(std::string(name)) +
                     ". The columns are: " + there + ".",
                 ""};
}

const std::string& WorkFile::text(std::size_t row, std::size_t column) const {
    return table_.rows[row].cells[column];
}

bool WorkFile::isMissing(std::size_t row, std::size_t column) const {
    const std::string cell = folded(text(row, column));
    return cell.empty() || cell == "na" || cell == "null";
}

Error WorkFile::wrongLine(std::size_t row, const std::string& what) const {
    return {
        ErrorCode::InvalidInput, path_ + ", line " + std::to_string(line(row)) + ": " + what, ""};
}

Error WorkFile::wrong(std::size_t row, std::size_t column, const std::string& what) const {
    return {ErrorCode::InvalidInput,
            path_ + ", line " + std::to_string(line(row)) + ", column " +
                quoted(table_.header[column]) + ": " + what + ".",
            ""};
}

Result<double> WorkFile::number(std::size_t row, std::size_t column) const {
    if (isMissing(row, column)) {
        return wrong(row, column, "a number is missing");
    }
    const auto number = readNumber(text(row, column));
    return number ? Result<double>(*number)
                  : wrong(row, column, quoted(text(row, column)) + " is no number");
}

Result<std::optional<double>> WorkFile::numberIfThere(std::size_t row, std::size_t column) const {
    if (isMissing(row, column)) {
        return std::optional<double>();
    }
    const Result<double> found = number(row, column);
    return found ? Result<std::optional<double>>(*found) : found.error();
}

Result<std::size_t> WorkFile::count(std::size_t row, std::size_t column) const {
    if (isMissing(row, column)) {
        return wrong(row, column, "a count is missing");
    }
    const auto count = readCount(text(row, column));
    return count ? Result<std::size_t>(static_cast<std::size_t>(*count))
                 : wrong(row, column, quoted(text(row, column)) + " is no count");
}

Result<CivilDate> WorkFile::date(std::size_t row, std::size_t column) const {
    const auto date = readDate(text(row, column));
    return date ? Result<CivilDate>(*date)
                : wrong(row, column, quoted(text(row, column)) + " is no date like 2026-05-14");
}

int tell(const Document& document, Terminal& terminal) {
    terminal.out << (terminal.wantsJson ? document.json() + "\n" : document.plainLines());
    return 0;
}

void addWork(CLI::App& app, Work& work) {
    CLI::App* methods =
        app.add_subcommand("work", "One computation over a plain CSV file, without a database");
    methods->require_subcommand(1);
    methods->fallthrough();
    addCounts(*methods, work);
    addIdentify(*methods, work);
    addKillCurve(*methods, work);
    addGrowth(*methods, work);
    addColour(*methods, work);
    addWeatherMethods(*methods, work);
    addOnset(*methods, work);
    addForecast(*methods, work);
    addBloomOverlap(*methods, work);
    addPedigree(*methods, work);
    addCrossPlan(*methods, work);
    addIndex(*methods, work);
    addTrial(*methods, work);
    addAugmented(*methods, work);
    addDesign(*methods, work);
}

} // namespace bullace::console
