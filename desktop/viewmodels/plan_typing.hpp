// What is typed for a planting plan: rows of a block, and lists of accessions.
#pragma once

#include "core/base/result.hpp"
#include "core/vineyard/catalogue.hpp"

#include <QString>

#include <string>
#include <vector>

namespace bullace::desk {

struct TypedPlaces {
    std::string block;
    std::vector<unsigned> rows; // empty: all
};
// "B2", "B2 1-4" or "B2 1,3,7". Errors: InvalidInput.
[[nodiscard]] Result<TypedPlaces> typedPlaces(const QString& text);
[[nodiscard]] QString placesText(const TypedPlaces& places);

// Accessions with commas or blanks between; "A040-A052" is all of the collection from the one to
// the other, and a status ("selection") all that have it. In the order typed, each once; what the
// collection does not hold is taken as it is typed.
[[nodiscard]] std::vector<std::string> typedAccessions(const vineyard::Catalogue& catalogue,
                                                       const QString& text);

} // namespace bullace::desk
