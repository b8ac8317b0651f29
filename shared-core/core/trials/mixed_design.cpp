#include "core/trials/mixed_design_matrix.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::trials {

namespace {

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), {}};
}

// A random term's levels and, for each row, the level that it has.
struct Levels {
    RandomBlock block;
    std::vector<std::uint32_t> of;
};

Result<Levels> levelsOf(const TrialTable& table, const RandomTerm& term) {
    const TermParts parts = termParts(table, term.factors);
    if (!parts.covariates.empty() || parts.factors.empty()) {
        return wrong("The random term " + term.called() +
                     " must be made of factors; a column of numbers can only be its slope.");
    }
    Factor factor = combined(parts.factors);
    Levels levels{{term.called(), {}, std::move(factor.levels), false, term.related, 0},
                  std::move(factor.of)};
    if (!term.related) {
        return levels;
    }
    if (term.factors.size() != 1) {
        return wrong("The term " + term.called() +
                     " is related through a pedigree: it has to be one column alone.");
    }
    std::map<std::string_view, std::uint32_t> place;
    for (const std::string& name : term.related->names) {
        place.emplace(name, static_cast<std::uint32_t>(place.size()));
    }
    std::vector<std::uint32_t> to;
    for (const std::string& level : levels.block.levels) {
        const auto found = place.find(level);
        if (found == place.end()) {
            return wrong("\"" + level + "\" has records but does not stand in the pedigree.");
        }
        to.push_back(found->second);
    }
    for (std::uint32_t& level : levels.of) {
        level = to[level];
    }
    levels.block.levels = term.related->names;
    return levels;
}

Error tooFewLevels(const RandomBlock& block, std::size_t rows, std::size_t used) {
    return used < 2 ? wrong("The random term " + block.name +
                            " has one level only: its variance cannot be estimated.")
                    : wrong("The random term " + block.name +
                            " has a level of its own for each of the " + std::to_string(rows) +
                            " rows: its variance cannot be told from the residual's.");
}

Status checkLevels(const Levels& levels, bool hasSlopes, std::size_t rows) {
    std::vector<bool> isUsed(levels.block.levels.size(), false);
    for (const std::uint32_t level : levels.of) {
        isUsed[level] = true;
    }
    const auto used = static_cast<std::size_t>(std::ranges::count(isUsed, true));
    const bool isResidual = used == rows && !levels.block.related && !hasSlopes;
    if (used < 2 || isResidual) {
        return tooFewLevels(levels.block, rows, used);
    }
    return {};
}

// Two terms that divide the rows in the same way have one variance between them.
Status checkRepeated(const std::vector<Levels>& terms, const Levels& next) {
    for (const Levels& other : terms) {
        if (other.block.related || next.block.related ||
            other.block.height() != next.block.height()) {
            continue;
        }
        std::vector<std::uint32_t> partner(other.block.levels.size(), kNoLevel);
        bool isSame = true;
        for (std::size_t row = 0; row < next.of.size() && isSame; ++row) {
            std::uint32_t& level = partner[other.of[row]];
            level = level == kNoLevel ? next.of[row] : level;
            isSame = level == next.of[row];
        }
        if (isSame) {
            return wrong("The random terms " + other.block.name + " and " + next.block.name +
                         " divide the rows in the same way: their variances cannot be told apart.");
        }
    }
    return {};
}

// A term whose level follows from the levels of a fixed term has nothing left that is random.
Status checkTold(const TrialTable& table, const MixedSpec& spec, const Levels& levels) {
    for (const Term& term : spec.fixed) {
        const TermParts parts = termParts(table, term);
        if (parts.factors.empty() || !parts.covariates.empty() || levels.block.related) {
            continue;
        }
        const Factor cells = combined(parts.factors);
        std::vector<std::uint32_t> told(cells.levels.size(), kNoLevel);
        bool isTold = true;
        for (std::size_t row = 0; row < cells.of.size() && isTold; ++row) {
            std::uint32_t& level = told[cells.of[row]];
            level = level == kNoLevel ? levels.of[row] : level;
            isTold = level == levels.of[row];
        }
        if (isTold) {
            return wrong("The random term " + levels.block.name +
                         " is told by the fixed terms already: nothing is left from which to "
                         "estimate its variance.");
        }
    }
    return {};
}

class RandomColumns {
public:
    RandomColumns(const TrialTable& table, const MixedSpec& spec, int first)
        : table_(table),
          spec_(spec),
          next_(first) {}

