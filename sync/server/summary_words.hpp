// What a sync has done, in words for a person.
#pragma once

#include "sync/protocol/summary.hpp"

#include <string>

namespace bullace::server {

// "sent 120 entries, received 3." and what did not go through.
[[nodiscard]] std::string summaryWords(const sync::Summary& summary);

} // namespace bullace::server
