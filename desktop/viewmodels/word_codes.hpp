// What a word of the screen's language stands for, where somebody types one.
#pragma once

#include <string>
#include <string_view>

namespace bullace::desk {

// "púrpura" is "purple"; letters' size does not matter. An empty text where no trade word is meant.
[[nodiscard]] std::string codeOfWord(std::string_view word);

} // namespace bullace::desk
