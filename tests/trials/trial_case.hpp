// An outside check of trials: its records as a table, and its expected numbers with their
// tolerances, each of which must be asked for once.
#pragma once

#include "core/trials/trial_table.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace bullace::test {

class TrialCase {
public:
    // Nothing, and a message, where the folder ../shared/checks is not beside the project.
    static std::optional<TrialCase> open(const std::string& name);

    // The records with `response`; all other columns are factors, but for those named as numbers.
    [[nodiscard]] trials::TrialTable table(const std::string& response = "y",
                                           const std::vector<std::string>& numbers = {}) const;
    [[nodiscard]] const nlohmann::json& expected() const { return expected_; }
    // Whether the number stands at the path ("anova.0.ss") within its tolerance; marks it as seen.
    [[nodiscard]] bool agrees(const std::string& path, double got);
    [[nodiscard]] bool agrees(const std::string& path, const std::optional<double>& got);
    // The numbers that were not asked for, but for those whose path begins with one of these.
    [[nodiscard]] std::vector<std::string>
    unasked(const std::vector<std::string>& leftOut = {}) const;

private:
    std::string csv_;
    nlohmann::json expected_;
    nlohmann::json tolerance_;
    std::set<std::string> seen_;
};

// A table of texts: the first row names the columns; `response` holds numbers, an empty cell is
// missing.
[[nodiscard]] trials::TrialTable trialTable(const std::string& csv,
                                            const std::string& response,
                                            const std::vector<std::string>& numbers = {});

} // namespace bullace::test
