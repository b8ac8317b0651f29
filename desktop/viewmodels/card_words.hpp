// What the fields of the collection's cards are called on the screen.
#pragma once

#include <QString>

#include <string_view>

namespace bullace::desk {

// "no-tasting-until" in words; a passport's field by its name in the standard (MCPD), as genebanks
// know it; a field that this version does not know as it is stored.
[[nodiscard]] QString fieldWords(std::string_view field);

} // namespace bullace::desk
