// A number while it is typed: digit by digit, and never one that the descriptor forbids. A press
// that no number inside the range could follow is refused, so that 245 cannot be typed for 24.5.
#pragma once

#include "core/base/units.hpp"
#include "core/descriptors/catalog.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bullace::descriptors {

// Why the last press changed nothing.
enum class Refusal {
    None,
    TooGreat,        // every number that begins so is above the range
    TooSmall,        // every number that begins so is below the range, or goes past it
    TooManyDecimals, // no further decimal is allowed
    WholeOnly,       // the point: the descriptor takes no decimals
    AfterZero,       // a digit behind a leading zero
    NoDigitYet,      // the point before any digit
    SecondPoint,
    NoNegative,   // the sign: nothing below zero is allowed
    NothingThere, // erase or nudge, with nothing complete to act on
    NoSuchKey,    // press() of something that is no digit
};

// A value: it can be copied and compared by its text().
class NumberPad {
public:
    // `range` inclusive, in the unit typed; nothing: nine digits and a sign. `decimals` 0 to 6 at
    // most are allowed.
    explicit NumberPad(std::optional<Range> range = {},
                       int decimals = 0,
                       std::string_view unit = {});

    // Each says why nothing changed; refusal() keeps it until the next press.
    Refusal press(char digit);
    Refusal pressPoint();
    Refusal pressSign();      // a minus before the digits, or none again
    Refusal erase();          // the last character
    Refusal nudge(int steps); // by so many of the last decimal allowed; a complete number only
    void clear();

    // Starts from a value, as when one is put right. False, and cleared, where it is not allowed.
    bool set(double value);

    // With a point, whatever the screen writes: "24.5".
    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] const std::string& unit() const { return unit_; }
    [[nodiscard]] const Range& range() const { return range_; }
    [[nodiscard]] int decimals() const { return decimals_; }
    [[nodiscard]] bool takesPoint() const { return decimals_ > 0; }
    [[nodiscard]] bool takesSign() const { return least_ < 0; }
    [[nodiscard]] bool isEmpty() const { return text_.empty(); }
    [[nodiscard]] Refusal refusal() const { return refusal_; }

    // The number, where it is complete and inside the range.
    [[nodiscard]] std::optional<double> value() const;
    [[nodiscard]] bool canCommit() const { return value().has_value(); }

private:
    struct Span {
        std::int64_t least = 0;
        std::int64_t greatest = 0;
    };

    Refusal refuse(Refusal why);
    Refusal tryText(std::string text);
    [[nodiscard]] Refusal whyNot(std::string_view text) const;
    [[nodiscard]] Span magnitudes(bool isNegative) const;
    [[nodiscard]] std::optional<std::int64_t> steps() const;

    std::string text_;
    std::string unit_;
    Range range_;
    int decimals_ = 0;
    std::int64_t perOne_ = 1;   // steps of the last decimal in 1
    std::int64_t least_ = 0;    // in steps
    std::int64_t greatest_ = 0; // in steps
    Refusal refusal_ = Refusal::None;
};

// The range in the unit shown: from the least to the greatest number with shownDecimals() whose
// stored value lies inside `range`.
[[nodiscard]] Range shownRange(const Unit& unit, const Range& range, int storedDecimals);

// A pad for a descriptor's number, or for one part of a record, typed in `unit`; a part has no unit
// in the catalog. A part that is limited by its ratio to another (`per`) takes any number that is
// not negative: the ratio can be judged only when both are there. Stages, scores and codes fit too.
[[nodiscard]] NumberPad padFor(const Descriptor& descriptor, const Unit& unit);
[[nodiscard]] NumberPad padFor(const RecordPart& part, const Unit& unit);

} // namespace bullace::descriptors
