// Whether a vine's flowers are male, perfect or female.
#pragma once

#include <optional>
#include <string_view>

namespace bullace::vineyard {

enum class FlowerSex { Male, Perfect, Female };

// By OIV descriptor 151: 1 and 2 male, 3 perfect, 4 female; nothing for any other code, or none.
[[nodiscard]] std::optional<FlowerSex> flowerSexOf(std::optional<int> code);
[[nodiscard]] std::string_view nameOf(FlowerSex sex); // "male", "perfect", "female"

} // namespace bullace::vineyard
