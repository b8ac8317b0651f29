// The growth stages of the grapevine by their BBCH codes, and how many steps lie between two of
// them. Source: Lorenz, Eichhorn, Bleiholder, Klose, Meier, Weber 1995, Aust. J. Grape Wine Res.
// 1:100-103.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace bullace::descriptors {

struct Stage {
    std::int64_t code = 0;
    std::string_view words; // the stage in our own short words
};

// The 43 codes in the order of the season.
[[nodiscard]] std::span<const Stage> grapevineStages();

// The place of a code in the list, from 0; nothing where the list does not hold it.
[[nodiscard]] std::optional<std::size_t> stageStep(std::int64_t code);

} // namespace bullace::descriptors
