// A text of comma-separated records as the table of a trial.
#pragma once

#include "core/report/csv.hpp"
#include "core/trials/trial_table.hpp"
#include "support/check_case.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <string>
#include <vector>

namespace bullace::test {

// An empty cell, or anything else that is no number, is missing.
[[nodiscard]] inline double numberOf(const std::string& text) {
    double value = std::nan("");
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

// The first row names the columns; all but the response and the named numbers are factors.
[[nodiscard]] inline trials::TrialTable trialTable(const std::string& text,
                                                   const std::string& response,
                                                   const std::vector<std::string>& numbers = {}) {
    const auto csv = report::readCsv(text);
    REQUIRE(csv.ok());
    trials::TrialTable table;
    table.responseName = response;
    for (std::size_t column = 0; column < csv->header.size(); ++column) {
        const std::string& name = csv->header[column];
        std::vector<std::string> cells;
        std::vector<double> values;
        for (const report::CsvRow& row : csv->rows) {
            cells.push_back(row.cells[column]);
            values.push_back(numberOf(cells.back()));
        }
        if (name == response) {
            table.response = std::move(values);
        } else if (std::ranges::find(numbers, name) != numbers.end()) {
            table.covariates.push_back({name, std::move(values)});
        } else {
            table.factors.push_back(trials::makeFactor(name, cells));
        }
    }
    return table;
}

// Of an outside case: y is the response, x a number, all else factors.
[[nodiscard]] inline trials::TrialTable tableOf(const CheckCase& check,
                                                const std::string& file = "data.csv") {
    return trialTable(check.file(file), "y", {"x"});
}

} // namespace bullace::test