    Status add(const RandomTerm& term) {
        auto levels = levelsOf(table_, term);
        if (!levels) {
            return levels.error();
        }
        if (const auto checked = checkLevels(*levels, !term.slopes.empty(), table_.rows());
            !checked) {
            return checked;
        }
        if (const auto checked = checkRepeated(seen_, *levels); !checked) {
            return checked;
        }
        if (const auto checked = checkTold(table_, spec_, *levels);
            !checked && term.slopes.empty()) {
            return checked;
        }
        RandomBlock& block = levels->block;
        block.parts = {term.slopes.empty() ? "" : "intercept"};
        block.parts.insert(block.parts.end(), term.slopes.begin(), term.slopes.end());
        block.isCorrelated = term.areSlopesCorrelated && block.parts.size() > 1;
        block.first = next_;
        for (std::size_t row = 0; row < table_.rows(); ++row) {
            const auto level = static_cast<int>(levels->of[row]);
            entries_.emplace_back(block.at(level, 0), static_cast<std::int32_t>(row), 1.0);
            for (std::size_t part = 0; part < term.slopes.size(); ++part) {
                entries_.emplace_back(block.at(level, static_cast<int>(part) + 1),
                                      static_cast<std::int32_t>(row),
                                      table_.covariate(term.slopes[part])->values[row]);
            }
        }
        next_ += block.columns();
        seen_.push_back(std::move(*levels));
        return {};
    }

    void add(const SmoothTerm& term, const std::vector<std::size_t>& rows) {
        Levels levels{{term.name, {""}, {}, false, {}, next_}, {}};
        for (std::size_t column = 0; column < term.columns.size(); ++column) {
            levels.block.levels.push_back(std::to_string(column + 1));
            for (std::size_t row = 0; row < rows.size(); ++row) {
                const double value = term.columns[column][rows[row]];
                if (value != 0) {
                    entries_.emplace_back(
                        next_ + static_cast<int>(column), static_cast<std::int32_t>(row), value);
                }
            }
        }
        next_ += levels.block.columns();
        smooth_.push_back(std::move(levels.block));
    }

    [[nodiscard]] std::vector<RandomBlock> blocks() const {
        std::vector<RandomBlock> blocks;
        for (const Levels& levels : seen_) {
            blocks.push_back(levels.block);
        }
        blocks.insert(blocks.end(), smooth_.begin(), smooth_.end());
        return blocks;
    }
    [[nodiscard]] int end() const { return next_; }
    [[nodiscard]] const Triplets& entries() const { return entries_; }

private:
    const TrialTable& table_;
    const MixedSpec& spec_;
    int next_ = 0;
    std::vector<Levels> seen_;
    std::vector<RandomBlock> smooth_;
    Triplets entries_;
};

std::vector<Term> allTerms(const MixedSpec& spec) {
    std::vector<Term> terms = spec.fixed;
    for (const RandomTerm& term : spec.random) {
        terms.push_back(term.factors);
        for (const std::string& slope : term.slopes) {
            terms.push_back({slope});
        }
    }
    return terms;
}

Status checkResponse(const TrialTable& table) {
    if (table.rows() == 0) {
        return wrong("No row has " + (table.responseName.empty() ? "a value" : table.responseName) +
                     " and all the columns that the model names.");
    }
    const auto [least, greatest] = std::ranges::minmax(table.response);
    if (!(least < greatest)) {
        return wrong("All " + std::to_string(table.rows()) +
                     " values are the same: there is no variance to divide.");
    }
    return {};
}

} // namespace

Result<MixedDesign> designOf(const TrialTable& table, const MixedSpec& spec) {
    const auto rows = completeRows(table, allTerms(spec));
    if (!rows) {
        return rows.error();
    }
    MixedDesign design;
    design.table = rowsOf(table, *rows);
    design.leftOut = table.rows() - rows->size();
    if (const auto checked = checkResponse(design.table); !checked) {
        return checked.error();
    }
    FixedPart fixed = fixedPart(design.table, spec);
    design.fixed = std::move(fixed.columns);
    design.dropped = std::move(fixed.dropped);
    design.following = std::move(fixed.following);
    Triplets entries = std::move(fixed.entries);
    if (design.table.rows() <= design.fixed.size()) {
        return wrong("There are " + std::to_string(design.table.rows()) + " values for " +
                     std::to_string(design.fixed.size()) +
                     " fixed effects: nothing is left to tell the variances from.");
    }
    RandomColumns random(design.table, spec, design.fixedColumns());
    for (const RandomTerm& term : spec.random) {
        if (const auto added = random.add(term); !added) {
            return added.error();
        }
    }
    for (const SmoothTerm& term : spec.smooth) {
        random.add(term, *rows);
    }
    design.random = random.blocks();
    entries.insert(entries.end(), random.entries().begin(), random.entries().end());
    design.transposed.resize(random.end(), static_cast<Eigen::Index>(design.table.rows()));
    design.transposed.setFromTriplets(entries.begin(), entries.end());
    design.response = Eigen::Map<const Eigen::VectorXd>(
        design.table.response.data(), static_cast<Eigen::Index>(design.table.rows()));
    if (spec.hasIntercept) {
        design.means[0] = design.response.mean();
        design.response.array() -= design.means[0];
    }
    return design;
}

} // namespace bullace::trials
