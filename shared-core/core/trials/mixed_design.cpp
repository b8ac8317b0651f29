#include "core/trials/mixed_design_matrix.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::trials {

namespace {

using Triplets = std::vector<Eigen::Triplet<double, std::int32_t>>;

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), {}};
}

// What a term is made of: factors whose levels combine, and covariates that multiply.
struct Parts {
    std::vector<const Factor*> factors;
    std::vector<const Covariate*> covariates;
};

Parts partsOf(const TrialTable& table, const Term& term) {
    Parts parts;
    for (const std::string& name : term) {
        if (const Factor* factor = table.factor(name)) {
            parts.factors.push_back(factor);
        } else {
            parts.covariates.push_back(table.covariate(name));
        }
    }
    return parts;
}

double product(const std::vector<const Covariate*>& covariates, std::size_t row) {
    double value = 1;
    for (const Covariate* covariate : covariates) {
        value *= covariate->values[row];
    }
    return value;
}

// Whether a shorter term of the model is the term without one of its factors: then that factor's
// first level is told by the shorter term, and has no column.
bool isMarginTold(const MixedSpec& spec, const Term& term, const std::string& without) {
    std::set<std::string> rest(term.begin(), term.end());
    rest.erase(without);
    if (rest.empty()) {
        return spec.hasIntercept;
    }
    return std::ranges::any_of(spec.fixed, [&](const Term& other) {
        return std::set<std::string>(other.begin(), other.end()) == rest;
    });
}

class FixedColumns {
public:
    FixedColumns(const TrialTable& table, const MixedSpec& spec) : table_(table), spec_(spec) {}

    void add(std::size_t number) {
        const Term& term = spec_.fixed[number];
        const Parts parts = partsOf(table_, term);
        std::vector<std::uint32_t> from;
        std::vector<std::uint32_t> to;
        for (const Factor* factor : parts.factors) {
            from.push_back(isMarginTold(spec_, term, factor->name) ? 1U : 0U);
            to.push_back(static_cast<std::uint32_t>(factor->levels.size()));
        }
        // All combinations, the last factor's levels changing fastest.
        std::vector<std::uint32_t> levels = from;
        bool isLeft = std::ranges::equal(from, to, std::less{});
        std::map<std::vector<std::uint32_t>, int> places;
        while (isLeft) {
            places.emplace(levels, static_cast<int>(columns_.size()));
            columns_.push_back({nameOf(term, parts, levels), number, levels});
            isLeft = advance(levels, from, to);
        }
        enter(parts, places);
    }
    void addIntercept(std::size_t number) {
        const int column = static_cast<int>(columns_.size());
        columns_.push_back({"(Intercept)", number, {}});
        for (std::size_t row = 0; row < table_.rows(); ++row) {
            entries_.emplace_back(column, static_cast<std::int32_t>(row), 1.0);
        }
    }
    [[nodiscard]] std::vector<FixedColumn>& columns() { return columns_; }
    [[nodiscard]] const Triplets& entries() const { return entries_; }

private:
    static bool advance(std::vector<std::uint32_t>& levels,
                        const std::vector<std::uint32_t>& from,
                        const std::vector<std::uint32_t>& to) {
        for (std::size_t i = levels.size(); i-- > 0;) {
            if (++levels[i] < to[i]) {
                return true;
            }
            levels[i] = from[i];
        }
        return false;
    }

    // "year Y2020"; a covariate's name alone.
    std::string
    nameOf(const Term& term, const Parts& parts, const std::vector<std::uint32_t>& levels) const {
        std::string name;
        std::size_t factor = 0;
        for (const std::string& part : term) {
            name += (name.empty() ? "" : ":") + part;
            if (table_.factor(part) != nullptr) {
                name += " " + parts.factors[factor]->levels[levels[factor]];
                ++factor;
            }
        }
        return name;
    }

    void enter(const Parts& parts, const std::map<std::vector<std::uint32_t>, int>& places) {
        std::vector<std::uint32_t> levels(parts.factors.size());
        for (std::size_t row = 0; row < table_.rows(); ++row) {
            for (std::size_t i = 0; i < levels.size(); ++i) {
                levels[i] = parts.factors[i]->of[row];
            }
            if (const auto place = places.find(levels); place != places.end()) {
                entries_.emplace_back(
                    place->second, static_cast<std::int32_t>(row), product(parts.covariates, row));
            }
        }
    }

