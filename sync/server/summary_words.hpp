// What a sync has done, in words for a person.
#pragma once

#include "sync/protocol/summary.hpp"

#include <cstdint>
#include <string>

namespace bullace::server {

// "1 entry", "7 entries".
[[nodiscard]] std::string counted(std::uint64_t count, const char* one, const char* several);

// "sent 120 entries, received 3." and what did not go through.
[[nodiscard]] std::string summaryWords(const sync::Summary& summary);

} // namespace bullace::server
