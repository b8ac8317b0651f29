// The built-in descriptors: what is observed, in which unit and range, and which rule settles two
// values of one.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/result.hpp"
#include "core/descriptors/rule.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace bullace::descriptors {

enum class DescriptorKind {
    Stage,    // a code of an ordered list (BBCH grapevine, or the station's own)
    Code,     // a number that names a class (flower sex, chromosomes)
    Category, // a word of a list
    Percent,
    Count,
    Score,   // a whole number on a short scale
    Measure, // a number with a unit and decimals
    Record,  // a JSON object with named parts, checked by its own shape
    Text,
    Photo, // the SHA-256 of the picture
};

struct Range {
    double least = 0;
    double greatest = 0;
};

enum class PartKind {
    Whole,  // a whole number
    Number, // any number, with decimals
    Word,   // one of `words`
    Id,     // the ID of a cross or a lot: text of 1 to 64 bytes without '/'
};

// One named part of a record, {"dead": 3, "of": 10}.
struct RecordPart {
    std::string_view name; // the JSON key
    PartKind kind = PartKind::Whole;
    Range range; // of Whole and Number, inclusive
    int decimals = 0;
    bool isRequired = true;
    std::span<const std::string_view>
        words;               // of a Word; of a Whole with few values: these, as text
    std::string_view atMost; // another part that this one may not exceed
    std::string_view per;    // another part: `range` is that of this one divided by the other
};

struct Descriptor {
    std::string_view code;
    std::string_view title;
    DescriptorKind kind = DescriptorKind::Text;
    std::string_view unit;      // as written on screen; empty where there is none
    std::optional<Range> range; // inclusive
    int decimals = 0;
    bool isSampled = false; // several samples make one observation
    std::span<const std::string_view>
        codes; // of a Category: its words; of a Code: its numbers as text
    // Of a Record: its parts. Of a Measure: a record that may stand in place of the number (the
    // weight of several berries together).
    std::span<const RecordPart> parts;
    Rule rule;
    std::string_view source; // where the descriptor or its range comes from
};

[[nodiscard]] std::span<const Descriptor> builtInDescriptors();
[[nodiscard]] const Descriptor* findBuiltIn(std::string_view code);

// Why there is no value, in the order in which a screen offers them.
[[nodiscard]] std::span<const std::string_view> noneReasons();

[[nodiscard]] std::optional<DescriptorKind>
readKindWord(std::string_view word); // "stage", "count", …
[[nodiscard]] std::string_view kindWord(DescriptorKind kind);

// Whether `value` (one CBOR item, see core/journal/entry.hpp) can be entered for the descriptor:
// its kind, range, decimals, codes, or the parts of its record. {"none": REASON} with a known
// reason always can. This is asked at entry; entries that are in a journal already are kept
// whatever they hold. Errors: InvalidInput; the message says what is wrong and what is allowed.
[[nodiscard]] Status checkValue(const Descriptor& descriptor, BytesView value);

} // namespace bullace::descriptors
