// The probability of an interval under a standard law with what its derivatives need, without
// losing digits in the tails. For the fit of onsets alone.
#pragma once

#include "core/season/onset_fit.hpp"

namespace bullace::season {

// Of F(high) - F(low): its logarithm, and the density at either end divided by it.
struct LawPiece {
    double logMass = 0;
    double atLow = 0;
    double atHigh = 0;
};

// low < high, either may be infinite on its side; of the standard law on its own scale.
[[nodiscard]] LawPiece lawPiece(OnsetLaw law, double low, double high);
// The logarithm of the density, and its first two derivatives divided by it.
struct LawPoint {
    double logDensity = 0;
    double slope = 0;     // f'/f
    double curvature = 0; // f''/f
};
[[nodiscard]] LawPoint lawPoint(OnsetLaw law, double z);
[[nodiscard]] double lawSlope(OnsetLaw law, double z); // f'/f alone
// P(W <= z), for what is predicted from a fit.
[[nodiscard]] double lawBelow(OnsetLaw law, double z);

} // namespace bullace::season
