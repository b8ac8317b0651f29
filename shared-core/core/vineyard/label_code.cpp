#include "core/vineyard/label_code.hpp"

#include <utility>

namespace bullace::vineyard {

namespace {

constexpr std::size_t kSigns = 7; // before the check
constexpr unsigned kBase = 31;
constexpr unsigned kDigits = 10;
static_assert(kLabelSymbols.size() == kBase);

// Upper case, without spaces.
std::string plain(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c != ' ') {
            out += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
        }
    }
    return out;
}

char checkOf(std::string_view signs) {
    std::size_t sum = 0;
    for (std::size_t i = 0; i < kSigns; ++i) {
        sum += (i + 1) * kLabelSymbols.find(signs[i]);
    }
    return kLabelSymbols[sum % kBase];
}

LabelFault faultOf(const std::string& code) {
    if (code.empty()) {
        return LabelFault::Empty;
    }
    if (code.find_first_of("BILOU") != std::string::npos) {
        return LabelFault::NeverUsed;
    }
    if (code.find_first_not_of(kLabelSymbols) != std::string::npos) {
        return LabelFault::NoSymbol;
    }
    if (code.size() != kSigns + 1) {
        return code.size() <= kSigns ? LabelFault::TooShort : LabelFault::TooLong;
    }
    if (kLabelSymbols.find(code.front()) < kDigits) {
        return LabelFault::FirstIsDigit;
    }
    return checkOf(code) == code.back() ? LabelFault::None : LabelFault::WrongCheck;
}

} // namespace

LabelFault labelFaultOf(std::string_view text) {
    return faultOf(plain(text));
}

std::optional<std::string> readLabelCode(std::string_view text) {
    std::string code = plain(text);
    return faultOf(code) == LabelFault::None ? std::optional(std::move(code)) : std::nullopt;
}

std::string labelCode(std::uint64_t number) {
    if (number >= kLabelCodes) {
        return {};
    }
    std::string code(kSigns, '0');
    for (std::size_t i = kSigns - 1; i > 0; --i) {
        code[i] = kLabelSymbols[number % kBase];
        number /= kBase;
    }
    code.front() = kLabelSymbols[kDigits + number];
    code += checkOf(code);
    return code;
}

} // namespace bullace::vineyard
