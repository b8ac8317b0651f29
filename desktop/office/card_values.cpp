// Fields of cards as text and as values.
#include "office/collection.hpp"
#include "office/rule_desk.hpp"
#include "office/typed_value.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/json_value.hpp"
#include "core/merge/rulebook.hpp"
#include "core/vineyard/passport.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::office {

namespace {

using Type = FieldType;

Error notA(const FieldForm& form, std::string_view text, const std::string& what) {
    return {ErrorCode::InvalidInput,
            std::string(form.field) + ": \"" + std::string(text) + "\" is not " + what + ".",
            {}};
}

std::string trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t");
    const std::size_t last = text.find_last_not_of(" \t");
    return first == std::string_view::npos ? std::string{}
                                           : std::string(text.substr(first, last - first + 1));
}

// Parts between commas, without empty ones.
std::vector<std::string> listed(std::string_view text) {
    std::vector<std::string> parts;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find_first_of(",;", at), text.size());
        std::string part = trimmed(text.substr(at, end - at));
        if (!part.empty()) {
            parts.push_back(std::move(part));
        }
        at = end + 1;
    }
    return parts;
}

std::optional<std::int64_t> wholeIn(std::string_view text) {
    const auto number = readTypedNumber(text);
    return number && *number >= 0 && *number < 1e9 && *number == std::floor(*number)
               ? std::optional(static_cast<std::int64_t>(*number))
               : std::nullopt;
}

// "left mark right": both sides trimmed; nothing where the mark is not there.
std::optional<std::pair<std::string, std::string>> split(std::string_view text,
                                                         std::string_view mark) {
    const std::size_t at = text.rfind(mark);
    if (at == std::string_view::npos) {
        return std::nullopt;
    }
    return std::pair(trimmed(text.substr(0, at)), trimmed(text.substr(at + mark.size())));
}

Result<Bytes> wholesValue(const FieldForm& form, std::string_view text) {
    std::vector<Bytes> items;
    for (const std::string& part : listed(text)) {
        const auto whole = wholeIn(part);
        if (!whole) {
            return notA(form, part, "a whole number");
        }
        items.push_back(journal::integerValue(*whole));
    }
    return journal::listValue(items);
}

Result<Bytes> numbersValue(const FieldForm& form, std::string_view text) {
    journal::MapValue map;
    for (const std::string& part : listed(text)) {
        const auto pair = split(part, " ");
        const auto number = pair ? readTypedNumber(pair->second) : std::nullopt;
        if (!number || pair->first.empty()) {
            return notA(form, part, "a descriptor and its number, like clusters 5");
        }
        map.add(pair->first, journal::numberValue(*number));
    }
    return map.hasRepeatedKey() ? notA(form, text, "one number for each descriptor")
                                : Result<Bytes>(map.bytes());
}

Result<Bytes> rangeValue(const FieldForm& form, std::string_view text) {
    const auto pair = split(text, " to ");
    const auto least = pair ? readTypedNumber(pair->first) : std::nullopt;
    const auto greatest = pair ? readTypedNumber(pair->second) : std::nullopt;
    if (!least || !greatest || *greatest < *least) {
        return notA(form, text, "a range, like 0 to 35");
    }
    return journal::listValue({journal::numberValue(*least), journal::numberValue(*greatest)});
}

Result<Bytes> rowsValue(const FieldForm& form, std::string_view text) {
    std::vector<Bytes> items;
    for (const std::string& part : listed(text)) {
        const auto pair = split(part, ":");
        const auto row = pair ? wholeIn(pair->first) : std::nullopt;
        const auto vines = pair ? wholeIn(pair->second) : std::nullopt;
        if (!row || !vines || *row < 1 || *vines < 1) {
            return notA(form, part, "a row with its places, like 1: 40");
        }
        items.push_back(
            journal::listValue({journal::integerValue(*row), journal::integerValue(*vines)}));
    }
    return journal::listValue(items);
}

Result<Bytes> ownRuleValue(const FieldForm& form, std::string_view text) {
    RuleDraft draft;
    const auto pair = split(text, " within ");
    draft.rule = pair ? pair->first : trimmed(text);
    draft.within = pair ? pair->second : std::string{};
    Result<Bytes> value = ruleValue(draft);
    if (!value || !merge::readOwnRule(*value)) {
        return notA(form, text, "a rule, like mean within 5 %");
    }
    return value;
}

