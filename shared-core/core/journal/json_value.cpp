#include "core/journal/json_value.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/entry.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::journal {

namespace {

// A value has passed the bounds of an entry already.
constexpr CborLimits kWide{
    .depth = 16, .elements = kGreatestEntryBytes, .text = kGreatestEntryBytes};

// Walks one item and tells a visitor what is in it, without recursion. The visitor has
// scalar(CborReader&, CborType), open(isMap, count), close(isMap), and between(isMap, index of the
// item in its list or map).
template<typename Visitor>
bool walk(BytesView value, Visitor& visitor) {
    struct Open {
        bool isMap = false;
        std::size_t total = 0;
        std::size_t done = 0;
    };
    std::vector<Open> stack;
    CborReader in(value, kWide);
    do {
        if (!stack.empty()) {
            visitor.between(stack.back().isMap, stack.back().done);
            ++stack.back().done;
        }
        CborType type{};
        if (!in.peek(type)) {
            return false;
        }
        if (type == CborType::Array || type == CborType::Map) {
            const bool isMap = type == CborType::Map;
            std::size_t count = 0;
            if (!(isMap ? in.map(count) : in.array(count))) {
                return false;
            }
            visitor.open(isMap, count);
            stack.push_back({isMap, isMap ? count * 2 : count, 0});
        } else if (!visitor.scalar(in, type)) {
            return false;
        }
        while (!stack.empty() && stack.back().done == stack.back().total) {
            visitor.close(stack.back().isMap);
            stack.pop_back();
        }
    } while (!stack.empty());
    return in.atEnd();
}

struct JsonWriter {
    std::string& out;

    void between(bool isMap, std::size_t index) {
        if (isMap && index % 2 == 1) {
            out += ':';
        } else if (index > 0) {
            out += ',';
        }
    }
    void open(bool isMap, std::size_t /*count*/) { out += isMap ? '{' : '['; }
    void close(bool isMap) { out += isMap ? '}' : ']'; }
    bool scalar(CborReader& in, CborType type) {
        switch (type) {
        case CborType::Integer: {
            std::int64_t whole = 0;
            const bool isRead = in.integer(whole);
            out += std::to_string(whole);
            return isRead;
        }
        case CborType::Float: {
            double number = 0;
            const bool isRead = in.number(number);
            out += shortestFloat(number);
            return isRead;
        }
        case CborType::Text: {
            std::string_view text;
            const bool isRead = in.text(text);
            appendJsonText(out, text);
            return isRead;
        }
        case CborType::Null:
            out += "null";
            return in.null();
        default: {
            bool truth = false;
            const bool isRead = in.boolean(truth);
            out += truth ? "true" : "false";
            return isRead;
        }
        }
    }
};

bool isWhole(double number) {
    return std::nearbyint(number) == number &&
           std::abs(number) <= static_cast<double>(kGreatestInteger);
}

// Writes the value again with every whole float as an integer.
struct ComparableWriter {
    CborWriter out;

    void between(bool /*isMap*/, std::size_t /*index*/) {}
    void open(bool isMap, std::size_t count) { isMap ? out.map(count) : out.array(count); }
    void close(bool /*isMap*/) {}
    bool scalar(CborReader& in, CborType type) {
        double number = 0;
        if (type == CborType::Float) {
            const bool isRead = in.number(number);
            isWhole(number) ? out.integer(static_cast<std::int64_t>(number)) : out.number(number);
            return isRead;
        }
        BytesView same;
        const bool isRead = in.any(same);
        out.raw(same);
        return isRead;
    }
};

constexpr std::array<std::string_view, 6> kNoneReasons{
    "not-observed", "no-vine", "dead", "out-of-reach", "no-crop", "walked-past"};

} // namespace

void appendJsonText(std::string& out, std::string_view text) {
    static constexpr char kHex[] = "0123456789abcdef";
    out += '"';
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (byte >= 0x20) {
            out += c;
        } else if (c == '\n') {
            out += "\\n";
        } else if (c == '\t') {
            out += "\\t";
        } else if (c == '\r') {
            out += "\\r";
        } else {
            out += "\\u00";
            out += kHex[byte >> 4U];
            out += kHex[byte & 15U];
        }
    }
    out += '"';
}

std::string valueToJson(BytesView value) {
    std::string out;
    JsonWriter writer{out};
    return walk(value, writer) ? out : std::string{};
}

