// The value of an entry: one CBOR item that says what JSON can say, looked at without building a
// tree.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/cbor.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bullace::journal {

// All functions here take an item that a CborReader has accepted, as entries hold it; given
// anything else they return nothing or an empty text, and never crash.

// As JSON without spaces, keys in the order of the bytes; a float keeps its point: 7.0 stays "7.0".
[[nodiscard]] std::string valueToJson(BytesView value);
// A text as a JSON string with its quotes.
void appendJsonText(std::string& out, std::string_view text);

// Bytes that are equal for two values exactly if they are the same value: numbers by value wherever
// they stand (7 and 7.0, 0 and -0.0), object keys in any order.
[[nodiscard]] Bytes comparable(BytesView value);
[[nodiscard]] bool isSameValue(BytesView a, BytesView b);

[[nodiscard]] bool isNullValue(BytesView value);
[[nodiscard]] std::optional<double> numberOf(BytesView value);
// A number that is whole (65 or 65.0).
[[nodiscard]] std::optional<std::int64_t> wholeNumberOf(BytesView value);
[[nodiscard]] std::optional<std::string_view> textOf(BytesView value);
// The value of a key; nothing where `map` is no map or lacks it.
[[nodiscard]] std::optional<BytesView> memberOf(BytesView map, std::string_view key);
// The number of a key; nothing where there is none.
[[nodiscard]] std::optional<double> numberIn(BytesView map, std::string_view key);
// The items of a list; nothing where it is none.
[[nodiscard]] std::optional<std::vector<BytesView>> itemsOf(BytesView list);

[[nodiscard]] Bytes nullValue();
[[nodiscard]] Bytes booleanValue(bool value);
[[nodiscard]] Bytes integerValue(std::int64_t value);
[[nodiscard]] Bytes floatValue(double value);
// A whole number within ±(2^53-1) as an integer, any other as a float; finite.
[[nodiscard]] Bytes numberValue(double value);
[[nodiscard]] Bytes textValue(std::string_view text);
[[nodiscard]] Bytes listValue(const std::vector<Bytes>& items);

// Collects the members of an object, in any order, each key once.
class MapValue {
public:
    MapValue& add(std::string_view key, Bytes value);
    [[nodiscard]] bool isEmpty() const { return members_.empty(); }
    [[nodiscard]] bool hasRepeatedKey() const;
    [[nodiscard]] Bytes bytes() const;

private:
    std::vector<std::pair<Bytes, Bytes>> members_; // the encoded key, the value
};

// {"none": REASON}, an observation that was not made.
[[nodiscard]] Bytes noneValue(std::string_view reason);
[[nodiscard]] bool isNoneReason(std::string_view reason);

} // namespace bullace::journal
