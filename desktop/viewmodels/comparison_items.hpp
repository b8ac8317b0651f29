// What the comparison sheet can have beside counts and measures, and what it is called.
#pragma once

#include "desk/study.hpp"

#include "core/season/comparison.hpp"

#include <functional>
#include <span>
#include <string_view>
#include <vector>

namespace bullace::desk {

struct FurtherItem {
    QString key; // begins with "!": no descriptor is called so
    QString title;
    std::string_view unit;
    bool isDate = false; // means are days of the season
    std::function<season::ComparedItem(std::span<const std::size_t> accessions,
                                       std::size_t reference)>
        compare;
};
// Those of which the station has notes; `notes` must outlive them.
[[nodiscard]] std::vector<FurtherItem> furtherItems(const season::StationNotes& notes);

} // namespace bullace::desk
