// What the sun, glare or dusk has left pale, drawn apart from black to white.
#pragma once

#include <QImage>

namespace bullace::camera {

// An 8-bit grey picture of the same size whose every part reaches from black to white, measured by
// what lies within some 12 pixels of it, or up to 36 where that is all of one grey. It is for
// labels that the code library reads nothing from: it takes a black that is brighter than half of
// the white beside it for white, and bright leaves around a label hide that from anything that
// measures the whole picture. Parts that are all of one grey (24 of 255 or less between them)
// become white.
[[nodiscard]] QImage drawnApart(const QImage& picture);

} // namespace bullace::camera
