// Probabilities and quantiles of the usual distributions; Boost.Math behind plain functions.
// Probabilities p lie strictly between 0 and 1, degrees of freedom are above 0; anything else gives
// NaN, which no caller may pass on.
#pragma once

namespace bullace::statistics {

// The standard normal distribution.
[[nodiscard]] double normalDensity(double x);
[[nodiscard]] double normalBelow(double x);    // P(Z <= x)
[[nodiscard]] double logNormalBelow(double x); // its logarithm, without underflow far below 0
[[nodiscard]] double normalQuantile(double p); // 1.959964 of 0.975
inline constexpr double kNormal95 = 1.959963984540054; // the quantile of 0.975

// Student's t.
[[nodiscard]] double studentTBelow(double t, double degreesOfFreedom);
[[nodiscard]] double studentTQuantile(double p, double degreesOfFreedom);
// The probability of a t at least so far from 0, on both sides together.
[[nodiscard]] double studentTBothTails(double t, double degreesOfFreedom);

// P(X > x).
[[nodiscard]] double chiSquaredAbove(double x, double degreesOfFreedom);
[[nodiscard]] double chiSquaredQuantile(double p, double degreesOfFreedom);
[[nodiscard]] double fAbove(double f, double numerator, double denominator);
[[nodiscard]] double fQuantile(double p, double numerator, double denominator);

// Noncentral, for the power of a planned test: P(X > x).
[[nodiscard]] double noncentralTAbove(double t, double degreesOfFreedom, double noncentrality);
[[nodiscard]] double
noncentralFAbove(double f, double numerator, double denominator, double noncentrality);

// The quantile of the beta distribution, for exact binomial limits.
[[nodiscard]] double betaQuantile(double p, double a, double b);

[[nodiscard]] double digamma(double x);
[[nodiscard]] double trigamma(double x);
[[nodiscard]] double logGamma(double x);
[[nodiscard]] double logChoose(double n, double k); // of the binomial coefficient

} // namespace bullace::statistics
