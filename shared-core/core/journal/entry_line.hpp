// An entry as one line of JSON, as journals are exported.
#pragma once

#include "core/base/digest.hpp"
#include "core/journal/entry.hpp"

#include <string>

namespace bullace::journal {

// Appends {"origin":…,"seq":…,…,"digest":…} and a line feed, without spaces; absent fields are left
// out. Example:
// {"origin":"t0000000000000001.1","seq":1,"count":1,"author":"mk","kind":"observe",
//  "subject":"obs/B2-07-14/2026-05-12/stage","value":65,"over":[],"digest":"…"}
void appendEntryLine(std::string& out, const EntryView& entry, const Digest& digest);

} // namespace bullace::journal
