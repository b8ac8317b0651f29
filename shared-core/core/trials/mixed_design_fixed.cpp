#include "core/trials/mixed_design_matrix.hpp"

#include <algorithm>
#include <set>

namespace bullace::trials {

TermParts termParts(const TrialTable& table, const Term& term) {
    TermParts parts;
    for (const std::string& name : term) {
        if (const Factor* factor = table.factor(name)) {
            parts.factors.push_back(factor);
        } else {
            parts.covariates.push_back(table.covariate(name));
        }
    }
    return parts;
}

namespace {

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
        const TermParts parts = termParts(table_, term);
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
        columns_.push_back({"intercept", number, {}});
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
    std::string nameOf(const Term& term,
                       const TermParts& parts,
                       const std::vector<std::uint32_t>& levels) const {
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

    void enter(const TermParts& parts, const std::map<std::vector<std::uint32_t>, int>& places) {
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

namespace {

// By least squares, which fit without an error.
Eigen::MatrixXd followingOf(const Sparse& transposed,
                            const std::vector<int>& kept,
                            const std::vector<int>& dropped) {
    if (dropped.empty()) {
        return Eigen::MatrixXd(static_cast<Eigen::Index>(kept.size()), 0);
    }
    const Eigen::MatrixXd product(Sparse(transposed * Sparse(transposed.transpose())));
    return Eigen::LLT<Eigen::MatrixXd>(product(kept, kept)).solve(product(kept, dropped));
}

} // namespace

FixedPart fixedPart(const TrialTable& table, const MixedSpec& spec) {
    FixedColumns columns(table, spec);
    if (spec.hasIntercept) {
        columns.addIntercept(spec.fixed.size());
    }
    for (std::size_t term = 0; term < spec.fixed.size(); ++term) {
        columns.add(term);
    }
    Sparse transposed(static_cast<Eigen::Index>(columns.columns().size()),
                      static_cast<Eigen::Index>(table.rows()));
    transposed.setFromTriplets(columns.entries().begin(), columns.entries().end());
    const std::vector<bool> kept = independentColumns(transposed);
    FixedPart part;
    std::vector<int> to(kept.size(), -1);
    std::vector<int> keptOnes;
    std::vector<int> droppedOnes;
    for (std::size_t i = 0; i < kept.size(); ++i) {
        if (kept[i]) {
            to[i] = static_cast<int>(part.columns.size());
            part.columns.push_back(columns.columns()[i]);
            keptOnes.push_back(static_cast<int>(i));
        } else {
            part.dropped.push_back(columns.columns()[i]);
            droppedOnes.push_back(static_cast<int>(i));
        }
    }
    part.following = followingOf(transposed, keptOnes, droppedOnes);
    for (const auto& entry : columns.entries()) {
        if (const int place = to[static_cast<std::size_t>(entry.row())]; place >= 0) {
            part.entries.emplace_back(place, entry.col(), entry.value());
        }
    }
    return part;
}

} // namespace bullace::trials
