// The block map as a picture: what the office read, in colours, shapes and words.
#pragma once

#include "office/block_values.hpp"

#include "core/base/units.hpp"
#include "core/merge/finding.hpp"
#include "quick/block_map.hpp"

#include <vector>

namespace bullace::desk {

// Coloured by what the descriptor says. `asked` may be null, where only what is planted is shown.
[[nodiscard]] quick::BlockMapPicture valuePicture(const office::BlockValues& values,
                                                  const vineyard::Asked* asked,
                                                  const office::BlockWish& wish,
                                                  const UnitWishes& units);

// Coloured by what looks wrong: one class for each kind of finding that is there.
[[nodiscard]] quick::BlockMapPicture findingPicture(const office::BlockValues& values,
                                                    const std::vector<merge::Finding>& findings,
                                                    const office::BlockWish& wish);

} // namespace bullace::desk
