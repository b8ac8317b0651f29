// Who descends from whom: the lines of a pedigree, in any order, as numbered individuals with
// parents before their offspring.
#pragma once

#include "core/base/result.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace bullace::breeding {

inline constexpr std::int32_t kUnknown = -1;

// One line as it was given. An empty parent is unknown; mother and father alike is a selfing.
struct PedigreeLine {
    std::string id;
    std::string mother;
    std::string father;
    std::size_t line = 0; // of the file or list, for messages
};

// A clone or bud sport is the genotype that it was taken from: in a relationship matrix two names
// of one genotype would be two equal rows, and the matrix would have no inverse.
struct CloneLine {
    std::string id;
    std::string genotype;
    std::size_t line = 0;
};

struct NameHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view name) const {
        return std::hash<std::string_view>{}(name);
    }
};

// Each individual is the index of its name; both parents of an individual have smaller indices.
struct Pedigree {
    std::vector<std::string> names;
    std::vector<std::int32_t> mother; // or kUnknown
    std::vector<std::int32_t> father;
    // Every name, those of clones too.
    std::unordered_map<std::string, std::int32_t, NameHash, std::equal_to<>> index;
    std::size_t namedOnlyAsParent = 0; // without a line of their own: taken as founders
    std::size_t repeatedLines = 0;     // the same line again: counted once

    [[nodiscard]] std::size_t size() const { return names.size(); }
    [[nodiscard]] std::optional<std::int32_t> find(std::string_view name) const;
    // Both parents are unknown.
    [[nodiscard]] bool isFounder(std::size_t i) const {
        return mother[i] == kUnknown && father[i] == kUnknown;
    }
};

// Individuals are ordered by their greatest number of generations from a founder, then as they were
// first named. A parent without a line of its own is a founder. A line whose id is a clone's counts
// as a line of its genotype.
// Errors  InvalidInput, by name and line: a line without an id; an individual that is its own
//         ancestor (every member of the circle is named, individuals that merely descend from it
//         are not); one id on two lines with other parents; a clone of two genotypes or of itself;
//         more than 2^31 - 1 individuals.
[[nodiscard]] Result<Pedigree> makePedigree(std::span<const PedigreeLine> lines,
                                            std::span<const CloneLine> clones = {});

} // namespace bullace::breeding
