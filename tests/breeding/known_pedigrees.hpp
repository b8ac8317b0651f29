// Pedigrees that the tests know: small ones as lists of names, outside ones as files, and such of
// chance from a seed.
#pragma once

#include "core/breeding/pedigree.hpp"
#include "core/report/csv.hpp"

#include <doctest/doctest.h>

#include <array>
#include <random>
#include <string>
#include <vector>

namespace bullace::test {

using Lines = std::vector<breeding::PedigreeLine>;

inline Lines linesOf(const std::vector<std::array<std::string, 3>>& rows) {
    Lines lines;
    for (const auto& [id, mother, father] : rows) {
        lines.push_back({id, mother, father, lines.size() + 2});
    }
    return lines;
}

// The columns id, parent1, parent2.
inline Lines linesOf(const std::string& csv) {
    const auto table = report::readCsv(csv);
    REQUIRE(table.ok());
    Lines lines;
    for (const auto& row : table->rows) {
        lines.push_back({row.cells[0], row.cells[1], row.cells[2], row.line});
    }
    return lines;
}

inline breeding::Pedigree pedigreeOf(const Lines& lines) {
    auto pedigree = breeding::makePedigree(lines);
    REQUIRE(pedigree.ok());
    return std::move(*pedigree);
}

inline std::int32_t in(const breeding::Pedigree& pedigree, const std::string& name) {
    const auto found = pedigree.find(name);
    REQUIRE(found);
    return *found;
}

// `size` vines: selfings, backcrosses, repeated crosses and unknown parents among them.
inline Lines randomLines(std::mt19937_64& dice, std::size_t size) {
    Lines lines;
    const auto any = [&dice, &lines] { return "V" + std::to_string(dice() % lines.size()); };
    while (lines.size() < size) {
        breeding::PedigreeLine line{"V" + std::to_string(lines.size()), "", "", lines.size() + 2};
        const std::uint64_t kind = lines.size() < 3 ? 9 : dice() % 10;
        line.mother = kind < 8 ? any() : "";
        line.father = kind == 0 ? line.mother : kind < 7 ? any() : "";
        if (kind == 1) {
            line.mother = lines.back().mother;
            line.father = lines.back().father;
        }
        lines.push_back(line);
    }
    return lines;
}

} // namespace bullace::test
