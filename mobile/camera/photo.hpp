// A photo as it is kept and sent: small enough for a sync in the field, and nothing in it but the
// picture.
#pragma once

#include <QByteArray>
#include <QImage>

namespace bullace::camera {

inline constexpr int kPhotoLongSide = 2048;       // pixels
inline constexpr qsizetype kPhotoBytes = 1 << 20; // a photo is smaller than this

// The picture as a JPEG file of less than kPhotoBytes, with at most kPhotoLongSide pixels on its
// long side (never enlarged), sRGB, transparent parts white. Only the pixels are taken: no text,
// place, device or owner that the picture carries gets into the file; when and by whom stands in
// the entry that names the photo. Empty for a null picture, or where it cannot be written.
[[nodiscard]] QByteArray photoBytes(const QImage& picture);

} // namespace bullace::camera
