// The benchmarks by kind. Each prints its figures as JSON lines, with the target beside each.
#pragma once

#include <string>

namespace bullace::bench {

// demo  Folder with the demo station's journals.
void runSyncBenches(const std::string& demo);
void runStoreBenches();

} // namespace bullace::bench
