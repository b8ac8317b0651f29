#include "core/merge/rulebook.hpp"

#include "core/base/civil_date.hpp"
#include "core/base/numbers.hpp"
#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"
#include "core/vineyard/position.hpp"

#include <algorithm>
#include <array>

namespace bullace::merge {

using descriptors::DescriptorKind;
using descriptors::Rule;
using descriptors::Within;
using journal::isNullValue;
using journal::itemsOf;
using journal::memberOf;
using journal::numberOf;
using journal::Subject;
using journal::SubjectForm;
using journal::textOf;

namespace {

constexpr std::array<std::string_view, 6> kBookParts{
    "where", "from", "to", "descriptors", "rule", "within"};
constexpr std::array<std::string_view, 2> kOwnParts{"rule", "within"};

// Whether the value is an object that has no other parts than these: a part that we do not know
// could restrict the rule.
template<std::size_t N>
bool hasOnlyParts(BytesView value, const std::array<std::string_view, N>& parts) {
    CborReader in(value);
    CborType type{};
    std::size_t count = 0;
    if (!in.peek(type) || type != CborType::Map || !in.map(count)) {
        return false;
    }
    std::string_view key;
    BytesView item;
    for (std::size_t i = 0; i < count; ++i) {
        if (!in.text(key) || !in.any(item) ||
            std::find(parts.begin(), parts.end(), key) == parts.end()) {
            return false;
        }
    }
    return true;
}

// The part where it is there and not null.
std::optional<BytesView> partOf(BytesView value, std::string_view key) {
    const auto part = memberOf(value, key);
    return part && !isNullValue(*part) ? part : std::nullopt;
}

bool readWithin(BytesView value, std::optional<Within>& within) {
    const auto part = partOf(value, "within");
    if (!part) {
        return true;
    }
    Within read;
    auto amount = numberOf(*part);
    if (!amount) {
        static constexpr std::array<std::string_view, 1> kPercent{"percent"};
        const auto percent = memberOf(*part, "percent");
        read.isPercent = true;
        amount = percent && hasOnlyParts(*part, kPercent) ? numberOf(*percent) : std::nullopt;
    }
    if (!amount || *amount < 0) {
        return false;
    }
    read.amount = *amount;
    within = read;
    return true;
}

std::optional<Rule> readRuleParts(BytesView value) {
    const auto word = partOf(value, "rule");
    const auto text = word ? textOf(*word) : std::nullopt;
    const auto name = text ? descriptors::readRuleWord(*text) : std::nullopt;
    Rule rule;
    if (!name || !readWithin(value, rule.within)) {
        return std::nullopt;
    }
    rule.name = *name;
    return rule;
}

bool readDatePart(BytesView value, std::string_view key, std::optional<std::string>& date) {
    const auto part = partOf(value, key);
    if (!part) {
        return true;
    }
    const auto text = textOf(*part);
    if (!text || !readDate(*text)) {
        return false;
    }
    date = std::string(*text);
    return true;
}

bool readWherePart(BytesView value, std::string& where) {
    const auto part = partOf(value, "where");
    if (!part) {
        return true;
    }
    const auto text = textOf(*part);
    if (!text || !vineyard::isPositionPattern(*text)) {
        return false;
    }
    where = std::string(*text);
    return true;
}

bool readDescriptorsPart(BytesView value, std::optional<std::vector<std::string>>& codes) {
    const auto part = partOf(value, "descriptors");
    if (!part) {
        return true;
    }
    const auto items = itemsOf(*part);
    if (!items) {
        return false;
    }
    codes.emplace();
    for (const BytesView item : *items) {
        const auto text = textOf(item);
        if (!text) {
            return false;
        }
        codes->emplace_back(*text);
    }
    return true;
}

} // namespace

bool BookRule::matches(const Subject& subject) const {
    return (!from || subject.date >= *from) && (!to || subject.date <= *to) &&
           (!descriptors ||
            std::find(descriptors->begin(), descriptors->end(), subject.descriptor) !=
                descriptors->end()) &&
           vineyard::matchesPattern(where, subject.id);
}

std::optional<BookRule> readBookRule(BytesView value) {
    BookRule rule;
    const auto parts = hasOnlyParts(value, kBookParts) ? readRuleParts(value) : std::nullopt;
    if (!parts || !readWherePart(value, rule.where) || !readDatePart(value, "from", rule.from) ||
        !readDatePart(value, "to", rule.to) || !readDescriptorsPart(value, rule.descriptors)) {
        return std::nullopt;
    }
    rule.rule = *parts;
    return rule;
}

std::optional<Rule> readOwnRule(BytesView value) {
    return hasOnlyParts(value, kOwnParts) ? readRuleParts(value) : std::nullopt;
}

bool shapesRulebook(const Subject& subject) {
    return subject.form == SubjectForm::Rulebook ||
           (subject.form == SubjectForm::Descriptor &&
            (subject.field == "rule" || subject.field == "kind" || subject.field == "codes"));
}

void Rulebook::apply(std::string_view subjectText, BytesView value, bool isOpen) {
    const Subject subject = journal::readSubject(subjectText);
    if (!shapesRulebook(subject)) {
        return;
    }
    if (subject.form == SubjectForm::Rulebook) {
        const std::uint64_t number = *readCount(subject.id);
        rules_.erase(number);
        if (auto rule = readBookRule(value)) {
            rules_.emplace(number, std::move(*rule));
        }
        return;
    }
    OwnSettings& own = descriptors_[std::string(subject.id)];
    const bool isThere = !value.empty();
    if (subject.field == "rule") {
        // An open rule, and one that cannot be read, ask: a person has to look at it.
        const auto read = readOwnRule(value);
        own.rule = isOpen || (isThere && !read) ? Rule{} : read;
    } else if (subject.field == "kind") {
        const auto word = textOf(value);
        own.kind = word ? descriptors::readKindWord(*word) : std::nullopt;
    } else {
        const auto items = itemsOf(value);
        own.codes.reset();
        if (items) {
            own.codes.emplace();
            std::transform(
                items->begin(), items->end(), std::back_inserter(*own.codes), journal::comparable);
        }
    }
}

Rulebook::Match Rulebook::matchFor(const Subject& observation) const {
    for (const auto& [number, rule] : rules_) {
        if (rule.matches(observation)) {
            return {number, rule.rule};
        }
    }
    const auto own = descriptors_.find(observation.descriptor);
    if (own != descriptors_.end() && own->second.rule) {
        return {std::nullopt, *own->second.rule};
    }
    const descriptors::Descriptor* builtIn = descriptors::findBuiltIn(observation.descriptor);
    return {std::nullopt, builtIn == nullptr ? Rule{} : builtIn->rule};
}

std::optional<DescriptorKind> Rulebook::kindOf(std::string_view descriptor) const {
    const auto own = descriptors_.find(descriptor);
    if (own != descriptors_.end() && own->second.kind) {
        return own->second.kind;
    }
    const descriptors::Descriptor* builtIn = descriptors::findBuiltIn(descriptor);
    return builtIn == nullptr ? std::nullopt : std::optional(builtIn->kind);
}

std::optional<std::size_t> Rulebook::stepOf(std::string_view descriptor, BytesView value) const {
    const auto own = descriptors_.find(descriptor);
    if (own != descriptors_.end() && own->second.codes) {
        const auto& codes = *own->second.codes;
        const auto at = std::find(codes.begin(), codes.end(), journal::comparable(value));
        return at == codes.end() ? std::nullopt
                                 : std::optional(static_cast<std::size_t>(at - codes.begin()));
    }
    const auto code = journal::wholeNumberOf(value);
    return code ? descriptors::stageStep(*code) : std::nullopt;
}

} // namespace bullace::merge
