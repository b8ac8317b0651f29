// Curves for the demo station that are the same to the last bit on every platform: the mathematical
// library's exp and sin differ between them, sums and products do not.
#pragma once

namespace bullace::demo {

// e to the power of x, for x from -700 to 700, to about ten digits.
[[nodiscard]] double exponential(double x);

// 1/(1 + e^-x): 0 far below 0, 0.5 at 0, 1 far above.
[[nodiscard]] double logistic(double x);

// The cosine of a year that has its greatest value, 1, on day 0 and its least half a year later;
// days of any year, also below 0.
[[nodiscard]] double yearlyCosine(double day);

} // namespace bullace::demo
