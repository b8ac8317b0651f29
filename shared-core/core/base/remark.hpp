// Whole sentences that a computation has to say about its result: what was left out and why, what
// cannot be estimated, what to be careful with. The sentence stands once, in English, where it is
// said; a screen looks it up in its own language, and a console fills it in as it is.
#pragma once

#include "core/base/civil_date.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

// Marks a sentence for the translators' tool, which finds it by this name; `context` is "Remark".
// Sentences are written so that they fit any number.
#define BULLACE_SENTENCE(context, english) english

namespace bullace {

struct Remark {
    struct Number {
        double value = 0;
        int decimals = 0;

        friend bool operator==(const Number&, const Number&) = default;
    };
    // What stands for %1, %2 …: a name or code, a count, a measurement, a day.
    using Part = std::variant<std::string, std::int64_t, Number, CivilDate>;

    std::string_view sentence; // a literal marked with BULLACE_SENTENCE
    std::vector<Part> parts;   // at most nine

    friend bool operator==(const Remark&, const Remark&) = default;
};
using Remarks = std::vector<Remark>;

// With a decimal point, and days as YYYY-MM-DD.
[[nodiscard]] std::string inEnglish(const Remark& remark);

} // namespace bullace
