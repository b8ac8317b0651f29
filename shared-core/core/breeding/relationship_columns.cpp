// The ancestors are collected as bits from the youngest down, which is their order at once.
#include "core/breeding/relationship_columns.hpp"

#include <algorithm>
#include <bit>

namespace bullace::breeding {

RelationshipColumns::RelationshipColumns(std::span<const std::int32_t> mother,
                                         std::span<const std::int32_t> father,
                                         std::span<const double> mendelian)
    : mother_(mother),
      father_(father),
      mendelian_(mendelian),
      values_(mother.size(), Row{}),
      marks_(mother.size() / 64 + 1, 0) {}

void RelationshipColumns::solve(std::span<const std::int32_t> columns,
                                std::span<const std::int32_t> rows) {
    for (const std::int32_t i : used_) {
        values_[static_cast<std::size_t>(i)] = Row{};
    }
    used_.clear();
    std::int32_t last = 0;
    for (const auto& asked : {columns, rows}) {
        for (const std::int32_t i : asked) {
            mark(i);
            last = std::max(last, i);
        }
    }
    collect(static_cast<std::size_t>(last) / 64);
    for (std::size_t k = 0; k < columns.size(); ++k) {
        values_[static_cast<std::size_t>(columns[k])][k] += 1;
    }
    up();
    down();
}

void RelationshipColumns::collect(std::size_t word) {
    for (std::size_t w = word + 1; w-- > 0;) {
        while (marks_[w] != 0) {
            const auto bit = static_cast<std::size_t>(63 - std::countl_zero(marks_[w]));
            marks_[w] &= ~(std::uint64_t{1} << bit);
            const std::size_t i = w * 64 + bit;
            used_.push_back(static_cast<std::int32_t>(i));
            mark(mother_[i]);
            mark(father_[i]);
        }
    }
}

void RelationshipColumns::up() {
    for (const std::int32_t i : used_) {
        const Row& own = values_[static_cast<std::size_t>(i)];
        for (const std::int32_t parent :
             {mother_[static_cast<std::size_t>(i)], father_[static_cast<std::size_t>(i)]}) {
            if (parent >= 0) {
                Row& of = values_[static_cast<std::size_t>(parent)];
                for (std::size_t k = 0; k < kWidth; ++k) {
                    of[k] += 0.5 * own[k];
                }
            }
        }
    }
}

void RelationshipColumns::down() {
    static constexpr Row kNothing{};
    for (auto at = used_.rbegin(); at != used_.rend(); ++at) {
        const auto i = static_cast<std::size_t>(*at);
        const Row& one = mother_[i] < 0 ? kNothing : values_[static_cast<std::size_t>(mother_[i])];
        const Row& two = father_[i] < 0 ? kNothing : values_[static_cast<std::size_t>(father_[i])];
        Row& own = values_[i];
        const double d = mendelian_[i];
        for (std::size_t k = 0; k < kWidth; ++k) {
            own[k] = d * own[k] + 0.5 * (one[k] + two[k]);
        }
    }
}

} // namespace bullace::breeding
