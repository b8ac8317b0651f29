// One outside case of ../shared/checks/cases: its files, and its expected numbers with the
// tolerance that each has. The data are read from there, never copied.
#pragma once

#include "support/check_file.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <fnmatch.h>
#include <optional>
#include <set>
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
        found.expected_ = document.at("expected");
        found.tolerance_ = document.at("tolerance");
        return found;
    }

    [[nodiscard]] const nlohmann::json& expected() const { return expected_; }
    // The text of one of its files.
    [[nodiscard]] std::string file(const std::string& name) const {
        const auto text = checkFile("cases/" + name_ + "/" + name, caller_);
        REQUIRE(text);
        return *text;
    }

    // Whether a number is the one at a path such as "varcomp.residual" or "anova.0.ss", within its
    // tolerance; NaN, or nothing, where none is expected to be there. Marks it as asked for.
    [[nodiscard]] bool agrees(const std::string& path, double got) const {
        const nlohmann::json* node = find(expected_, path);
        if (node == nullptr || !(node->is_number() || node->is_null())) {
            MESSAGE(name_ << " has no number at " << path);
            return false;
        }
        asked_.insert(path);
        if (node->is_null()) {
            return std::isnan(got);
        }
        const auto wanted = node->get<double>();
        const auto [relative, absolute] = toleranceOf(path);
        const bool isNear = std::abs(got - wanted) <= absolute + relative * std::abs(wanted);
        if (!isNear) {
            MESSAGE(name_ << ": " << path << " is " << got << " instead of " << wanted);
        }
        return isNear;
    }
    [[nodiscard]] bool agrees(const std::string& path, const std::optional<double>& got) const {
        return agrees(path, got.value_or(std::nan("")));
    }

    // How many numbers were asked for, and the paths of those that were not, but for those that
    // begin with one of these.
    [[nodiscard]] std::size_t asked() const { return asked_.size(); }
    [[nodiscard]] std::vector<std::string>
    unasked(const std::vector<std::string>& leftOut = {}) const {
        std::vector<std::string> all;
        collect(expected_, "", all);
        std::erase_if(all, [&](const std::string& path) {
            bool isOut = asked_.contains(path);
            for (const std::string& start : leftOut) {
                isOut = isOut || path.starts_with(start);
            }
            return isOut;
        });
        return all;
    }

private:
    // Paths of all numbers below a node.
    static void
    collect(const nlohmann::json& node, const std::string& path, std::vector<std::string>& into) {
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

    // Keys hold points of their own ("0.2cwt"), so every key that fits is tried.
    static const nlohmann::json* find(const nlohmann::json& node, const std::string& path) {
        if (node.is_object() && node.contains(path)) {
            return &node.at(path);
        }
        for (std::size_t to = path.find('.'); to != std::string::npos;
             to = path.find('.', to + 1)) {
            const std::string key = path.substr(0, to);
            const nlohmann::json* below = childOf(node, key);
            const nlohmann::json* found =
                below == nullptr ? nullptr : find(*below, path.substr(to + 1));
            if (found != nullptr) {
                return found;
            }
        }
        return childOf(node, path);
    }
    static const nlohmann::json* childOf(const nlohmann::json& node, const std::string& key) {
        if (node.is_object()) {
            return node.contains(key) ? &node.at(key) : nullptr;
        }
        const bool isPlace = !key.empty() && key.find_first_not_of("0123456789") == key.npos;
        return node.is_array() && isPlace && std::stoul(key) < node.size()
                   ? &node.at(std::stoul(key))
                   : nullptr;
    }

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
    nlohmann::json expected_;
    nlohmann::json tolerance_;
    mutable std::set<std::string> asked_;
};

} // namespace bullace::test
