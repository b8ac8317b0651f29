// QR codes as pictures: for screens and for labels on paper.
#pragma once

#include <QImage>

#include <string>

namespace bullace::quick {

inline constexpr int kGreatestModulePx = 64;

// A QR code (ISO/IEC 18004) of the text, black on white, 8-bit grey, with its quiet zone of 4
// modules around it: error correction H, at least version 2 (25 modules), for both are read better
// through dirt and glare. `modulePx` is the side of a module in pixels, 1 to kGreatestModulePx.
// Letters keep their case. Up to 20 symbols of digits, upper-case letters, space and $%*+-./: stay
// in version 2. A null picture where the text is empty, holds U+0000, is not UTF-8 or is too long
// (1,273 bytes of any kind still fit), or where modulePx is out of range.
[[nodiscard]] QImage qrPicture(const std::string& text, int modulePx);

} // namespace bullace::quick
