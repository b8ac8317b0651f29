// Photos of the station's file as pictures, read beside the page.
#pragma once

#include "core/base/result.hpp"
#include "store/database.hpp"

#include <QImage>

#include <string>
#include <vector>

namespace bullace::desk {

// The photos with these digests (SHA-256, hex), each at most kMostPhotoPx wide and high, upright as
// the camera says; those that are not whole here, or no pictures, are left out. Errors: those of
// reading.
inline constexpr int kMostPhotoPx = 1600;
[[nodiscard]] Result<std::vector<QImage>> readPhotos(store::Database& database,
                                                     const std::vector<std::string>& digests);

} // namespace bullace::desk
