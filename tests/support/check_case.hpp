// One outside case of ../shared/checks/cases: its tables, and its expected numbers with the
// tolerance that each has. The data are read from there, never copied.
#pragma once

#include "core/report/csv.hpp"
#include "support/check_file.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <fnmatch.h>
#include <optional>
#include <source_location>
#include <string>
#include <vector>

namespace bullace::test {

class CheckCase {
public:
    // Nothing, and a message, where the cases are not beside the project.
    [[nodiscard]] static std::optional<CheckCase>
    open(const std::string& name,
         const std::source_location& caller = std::source_location::current()) {
        const auto text = checkFile("cases/" + name + "/expected.json", caller);
        if (!text) {
            return {};
        }
        CheckCase found;
        found.name_ = name;
        found.caller_ = caller;
        const nlohmann::json document = nlohmann::json::parse(*text);
        found.expected = document.at("expected");
        found.tolerance_ = document.at("tolerance");
        return found;
    }

    nlohmann::json expected;

    [[nodiscard]] report::CsvTable table(const std::string& file = "data.csv") const {
        const auto text = checkFile("cases/" + name_ + "/" + file, caller_);
        REQUIRE(text);
        const auto table = report::readCsv(*text);
        REQUIRE(table.ok());
        return *table;
    }
    // The texts of one column of a table.
    [[nodiscard]] static std::vector<std::string> column(const report::CsvTable& table,
                                                         const std::string& name) {
        std::size_t place = 0;
        while (table.header.at(place) != name) {
            ++place;
        }
        std::vector<std::string> cells;
        for (const report::CsvRow& row : table.rows) {
            cells.push_back(row.cells[place]);
        }
        return cells;
    }

    // Checks a number against the one at a path such as "fixed.(Intercept).se".
    void number(const std::string& path, double got) const {
        ++compared_;
        const nlohmann::json* here = &expected;
        std::size_t from = 0;
        while (from <= path.size()) { // a key may hold a point: the longest that fits is taken
            std::size_t to = path.size();
            while (to > from && !here->contains(path.substr(from, to - from))) {
                to = path.rfind('.', to - 1);
                if (to == std::string::npos || to < from) {
                    to = from;
                }
            }
            if (to == from) {
                FAIL_CHECK(name_ << " has no " << path);
                return;
            }
            here = &here->at(path.substr(from, to - from));
            from = to + 1;
        }
        if (here->is_null()) {
            CHECK_MESSAGE(std::isnan(got), name_ << ": " << path << " is expected not to be there");
            return;
        }
        const double wanted = here->get<double>();
        const auto [relative, absolute] = toleranceOf(path);
        CHECK_MESSAGE(std::abs(got - wanted) <= absolute + relative * std::abs(wanted),
                      name_ << ": " << path << " is " << got << ", expected " << wanted);
    }
    void number(const std::string& path, const std::optional<double>& got) const {
        number(path, got.value_or(std::nan("")));
    }
    [[nodiscard]] std::size_t compared() const { return compared_; }

private:
    // The longest pattern that fits the path decides.
    [[nodiscard]] std::pair<double, double> toleranceOf(const std::string& path) const {
        double relative = tolerance_.at("rel");
        double absolute = tolerance_.at("abs");
        std::size_t longest = 0;
        const nlohmann::json patterns = tolerance_.value("by_path", nlohmann::json::object());
        for (const auto& [pattern, rule] : patterns.items()) {
            if (pattern.size() >= longest && fnmatch(pattern.c_str(), path.c_str(), 0) == 0) {
                longest = pattern.size();
                relative = rule.value("rel", relative);
                absolute = rule.value("abs", absolute);
            }
        }
        return {relative, absolute};
    }

    std::string name_;
    std::source_location caller_;
    nlohmann::json tolerance_;
    mutable std::size_t compared_ = 0;
};

} // namespace bullace::test
