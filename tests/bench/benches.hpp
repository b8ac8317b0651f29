// The benchmarks by kind. Each prints its figures as JSON lines, with the target beside each.
#pragma once

#include <string>

namespace bullace::bench {

// demo  Folder with the demo station's journals.
void runSyncBenches(const std::string& demo);
void runStoreBenches();
void runFieldBenches();
// Imports a file into a new station and writes the seconds and MiB it took, as two doubles, to
// standard output.
void importAlone(const std::string& database, const std::string& lines);

} // namespace bullace::bench