    const TrialTable& table_;
    const MixedSpec& spec_;
    std::vector<FixedColumn> columns_;
    Triplets entries_;
};

// A random term's levels and, for each row, the level that it has.
struct Levels {
    RandomBlock block;
    std::vector<std::uint32_t> of;
};

Result<Levels> levelsOf(const TrialTable& table, const RandomTerm& term) {
    const Parts parts = partsOf(table, term.factors);
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
    const std::set<std::uint32_t> used(levels.of.begin(), levels.of.end());
    const bool isResidual = used.size() == rows && !levels.block.related && !hasSlopes;
    if (used.size() < 2 || isResidual) {
        return tooFewLevels(levels.block, rows, used.size());
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
        std::map<std::uint32_t, std::uint32_t> pairs;
        bool isSame = true;
        for (std::size_t row = 0; row < next.of.size() && isSame; ++row) {
            isSame = pairs.emplace(other.of[row], next.of[row]).first->second == next.of[row];
        }
        if (isSame) {
            return wrong("The random terms " + other.block.name + " and " + next.block.name +
                         " divide the rows in the same way: their variances cannot be told apart.");
        }
    }
    return {};
}

class RandomColumns {
public:
    RandomColumns(const TrialTable& table, int first) : table_(table), next_(first) {}

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
                entries_.emplace_back(next_ + static_cast<int>(column),
                                      static_cast<std::int32_t>(row),
                                      term.columns[column][rows[row]]);
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

// The kept fixed columns in front; their entries move up.
Triplets keepFixed(MixedDesign& design, FixedColumns& columns) {
    Sparse transposed(static_cast<Eigen::Index>(columns.columns().size()),
                      static_cast<Eigen::Index>(design.table.rows()));
    transposed.setFromTriplets(columns.entries().begin(), columns.entries().end());
    const std::vector<bool> kept = independentColumns(transposed);
    std::vector<int> to(kept.size(), -1);
    for (std::size_t i = 0; i < kept.size(); ++i) {
        if (kept[i]) {
            to[i] = design.fixedColumns();
            design.fixed.push_back(columns.columns()[i]);
        } else {
            design.aliased.push_back(columns.columns()[i].name);
        }
    }
    Triplets entries;
    for (const auto& entry : columns.entries()) {
        if (const int place = to[static_cast<std::size_t>(entry.row())]; place >= 0) {
            entries.emplace_back(place, entry.col(), entry.value());
        }
    }
    return entries;
}

} // namespace

// By the pivots of the columns' cross-products, each measured against the column's own length.
std::vector<bool> independentColumns(const Sparse& transposed) {
    const Sparse product = transposed * Sparse(transposed.transpose());
    Eigen::MatrixXd rest(product);
    const Eigen::VectorXd length = rest.diagonal();
    std::vector<bool> kept(static_cast<std::size_t>(rest.rows()), true);
    for (Eigen::Index column = 0; column < rest.rows(); ++column) {
        const double pivot = rest(column, column);
        if (!(pivot > 1e-9 * length[column])) {
            kept[static_cast<std::size_t>(column)] = false;
            continue;
        }
        const Eigen::Index left = rest.rows() - column - 1;
        const Eigen::VectorXd below = rest.col(column).tail(left);
        rest.bottomRightCorner(left, left)
            .selfadjointView<Eigen::Lower>()
            .rankUpdate(below, -1 / pivot);
    }
    return kept;
}

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
    FixedColumns fixed(design.table, spec);
    if (spec.hasIntercept) {
        fixed.addIntercept(spec.fixed.size());
    }
    for (std::size_t term = 0; term < spec.fixed.size(); ++term) {
        fixed.add(term);
    }
    Triplets entries = keepFixed(design, fixed);
    if (design.table.rows() <= design.fixed.size()) {
        return wrong("There are " + std::to_string(design.table.rows()) + " values for " +
                     std::to_string(design.fixed.size()) +
                     " fixed effects: nothing is left to tell the variances from.");
    }
    RandomColumns random(design.table, design.fixedColumns());
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