std::string joined(BytesView list) {
    std::string all;
    for (const BytesView item : journal::itemsOf(list).value_or(std::vector<BytesView>{})) {
        const auto text = journal::textOf(item);
        all += (all.empty() ? "" : ", ") + (text ? std::string(*text) : journal::valueToJson(item));
    }
    return all;
}

std::string numbersText(BytesView map) {
    std::string all;
    CborReader reader(map);
    std::size_t count = 0;
    if (!reader.map(count)) {
        return journal::valueToJson(map);
    }
    for (std::size_t i = 0; i < count; ++i) {
        std::string_view key;
        BytesView value;
        if (!reader.text(key) || !reader.any(value)) {
            return journal::valueToJson(map);
        }
        all += (all.empty() ? "" : ", ") + std::string(key) + " " + journal::valueToJson(value);
    }
    return all;
}

std::string rowsText(BytesView list) {
    std::string all;
    for (const BytesView item : journal::itemsOf(list).value_or(std::vector<BytesView>{})) {
        const auto pair = journal::itemsOf(item);
        if (pair && pair->size() == 2) {
            all += (all.empty() ? "" : ", ") + journal::valueToJson((*pair)[0]) + ": " +
                   journal::valueToJson((*pair)[1]);
        }
    }
    return all;
}

std::string rangeText(BytesView list) {
    const auto pair = journal::itemsOf(list);
    return pair && pair->size() == 2
               ? journal::valueToJson((*pair)[0]) + " to " + journal::valueToJson((*pair)[1])
               : journal::valueToJson(list);
}

std::string ownRuleText(BytesView value) {
    const auto rule = merge::readOwnRule(value);
    if (!rule) {
        return journal::valueToJson(value);
    }
    merge::BookRule book;
    book.rule = *rule;
    const RuleDraft draft = draftOf(book);
    return draft.within.empty() ? draft.rule : draft.rule + " within " + draft.within;
}

} // namespace

Result<Bytes> fieldValue(const FieldForm& form, std::string_view typed) {
    const std::string text = trimmed(typed);
    if (text.empty()) {
        return journal::nullValue();
    }
    switch (form.type) {
    case Type::Text:
        return journal::textValue(text);
    case Type::Passport: {
        const vineyard::PassportField* passport = vineyard::findPassportField(form.field);
        const Status is = passport == nullptr ? Status{} : vineyard::checkPassport(*passport, text);
        return is ? Result<Bytes>(journal::textValue(text)) : is.error();
    }
    case Type::Date:
        return readDate(text) ? Result<Bytes>(journal::textValue(text))
                              : notA(form, text, "a day of the calendar, like 2026-05-14");
    case Type::Whole: {
        const auto whole = wholeIn(text);
        return whole ? Result<Bytes>(journal::integerValue(*whole))
                     : notA(form, text, "a whole number");
    }
    case Type::YesNo:
        return text == "yes"  ? Result<Bytes>(journal::booleanValue(true))
               : text == "no" ? Result<Bytes>(journal::booleanValue(false))
                              : notA(form, text, "yes or no");
    case Type::Texts: {
        std::vector<Bytes> items;
        for (const std::string& part : listed(text)) {
            items.push_back(journal::textValue(part));
        }
        return journal::listValue(items);
    }
    case Type::Wholes:
        return wholesValue(form, text);
    case Type::Numbers:
        return numbersValue(form, text);
    case Type::Range:
        return rangeValue(form, text);
    case Type::Rows:
        return rowsValue(form, text);
    case Type::Rule:
        return ownRuleValue(form, text);
    case Type::ChosenWord: {
        std::string words;
        for (const std::string_view word : form.words) {
            if (word == text) {
                return journal::textValue(text);
            }
            words += (words.empty() ? "" : ", ") + std::string(word);
        }
        return notA(form, text, "one of " + words);
    }
    }
    return journal::nullValue();
}

std::string fieldText(const FieldForm& form, BytesView value) {
    if (const auto text = journal::textOf(value)) {
        return std::string(*text);
    }
    switch (form.type) {
    case Type::YesNo:
        return value == journal::booleanValue(true)    ? "yes"
               : value == journal::booleanValue(false) ? "no"
                                                       : journal::valueToJson(value);
    case Type::Texts:
    case Type::Wholes:
        return joined(value);
    case Type::Numbers:
        return numbersText(value);
    case Type::Range:
        return rangeText(value);
    case Type::Rows:
        return rowsText(value);
    case Type::Rule:
        return ownRuleText(value);
    default:
        return journal::valueToJson(value);
    }
}

} // namespace bullace::office
