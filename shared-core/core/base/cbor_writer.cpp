// The writing half of core/base/cbor.hpp.
#include "core/base/cbor.hpp"

#include <bit>
#include <cmath>
#include <limits>
#include <optional>

namespace bullace {

namespace {

constexpr unsigned kInteger = 0;
constexpr unsigned kNegative = 1;
constexpr unsigned kText = 3;
constexpr unsigned kArray = 4;
constexpr unsigned kMap = 5;

// The binary16 that is exactly `value`, or nothing.
std::optional<std::uint16_t> exactHalf(float value) {
    const auto bits = std::bit_cast<std::uint32_t>(value);
    const std::uint32_t sign = (bits >> 16U) & 0x8000U;
    const int exponent = static_cast<int>((bits >> 23U) & 0xFFU) - 127;
    const std::uint32_t mantissa = bits & 0x7FFFFFU;
    if ((bits & 0x7FFFFFFFU) == 0) {
        return static_cast<std::uint16_t>(sign);
    }
    if (exponent >= -14 && exponent <= 15) {
        if ((mantissa & 0x1FFFU) != 0) {
            return std::nullopt;
        }
        return static_cast<std::uint16_t>(sign | static_cast<unsigned>(exponent + 15) << 10U |
                                          mantissa >> 13U);
    }
    if (exponent >= -24 && exponent < -14) { // subnormal in binary16
        const auto shift = static_cast<unsigned>(-exponent - 1);
        const std::uint32_t whole = mantissa | 0x800000U;
        if ((whole & ((1U << shift) - 1U)) != 0) {
            return std::nullopt;
        }
        return static_cast<std::uint16_t>(sign | whole >> shift);
    }
    return std::nullopt;
}

void appendBigEndian(Bytes& out, std::uint64_t value, unsigned width) {
    for (unsigned shift = width * 8; shift != 0;) {
        shift -= 8;
        out.push_back(static_cast<char>(value >> shift & 0xFFU));
    }
}

} // namespace

void CborWriter::head(unsigned major, std::uint64_t argument) {
    const auto first = static_cast<unsigned char>(major << 5U);
    if (argument < 24) {
        out_.push_back(static_cast<char>(first | argument));
    } else if (argument <= 0xFF) {
        out_.push_back(static_cast<char>(first | 24U));
        out_.push_back(static_cast<char>(argument));
    } else if (argument <= 0xFFFF) {
        out_.push_back(static_cast<char>(first | 25U));
        appendBigEndian(out_, argument, 2);
    } else if (argument <= 0xFFFFFFFFU) {
        out_.push_back(static_cast<char>(first | 26U));
        appendBigEndian(out_, argument, 4);
    } else {
        out_.push_back(static_cast<char>(first | 27U));
        appendBigEndian(out_, argument, 8);
    }
}

void CborWriter::integer(std::int64_t value) {
    if (value >= 0) {
        head(kInteger, static_cast<std::uint64_t>(value));
    } else {
        head(kNegative, static_cast<std::uint64_t>(-1 - value));
    }
}

void CborWriter::number(double value) {
    const auto single = static_cast<float>(value);
    if (static_cast<double>(single) != value) {
        out_.push_back(static_cast<char>(0xFB));
        appendBigEndian(out_, std::bit_cast<std::uint64_t>(value), 8);
    } else if (const auto half = exactHalf(single)) {
        out_.push_back(static_cast<char>(0xF9));
        appendBigEndian(out_, *half, 2);
    } else {
        out_.push_back(static_cast<char>(0xFA));
        appendBigEndian(out_, std::bit_cast<std::uint32_t>(single), 4);
    }
}

void CborWriter::text(std::string_view value) {
    head(kText, value.size());
    out_.append(value);
}

void CborWriter::array(std::size_t count) {
    head(kArray, count);
}
void CborWriter::map(std::size_t count) {
    head(kMap, count);
}
void CborWriter::boolean(bool value) {
    out_.push_back(static_cast<char>(value ? 0xF5 : 0xF4));
}
void CborWriter::null() {
    out_.push_back(static_cast<char>(0xF6));
}

double halfToDouble(std::uint16_t half) {
    const auto exponent = static_cast<int>(half >> 10U & 0x1FU);
    const auto mantissa = static_cast<int>(half & 0x3FFU);
    double value = 0;
    if (exponent == 0) {
        value = std::ldexp(mantissa, -24);
    } else if (exponent != 31) {
        value = std::ldexp(mantissa + 1024, exponent - 25);
    } else {
        value = mantissa == 0 ? std::numeric_limits<double>::infinity()
                              : std::numeric_limits<double>::quiet_NaN();
    }
    return (half & 0x8000U) != 0 ? -value : value;
}

} // namespace bullace
