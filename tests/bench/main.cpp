// bullace-bench: the figures of the README, each against its floor in the same run.
#include "bench/benches.hpp"

#include <cstdio>
#include <string>

int main(int count, char** words) {
    if (count == 4 && std::string(words[1]) == "import-alone") {
        bullace::bench::importAlone(words[2], words[3]);
        return 0;
    }
    const std::string which = count > 2 ? words[2] : "all";
    const bool isKnown = which == "all" || which == "store" || which == "sync" || which == "field";
    if (count < 2 || !isKnown) {
        std::fprintf(stderr,
                     "bullace-bench DEMO-FOLDER [all|store|sync|field]\n"
                     "  DEMO-FOLDER holds the journals that bullace-demo-station writes.\n");
        return 2;
    }
    if (which == "all" || which == "store") {
        bullace::bench::runStoreBenches();
    }
    if (which == "all" || which == "sync") {
        bullace::bench::runSyncBenches(words[1]);
    }
    if (which == "all" || which == "field") {
        bullace::bench::runFieldBenches();
    }
    return 0;
}
