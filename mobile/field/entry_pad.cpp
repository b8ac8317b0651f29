#include "field/entry_pad.hpp"

#include "core/base/numbers.hpp"
#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"

#include <cmath>

namespace bullace::field {

using descriptors::DescriptorKind;
using descriptors::PartKind;

namespace {

constexpr double kMostScores = 12; // a longer scale is typed

Way wayOf(const vineyard::Asked& asked) {
    const descriptors::Descriptor& known = asked.known;
    if (!asked.unknownKind.empty()) {
        return Way::Unknown;
    }
    switch (known.kind) {
    case DescriptorKind::Stage:
    case DescriptorKind::Category:
        return Way::Keys;
    case DescriptorKind::Score:
        return known.range && known.range->greatest - known.range->least <= kMostScores
                   ? Way::Keys
                   : Way::Number;
    case DescriptorKind::Code:
        return known.codes.empty() ? Way::Number : Way::Keys;
    case DescriptorKind::Percent:
    case DescriptorKind::Count:
    case DescriptorKind::Measure:
        return Way::Number;
    case DescriptorKind::Record:
        return Way::Parts;
    case DescriptorKind::Text:
        return Way::Words;
    case DescriptorKind::Photo:
        return Way::Picture;
    }
    return Way::Unknown;
}

std::vector<std::string> textsOf(std::span<const std::string_view> words) {
    return {words.begin(), words.end()};
}

std::vector<std::string> keysOf(const vineyard::Asked& asked,
                                const std::vector<std::int64_t>& chosen) {
    const descriptors::Descriptor& known = asked.known;
    std::vector<std::string> keys;
    if (known.kind == DescriptorKind::Stage && known.codes.empty()) {
        for (const descriptors::Stage& stage : descriptors::grapevineStages()) {
            bool isChosen = chosen.empty();
            for (const std::int64_t code : chosen) {
                isChosen = isChosen || code == stage.code;
            }
            if (isChosen) {
                keys.push_back(std::to_string(stage.code));
            }
        }
        return keys;
    }
    if (known.kind == DescriptorKind::Score && known.range) {
        for (double score = known.range->least; score <= known.range->greatest; ++score) {
            keys.push_back(std::to_string(std::llround(score)));
        }
        return keys;
    }
    return textsOf(known.codes);
}

// A key's value: numbers of stages, scores and codes, words of categories.
Bytes keyValue(const std::string& key, bool isNumber) {
    const auto number = isNumber ? readCount(key) : std::nullopt;
    return number ? journal::integerValue(static_cast<std::int64_t>(*number))
                  : journal::textValue(key);
}

} // namespace

EntryPad::EntryPad(const vineyard::Asked& asked,
                   const UnitWishes& wishes,
                   const std::vector<std::int64_t>& stages)
    : asked_(asked),
      unit_(unitFor(asked.known.unit, wishes)),
      way_(wayOf(asked)),
      stages_(asked.known.code == "stage" || asked.known.code == "stage-least"
                  ? stages
                  : std::vector<std::int64_t>{}) {
    begin();
}

const descriptors::RecordPart* EntryPad::part() const {
    const bool isThere = way_ == Way::Parts && values_.size() < asked_.known.parts.size();
    return isThere ? &asked_.known.parts[values_.size()] : nullptr;
}

void EntryPad::begin() {
    keys_.clear();
    if (way_ == Way::Keys) {
        keys_ = keysOf(asked_, stages_);
        return;
    }
    if (const descriptors::RecordPart* now = part()) {
        keys_ = textsOf(now->words);
        pad_ = descriptors::padFor(*now, unitFor({}, {}));
        return;
    }
    if (way_ == Way::Number) {
        pad_ = descriptors::padFor(asked_.known, unit_);
    }
}

std::optional<Bytes> EntryPad::take(Bytes value) {
    if (way_ != Way::Parts) {
        return value;
    }
    values_.push_back(std::move(value));
    if (values_.size() < asked_.known.parts.size()) {
        begin();
        return {};
    }
    journal::MapValue map;
    for (std::size_t i = 0; i < values_.size(); ++i) {
        if (!journal::isNullValue(values_[i])) {
            map.add(asked_.known.parts[i].name, values_[i]);
        }
    }
    values_.clear();
    begin();
    return map.bytes();
}

std::optional<Bytes> EntryPad::choose(std::size_t key) {
    if (key >= keys_.size()) {
        return {};
    }
    as_.reset();
    const descriptors::RecordPart* now = part();
    const bool isNumber = now != nullptr ? now->kind != PartKind::Word
                                         : asked_.known.kind != DescriptorKind::Category;
    return take(keyValue(keys_[key], isNumber));
}

std::optional<Bytes> EntryPad::next() {
    const auto typed = pad_.value();
    if (!typed) {
        return {};
    }
    if (const descriptors::RecordPart* now = part()) {
        as_.reset();
        return take(now->kind == PartKind::Id ? journal::textValue(pad_.text())
                                              : journal::numberValue(*typed));
    }
    as_ = enteredAs(unit_, pad_.text());
    Bytes value = journal::numberValue(toStored(unit_, *typed, asked_.known.decimals));
    pad_.clear();
    return take(std::move(value));
}

std::optional<Bytes> EntryPad::leaveOut() {
    const descriptors::RecordPart* now = part();
    return now == nullptr || now->isRequired ? std::nullopt : take(journal::nullValue());
}

bool EntryPad::back() {
    if (values_.empty()) {
        return false;
    }
    values_.pop_back();
    begin();
    return true;
}

} // namespace bullace::field
