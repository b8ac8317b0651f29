#include "core/base/remark.hpp"

#include "core/base/units.hpp"

#include <cmath>

namespace bullace {

namespace {

std::string englishOf(const Remark::Part& part) {
    if (const auto* text = std::get_if<std::string>(&part)) {
        return *text;
    }
    if (const auto* whole = std::get_if<std::int64_t>(&part)) {
        return std::to_string(*whole);
    }
    if (const auto* day = std::get_if<CivilDate>(&part)) {
        return writeDate(*day);
    }
    const Remark::Number number = std::get<Remark::Number>(part);
    return std::isfinite(number.value)
               ? fixedText(roundTo(number.value, number.decimals), number.decimals)
               : "unbounded";
}

} // namespace

std::string inEnglish(const Remark& remark) {
    std::string said;
    for (std::size_t at = 0; at < remark.sentence.size(); ++at) {
        const char letter = remark.sentence[at];
        const bool hasNext = at + 1 < remark.sentence.size();
        const std::size_t part =
            letter == '%' && hasNext ? static_cast<std::size_t>(remark.sentence[at + 1] - '1') : 9;
        if (part < remark.parts.size()) {
            said += englishOf(remark.parts[part]);
            ++at;
        } else {
            said += letter;
        }
    }
    return said;
}

} // namespace bullace
