// The demo station as files: journals as JSON Lines, one entry a line, and the truth as one JSON
// document.
#pragma once

#include "demo/station.hpp"

#include "core/base/digest.hpp"
#include "core/base/result.hpp"

#include <string>
#include <vector>

namespace bullace::demo {

// {"origin":…,"seq":…,"count":…,"wall":[ms,minutes],"author":…,"kind":…,"subject":…,"value":…,
//  "over":[[origin,seq]…],"group":[first,n],"why":…,"as":…,"digest":…}; what is absent is left out.
[[nodiscard]] std::string entryLine(const journal::Entry& entry, const Digest& digest);

// A journal from its first entry on, each line with the digest of its chain: without it a branch of
// a fork could not be told from what is held already.
[[nodiscard]] std::string journalLines(const std::vector<journal::Entry>& entries);

// Keys: "station", "seed", "journals", "conflicts", "agreed", "shifted_rows", "slip",
// "wrong_clock", "restored", "bench" (bench_lines.hpp), "vines" (what each vine was really like,
// by season).
[[nodiscard]] std::string truthDocument(const DemoStation& station, std::uint64_t seed);

} // namespace bullace::demo
