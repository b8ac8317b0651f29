// A ruling over the heads of one subject, as drafts.
#pragma once

#include "store/database.hpp"

#include <span>
#include <vector>

namespace bullace::store {

// One ruling names at most journal::kMostEdges heads; over more heads it is several equal ones, to
// be written as one act. `ruling` without its `over`.
[[nodiscard]] std::vector<Draft> rulingsOver(std::span<const journal::Place> heads,
                                             const Draft& ruling);

} // namespace bullace::store
