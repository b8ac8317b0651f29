// Reading an outside check and comparing with it.
#include "trials/trial_case.hpp"

#include "core/report/csv.hpp"
#include "support/check_file.hpp"

#include <cmath>
#include <fnmatch.h>
#include <limits>

namespace bullace::test {

namespace {

// Paths of all numbers below a node.
void collect(const nlohmann::json& node, const std::string& path, std::vector<std::string>& into) {
    if (node.is_number()) {
        into.push_back(path);
        return;
    }
    if (!node.is_structured()) {
        return;
    }
    for (const auto& item : node.items()) {
        collect(item.value(), path.empty() ? item.key() : path + "." + item.key(), into);
    }
}

// Keys hold dots of their own ("0.2cwt"), so the longest key that fits is taken.
const nlohmann::json* find(const nlohmann::json& node, const std::string& path) {
    if (path.empty()) {
        return &node;
    }
    for (const auto& item : node.items()) {
        const std::string& key = item.key();
        if (path == key) {
            return &item.value();
        }
        if (path.starts_with(key + ".")) {
            if (const auto* found = find(item.value(), path.substr(key.size() + 1))) {
                return found;
            }
        }
    }
    return nullptr;
}

} // namespace

std::optional<TrialCase> TrialCase::open(const std::string& name) {
    const auto csv = checkFile("cases/" + name + "/data.csv");
    const auto json = checkFile("cases/" + name + "/expected.json");
    if (!csv || !json) {
        return {};
    }
    const nlohmann::json whole = nlohmann::json::parse(*json);
    TrialCase result;
    result.csv_ = *csv;
    result.expected_ = whole.at("expected");
    result.tolerance_ = whole.at("tolerance");
    return result;
}

trials::TrialTable TrialCase::table(const std::string& response,
                                    const std::vector<std::string>& numbers) const {
    return trialTable(csv_, response, numbers);
}

bool TrialCase::agrees(const std::string& path, double got) {
    const nlohmann::json* node = find(expected_, path);
    if (node == nullptr || !node->is_number()) {
        MESSAGE("no number at " << path);
        return false;
    }
    seen_.insert(path);
    nlohmann::json allowed = tolerance_;
    std::size_t longest = 0;
    if (tolerance_.contains("by_path")) {
        for (const auto& item : tolerance_["by_path"].items()) {
            if (item.key().size() > longest && fnmatch(item.key().c_str(), path.c_str(), 0) == 0) {
                longest = item.key().size();
                allowed = item.value();
            }
        }
    }
    const double expected = node->get<double>();
    const double room =
        allowed["abs"].get<double>() + allowed["rel"].get<double>() * std::abs(expected);
    const bool isNear = std::abs(got - expected) <= room;
    if (!isNear) {
        MESSAGE(path << ": " << got << " instead of " << expected << ", apart by "
                     << got - expected);
    }
    return isNear;
}

bool TrialCase::agrees(const std::string& path, const std::optional<double>& got) {
    return agrees(path, got.value_or(std::numeric_limits<double>::quiet_NaN()));
}

std::vector<std::string> TrialCase::unasked(const std::vector<std::string>& leftOut) const {
    std::vector<std::string> all;
    collect(expected_, "", all);
    std::erase_if(all, [&](const std::string& path) {
        bool isOut = seen_.contains(path);
        for (const std::string& start : leftOut) {
            isOut = isOut || path.starts_with(start);
        }
        return isOut;
    });
    return all;
}

trials::TrialTable trialTable(const std::string& csv,
                              const std::string& response,
                              const std::vector<std::string>& numbers) {
    const auto read = report::readCsv(csv);
    REQUIRE(read.ok());
    trials::TrialTable table;
    table.responseName = response;
    for (std::size_t column = 0; column < read->header.size(); ++column) {
        const std::string& name = read->header[column];
        std::vector<std::string> cells;
        std::vector<double> values;
        for (const report::CsvRow& row : read->rows) {
            cells.push_back(row.cells[column]);
            values.push_back(cells.back().empty() || cells.back() == "NA"
                                 ? std::numeric_limits<double>::quiet_NaN()
                                 : std::strtod(cells.back().c_str(), nullptr));
        }
        if (name == response) {
            table.response = values;
        } else if (std::find(numbers.begin(), numbers.end(), name) != numbers.end()) {
            table.covariates.push_back({name, values});
        } else {
            table.factors.push_back(trials::makeFactor(name, cells));
        }
    }
    return table;
}

} // namespace bullace::test
