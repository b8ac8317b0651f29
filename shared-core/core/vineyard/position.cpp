#include "core/vineyard/position.hpp"

#include "core/base/numbers.hpp"

#include <algorithm>
#include <cstdint>

namespace bullace::vineyard {

namespace {

bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

// "07", "14", "120": two digits at least, and no zero in front of more.
std::optional<unsigned> readPadded(std::string_view text) {
    if (text.size() < 2 || text.size() > 6 || (text.size() > 2 && text.front() == '0') ||
        !std::all_of(text.begin(), text.end(), isDigit)) {
        return std::nullopt;
    }
    if (text.front() == '0') {
        text.remove_prefix(1);
    }
    const auto number = readCount(text, kGreatestNumber);
    return number ? std::optional(static_cast<unsigned>(*number)) : std::nullopt;
}

void appendPadded(std::string& out, unsigned number) {
    if (number < 10) {
        out += '0';
    }
    out += std::to_string(number);
}

} // namespace

bool isBlockCode(std::string_view text) {
    return !text.empty() && isLetter(text.front()) &&
           std::all_of(text.begin(), text.end(), [](char c) { return isLetter(c) || isDigit(c); });
}

std::optional<Position> readPosition(std::string_view text) {
    const std::size_t first = text.find('-');
    const std::size_t second = first == std::string_view::npos ? first : text.find('-', first + 1);
    if (second == std::string_view::npos) {
        return std::nullopt;
    }
    Position position;
    position.block = text.substr(0, first);
    std::string_view vine = text.substr(second + 1);
    if (!vine.empty() && isLetter(vine.back())) {
        position.letter = vine.back();
        vine.remove_suffix(1);
    }
    const auto row = readPadded(text.substr(first + 1, second - first - 1));
    const auto number = readPadded(vine);
    if (!isBlockCode(position.block) || !row || !number) {
        return std::nullopt;
    }
    position.row = *row;
    position.vine = *number;
    return position;
}

std::string writePosition(const Position& position) {
    std::string out(position.block);
    out += '-';
    appendPadded(out, position.row);
    out += '-';
    appendPadded(out, position.vine);
    if (position.letter != 0) {
        out += position.letter;
    }
    return out;
}

bool isPositionPattern(std::string_view pattern) {
    if (pattern == "*" || readPosition(pattern)) {
        return true;
    }
    if (!pattern.ends_with("-*")) {
        return false;
    }
    const std::string_view stem = pattern.substr(0, pattern.size() - 2);
    const std::size_t dash = stem.find('-');
    return dash == std::string_view::npos
               ? isBlockCode(stem)
               : isBlockCode(stem.substr(0, dash)) && readPadded(stem.substr(dash + 1)).has_value();
}

bool matchesPattern(std::string_view pattern, std::string_view place) {
    if (pattern == "*") {
        return true;
    }
    if (!readPosition(place)) {
        return false;
    }
    return pattern.ends_with('*') ? place.starts_with(pattern.substr(0, pattern.size() - 1))
                                  : place == pattern;
}

} // namespace bullace::vineyard
