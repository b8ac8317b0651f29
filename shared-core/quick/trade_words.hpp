// Words of the trade in the language of the screen. Core speaks in codes and plain English; here
// every one of its words that a person sees has its place among the translations.
#pragma once

#include <QString>

#include <string_view>

namespace bullace::quick {

// A descriptor's title, a stage, a class, a reason, a step, a part of a record, as the screen says
// it. A word that only this station has (its own descriptor's title) comes back as it is.
[[nodiscard]] QString tradeWord(std::string_view word);

} // namespace bullace::quick
