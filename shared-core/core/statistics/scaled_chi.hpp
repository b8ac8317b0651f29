// The average of a function over the estimated standard deviation, which the distributions of the
// studentized range and of Dunnett's statistic share.
#pragma once

#include <functional>

namespace bullace::statistics {

// ∫ g(s) f(s) ds, where s² times the degrees of freedom is chi squared: s is what an estimated
// standard deviation is to the true one. Degrees of freedom from 0.5; beyond a million s is 1.
// g lies between 0 and 1, is smooth, and is 0 to within 1e-16 where s is above `zeroBeyond`.
// Trapezoidal rule over log s, whose error falls exponentially for such functions (Trefethen &
// Weideman 2014, SIAM Rev. 56:385-458): to about 1e-13.
[[nodiscard]] double averageOverScaledChi(double degreesOfFreedom,
                                          double zeroBeyond,
                                          const std::function<double(double)>& g);

// ∫ h(z, φ(z)) dz over the standard normal z, by the same rule with the step 1/8 within ±8.5.
inline constexpr double kNormalStep = 0.125;
inline constexpr int kNormalSteps = 68; // on either side of 0

} // namespace bullace::statistics
