#include "core/trials/trial_table.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

namespace bullace::trials {

namespace {

// Levels that some row has, in their order, and the rows' indices put right.
Factor withoutUnused(Factor factor) {
    std::vector<std::uint32_t> place(factor.levels.size(), kNoLevel);
    for (const std::uint32_t level : factor.of) {
        if (level != kNoLevel) {
            place[level] = 0;
        }
    }
    std::vector<std::string> kept;
    for (std::size_t level = 0; level < place.size(); ++level) {
        if (place[level] != kNoLevel) {
            place[level] = static_cast<std::uint32_t>(kept.size());
            kept.push_back(std::move(factor.levels[level]));
        }
    }
    factor.levels = std::move(kept);
    for (std::uint32_t& level : factor.of) {
        level = level == kNoLevel ? kNoLevel : place[level];
    }
    return factor;
}

std::string columnNames(const TrialTable& table) {
    std::string names;
    const auto add = [&names](const std::string& name) {
        names += (names.empty() ? "" : ", ") + name;
    };
    for (const Factor& factor : table.factors) {
        add(factor.name);
    }
    for (const Covariate& covariate : table.covariates) {
        add(covariate.name);
    }
    return names;
}

Result<void> checkTerm(const TrialTable& table, const Term& term) {
    if (term.empty()) {
        return Error{ErrorCode::InvalidInput, "A term names no column.", {}};
    }
    std::set<std::string_view> seen;
    for (const std::string& name : term) {
        if (table.factor(name) == nullptr && table.covariate(name) == nullptr) {
            return Error{ErrorCode::InvalidInput,
                         "There is no column \"" + name +
                             "\". The columns are: " + columnNames(table) + ".",
                         {}};
        }
        if (!seen.insert(name).second) {
            return Error{ErrorCode::InvalidInput,
                         "The term " + termName(term) + " names \"" + name + "\" twice.",
                         {}};
        }
    }
    return {};
}

} // namespace

std::string termName(const Term& term) {
    std::string name;
    for (const std::string& part : term) {
        name += (name.empty() ? "" : ":") + part;
    }
    return name;
}

const Factor* TrialTable::factor(std::string_view name) const {
    const auto found =
        std::ranges::find_if(factors, [name](const Factor& each) { return each.name == name; });
    return found == factors.end() ? nullptr : &*found;
}

const Covariate* TrialTable::covariate(std::string_view name) const {
    const auto found = std::ranges::find_if(
        covariates, [name](const Covariate& each) { return each.name == name; });
    return found == covariates.end() ? nullptr : &*found;
}

Factor makeFactor(std::string name, std::span<const std::string> cells) {
    Factor factor{std::move(name), {}, std::vector<std::uint32_t>(cells.size(), kNoLevel)};
    std::map<std::string_view, std::uint32_t> places;
    for (const std::string& cell : cells) {
        if (!cell.empty()) {
            places.emplace(cell, 0);
        }
    }
    for (auto& [level, place] : places) {
        place = static_cast<std::uint32_t>(factor.levels.size());
        factor.levels.emplace_back(level);
    }
    for (std::size_t row = 0; row < cells.size(); ++row) {
        if (!cells[row].empty()) {
            factor.of[row] = places.find(cells[row])->second;
        }
    }
    return factor;
}

Factor combined(std::span<const Factor* const> factors) {
    Factor result = *factors.front();
    for (const Factor* next : factors.subspan(1)) {
        const std::size_t width = next->levels.size();
        std::vector<std::uint32_t> place(result.levels.size() * width, kNoLevel);
        for (std::size_t row = 0; row < result.of.size(); ++row) {
            const bool isWhole = result.of[row] != kNoLevel && next->of[row] != kNoLevel;
            result.of[row] =
                isWhole ? static_cast<std::uint32_t>(result.of[row] * width + next->of[row])
                        : kNoLevel;
            if (isWhole) {
                place[result.of[row]] = 0;
            }
        }
        std::vector<std::string> levels;
        for (std::size_t pair = 0; pair < place.size(); ++pair) {
            if (place[pair] != kNoLevel) {
                place[pair] = static_cast<std::uint32_t>(levels.size());
                levels.push_back(result.levels[pair / width] + ":" + next->levels[pair % width]);
            }
        }
        for (std::uint32_t& level : result.of) {
            level = level == kNoLevel ? kNoLevel : place[level];
        }
        result.name += ":" + next->name;
        result.levels = std::move(levels);
    }
    return withoutUnused(std::move(result));
}

Result<std::vector<std::size_t>> completeRows(const TrialTable& table,
                                              std::span<const Term> terms) {
    std::set<std::string> names;
    for (const Term& term : terms) {
        if (const auto checked = checkTerm(table, term); !checked) {
            return checked.error();
        }
        names.insert(term.begin(), term.end());
    }
    std::vector<std::size_t> rows;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const bool isComplete = std::isfinite(table.response[row]) &&
                                std::ranges::all_of(names, [&](const std::string& name) {
                                    const Factor* factor = table.factor(name);
                                    return factor != nullptr
                                               ? factor->of[row] != kNoLevel
                                               : std::isfinite(table.covariate(name)->values[row]);
                                });
        if (isComplete) {
            rows.push_back(row);
        }
    }
    return rows;
}

void tellLeftOut(std::size_t rows, Remarks& remarks) {
    if (rows > 0) {
        remarks.push_back({BULLACE_SENTENCE("Remark",
                                            "Records left out because a value or a column of the "
                                            "model is missing: %1."),
                           {static_cast<std::int64_t>(rows)}});
    }
}

TrialTable rowsOf(const TrialTable& table, std::span<const std::size_t> rows) {
    TrialTable some;
    some.responseName = table.responseName;
    for (const std::size_t row : rows) {
        some.response.push_back(table.response[row]);
    }
    for (const Factor& factor : table.factors) {
        Factor part{factor.name, factor.levels, {}};
        for (const std::size_t row : rows) {
            part.of.push_back(factor.of[row]);
        }
        some.factors.push_back(withoutUnused(std::move(part)));
    }
    for (const Covariate& covariate : table.covariates) {
        Covariate part{covariate.name, {}};
        for (const std::size_t row : rows) {
            part.values.push_back(covariate.values[row]);
        }
        some.covariates.push_back(std::move(part));
    }
    return some;
}

} // namespace bullace::trials
