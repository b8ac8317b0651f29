// A plan of crosses entered into the collection, in one act.
#pragma once

#include "office/act.hpp"

#include "core/vineyard/catalogue.hpp"

#include <span>
#include <string>
#include <vector>

namespace bullace::office {

struct CrossEntry {
    std::string mother; // accessions, by their ids
    std::string father;
};

// The next free numbers of a year, as many as wanted: "X25-7", "X25-8" behind "X25-6".
[[nodiscard]] std::vector<std::string>
nextCrossIds(const vineyard::Catalogue& catalogue, int year, std::size_t count);

// Number, mother and father of each, under the next free numbers of the year. Written only while
// nobody has taken one of the numbers. Errors: InvalidInput where there is no cross, a parent is
// not in the collection, or a number is no part of a subject.
[[nodiscard]] Result<Act> enterCrosses(const vineyard::Catalogue& catalogue,
                                       std::span<const CrossEntry> crosses,
                                       int year,
                                       const std::string& author);

} // namespace bullace::office
