#include "office/rule_desk.hpp"

#include "office/typed_value.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <tuple>

namespace bullace::office {

using merge::BookRule;

namespace {

Error notA(const char* field, const std::string& text, const char* what) {
    return {ErrorCode::InvalidInput,
            std::string(field) + ": \"" + text + "\" is not " + what + ".",
            {}};
}

std::vector<std::string> listOf(const std::string& text) {
    std::vector<std::string> items;
    std::size_t at = 0;
    while (at <= text.size()) {
        const std::size_t end = std::min(text.find_first_of(",;", at), text.size());
        std::string item = text.substr(at, end - at);
        item.erase(0, item.find_first_not_of(' '));
        item.erase(item.find_last_not_of(' ') + 1);
        if (!item.empty()) {
            items.push_back(std::move(item));
        }
        at = end + 1;
    }
    return items;
}

Result<Bytes> withinValue(const std::string& text) {
    std::string number = text;
    const std::size_t percent = number.find('%');
    const bool isPercent = percent != std::string::npos;
    if (isPercent) {
        number.erase(percent);
    }
    const auto amount = readTypedNumber(number);
    if (!amount || *amount < 0) {
        return notA("Within", text, "a number, like 2, or a percentage, like 5 %");
    }
    Bytes value = journal::numberValue(*amount);
    return isPercent ? journal::MapValue().add("percent", std::move(value)).bytes()
                     : std::move(value);
}

std::string withinText(const std::optional<descriptors::Within>& within) {
    if (!within) {
        return {};
    }
    const std::string number = journal::valueToJson(journal::numberValue(within->amount));
    return within->isPercent ? number + " %" : number;
}

// The rulebook with the changes in it.
merge::Rulebook changed(const merge::Rulebook& now, const std::vector<RuleChange>& changes) {
    merge::Rulebook next = now;
    for (const RuleChange& change : changes) {
        next.apply("rulebook/" + std::to_string(change.number), change.value, false);
    }
    return next;
}

} // namespace

RuleDraft draftOf(const BookRule& rule) {
    RuleDraft draft;
    draft.where = rule.where == "*" ? std::string{} : rule.where;
    draft.from = rule.from.value_or("");
    draft.to = rule.to.value_or("");
    for (const std::string& code : rule.descriptors.value_or(std::vector<std::string>{})) {
        draft.descriptors += (draft.descriptors.empty() ? "" : ", ") + code;
    }
    draft.rule = descriptors::ruleWord(rule.rule.name);
    draft.within = withinText(rule.rule.within);
    return draft;
}

Result<std::vector<RuleLine>> readRules(store::Database& database) {
    std::vector<RuleLine> lines;
    const Status read = database.eachState("rulebook", [&lines](const store::StateRow& row) {
        const journal::Subject subject = journal::readSubject(row.subject);
        const auto number =
            subject.form == journal::SubjectForm::Rulebook ? readCount(subject.id) : std::nullopt;
        if (!number || row.state == merge::State::Retracted) {
            return true;
        }
        RuleLine line;
        line.number = *number;
        line.heads = row.heads;
        line.isOpen = row.state == merge::State::Open;
        const Result<Bytes> value = store::readJson(row.valueJson);
        const auto rule = line.isOpen || !value ? std::nullopt : merge::readBookRule(*value);
        line.isReadable = rule.has_value();
        line.draft = rule ? draftOf(*rule) : RuleDraft{};
        lines.push_back(std::move(line));
        return true;
    });
    if (!read) {
        return read.error();
    }
    std::sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) {
        return a.number < b.number;
    });
    return lines;
}

