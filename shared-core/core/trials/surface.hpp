// Trends over a block as a smooth surface along and across its rows, to be fitted together with
// what is compared: straight trends as fixed effects, what bends as random ones.
#pragma once

#include "core/trials/mixed_model.hpp"

#include <span>
#include <vector>

namespace bullace::trials {

struct Surface {
    std::vector<Covariate> straight; // "row trend", "place trend", "row × place trend"
    std::vector<SmoothTerm> bends;   // each with a variance of its own
};

// row, place  Of each record: the row's number and the vine's within it, in any unit of length or
//             count; NaN where it is not known, and then its trends are NaN too and the record is
//             left out of the model.
// The curves are cubic P-splines with second differences, at most 10 segments a side, and taken
// apart into straight and bent ones. A side with fewer than 4 different numbers gets no bend, one
// with a single number no trend either.
// Errors  InvalidInput where the two do not have as many numbers, or no number is there.
// Source  Eilers & Marx 1996, Stat. Sci. 11:89-121; Lee, Durbán & Eilers 2013, Comput. Stat. Data
//         Anal. 61:22-37 (the surface as an analysis of variance); Rodríguez-Álvarez, Boer, van
//         Eeuwijk & Eilers 2018, Spat. Stat. 23:52-71 (field trials).
[[nodiscard]] Result<Surface> surfaceOf(std::span<const double> row, std::span<const double> place);

// The model with the surface's columns, and its terms added. The table's rows are the surface's.
void addSurface(const Surface& surface, TrialTable& table, MixedSpec& spec);

// The fitted trend at each record, its mean over the records taken off; NaN where the place is not
// known. `fit` is of the table and model that the surface was added to.
[[nodiscard]] std::vector<double> trendOf(const Surface& surface, const MixedFit& fit);

} // namespace bullace::trials
