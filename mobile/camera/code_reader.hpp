// Codes on labels and on the office's screen: reading one from a picture, and drawing one.
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

inline constexpr int kGreatestModulePx = 64;

// A QR code (ISO/IEC 18004) of the text, black on white, 8-bit grey, with its quiet zone of 4
// modules around it: error correction H, at least version 2 (25 modules), for both are read better
// through dirt and glare. `modulePx` is the side of a module in pixels, 1 to kGreatestModulePx.
// Letters keep their case. Up to 20 symbols of digits, upper-case letters, space and $%*+-./: stay
// in version 2. A null picture where the text is empty, holds U+0000, is not UTF-8 or is too long
// (1,273 bytes of any kind still fit), or where modulePx is out of range.
[[nodiscard]] QImage qrPicture(const std::string& text, int modulePx);

} // namespace bullace::camera
