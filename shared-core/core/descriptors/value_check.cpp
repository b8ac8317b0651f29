// What a value must be like to be entered: the kind, range, decimals, codes and record parts of its
// descriptor. Values are read item by item; no tree is built.
#include "core/base/cbor.hpp"
#include "core/base/numbers.hpp"
#include "core/descriptors/catalog.hpp"
#include "core/descriptors/stages.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

namespace bullace::descriptors {

namespace {

constexpr std::size_t kMostParts = 8;
constexpr std::size_t kLongestId = 64;
constexpr std::size_t kLongestText = 16384;
constexpr std::size_t kPhotoDigits = 64;

Error wrong(const Descriptor& descriptor, std::string_view what) {
    return {ErrorCode::InvalidInput,
            "\"" + std::string(descriptor.title) + "\" " + std::string(what) + ".",
            std::string(descriptor.code)};
}

std::string plainNumber(double value) {
    std::string text = shortestFloat(value);
    if (text.ends_with(".0")) {
        text.resize(text.size() - 2);
    }
    return text;
}

std::string rangeWords(const Range& range, std::string_view unit) {
    std::string text = "from " + plainNumber(range.least) + " to " + plainNumber(range.greatest);
    if (!unit.empty()) {
        text.append(" ").append(unit);
    }
    return text;
}

std::string wordList(std::span<const std::string_view> words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        text += i == 0 ? "" : i + 1 == words.size() ? " or " : ", ";
        text += words[i];
    }
    return text;
}

std::string decimalWords(int decimals) {
    return decimals == 0   ? "takes whole numbers only"
           : decimals == 1 ? "takes one decimal at most"
                           : "takes " + std::to_string(decimals) + " decimals at most";
}

// Whole floats are the same number as the integer.
bool readNumber(CborReader& in, double& value) {
    CborType type{};
    if (!in.peek(type)) {
        return false;
    }
    if (type == CborType::Float) {
        return in.number(value);
    }
    std::int64_t integer = 0;
    if (type != CborType::Integer || !in.integer(integer)) {
        return false;
    }
    value = static_cast<double>(integer);
    return true;
}

bool isWithin(double value, const Range& range) {
    return value >= range.least && value <= range.greatest;
}

// Whether the shortest text of `value` has no more decimals than allowed. Binary fractions are off
// by far less than a millionth of the last decimal here.
bool hasDecimals(double value, int decimals) {
    const double scaled = value * std::pow(10.0, decimals);
    return std::abs(scaled - std::nearbyint(scaled)) <= 1e-6;
}

bool isListed(double value, std::span<const std::string_view> codes) {
    return hasDecimals(value, 0) &&
           std::find(codes.begin(), codes.end(), plainNumber(value)) != codes.end();
}

// {"none": REASON}: nothing where the value is no such map; else whether the reason is known.
std::optional<bool> readNone(BytesView value) {
    CborReader in(value);
    CborType type{};
    std::size_t count = 0;
    std::string_view key;
    if (!in.peek(type) || type != CborType::Map || !in.map(count) || count != 1 || !in.text(key) ||
        key != "none") {
        return std::nullopt;
    }
    std::string_view reason;
    const auto known = noneReasons();
    return in.text(reason) && in.atEnd() &&
           std::find(known.begin(), known.end(), reason) != known.end();
}

Status checkNumber(const Descriptor& descriptor, BytesView value) {
    CborReader in(value);
    double read = 0;
    if (!readNumber(in, read) || !in.atEnd()) {
        return wrong(descriptor, "takes a number");
    }
    const bool isByCodes = !descriptor.codes.empty();
    if (isByCodes && !isListed(read, descriptor.codes)) {
        return wrong(descriptor, "takes one of the codes " + wordList(descriptor.codes));
    }
    if (!isByCodes && descriptor.range && !isWithin(read, *descriptor.range)) {
        return wrong(descriptor, "takes numbers " + rangeWords(*descriptor.range, descriptor.unit));
    }
    if (!hasDecimals(read, descriptor.decimals)) {
        return wrong(descriptor, decimalWords(descriptor.decimals));
    }
    return {};
}

// A station's own stage list stands in `codes`; without one it is the grapevine list.
Status checkStage(const Descriptor& descriptor, BytesView value) {
    CborReader in(value);
    double read = 0;
    if (!readNumber(in, read) || !in.atEnd() || !hasDecimals(read, 0)) {
        return wrong(descriptor, "takes the number of a stage");
    }
    const bool isKnown =
        descriptor.codes.empty()
            ? isWithin(read, {0, 99}) && stageStep(static_cast<std::int64_t>(read)).has_value()
            : isListed(read, descriptor.codes);
    if (!isKnown) {
        return wrong(descriptor,
                     "has no code " + plainNumber(read) + "; choose one from the list of stages");
    }
    return {};
}

Status checkWord(const Descriptor& descriptor, BytesView value) {
    CborReader in(value);
    std::string_view word;
    if (!in.text(word) || !in.atEnd() ||
        std::find(descriptor.codes.begin(), descriptor.codes.end(), word) ==
            descriptor.codes.end()) {
        return wrong(descriptor, "takes " + wordList(descriptor.codes));
    }
    return {};
}

Status checkText(const Descriptor& descriptor, BytesView value) {
    CborReader in(value);
    std::string_view text;
    if (!in.text(text) || !in.atEnd() || text.empty() || text.size() > kLongestText) {
        return wrong(descriptor, "takes text, up to 16 KiB of it");
    }
    return {};
}

Status checkPhoto(const Descriptor& descriptor, BytesView value) {
    CborReader in(value);
    std::string_view text;
    if (!in.text(text) || !in.atEnd() || text.size() != kPhotoDigits || !fromHex(text)) {
        return wrong(descriptor, "takes the SHA-256 of a picture in 64 hex digits");
    }
    return {};
}

// The numbers of a record as they were read, to compare parts with one another.
using PartNumbers = std::array<std::optional<double>, kMostParts>;

std::string partName(const RecordPart& part) {
    return "\"" + std::string(part.name) + "\"";
}

Status checkNumberPart(const Descriptor& descriptor, const RecordPart& part, double value) {
    if (!part.words.empty() && !isListed(value, part.words)) {
        return wrong(descriptor, "takes " + wordList(part.words) + " as " + partName(part));
    }
    if (part.per.empty() && !isWithin(value, part.range)) {
        return wrong(descriptor,
                     "takes numbers " + rangeWords(part.range, {}) + " as " + partName(part));
    }
    if (!hasDecimals(value, part.decimals)) {
        return wrong(descriptor, decimalWords(part.decimals) + " as " + partName(part));
    }
    return {};
}

bool isId(std::string_view text) {
    return !text.empty() && text.size() <= kLongestId && text.find('/') == std::string_view::npos;
}

Status checkPart(const Descriptor& descriptor,
                 const RecordPart& part,
                 CborReader& in,
                 std::optional<double>& number) {
    if (part.kind == PartKind::Whole || part.kind == PartKind::Number) {
        double value = 0;
        if (!readNumber(in, value)) {
            return wrong(descriptor, "takes a number as " + partName(part));
        }
        number = value;
        return checkNumberPart(descriptor, part, value);
    }
    std::string_view text;
    const bool isText = in.text(text);
    if (part.kind == PartKind::Id && (!isText || !isId(text))) {
        return wrong(descriptor, "takes an ID without a slash as " + partName(part));
    }
    if (part.kind == PartKind::Word &&
        (!isText || std::find(part.words.begin(), part.words.end(), text) == part.words.end())) {
        return wrong(descriptor, "takes " + wordList(part.words) + " as " + partName(part));
    }
    return {};
}

std::size_t findPart(std::span<const RecordPart> parts, std::string_view name) {
    const auto found = std::find_if(
        parts.begin(), parts.end(), [name](const RecordPart& part) { return part.name == name; });
    return static_cast<std::size_t>(found - parts.begin());
}

// What only two parts together can tell.
Status checkTogether(const Descriptor& descriptor, const PartNumbers& numbers) {
    for (std::size_t i = 0; i < descriptor.parts.size(); ++i) {
        const RecordPart& part = descriptor.parts[i];
        const std::string_view otherName = part.atMost.empty() ? part.per : part.atMost;
        if (otherName.empty() || !numbers[i]) {
            continue;
        }
        const auto& other = numbers[findPart(descriptor.parts, otherName)];
        if (!part.atMost.empty() && other && *numbers[i] > *other) {
            return wrong(descriptor,
                         "cannot have more as " + partName(part) + " than as \"" +
                             std::string(otherName) + "\"");
        }
        if (!part.per.empty() && other && !isWithin(*numbers[i] / *other, part.range)) {
            return wrong(descriptor,
                         "takes " + rangeWords(part.range, descriptor.unit) +
                             " for each; here it would be " + plainNumber(*numbers[i] / *other));
        }
    }
    return {};
}

Status checkRecord(const Descriptor& descriptor, BytesView value) {
    CborReader in(value);
    std::size_t count = 0;
    if (descriptor.parts.size() > kMostParts || !in.map(count)) {
        return wrong(descriptor, "takes a record of named parts");
    }
    PartNumbers numbers{};
    std::array<bool, kMostParts> isThere{};
    for (std::size_t i = 0; i < count; ++i) {
        std::string_view name;
        if (!in.text(name)) {
            return wrong(descriptor, "takes a record of named parts");
        }
        const std::size_t at = findPart(descriptor.parts, name);
        if (at == descriptor.parts.size() || isThere[at]) {
            return wrong(descriptor, "has no further part \"" + std::string(name) + "\"");
        }
        isThere[at] = true;
        if (const Status checked = checkPart(descriptor, descriptor.parts[at], in, numbers[at]);
            !checked.ok()) {
            return checked;
        }
    }
    for (std::size_t i = 0; i < descriptor.parts.size(); ++i) {
        if (descriptor.parts[i].isRequired && !isThere[i]) {
            return wrong(descriptor, "needs " + partName(descriptor.parts[i]));
        }
    }
    return in.atEnd() ? checkTogether(descriptor, numbers)
                      : wrong(descriptor, "takes one record only");
}

Status checkMeasure(const Descriptor& descriptor, BytesView value) {
    CborReader in(value);
    CborType type{};
    const bool isRecord = !descriptor.parts.empty() && in.peek(type) && type == CborType::Map;
    return isRecord ? checkRecord(descriptor, value) : checkNumber(descriptor, value);
}

} // namespace

Status checkValue(const Descriptor& descriptor, BytesView value) {
    if (const auto none = readNone(value)) {
        return *none ? Status{}
                     : wrong(descriptor,
                             "takes as the reason for no value " + wordList(noneReasons()));
    }
    switch (descriptor.kind) {
    case DescriptorKind::Stage:
        return checkStage(descriptor, value);
    case DescriptorKind::Category:
        return checkWord(descriptor, value);
    case DescriptorKind::Code:
    case DescriptorKind::Percent:
    case DescriptorKind::Count:
    case DescriptorKind::Score:
        return checkNumber(descriptor, value);
    case DescriptorKind::Measure:
        return checkMeasure(descriptor, value);
    case DescriptorKind::Record:
        return checkRecord(descriptor, value);
    case DescriptorKind::Text:
        return checkText(descriptor, value);
    case DescriptorKind::Photo:
        return checkPhoto(descriptor, value);
    }
    return wrong(descriptor, "is of a kind that this program does not know");
}

} // namespace bullace::descriptors
