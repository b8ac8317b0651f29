#include "core/report/palettes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::report {

namespace {

constexpr Rgb written(unsigned red, unsigned green, unsigned blue) {
    return {red / 255.0, green / 255.0, blue / 255.0};
}

constexpr std::array kCategories{written(0x00, 0x72, 0xB2),
                                 written(0xD5, 0x5E, 0x00),
                                 written(0x00, 0x9E, 0x73),
                                 written(0x00, 0x00, 0x00),
                                 written(0xE6, 0x9F, 0x00),
                                 written(0x56, 0xB4, 0xE9),
                                 written(0xCC, 0x79, 0xA7),
                                 written(0xF0, 0xE4, 0x42)};

constexpr std::array kOrdered{written(0x44, 0x01, 0x54),
                              written(0x44, 0x39, 0x83),
                              written(0x31, 0x68, 0x8E),
                              written(0x21, 0x91, 0x8C),
                              written(0x35, 0xB7, 0x79),
                              written(0x90, 0xD7, 0x43),
                              written(0xFD, 0xE7, 0x25)};

constexpr std::array kDiverging{written(0x00, 0x72, 0xB2),
                                written(0x76, 0x9E, 0xCC),
                                written(0xBC, 0xCD, 0xE5),
                                written(0xFF, 0xFF, 0xFF),
                                written(0xFC, 0xC9, 0xAD),
                                written(0xED, 0x94, 0x5E),
                                written(0xD5, 0x5E, 0x00)};

} // namespace

std::span<const Rgb> categoryColours() {
    return kCategories;
}

std::span<const Rgb> orderedColours() {
    return kOrdered;
}

std::span<const Rgb> divergingColours() {
    return kDiverging;
}

std::vector<Rgb> spreadOver(std::span<const Rgb> palette, std::size_t count) {
    std::vector<Rgb> colours;
    const auto last = static_cast<double>(palette.size() - 1);
    for (std::size_t i = 0; i < count; ++i) {
        const double share =
            count == 1 ? 1 : static_cast<double>(i) / static_cast<double>(count - 1);
        colours.push_back(palette[static_cast<std::size_t>(std::lround(share * last))]);
    }
    return colours;
}

} // namespace bullace::report
