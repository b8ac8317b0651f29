#include "core/descriptors/number_pad.hpp"

#include "core/base/numbers.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bullace::descriptors {

namespace {

constexpr int kMostDecimals = 6;
constexpr double kNineDigits = 999'999'999;
constexpr Range kAnything{-kNineDigits, kNineDigits};

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

std::int64_t powerOfTen(int exponent) {
    std::int64_t power = 1;
    for (int i = 0; i < exponent; ++i) {
        power *= 10;
    }
    return power;
}

// A range's end is written in decimals; its binary64 is off by far less than a millionth of a step.
constexpr double kDust = 1e-6;

std::int64_t firstStep(double least, std::int64_t perOne) {
    return std::llround(std::ceil(least * static_cast<double>(perOne) - kDust));
}
std::int64_t lastStep(double greatest, std::int64_t perOne) {
    return std::llround(std::floor(greatest * static_cast<double>(perOne) + kDust));
}

} // namespace

NumberPad::NumberPad(std::optional<Range> range, int decimals, std::string_view unit)
    : unit_(unit),
      range_(range.value_or(kAnything)),
      decimals_(std::clamp(decimals, 0, kMostDecimals)),
      perOne_(powerOfTen(decimals_)) {
    range_.least = std::max(range_.least, kAnything.least);
    range_.greatest = std::min(range_.greatest, kAnything.greatest);
    least_ = firstStep(range_.least, perOne_);
    greatest_ = lastStep(range_.greatest, perOne_);
}

Refusal NumberPad::refuse(Refusal why) {
    refusal_ = why;
    return why;
}

// The allowed numbers of one sign, without the sign. With a minus there is no zero.
NumberPad::Span NumberPad::magnitudes(bool isNegative) const {
    if (isNegative) {
        return {std::max<std::int64_t>(1, -greatest_), -least_};
    }
    return {std::max<std::int64_t>(0, least_), greatest_};
}

// Whether some number inside the range begins with `text`: digits, at most one point, and a sign.
Refusal NumberPad::whyNot(std::string_view text) const {
    const bool isNegative = text.starts_with('-');
    const Span allowed = magnitudes(isNegative);
    if (isNegative) {
        text.remove_prefix(1);
    }
    if (allowed.least > allowed.greatest) {
        return isNegative ? Refusal::NoNegative : Refusal::TooGreat;
    }
    if (text.empty()) {
        return Refusal::None;
    }
    const std::size_t point = text.find('.');
    const bool hasPoint = point != std::string_view::npos;
    std::int64_t digits = 0;
    for (const char c : text) {
        digits = isDigit(c) ? digits * 10 + (c - '0') : digits;
    }
    const int decimals = hasPoint ? static_cast<int>(text.size() - point - 1) : 0;
    // Numbers that begin so lie in [digits * width, (digits + 1) * width), and, while more whole
    // digits may follow, in the same ten, a hundred times as far out.
    std::int64_t width = powerOfTen(decimals_ - decimals);
    if (digits * width > allowed.greatest) {
        return Refusal::TooGreat;
    }
    const bool isOpen = !hasPoint && digits != 0;
    do {
        if (digits * width <= allowed.greatest && (digits + 1) * width > allowed.least) {
            return Refusal::None;
        }
        width *= 10;
    } while (isOpen && digits * width <= allowed.greatest);
    return Refusal::TooSmall;
}

Refusal NumberPad::tryText(std::string text) {
    const Refusal why = whyNot(text);
    if (why == Refusal::None) {
        text_ = std::move(text);
    }
    return refuse(why);
}

Refusal NumberPad::press(char digit) {
    if (!isDigit(digit)) {
        return refuse(Refusal::NoSuchKey);
    }
    const std::size_t point = text_.find('.');
    if (point != std::string::npos &&
        text_.size() - point - 1 >= static_cast<std::size_t>(decimals_)) {
        return refuse(Refusal::TooManyDecimals);
    }
    if (text_ == "0" || text_ == "-0") {
        return refuse(Refusal::AfterZero);
    }
    return tryText(text_ + digit);
}

