#include "core/journal/origin.hpp"

#include "core/base/numbers.hpp"

#include <array>
#include <charconv>

namespace bullace::journal {

namespace {

constexpr std::size_t kDigits = 16;

// Compares the decimal texts of two numbers as bytes.
std::strong_ordering compareAsText(std::uint32_t a, std::uint32_t b) {
    std::array<char, 10> aText{};
    std::array<char, 10> bText{};
    const auto aEnd = std::to_chars(aText.data(), aText.data() + aText.size(), a).ptr;
    const auto bEnd = std::to_chars(bText.data(), bText.data() + bText.size(), b).ptr;
    return std::string_view(aText.data(), static_cast<std::size_t>(aEnd - aText.data())) <=>
           std::string_view(bText.data(), static_cast<std::size_t>(bEnd - bText.data()));
}

void appendDevice(std::string& out, char letter, std::uint64_t device) {
    static constexpr char kHex[] = "0123456789abcdef";
    out.push_back(letter);
    for (unsigned shift = 64; shift != 0;) {
        shift -= 4;
        out.push_back(kHex[device >> shift & 15U]);
    }
}

} // namespace

std::strong_ordering operator<=>(const Origin& a, const Origin& b) {
    if (const auto byLetter = a.letter <=> b.letter; byLetter != 0) {
        return byLetter;
    }
    if (const auto byDevice = a.device <=> b.device; byDevice != 0) {
        return byDevice;
    }
    return a.epoch == b.epoch ? std::strong_ordering::equal : compareAsText(a.epoch, b.epoch);
}

void Origin::appendTo(std::string& out) const {
    appendDevice(out, letter, device);
    out.push_back('.');
    std::array<char, 10> digits{};
    out.append(digits.data(),
               std::to_chars(digits.data(), digits.data() + digits.size(), epoch).ptr);
}

std::string Origin::text() const {
    std::string out;
    appendTo(out);
    return out;
}

std::optional<Origin> readOrigin(std::string_view text) {
    if (text.size() < kDigits + 3 || text[0] < 'a' || text[0] > 'z' || text[kDigits + 1] != '.') {
        return std::nullopt;
    }
    Origin origin;
    origin.letter = text[0];
    for (std::size_t i = 1; i <= kDigits; ++i) {
        const char c = text[i];
        const bool isDecimal = c >= '0' && c <= '9';
        if (!isDecimal && (c < 'a' || c > 'f')) {
            return std::nullopt;
        }
        origin.device =
            origin.device << 4U | static_cast<unsigned>(isDecimal ? c - '0' : c - 'a' + 10);
    }
    const auto epoch = readCount(text.substr(kDigits + 2), kGreatestEpoch);
    if (!epoch || *epoch == 0) {
        return std::nullopt;
    }
    origin.epoch = static_cast<std::uint32_t>(*epoch);
    return origin;
}

std::string deviceText(char letter, std::uint64_t device) {
    std::string out;
    appendDevice(out, letter, device);
    return out;
}

} // namespace bullace::journal
