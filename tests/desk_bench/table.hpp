// The figures as a plain table: what, measured, target, ratio, and the floor of the same run.
#pragma once

#include <string>
#include <vector>

namespace bullace::desk_bench {

struct Figure {
    std::string what;
    std::vector<double> values; // one of each repetition
    std::string unit = "ms";
    double target = 0; // 0: there is none
    // What the same takes at the least on this machine, median; empty: nothing compares.
    std::vector<double> floor;
    std::string floorWhat;
};

void printHead();
// The median stands against the target.
void print(const Figure& figure);

} // namespace bullace::desk_bench
