#include "demo/portable_curves.hpp"

#include <cmath>

namespace bullace::demo {

namespace {

constexpr double kPi = 3.141592653589793;
constexpr double kDaysOfYear = 365.25;
constexpr int kTerms = 18;

} // namespace

double exponential(double x) {
    // e^x = (e^(x/2^k))^(2^k), with the inner power by its series.
    int halvings = 0;
    while (x > 0.5 || x < -0.5) {
        x /= 2;
        ++halvings;
    }
    double term = 1;
    double sum = 1;
    for (int n = 1; n <= kTerms; ++n) {
        term *= x / n;
        sum += term;
    }
    for (; halvings > 0; --halvings) {
        sum *= sum;
    }
    return sum;
}

double logistic(double x) {
    return x < -40 ? 0.0 : x > 40 ? 1.0 : 1.0 / (1.0 + exponential(-x));
}

double yearlyCosine(double day) {
    const double years = day / kDaysOfYear;
    const double angle = (years - std::nearbyint(years)) * 2 * kPi; // -π to π
    double term = 1;
    double sum = 1;
    for (int n = 1; n <= kTerms; ++n) {
        term *= -angle * angle / ((2 * n - 1) * (2 * n));
        sum += term;
    }
    return sum;
}

} // namespace bullace::demo
