#include "core/base/numbers.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace bullace {

namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

} // namespace

std::optional<std::uint64_t> readCount(std::string_view text, std::uint64_t greatest) {
    if (text.empty() || !std::all_of(text.begin(), text.end(), isDigit) ||
        (text.size() > 1 && text.front() == '0')) {
        return std::nullopt;
    }
    std::uint64_t value = 0;
    const auto [end, failure] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (failure != std::errc{} || value > greatest) {
        return std::nullopt;
    }
    return value;
}

std::optional<double> readTypedNumber(std::string_view text) {
    std::string_view digits = text;
    if (!digits.empty() && digits.front() == '-') {
        digits.remove_prefix(1);
    }
    const std::size_t mark = digits.find_first_of(".,");
    const std::string_view whole = digits.substr(0, mark);
    const std::string_view part = mark == std::string_view::npos ? "0" : digits.substr(mark + 1);
    if (whole.empty() || part.empty() || !std::all_of(whole.begin(), whole.end(), isDigit) ||
        !std::all_of(part.begin(), part.end(), isDigit)) {
        return std::nullopt;
    }
    std::string plain(text);
    std::replace(plain.begin(), plain.end(), ',', '.');
    double value = 0;
    const auto [end, failure] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
    if (failure != std::errc{} || !std::isfinite(value)) {
        return std::nullopt;
    }
    return value;
}

std::string shortestFloat(double value) {
    std::array<char, 32> buffer{};
    const auto [end, failure] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
    std::string text(buffer.data(), end);
    if (text.find_first_of(".e") == std::string::npos) {
        text += ".0";
    }
    return text;
}

} // namespace bullace
