// bullace-work-bench: how long the computations behind a season take, each against its target.
#include "work_bench/work_benches.hpp"

#include <array>
#include <string_view>
#include <utility>

// All of them, or those that are named: weather season kill mixed pedigree plan.
int main(int count, char** words) {
    using namespace bullace::bench;
    constexpr std::array<std::pair<std::string_view, void (*)()>, 6> kBenches{
        {{"weather", benchWeather},
         {"season", benchSeason},
         {"kill", benchKill},
         {"mixed", benchMixed},
         {"pedigree", benchPedigree},
         {"plan", benchCrossPlan}}};
    for (const auto& [name, bench] : kBenches) {
        bool isWanted = count == 1;
        for (int i = 1; i < count; ++i) {
            isWanted = isWanted || name == words[i];
        }
        if (isWanted) {
            bench();
        }
    }
    return 0;
}
