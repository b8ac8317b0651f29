#include "core/vineyard/flower_sex.hpp"

namespace bullace::vineyard {

std::optional<FlowerSex> flowerSexOf(std::optional<int> code) {
    switch (code.value_or(0)) {
    case 1:
    case 2:
        return FlowerSex::Male;
    case 3:
        return FlowerSex::Perfect;
    case 4:
        return FlowerSex::Female;
    default:
        return {};
    }
}

std::string_view nameOf(FlowerSex sex) {
    return sex == FlowerSex::Male ? "male" : sex == FlowerSex::Perfect ? "perfect" : "female";
}

} // namespace bullace::vineyard
