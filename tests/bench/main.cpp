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
    if (count < 2 || (which != "all" && which != "store" && which != "sync")) {
        std::fprintf(stderr,
                     "bullace-bench DEMO-FOLDER [all|store|sync]\n"
                     "  DEMO-FOLDER holds the journals that bullace-demo-station writes.\n");
        return 2;
    }
    if (which != "sync") {
        bullace::bench::runStoreBenches();
    }
    if (which != "store") {
        bullace::bench::runSyncBenches(words[1]);
    }
    return 0;
}
