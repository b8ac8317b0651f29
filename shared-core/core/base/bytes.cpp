#include "core/base/bytes.hpp"

#include <cstring>

namespace bullace {

namespace {

int hexDigit(char c) {
    if (c >= '0' && c <= '9') {
        return c - '0';
    }
    return c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
}

// Length of the well-formed sequence that starts with `lead` (>= 0x80) at `at`, or 0.
std::size_t sequenceLength(const unsigned char* at, std::size_t left) {
    const unsigned char lead = at[0];
    const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || left < length) {
        return 0;
    }
    const unsigned char low = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
    const unsigned char high = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
    if (at[1] < low || at[1] > high) {
        return 0;
    }
    for (std::size_t i = 2; i < length; ++i) {
        if (at[i] < 0x80 || at[i] > 0xBF) {
            return 0;
        }
    }
    return length;
}

} // namespace

std::string toHex(BytesView bytes) {
    static constexpr char kDigits[] = "0123456789abcdef";
    std::string hex;
    hex.reserve(bytes.size() * 2);
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        hex.push_back(kDigits[byte >> 4U]);
        hex.push_back(kDigits[byte & 15U]);
    }
    return hex;
}

std::optional<Bytes> fromHex(std::string_view hex) {
    if (hex.size() % 2 != 0) {
        return std::nullopt;
    }
    Bytes bytes;
    bytes.reserve(hex.size() / 2);
    for (std::size_t i = 0; i < hex.size(); i += 2) {
        const int high = hexDigit(hex[i]);
        const int low = hexDigit(hex[i + 1]);
        if (high < 0 || low < 0) {
            return std::nullopt;
        }
        bytes.push_back(static_cast<char>(high * 16 + low));
    }
    return bytes;
}

bool isCleanUtf8(std::string_view text) {
    const auto* at = reinterpret_cast<const unsigned char*>(text.data());
    const auto* end = at + text.size();
    while (at != end) {
        // Eight ASCII bytes at a time: nearly all text here is ASCII.
        if (end - at >= 8) {
            std::uint64_t word = 0;
            std::memcpy(&word, at, 8);
            const std::uint64_t zeroMarks = (word - 0x0101010101010101U) & ~word;
            if (((word | zeroMarks) & 0x8080808080808080U) == 0) {
                at += 8;
                continue;
            }
        }
        if (*at == 0) {
            return false;
        }
        if (*at < 0x80) {
            ++at;
            continue;
        }
        const std::size_t length = sequenceLength(at, static_cast<std::size_t>(end - at));
        if (length == 0) {
            return false;
        }
        at += length;
    }
    return true;
}

} // namespace bullace