Result<Bytes> ruleValue(const RuleDraft& draft) {
    journal::MapValue map;
    if (!draft.where.empty()) {
        if (!vineyard::isPositionPattern(draft.where)) {
            return notA("Where", draft.where, "a place: B2-07-14, B2-07-* or B2-*");
        }
        map.add("where", journal::textValue(draft.where));
    }
    for (const auto& [name, field, date] :
         {std::tuple{"from", "From", &draft.from}, std::tuple{"to", "To", &draft.to}}) {
        if (date->empty()) {
            continue;
        }
        if (!readDate(*date)) {
            return notA(field, *date, "a day of the calendar, like 2026-05-14");
        }
        map.add(name, journal::textValue(*date));
    }
    if (!draft.from.empty() && !draft.to.empty() && draft.to < draft.from) {
        return notA("To", draft.to, "a day after the first");
    }
    std::vector<Bytes> codes;
    for (const std::string& code : listOf(draft.descriptors)) {
        codes.push_back(journal::textValue(code));
    }
    if (!codes.empty()) {
        map.add("descriptors", journal::listValue(codes));
    }
    if (!descriptors::readRuleWord(draft.rule)) {
        return notA("Rule", draft.rule, "one of ask, later, advanced, greatest, least, mean, all");
    }
    map.add("rule", journal::textValue(draft.rule));
    if (!draft.within.empty()) {
        Result<Bytes> within = withinValue(draft.within);
        if (!within) {
            return within.error();
        }
        map.add("within", std::move(*within));
    }
    Bytes value = map.bytes();
    return merge::readBookRule(value) ? Result<Bytes>(std::move(value))
                                      : notA("Rule", draft.rule, "a rule that fits together");
}

Result<RulePreview> previewRules(store::Database& database,
                                 const std::vector<RuleChange>& changes,
                                 const Token& token) {
    const merge::Rulebook& now = database.rulebook();
    const merge::Rulebook next = changed(now, changes);
    RulePreview preview;
    std::size_t changedCount = 0;
    const auto one = [&](std::string_view subject,
                         merge::State before,
                         const std::vector<store::HeadRow>& heads) {
        ++preview.contested;
        std::vector<journal::EntryView> entries;
        std::vector<merge::Member> members;
        entries.reserve(heads.size());
        for (const store::HeadRow& head : heads) {
            if (const auto entry = journal::readEntry(head.entry)) {
                entries.push_back(*entry);
                members.push_back({&entries.back(), &head.digest, true});
            }
        }
        std::sort(members.begin(), members.end(), merge::comesBefore);
        merge::Outcome after = merge::settle(subject, members, next);
        merge::Outcome was = merge::settle(subject, members, now);
        if (after.state == before && after.value == was.value) {
            return !token.isCancelled();
        }
        const bool wasOpen = before == merge::State::Open;
        const bool isOpen = after.state == merge::State::Open;
        ++(wasOpen ? preview.becomeSettled : isOpen ? preview.becomeOpen : preview.changeValue);
        RuleEffect effect{std::string(subject),
                          before,
                          std::move(was.value),
                          after.state,
                          std::move(after.value)};
        // Those that come late replace some of the first, so that the sample reaches over the
        // station.
        if (preview.sample.size() < kMostEffects) {
            preview.sample.push_back(std::move(effect));
        } else if (changedCount % (changedCount / kMostEffects) == 0) {
            preview.sample[changedCount * 7919 % kMostEffects] = std::move(effect);
        }
        ++changedCount;
        return !token.isCancelled();
    };
    const Status read = database.eachContested(one);
    if (!read) {
        return read.error();
    }
    if (token.isCancelled()) {
        return Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
    }
    return preview;
}

Result<Act>
ruleAct(const std::vector<RuleChange>& changes, const std::string& author, const std::string& why) {
    if (changes.empty()) {
        return Error{ErrorCode::InvalidInput, "Nothing was changed.", {}};
    }
    Act act;
    for (const RuleChange& change : changes) {
        store::Draft draft;
        draft.author = author;
        draft.kind = journal::Kind::Catalog;
        draft.subject = "rulebook/" + std::to_string(change.number);
        draft.value = change.value.empty() ? journal::nullValue() : change.value;
        draft.over = change.heads;
        draft.why = why;
        act.seen.push_back({draft.subject, change.heads});
        act.drafts.push_back(std::move(draft));
    }
    return act;
}

} // namespace bullace::office
