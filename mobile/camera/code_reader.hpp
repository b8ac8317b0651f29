// Codes on labels and on the office's screen: reading one from a picture.
#pragma once

#include <QImage>

#include <optional>
#include <string>

namespace bullace::camera {

// The text, UTF-8, of the QR code or Data Matrix in the picture, in any position; of several, the
// one nearest to the picture's middle, where a person points. Nothing where there is none whose own
// error correction holds, where it is one part of a longer text, or where it is no text (U+0000,
// bytes that are not UTF-8). Nothing is known here of what a text means: a label's check symbol is
// looked at by vineyard::readLabelCode(). It wants 3 pixels a module to be read at once. A picture
// without a code is looked at twice, the second time with pale parts drawn apart (contrast.hpp): of
// 1280×720 that takes some 10 ms, of noise 30. Transparency is not looked at.
[[nodiscard]] std::optional<std::string> readCode(const QImage& picture);

} // namespace bullace::camera
