// The station of the desk's benchmark, and the tablet that comes to it.
#pragma once

#include <cstddef>
#include <string>

namespace bullace::desk_bench {

// A million entries and 12,000 positions as of bench::fillWithPast(), and what a desk is there for:
inline constexpr std::size_t kConflicts = 5000; // open: two counts of the same clusters
inline constexpr std::size_t kRuled = 5000;     // settled by the descriptor's own rule
inline constexpr std::size_t kNotes = 3000;
// A word that stands in one of those notes, and in nothing else.
inline constexpr const char* kRareWord = "gallfly";

void makeStation(const std::string& path);

// Entries of a season that a tablet wrote without ever syncing: a fiftieth of them stands against
// what the station has.
inline constexpr std::size_t kPushed = 200'000;
void makeTablet(const std::string& path);
// In a process of its own: pairs with the desk at the address and syncs; 0 where all of it came
// through. Prints the seconds of the sync.
[[nodiscard]] int pushFrom(const std::string& path, const std::string& at, const std::string& code);

} // namespace bullace::desk_bench
