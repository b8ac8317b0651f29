// The table of an outside case as a trial: y is the response, x a covariate, all else factors.
#pragma once

#include "core/trials/trial_table.hpp"
#include "support/check_case.hpp"

#include <charconv>
#include <cmath>
#include <string>
#include <vector>

namespace bullace::test {

[[nodiscard]] inline double numberOf(const std::string& text) {
    double value = std::nan("");
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

[[nodiscard]] inline trials::TrialTable tableOf(const CheckCase& check,
                                                const std::string& file = "data.csv") {
    const report::CsvTable csv = check.table(file);
    trials::TrialTable table;
    for (const std::string& name : csv.header) {
        const std::vector<std::string> cells = CheckCase::column(csv, name);
        if (name != "y" && name != "x") {
            table.factors.push_back(trials::makeFactor(name, cells));
            continue;
        }
        std::vector<double> values;
        for (const std::string& cell : cells) {
            values.push_back(numberOf(cell));
        }
        if (name == "y") {
            table.response = values;
        } else {
            table.covariates.push_back({name, values});
        }
    }
    return table;
}

} // namespace bullace::test
