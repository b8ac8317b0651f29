// Columns of the relationship matrix A by one pass up and one pass down the pedigree, eight columns
// at a time, over the ancestors of those that are asked about only.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace bullace::breeding {

// A = T D T' with T the flow of genes from parent to offspring and D the variances of Mendelian
// sampling, so a column is T (D (T' e)). Source  Colleau 2002, Genet. Sel. Evol. 34:409-421;
// Sargolzaei, Iwaisaki & Colleau 2005, J. Anim. Breed. Genet. 122:325-331.
class RelationshipColumns {
public:
    static constexpr std::size_t kWidth = 8;
    using Row = std::array<double, kWidth>; // of one individual, its value in each column

    // The spans outlive the object: parents (or -1) before offspring, and the Mendelian variances,
    // which may still be filled in for those that no earlier call asked about.
    RelationshipColumns(std::span<const std::int32_t> mother,
                        std::span<const std::int32_t> father,
                        std::span<const double> mendelian);

    // The columns of at most kWidth individuals at the rows asked for, until the next call: row(i)
    // of i in `rows`, of `columns`, or an ancestor of either.
    void solve(std::span<const std::int32_t> columns, std::span<const std::int32_t> rows);
    [[nodiscard]] const Row& row(std::int32_t i) const {
        return values_[static_cast<std::size_t>(i)];
    }

private:
    void mark(std::int32_t i) {
        if (i >= 0) {
            const auto at = static_cast<std::size_t>(i);
            marks_[at / 64] |= std::uint64_t{1} << (at % 64);
        }
    }
    void collect(std::size_t word);
    void up();
    void down();

    std::span<const std::int32_t> mother_;
    std::span<const std::int32_t> father_;
    std::span<const double> mendelian_;
    std::vector<Row> values_;          // 0 but for `used_`
    std::vector<std::uint64_t> marks_; // one bit an individual
    std::vector<std::int32_t> used_;   // descending: offspring before their parents
};

} // namespace bullace::breeding
