#include "table.hpp"

#include "bench/measure.hpp"

#include <cstdio>

namespace bullace::desk_bench {

namespace {

constexpr double kMedian = 0.5;
constexpr double kLate = 0.99;

std::string number(double value) {
    char text[32];
    std::snprintf(text, sizeof(text), value < 10 ? "%.2f" : "%.0f", value);
    return text;
}

} // namespace

void printHead() {
    std::printf("%-66s %5s %9s %9s %9s %6s  %s\n",
                "what",
                "times",
                "median",
                "p99",
                "target",
                "ratio",
                "floor (median of the same run)");
}

void print(const Figure& figure) {
    const double median = bench::percentile(figure.values, kMedian);
    std::printf(
        "%-66s %5zu %9s %9s %9s %6s  %s\n",
        (figure.what + ", " + figure.unit).c_str(),
        figure.values.size(),
        number(median).c_str(),
        number(bench::percentile(figure.values, kLate)).c_str(),
        figure.target > 0 ? number(figure.target).c_str() : "",
        figure.target > 0 ? number(median / figure.target).c_str() : "",
        figure.floor.empty()
            ? ""
            : (number(bench::percentile(figure.floor, kMedian)) + " " + figure.floorWhat).c_str());
    std::fflush(stdout);
}

} // namespace bullace::desk_bench
