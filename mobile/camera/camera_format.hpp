// Which of the formats that a camera offers is asked of it: the smallest that is enough.
#pragma once

#include <QSize>

#include <cstddef>
#include <optional>
#include <span>

namespace bullace::camera {

// What the pictures are for.
enum class CameraUse { Codes, Photos };

// No more pictures a second than this are taken from a camera, and fewer are worse to aim with.
// Common practice, no source.
inline constexpr int kPicturesASecond = 10;

struct CameraFormat {
    QSize size;               // pixels
    double greatestRate = 0.; // pictures a second; 0 where the camera does not say
};

// The place in `offered` of the format to ask for; nothing where there is none with a size. Codes
// want 1280×720: a label of 30 mm with 25 modules across has then 2 pixels a module at half a
// metre, the least that is read (a lens that sees 60°). Photos want 2048 on the long side. Of those
// that are enough: kPicturesASecond or more, then the smallest, then the slowest, for heat. Where
// none is enough: the greatest.
[[nodiscard]] std::optional<std::size_t> formatFor(CameraUse use,
                                                   std::span<const CameraFormat> offered);

} // namespace bullace::camera
