// The reading half of core/base/cbor.hpp.
#include "core/base/cbor.hpp"
#include "core/base/numbers.hpp"

#include <bit>
#include <cmath>

namespace bullace {

namespace {

constexpr unsigned kInteger = 0;
constexpr unsigned kNegative = 1;
constexpr unsigned kText = 3;
constexpr unsigned kArray = 4;
constexpr unsigned kMap = 5;
constexpr unsigned kSimple = 7;
constexpr unsigned kFalse = 20;
constexpr unsigned kTrue = 21;
constexpr unsigned kNull = 22;

constexpr std::size_t kDeepest = 32; // of the stack in any(); limits beyond it are taken as this

} // namespace

bool CborReader::fail(const char* reason) {
    if (failure_ == nullptr) {
        failure_ = reason;
    }
    return false;
}

bool CborReader::head(Head& head) {
    if (failed()) {
        return false;
    }
    if (at_ == bytes_.size()) {
        return fail("the bytes end too early");
    }
    if (elementsLeft_ == 0) {
        return fail("there are too many elements");
    }
    --elementsLeft_;
    const auto first = static_cast<unsigned char>(bytes_[at_++]);
    head.major = first >> 5U;
    head.low = first & 31U;
    head.argument = head.low;
    if (head.low < 24) {
        return true;
    }
    if (head.low > 27) {
        return fail("a length is indefinite or reserved");
    }
    const std::size_t width = std::size_t{1} << (head.low - 24U);
    if (bytes_.size() - at_ < width) {
        return fail("the bytes end too early");
    }
    head.argument = 0;
    for (std::size_t i = 0; i < width; ++i) {
        head.argument = head.argument << 8U | static_cast<unsigned char>(bytes_[at_++]);
    }
    if (head.major == kSimple) {
        return true;
    }
    const std::uint64_t least = head.low == 24 ? 24 : std::uint64_t{1} << (8U * (width / 2));
    return head.argument >= least || fail("a number is written longer than needed");
}

bool CborReader::peek(CborType& type) {
    if (failed()) {
        return false;
    }
    if (at_ == bytes_.size()) {
        return fail("the bytes end too early");
    }
    const auto first = static_cast<unsigned char>(bytes_[at_]);
    switch (first >> 5U) {
    case kInteger:
    case kNegative:
        type = CborType::Integer;
        return true;
    case kText:
        type = CborType::Text;
        return true;
    case kArray:
        type = CborType::Array;
        return true;
    case kMap:
        type = CborType::Map;
        return true;
    case kSimple:
        switch (first & 31U) {
        case kFalse:
            type = CborType::False;
            return true;
        case kTrue:
            type = CborType::True;
            return true;
        case kNull:
            type = CborType::Null;
            return true;
        case 25:
        case 26:
        case 27:
            type = CborType::Float;
            return true;
        default:
            break;
        }
        break;
    default:
        break;
    }
    return fail("an item is of a type that entries do not use");
}

bool CborReader::integer(std::int64_t& value) {
    Head item;
    if (!head(item)) {
        return false;
    }
    if (item.major != kInteger && item.major != kNegative) {
        return fail("an integer was expected");
    }
    if (!checkScalar(item)) {
        return false;
    }
    const auto magnitude = static_cast<std::int64_t>(item.argument);
    value = item.major == kInteger ? magnitude : -1 - magnitude;
    return true;
}

bool CborReader::unsignedInteger(std::uint64_t& value) {
    std::int64_t any = 0;
    if (!integer(any)) {
        return false;
    }
    if (any < 0) {
        return fail("a number must not be negative");
    }
    value = static_cast<std::uint64_t>(any);
    return true;
}

bool CborReader::checkScalar(const Head& item) {
    if (item.major == kInteger || item.major == kNegative) {
        const std::uint64_t greatest =
            static_cast<std::uint64_t>(kGreatestInteger) - (item.major == kNegative ? 1 : 0);
        return item.argument <= greatest || fail("an integer is beyond 2^53-1");
    }
    double ignored = 0;
    if (item.low >= 25) {
        return checkFloat(item, ignored);
    }
    return item.low == kFalse || item.low == kTrue || item.low == kNull ||
           fail("an item is of a type that entries do not use");
}

bool CborReader::checkFloat(const Head& item, double& value) {
    if (item.low == 25) {
        value = halfToDouble(static_cast<std::uint16_t>(item.argument));
    } else if (item.low == 26) {
        value =
            static_cast<double>(std::bit_cast<float>(static_cast<std::uint32_t>(item.argument)));
    } else {
        value = std::bit_cast<double>(item.argument);
    }
    if (!std::isfinite(value)) {
        return fail("a number is not finite");
    }
    Bytes shortest;
    CborWriter(shortest).number(value);
    const std::size_t width = item.low == 25 ? 3 : item.low == 26 ? 5 : 9;
    return shortest.size() == width || fail("a number is written longer than needed");
}

bool CborReader::number(double& value) {
    Head item;
    if (!head(item)) {
        return false;
    }
    if (item.major != kSimple || item.low < 25) {
        return fail("a fractional number was expected");
    }
    return checkFloat(item, value);
}

bool CborReader::takeText(std::uint64_t length, std::string_view& value) {
    if (length > limits_.text) {
        return fail("a text is too long");
    }
    if (bytes_.size() - at_ < length) {
        return fail("the bytes end too early");
    }
    value = bytes_.substr(at_, static_cast<std::size_t>(length));
    at_ += static_cast<std::size_t>(length);
    return isCleanUtf8(value) || fail("a text is not clean UTF-8");
}

bool CborReader::text(std::string_view& value) {
    Head item;
    if (!head(item)) {
        return false;
    }
    return item.major == kText ? takeText(item.argument, value) : fail("a text was expected");
}

bool CborReader::array(std::size_t& count) {
    Head item;
    if (!head(item)) {
        return false;
    }
    if (item.major != kArray) {
        return fail("a list was expected");
    }
    count = static_cast<std::size_t>(item.argument);
    return item.argument <= elementsLeft_ || fail("there are too many elements");
}

bool CborReader::map(std::size_t& count) {
    Head item;
    if (!head(item)) {
        return false;
    }
    if (item.major != kMap) {
        return fail("a map was expected");
    }
    count = static_cast<std::size_t>(item.argument);
    return item.argument <= elementsLeft_ / 2 || fail("there are too many elements");
}

bool CborReader::boolean(bool& value) {
    Head item;
    if (!head(item)) {
        return false;
    }
    value = item.low == kTrue;
    return (item.major == kSimple && (item.low == kFalse || item.low == kTrue)) ||
           fail("true or false was expected");
}

bool CborReader::null() {
    Head item;
    return head(item) &&
           ((item.major == kSimple && item.low == kNull) || fail("null was expected"));
}

bool CborReader::any(BytesView& item) {
    struct Open {
        std::uint64_t left = 0; // items still to come; a map counts its keys and its values
        bool isMap = false;
        BytesView lastKey;
    };
    std::array<Open, kDeepest> stack;
    std::size_t depth = 0;
    const std::size_t start = at_;
    do {
        const std::size_t itemStart = at_;
        const bool isKey = depth > 0 && stack[depth - 1].isMap && stack[depth - 1].left % 2 == 0;
        Head next;
        if (!head(next)) {
            return false;
        }
        if (isKey && next.major != kText) {
            return fail("a key is not a text");
        }
        if (next.major == kArray || next.major == kMap) {
            const bool isMap = next.major == kMap;
            if (next.argument > elementsLeft_ / (isMap ? 2 : 1)) {
                return fail("there are too many elements");
            }
            if (depth == limits_.depth || depth == kDeepest) {
                return fail("lists or maps are nested too deep");
            }
            if (depth > 0) {
                --stack[depth - 1].left;
            }
            stack[depth++] = Open{next.argument * (isMap ? 2 : 1), isMap, {}};
        } else {
            std::string_view text;
            const bool isRead =
                next.major == kText ? takeText(next.argument, text)
                : next.major == kInteger || next.major == kNegative || next.major == kSimple
                    ? checkScalar(next)
                    : fail("an item is of a type that entries do not use");
            if (!isRead) {
                return false;
            }
            if (isKey) {
                const BytesView key = bytes_.substr(itemStart, at_ - itemStart);
                if (!stack[depth - 1].lastKey.empty() && key <= stack[depth - 1].lastKey) {
                    return fail("the keys of a map are repeated or out of order");
                }
                stack[depth - 1].lastKey = key;
            }
            if (depth > 0) {
                --stack[depth - 1].left;
            }
        }
        while (depth > 0 && stack[depth - 1].left == 0) {
            --depth;
        }
    } while (depth > 0);
    item = bytes_.substr(start, at_ - start);
    return true;
}

} // namespace bullace
