// `bullace work METHOD FILE …`: one computation over a plain CSV file, without a database. Each
// method stands in a work_*.cpp of its own and is added in work.cpp.
#pragma once

#include "console/document.hpp"
#include "console/terminal.hpp"

#include "core/base/civil_date.hpp"
#include "core/base/result.hpp"
#include "core/report/csv.hpp"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
}

namespace bullace::console {

// What the chosen command will do.
using Work = std::function<int(Terminal&)>;

// The command "work" with all of its methods.
void addWork(CLI::App& app, Work& work);

// The bytes of a file; "-" is standard input. Errors: NotFound, Io, BeyondLimit.
[[nodiscard]] Result<std::string> readWhole(const std::string& path, Terminal& terminal);

// A CSV file as it was given, by the names of its columns (in any order, any letter size). Errors
// are InvalidInput and name the file, the line and the column.
class WorkFile {
public:
    [[nodiscard]] static Result<WorkFile> read(const std::string& path, Terminal& terminal);
    // Of text that was read already; `path` is what errors name.
    [[nodiscard]] static Result<WorkFile> of(const std::string& path, const std::string& text);

    [[nodiscard]] std::size_t rows() const { return table_.rows.size(); }
    [[nodiscard]] std::size_t line(std::size_t row) const { return table_.rows[row].line; }
    // Where the column is; the message of the error lists those that are there.
    [[nodiscard]] Result<std::size_t> column(std::string_view name) const;
    [[nodiscard]] std::optional<std::size_t> columnIfThere(std::string_view name) const;
    [[nodiscard]] const std::string& header(std::size_t column) const {
        return table_.header[column];
    }
    [[nodiscard]] std::size_t columns() const { return table_.header.size(); }

    // A cell as it stands; an empty cell, and the words NA and null, are missing.
    [[nodiscard]] const std::string& text(std::size_t row, std::size_t column) const;
    [[nodiscard]] bool isMissing(std::size_t row, std::size_t column) const;
    [[nodiscard]] Result<double> number(std::size_t row, std::size_t column) const;
    // Missing is nothing, and no error.
    [[nodiscard]] Result<std::optional<double>> numberIfThere(std::size_t row,
                                                              std::size_t column) const;
    [[nodiscard]] Result<std::size_t> count(std::size_t row, std::size_t column) const;
    [[nodiscard]] Result<CivilDate> date(std::size_t row, std::size_t column) const;
    // An error about a cell: `what` is a clause such as "\"abc\" is no number".
    [[nodiscard]] Error wrong(std::size_t row, std::size_t column, const std::string& what) const;
    // An error about a line as a whole: `what` is a sentence with its full stop.
    [[nodiscard]] Error wrongLine(std::size_t row, const std::string& what) const;

private:
    std::string path_;
    report::CsvTable table_;
};

// Prints the document, as JSON where the terminal wants it. The status is 0.
int tell(const Document& document, Terminal& terminal);

// The methods, by what they are called.
void addCounts(CLI::App& methods, Work& work);
void addIdentify(CLI::App& methods, Work& work);
void addKillCurve(CLI::App& methods, Work& work);
void addGrowth(CLI::App& methods, Work& work);
void addColour(CLI::App& methods, Work& work);
void addWeatherMethods(CLI::App& methods, Work& work); // degree-days, chill, weather
void addOnset(CLI::App& methods, Work& work);
void addForecast(CLI::App& methods, Work& work);
void addBloomOverlap(CLI::App& methods, Work& work);
void addPedigree(CLI::App& methods, Work& work);
void addCrossPlan(CLI::App& methods, Work& work);
void addIndex(CLI::App& methods, Work& work);
void addTrial(CLI::App& methods, Work& work);
void addAugmented(CLI::App& methods, Work& work);
void addDesign(CLI::App& methods, Work& work);

} // namespace bullace::console
