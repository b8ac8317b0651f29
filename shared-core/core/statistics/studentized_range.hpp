// The range of several normal means over their estimated standard error: what Tukey's test of all
// pairs asks.
#pragma once

namespace bullace::statistics {

// P(Q > q) for `groups` means (2 to 10,000) and an estimate of their standard error with so many
// degrees of freedom (from 1; infinity where it is known). 1 for a q that is not above 0; to about
// 1e-12. Arguments outside give NaN, which no caller may pass on.
// Source  the double integral of Copenhaver & Holland 1988, J. Stat. Comput. Simul. 30:1-15, with
//         trapezoidal rules in the place of their Gauss-Legendre panels.
[[nodiscard]] double studentizedRangeAbove(double q, unsigned groups, double degreesOfFreedom);

// The q that is exceeded with the probability `above`, between 0 and 1; to 1e-10 of it.
[[nodiscard]] double
studentizedRangeQuantile(double above, unsigned groups, double degreesOfFreedom);

} // namespace bullace::statistics
