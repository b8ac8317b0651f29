// bullace-work-bench: how long the computations behind a season take, each against its target.
#include "work_bench/work_benches.hpp"

int main() {
    bullace::bench::benchWeather();
    bullace::bench::benchSeason();
    bullace::bench::benchKill();
    bullace::bench::benchPedigree();
    bullace::bench::benchCrossPlan();
    return 0;
}
