// The colours of fills on maps and plots, as data: for screens, for paper and for a test that
// people of every colour vision tell them apart. Fills and thick lines only, never words; whoever
// draws with them adds a shape or a word.
#pragma once

#include "core/report/colour.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace bullace::report {

// Categories: eight fills, in an order in which the first ones differ most in lightness. The last,
// yellow, is seen on white only with an outline.
// Source  Okabe & Ito 2008, Color Universal Design; Wong 2011, Nat. Methods 8:441.
[[nodiscard]] std::span<const Rgb> categoryColours();

// Ordered steps, low to high: seven of viridis, which print as a scale of grey.
// Source  Smith & van der Walt 2015, the viridis colour map.
[[nodiscard]] std::span<const Rgb> orderedColours();

// Differences from -3 to +3 steps: blue, white, vermillion (the two ends of Okabe & Ito's set that
// every colour vision keeps apart), with even steps of lightness between, in CIE L*a*b*.
[[nodiscard]] std::span<const Rgb> divergingColours();

// `count` of a palette's colours, spread over it from its first to its last; of one the last, of
// none none. Of more than the palette has, some follow one another more than once.
[[nodiscard]] std::vector<Rgb> spreadOver(std::span<const Rgb> palette, std::size_t count);

} // namespace bullace::report
