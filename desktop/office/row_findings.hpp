// The findings of one row of a block. Inside desktop/office.
#pragma once

#include "core/merge/finding.hpp"
#include "core/vineyard/catalogue.hpp"

#include <map>
#include <string>
#include <vector>

namespace bullace::office {

// One settled value of a vine.
struct RowValue {
    CivilDate date;
    std::string subject;
    std::string descriptor;
    bool isSample = false;
    Bytes value;
};

// All values of one row, by position.
struct RowOfValues {
    std::map<std::string, std::vector<RowValue>> vines; // each ascending by date
};

// `places` are the row's positions in planting order.
[[nodiscard]] std::vector<merge::Finding> findInRow(const RowOfValues& row,
                                                    const std::vector<std::string>& places,
                                                    const vineyard::Catalogue& catalogue,
                                                    CivilDate today);

} // namespace bullace::office