Bytes comparable(BytesView value) {
    Bytes bytes;
    ComparableWriter writer{CborWriter(bytes)};
    return walk(value, writer) ? bytes : Bytes{};
}

bool isSameValue(BytesView a, BytesView b) {
    return a == b || comparable(a) == comparable(b);
}

bool isNullValue(BytesView value) {
    return value == BytesView("\xF6", 1);
}

std::optional<double> numberOf(BytesView value) {
    CborReader in(value, kWide);
    CborType type{};
    if (!in.peek(type)) {
        return std::nullopt;
    }
    if (type == CborType::Integer) {
        std::int64_t whole = 0;
        return in.integer(whole) ? std::optional(static_cast<double>(whole)) : std::nullopt;
    }
    double number = 0;
    return type == CborType::Float && in.number(number) ? std::optional(number) : std::nullopt;
}

std::optional<std::int64_t> wholeNumberOf(BytesView value) {
    const auto number = numberOf(value);
    return number && isWhole(*number) ? std::optional(static_cast<std::int64_t>(*number))
                                      : std::nullopt;
}

std::optional<std::string_view> textOf(BytesView value) {
    CborReader in(value, kWide);
    CborType type{};
    std::string_view text;
    return in.peek(type) && type == CborType::Text && in.text(text) ? std::optional(text)
                                                                    : std::nullopt;
}

std::optional<BytesView> memberOf(BytesView map, std::string_view key) {
    CborReader in(map, kWide);
    CborType type{};
    std::size_t count = 0;
    if (!in.peek(type) || type != CborType::Map || !in.map(count)) {
        return std::nullopt;
    }
    std::string_view name;
    BytesView item;
    for (std::size_t i = 0; i < count && in.text(name) && in.any(item); ++i) {
        if (name == key) {
            return item;
        }
    }
    return std::nullopt;
}

std::optional<double> numberIn(BytesView map, std::string_view key) {
    const auto member = memberOf(map, key);
    return member ? numberOf(*member) : std::nullopt;
}

std::optional<std::vector<BytesView>> itemsOf(BytesView list) {
    CborReader in(list, kWide);
    CborType type{};
    std::size_t count = 0;
    if (!in.peek(type) || type != CborType::Array || !in.array(count)) {
        return std::nullopt;
    }
    std::vector<BytesView> items;
    BytesView item;
    while (items.size() < count && in.any(item)) {
        items.push_back(item);
    }
    return items;
}

Bytes nullValue() {
    return Bytes("\xF6", 1);
}

Bytes booleanValue(bool value) {
    Bytes bytes;
    CborWriter(bytes).boolean(value);
    return bytes;
}

Bytes integerValue(std::int64_t value) {
    Bytes bytes;
    CborWriter(bytes).integer(value);
    return bytes;
}

Bytes floatValue(double value) {
    Bytes bytes;
    CborWriter(bytes).number(value);
    return bytes;
}

Bytes numberValue(double value) {
    return isWhole(value) ? integerValue(static_cast<std::int64_t>(value)) : floatValue(value);
}

Bytes textValue(std::string_view text) {
    Bytes bytes;
    CborWriter(bytes).text(text);
    return bytes;
}

Bytes listValue(const std::vector<Bytes>& items) {
    Bytes bytes;
    CborWriter out(bytes);
    out.array(items.size());
    for (const Bytes& item : items) {
        out.raw(item);
    }
    return bytes;
}

MapValue& MapValue::add(std::string_view key, Bytes value) {
    members_.emplace_back(textValue(key), std::move(value));
    return *this;
}

bool MapValue::hasRepeatedKey() const {
    std::vector<BytesView> keys;
    keys.reserve(members_.size());
    for (const auto& [key, value] : members_) {
        keys.emplace_back(key);
    }
    std::sort(keys.begin(), keys.end());
    return std::adjacent_find(keys.begin(), keys.end()) != keys.end();
}

Bytes MapValue::bytes() const {
    auto members = members_;
    std::sort(members.begin(), members.end());
    Bytes bytes;
    CborWriter out(bytes);
    out.map(members.size());
    for (const auto& [key, value] : members) {
        out.raw(key);
        out.raw(value);
    }
    return bytes;
}

Bytes noneValue(std::string_view reason) {
    return MapValue().add("none", textValue(reason)).bytes();
}

bool isNoneReason(std::string_view reason) {
    return std::find(kNoneReasons.begin(), kNoneReasons.end(), reason) != kNoneReasons.end();
}

} // namespace bullace::journal
