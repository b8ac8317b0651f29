#include "office/typed_value.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/json_value.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <vector>

namespace bullace::office {

using descriptors::Descriptor;
using descriptors::DescriptorKind;
using descriptors::PartKind;
using descriptors::RecordPart;

namespace {

std::string_view trimmed(std::string_view text) {
    const auto isSpace = [](char c) { return c == ' ' || c == '\t'; };
    while (!text.empty() && isSpace(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && isSpace(text.back())) {
        text.remove_suffix(1);
    }
    return text;
}

// Spaces for hyphens and small letters, so that "No vine" is "no-vine".
std::string asCode(std::string_view text) {
    std::string code(text);
    for (char& c : code) {
        c = c == ' ' ? '-' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return code;
}

std::optional<Bytes> readNone(std::string_view text, const WordCode& codeOf) {
    if (text == "-") {
        return journal::noneValue("not-observed");
    }
    for (const std::string& code : {asCode(text), codeOf ? codeOf(text) : std::string{}}) {
        if (journal::isNoneReason(code)) {
            return journal::noneValue(code);
        }
    }
    return std::nullopt;
}

Error notThat(std::string_view text, const std::string& what) {
    return {ErrorCode::InvalidInput, "\"" + std::string(text) + "\" is not " + what + ".", {}};
}

// The word of the list that is meant, by its code, its own spelling or the screen's word.
std::optional<std::string>
wordOf(std::span<const std::string_view> words, std::string_view text, const WordCode& codeOf) {
    for (const std::string& code :
         {std::string(text), asCode(text), codeOf ? codeOf(text) : std::string{}}) {
        if (std::find(words.begin(), words.end(), code) != words.end()) {
            return code;
        }
    }
    return std::nullopt;
}

std::string listed(std::span<const std::string_view> words) {
    std::string all;
    for (const std::string_view word : words) {
        all += (all.empty() ? "" : ", ") + std::string(word);
    }
    return all;
}

// Without the unit that may stand behind a number.
std::string_view withoutUnit(std::string_view text, std::string_view unit) {
    if (!unit.empty() && text.size() > unit.size() && text.ends_with(unit)) {
        text.remove_suffix(unit.size());
    }
    return trimmed(text);
}

Result<Typed> readNumber(const Descriptor& known, std::string_view text, const UnitWishes& wishes) {
    const Unit unit = unitFor(known.unit, wishes);
    const auto number = readTypedNumber(withoutUnit(text, unit.shown));
    if (!number) {
        return notThat(text,
                       "a number. Write it plainly, like 24.5, without marks between thousands");
    }
    if (unit.isAsStored()) {
        return Typed{journal::numberValue(*number)};
    }
    const double stored = toStored(unit, *number, known.decimals);
    return Typed{journal::numberValue(stored), enteredAs(unit, withoutUnit(text, unit.shown))};
}

std::vector<std::string_view> partsOf(std::string_view text) {
    std::vector<std::string_view> parts;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find_first_of(" /;\t", at), text.size());
        const std::string_view part = text.substr(at, end - at);
        if (!part.empty() && part != "of") {
            parts.push_back(part);
        }
        at = end + 1;
    }
    return parts;
}

Result<Bytes> readPart(const RecordPart& part, std::string_view text, const WordCode& codeOf) {
    if (part.kind == PartKind::Id) {
        return journal::textValue(text);
    }
    if (part.kind == PartKind::Word) {
        const auto word = wordOf(part.words, text, codeOf);
        return word ? Result<Bytes>(journal::textValue(*word))
                    : notThat(text, "one of " + listed(part.words));
    }
    const auto number = readTypedNumber(text);
    return number ? Result<Bytes>(journal::numberValue(*number)) : notThat(text, "a number");
}

// Parts that may be left out are left out from the end; "-" leaves one out in the middle.
Result<Typed> readRecord(const Descriptor& known, std::string_view text, const WordCode& codeOf) {
    const std::vector<std::string_view> typed = partsOf(text);
    std::string names;
    for (const RecordPart& part : known.parts) {
        names += (names.empty() ? "" : ", ") + std::string(part.name);
    }
    if (typed.size() > known.parts.size()) {
        return notThat(text, "of this form: " + names);
    }
    journal::MapValue map;
    for (std::size_t i = 0; i < known.parts.size(); ++i) {
        const RecordPart& part = known.parts[i];
        if (i >= typed.size() || typed[i] == "-") {
            if (part.isRequired) {
                return notThat(text,
                               "complete: " + std::string(part.name) +
                                   " is missing. The parts are " + names);
            }
            continue;
        }
        Result<Bytes> value = readPart(part, typed[i], codeOf);
        if (!value) {
            return value.error();
        }
        map.add(part.name, std::move(*value));
    }
    return Typed{map.bytes()};
}

Result<Typed> readByKind(const Descriptor& known,
                         std::string_view text,
                         const UnitWishes& wishes,
                         const WordCode& codeOf) {
    switch (known.kind) {
    case DescriptorKind::Text:
        return Typed{journal::textValue(text)};
    case DescriptorKind::Photo:
        return notThat(text, "a photo. Photos come from a tablet");
    case DescriptorKind::Category: {
        const auto word = wordOf(known.codes, text, codeOf);
        return word ? Result<Typed>(Typed{journal::textValue(*word)})
                    : notThat(text, "one of " + listed(known.codes));
    }
    case DescriptorKind::Record:
        return readRecord(known, text, codeOf);
    case DescriptorKind::Stage:
        if (!known.codes.empty()) {
            const auto word = wordOf(known.codes, text, codeOf);
            const auto number = word ? readTypedNumber(*word) : std::nullopt;
            return !word    ? notThat(text, "one of " + listed(known.codes))
                   : number ? Result<Typed>(Typed{journal::numberValue(*number)})
                            : Result<Typed>(Typed{journal::textValue(*word)});
        }
        return readNumber(known, text, {});
    case DescriptorKind::Measure:
        if (!known.parts.empty() && partsOf(text).size() == known.parts.size()) {
            return readRecord(known, text, codeOf); // several berries weighed together
        }
        return readNumber(known, text, wishes);
    default:
        return readNumber(known, text, wishes);
    }
}

} // namespace

std::optional<double> readTypedNumber(std::string_view text) {
    std::string plain(trimmed(text));
    constexpr std::string_view kMinus = "\u2212";
    if (plain.starts_with(kMinus)) {
        plain.replace(0, kMinus.size(), "-");
    }
    if (std::count_if(plain.begin(), plain.end(), [](char c) { return c == '.' || c == ','; }) >
        1) {
        return std::nullopt;
    }
    std::replace(plain.begin(), plain.end(), ',', '.');
    const std::size_t first = plain.find_first_not_of('-');
    if (first == std::string::npos || first > 1 ||
        plain.find_first_not_of("0123456789.", first) != std::string::npos ||
        plain.find_first_of("0123456789", first) == std::string::npos) {
        return std::nullopt;
    }
    double number = 0;
    const auto [end, fault] = std::from_chars(plain.data(), plain.data() + plain.size(), number);
    const bool isWhole = end == plain.data() + plain.size();
    return fault == std::errc{} && isWhole && std::isfinite(number) ? std::optional(number)
                                                                    : std::nullopt;
}

Result<Typed> readTyped(const vineyard::Asked& asked,
                        std::string_view text,
                        const UnitWishes& wishes,
                        const WordCode& codeOf) {
    text = trimmed(text);
    if (text.empty()) {
        return Error{ErrorCode::InvalidInput, "Nothing was typed.", {}};
    }
    if (!asked.unknownKind.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "This descriptor is of a kind that this version does not know.",
                     asked.unknownKind};
    }
    const bool isText = asked.known.kind == DescriptorKind::Text;
    if (auto none = isText ? std::nullopt : readNone(text, codeOf)) {
        return Typed{std::move(*none)};
    }
    Result<Typed> typed = readByKind(asked.known, text, wishes, codeOf);
    if (typed) {
        if (Status allowed = descriptors::checkValue(asked.known, typed->value); !allowed) {
            return allowed.error();
        }
    }
    return typed;
}

std::string typedText(const vineyard::Asked& asked, BytesView value, const UnitWishes& wishes) {
    if (const auto none = journal::memberOf(value, "none")) {
        return std::string(journal::textOf(*none).value_or(""));
    }
    if (const auto text = journal::textOf(value)) {
        return std::string(*text);
    }
    if (const auto number = journal::numberOf(value)) {
        const Unit unit = unitFor(asked.known.unit, wishes);
        return unit.isAsStored() ? journal::valueToJson(journal::numberValue(*number))
                                 : fixedText(toShown(unit, *number, asked.known.decimals),
                                             shownDecimals(unit, asked.known.decimals));
    }
    std::string parts;
    for (const RecordPart& part : asked.known.parts) {
        const auto member = journal::memberOf(value, part.name);
        const auto text = member ? journal::textOf(*member) : std::nullopt;
        parts += (parts.empty() ? "" : " ") + (text     ? std::string(*text)
                                               : member ? journal::valueToJson(*member)
                                                        : std::string("-"));
    }
    return parts;
}

} // namespace bullace::office