Refusal NumberPad::pressPoint() {
    if (decimals_ == 0) {
        return refuse(Refusal::WholeOnly);
    }
    if (text_.empty() || !isDigit(text_.back())) {
        return refuse(text_.ends_with('.') ? Refusal::SecondPoint : Refusal::NoDigitYet);
    }
    if (text_.find('.') != std::string::npos) {
        return refuse(Refusal::SecondPoint);
    }
    return tryText(text_ + '.');
}

Refusal NumberPad::pressSign() {
    if (!takesSign()) {
        return refuse(Refusal::NoNegative);
    }
    return tryText(text_.starts_with('-') ? text_.substr(1) : "-" + text_);
}

Refusal NumberPad::erase() {
    if (text_.empty()) {
        return refuse(Refusal::NothingThere);
    }
    text_.pop_back();
    return refuse(Refusal::None);
}

Refusal NumberPad::nudge(int by) {
    const auto now = steps();
    if (!now || !canCommit()) {
        return refuse(Refusal::NothingThere);
    }
    const std::int64_t then = *now + by;
    if (then < least_ || then > greatest_) {
        return refuse(then < least_ ? Refusal::TooSmall : Refusal::TooGreat);
    }
    text_ = fixedText(static_cast<double>(then) / static_cast<double>(perOne_), decimals_);
    return refuse(Refusal::None);
}

void NumberPad::clear() {
    text_.clear();
    refuse(Refusal::None);
}

bool NumberPad::set(double value) {
    clear();
    const double exact = value * static_cast<double>(perOne_);
    const double whole = std::nearbyint(exact);
    if (!(std::abs(exact - whole) <= kDust) || whole < static_cast<double>(least_) ||
        whole > static_cast<double>(greatest_)) {
        return false;
    }
    text_ = fixedText(whole == 0 ? 0 : whole / static_cast<double>(perOne_), decimals_);
    return true;
}

// The number in steps of the last decimal; nothing while it is not complete.
std::optional<std::int64_t> NumberPad::steps() const {
    if (text_.empty() || !isDigit(text_.back())) {
        return std::nullopt;
    }
    std::int64_t digits = 0;
    for (const char c : text_) {
        digits = isDigit(c) ? digits * 10 + (c - '0') : digits;
    }
    const std::size_t point = text_.find('.');
    const int decimals =
        point == std::string::npos ? 0 : static_cast<int>(text_.size() - point - 1);
    digits *= powerOfTen(decimals_ - decimals);
    if (!text_.starts_with('-')) {
        return digits;
    }
    return digits == 0 ? std::nullopt : std::optional(-digits); // -0 is still being typed
}

std::optional<double> NumberPad::value() const {
    const auto number = steps();
    if (!number || *number < least_ || *number > greatest_) {
        return std::nullopt;
    }
    return readTypedNumber(text_);
}

Range shownRange(const Unit& unit, const Range& range, int storedDecimals) {
    if (unit.isAsStored()) {
        return range;
    }
    const int decimals = shownDecimals(unit, storedDecimals);
    const double step = 1.0 / static_cast<double>(powerOfTen(decimals));
    const auto lies = [&](double shown) {
        const double stored = toStored(unit, shown, storedDecimals);
        return stored >= range.least && stored <= range.greatest;
    };
    // Rounding can leave the nearest shown number outside; the next one towards the middle is in.
    Range shown{toShown(unit, range.least, storedDecimals),
                toShown(unit, range.greatest, storedDecimals)};
    if (!lies(shown.least)) {
        shown.least = roundTo(shown.least + step, decimals);
    }
    if (!lies(shown.greatest)) {
        shown.greatest = roundTo(shown.greatest - step, decimals);
    }
    return shown;
}

NumberPad padFor(const Descriptor& descriptor, const Unit& unit) {
    const Range range = descriptor.range.value_or(
        descriptor.kind == DescriptorKind::Stage ? Range{0, 99} : kAnything);
    return NumberPad(shownRange(unit, range, descriptor.decimals),
                     unit.isAsStored() ? descriptor.decimals
                                       : shownDecimals(unit, descriptor.decimals),
                     unit.shown);
}

NumberPad padFor(const RecordPart& part, const Unit& unit) {
    const Range range = part.per.empty() ? part.range : Range{0, kNineDigits};
    return NumberPad(shownRange(unit, range, part.decimals),
                     unit.isAsStored() ? part.decimals : shownDecimals(unit, part.decimals),
                     unit.shown);
}

} // namespace bullace::descriptors
