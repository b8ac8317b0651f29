// Deterministic CBOR (RFC 8949 §4.2.1), the part of it that entries use, written and read within
// bounds.
//
// Used: integers within ±(2^53-1), UTF-8 text without U+0000, arrays, maps with distinct text keys
// in bytewise order of their encodings, false, true, null, and floats of the shortest exact width
// (binary16, 32 or 64) that are finite. Everything else (tags, byte strings, indefinite lengths,
// undefined, longer forms than needed) is refused: what the reader accepts is exactly what the
// writer writes. Nothing recurses on its input.
#pragma once

#include "core/base/bytes.hpp"

#include <array>
#include <cstddef>
#include <cstdint>

namespace bullace {

// Bounds of one entry; PROTOCOL.md lists them.
struct CborLimits {
    std::size_t depth = 16;       // arrays and maps within one another
    std::size_t elements = 20000; // heads of items, keys included
    std::size_t text = 16384;     // bytes of one text
};

enum class CborType { Integer, Float, Text, Array, Map, False, True, Null };

// Appends items to a buffer. The caller writes as many items as an array or map announced, and map
// keys in order: CborMap in core/journal/json_value.cpp sorts where the order is not known
// beforehand.
class CborWriter {
public:
    explicit CborWriter(Bytes& out) : out_(out) {}

    void integer(std::int64_t value); // within ±(2^53-1)
    void number(double value);        // a float, also where it is whole; finite
    void text(std::string_view value);
    void array(std::size_t count);
    void map(std::size_t count);
    void boolean(bool value);
    void null();
    void raw(BytesView item) { out_.append(item); } // one item, already encoded

private:
    void head(unsigned major, std::uint64_t argument);

    Bytes& out_;
};

// Reads items one after the other. The first thing that is not as asked makes it fail for good;
// failure() then says what in a few words ("a text is not clean UTF-8"). Views point into the bytes
// given, which must outlive them.
class CborReader {
public:
    explicit CborReader(BytesView bytes, const CborLimits& limits = {})
        : bytes_(bytes),
          limits_(limits),
          elementsLeft_(limits.elements) {}

    [[nodiscard]] bool failed() const { return failure_ != nullptr; }
    [[nodiscard]] const char* failure() const { return failure_ == nullptr ? "" : failure_; }
    [[nodiscard]] bool atEnd() const { return at_ == bytes_.size(); }
    [[nodiscard]] std::size_t position() const { return at_; }

    // The type of the next item, which is not taken; false where there is none or it is of no type
    // used here.
    bool peek(CborType& type);

    bool integer(std::int64_t& value);
    bool unsignedInteger(std::uint64_t& value);
    bool number(double& value); // Float only
    bool text(std::string_view& value);
    bool array(std::size_t& count);
    bool map(std::size_t& count);
    bool boolean(bool& value);
    bool null();

    // Any one item with all that is in it, checked; `item` are its bytes.
    bool any(BytesView& item);

    // Marks the input as failed with the caller's own reason (a literal).
    bool fail(const char* reason);

private:
    struct Head {
        unsigned major = 0;
        unsigned low = 0; // the additional information, which tells floats and simple values apart
        std::uint64_t argument = 0;
    };
    bool head(Head& head);
    bool checkScalar(const Head& head);
    bool checkFloat(const Head& head, double& value);
    bool takeText(std::uint64_t length, std::string_view& value);

    BytesView bytes_;
    CborLimits limits_;
    std::size_t elementsLeft_;
    std::size_t at_ = 0;
    const char* failure_ = nullptr;
};

// A binary16 pattern as a number (RFC 8949 Appendix D).
[[nodiscard]] double halfToDouble(std::uint16_t half);

} // namespace bullace
