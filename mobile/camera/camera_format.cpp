#include "camera/camera_format.hpp"

#include "camera/photo.hpp"

#include <algorithm>
#include <cstdint>
#include <tuple>

namespace bullace::camera {

namespace {

constexpr int kCodeLongSide = 1280;
constexpr int kCodeShortSide = 720;

bool isEnough(CameraUse use, QSize size) {
    const int longSide = std::max(size.width(), size.height());
    const int shortSide = std::min(size.width(), size.height());
    if (use == CameraUse::Photos) {
        return longSide >= kPhotoLongSide;
    }
    return longSide >= kCodeLongSide && shortSide >= kCodeShortSide;
}

// The least is the best.
std::tuple<int, int, std::int64_t, double> rankOf(CameraUse use, const CameraFormat& format) {
    const std::int64_t area = std::int64_t{format.size.width()} * format.size.height();
    const bool isFast = format.greatestRate >= kPicturesASecond;
    const double rate = isFast ? format.greatestRate : -format.greatestRate;
    if (isEnough(use, format.size)) {
        return {0, isFast ? 0 : 1, area, rate};
    }
    return {1, 0, -area, rate};
}

} // namespace

std::optional<std::size_t> formatFor(CameraUse use, std::span<const CameraFormat> offered) {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < offered.size(); ++i) {
        if (offered[i].size.isEmpty()) {
            continue;
        }
        if (!best || rankOf(use, offered[i]) < rankOf(use, offered[*best])) {
            best = i;
        }
    }
    return best;
}

} // namespace bullace::camera
