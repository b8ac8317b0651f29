// The inverse by the rules for each individual's own few elements; kinships by columns.
#include "core/breeding/relationship.hpp"

#include "core/breeding/relationship_columns.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numeric>

namespace bullace::breeding {

namespace {

using Index = std::uint32_t;

std::size_t at(std::int32_t i) {
    return static_cast<std::size_t>(i);
}

// What one individual adds to the elements beside the diagonal, as (row, column, value) of the
// lower triangle, to `act`; the diagonal is added to at once.
struct Element {
    Index row;
    double value;
};

template<typename Act>
void contribute(const Pedigree& pedigree, std::size_t i, double precision, const Act& act) {
    const std::int32_t mother = pedigree.mother[i];
    const std::int32_t father = pedigree.father[i];
    const auto own = static_cast<Index>(i);
    act(own, own, precision);
    if (mother != kUnknown && mother == father) {
        act(own, static_cast<Index>(mother), -precision);
        act(static_cast<Index>(mother), static_cast<Index>(mother), precision);
        return;
    }
    for (const std::int32_t parent : {mother, father}) {
        if (parent != kUnknown) {
            act(own, static_cast<Index>(parent), -precision / 2);
            act(static_cast<Index>(parent), static_cast<Index>(parent), precision / 4);
        }
    }
    if (mother != kUnknown && father != kUnknown) {
        act(static_cast<Index>(std::max(mother, father)),
            static_cast<Index>(std::min(mother, father)),
            precision / 4);
    }
}

// Elements of one column, in any order and some rows several times, to the end of `matrix`.
void appendColumn(std::span<Element> elements, statistics::SparseSymmetric& matrix) {
    const auto byRow = [](const Element& a, const Element& b) { return a.row < b.row; };
    if (!std::is_sorted(elements.begin(), elements.end(), byRow)) {
        // Stable, so that sums are the same however the standard library sorts.
        std::stable_sort(elements.begin(), elements.end(), byRow);
    }
    for (std::size_t k = 0; k < elements.size();) {
        const Index row = elements[k].row;
        double sum = 0;
        for (; k < elements.size() && elements[k].row == row; ++k) {
            sum += elements[k].value;
        }
        if (sum != 0) {
            matrix.row.push_back(row);
            matrix.value.push_back(sum);
        }
    }
}

} // namespace

InverseRelationship inverseRelationship(const Pedigree& pedigree,
                                        std::span<const double> inbreeding) {
    const std::size_t n = pedigree.size();
    std::vector<double> precision = mendelianVariances(pedigree, inbreeding);
    InverseRelationship result;
    for (double& d : precision) {
        result.logDeterminant += std::log(d);
        d = 1 / d;
    }
    std::vector<double> diagonal(n, 0);
    std::vector<std::uint64_t> fill(n + 1, 0);
    for (std::size_t i = 0; i < n; ++i) {
        contribute(pedigree, i, precision[i], [&](Index row, Index column, double value) {
            if (row == column) {
                diagonal[row] += value;
            } else {
                ++fill[column + 1];
            }
        });
    }
    std::partial_sum(fill.begin(), fill.end(), fill.begin());
    const std::vector<std::uint64_t> start = fill;
    std::vector<Element> elements(start[n]);
    for (std::size_t i = 0; i < n; ++i) {
        contribute(pedigree, i, precision[i], [&](Index row, Index column, double value) {
            if (row != column) {
                elements[fill[column]++] = {row, value};
            }
        });
    }
    statistics::SparseSymmetric& matrix = result.inverse;
    matrix.size = static_cast<Index>(n);
    matrix.row.reserve(n + elements.size());
    matrix.value.reserve(n + elements.size());
    for (std::size_t c = 0; c < n; ++c) {
        matrix.columnStart.push_back(matrix.row.size());
        matrix.row.push_back(static_cast<Index>(c));
        matrix.value.push_back(diagonal[c]);
        appendColumn(std::span(elements).subspan(start[c], start[c + 1] - start[c]), matrix);
    }
    matrix.columnStart.push_back(matrix.row.size());
    return result;
}

std::vector<double> kinships(const Pedigree& pedigree,
                             std::span<const double> inbreeding,
                             std::span<const Pair> pairs) {
    const std::vector<double> mendelian = mendelianVariances(pedigree, inbreeding);
    RelationshipColumns columns(pedigree.mother, pedigree.father, mendelian);
    // By first member, so that pairs that share it are in one block.
    std::vector<std::size_t> order(pairs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&pairs](std::size_t k) { return pairs[k].first; });
    std::vector<double> answer(pairs.size());
    for (std::size_t from = 0; from < order.size();) {
        std::vector<std::int32_t> block;
        std::vector<std::int32_t> rows;
        std::size_t to = from;
        for (; to < order.size(); ++to) {
            const auto [one, other] = pairs[order[to]];
            if (block.empty() || block.back() != one) {
                if (block.size() == RelationshipColumns::kWidth) {
                    break;
                }
                block.push_back(one);
            }
            rows.push_back(other);
        }
        columns.solve(block, rows);
        std::size_t k = 0;
        for (; from < to; ++from) {
            const auto [one, other] = pairs[order[from]];
            k += block[k] == one ? 0U : 1U;
            answer[order[from]] = columns.row(other)[k] / 2;
        }
    }
    return answer;
}

std::vector<double> kinshipMatrix(const Pedigree& pedigree,
                                  std::span<const double> inbreeding,
                                  std::span<const std::int32_t> members) {
    const std::vector<double> mendelian = mendelianVariances(pedigree, inbreeding);
    RelationshipColumns columns(pedigree.mother, pedigree.father, mendelian);
    const std::size_t n = members.size();
    std::vector<double> matrix(n * n);
    for (std::size_t from = 0; from < n; from += RelationshipColumns::kWidth) {
        const std::size_t width = std::min(RelationshipColumns::kWidth, n - from);
        columns.solve(members.subspan(from, width), members);
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t k = 0; k < width; ++k) {
                matrix[i * n + from + k] = columns.row(members[i])[k] / 2;
            }
        }
    }
    return matrix;
}

double meanKinship(const Pedigree& pedigree,
                   std::span<const double> inbreeding,
                   std::span<const std::int32_t> members) {
    assert(!members.empty());
    const std::vector<double> mendelian = mendelianVariances(pedigree, inbreeding);
    std::vector<double> share(pedigree.size(), 0);
    for (const std::int32_t i : members) {
        share[at(i)] += 1 / static_cast<double>(members.size());
    }
    // x'Ax = (T'x)' D (T'x): the pass up is enough.
    double sum = 0;
    for (std::size_t i = pedigree.size(); i-- > 0;) {
        sum += mendelian[i] * share[i] * share[i];
        for (const std::int32_t parent : {pedigree.mother[i], pedigree.father[i]}) {
            if (parent != kUnknown) {
                share[at(parent)] += share[i] / 2;
            }
        }
    }
    return sum / 2;
}

} // namespace bullace::breeding
