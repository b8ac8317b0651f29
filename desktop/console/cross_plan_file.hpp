// Candidates, pairs, kinships and her own list for `bullace work cross-plan`, from CSV files.
#pragma once

#include "console/work.hpp"

#include "core/breeding/cross_plan.hpp"

#include <map>

namespace bullace::console {

struct PlanChoice {
    std::string path;
    std::string pairs;
    std::string pedigree;
    std::string list;
    std::vector<std::string> species;
    std::size_t mostUses = 4;
    std::size_t curve = 0;
    breeding::PlanRules rules;
};

struct PlanFiles {
    std::vector<breeding::PlanCandidate> candidates;
    breeding::PairTable pairs;
    std::map<std::string, std::size_t, std::less<>> place;
};

// "NAME,0.3,0.6" or "NAME,0.3,0.6,each".
[[nodiscard]] Result<breeding::SpeciesWish> wishOf(const std::string& text);

// The files that the choice names. Errors name file, line and column.
[[nodiscard]] Result<PlanFiles> readPlanFiles(const PlanChoice& choice, Terminal& terminal);

// Columns mother, father; several fathers are joined by +, none is open pollination.
[[nodiscard]] Result<std::vector<breeding::OwnCross>> readOwnCrosses(const std::string& path,
                                                                     Terminal& terminal);

} // namespace bullace::console
