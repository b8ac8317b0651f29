#include "sim/writer.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/standing.hpp"

#include <algorithm>

namespace bullace::test {

using journal::Kind;

namespace {

// Few, so that people meet.
const std::vector<std::string> kPlaces{"B2-01-01", "B2-01-02", "C3-10-07a", "lot:L1"};
const std::vector<std::string> kDates{"2026-05-12", "2026-05-13"};
const std::vector<std::string> kDescriptors{"stage",
                                            "clusters",
                                            "soluble-solids",
                                            "note",
                                            "flower-sex",
                                            "own-stage",
                                            "bud-break",
                                            "yield",
                                            "unheard"};

bool isObs(const std::string& subject) {
    return subject.rfind("obs/", 0) == 0;
}

std::string descriptorOf(const std::string& subject) {
    std::string rest = subject.substr(subject.find('/', subject.find('/', 4) + 1) + 1);
    return rest.substr(0, rest.find('/'));
}

} // namespace

std::string Writer::subjectFor(const Machine& machine) {
    const std::string prefix = journal::fieldPrefix(machine.device());
    if (machine.letter() == 's' && dice_.isOne(1, 3)) {
        const std::vector<std::string> all{"rulebook/1",
                                           "rulebook/2",
                                           "rulebook/10",
                                           "descriptor/own-stage/kind",
                                           "descriptor/own-stage/codes",
                                           "descriptor/own-stage/rule",
                                           "descriptor/clusters/rule",
                                           "accession/M-12/name",
                                           "block/B2/closed-until"};
        return dice_.pick(all);
    }
    if (dice_.isOne(1, 12)) {
        return (dice_.isOne(1, 2) ? "accession/" : "lot/") + prefix + "-1/name";
    }
    const std::string sample = dice_.isOne(1, 12) ? "/t0000000000000001.1,1" : "";
    // Two vines and one day get most of what is noted.
    const std::string& place = dice_.isOne(2, 3) ? kPlaces[0] : dice_.pick(kPlaces);
    const std::string& date = dice_.isOne(3, 4) ? kDates[0] : dice_.pick(kDates);
    return "obs/" + place + "/" + date + "/" + dice_.pick(kDescriptors) + sample;
}

Bytes Writer::observationOf(const std::string& descriptor) {
    using namespace journal;
    if (dice_.isOne(1, 12)) {
        return noneValue(dice_.isOne(1, 2) ? "not-observed" : "no-vine");
    }
    if (descriptor == "stage") {
        const std::vector<Bytes> all{integerValue(61),
                                     integerValue(63),
                                     integerValue(65),
                                     floatValue(65),
                                     integerValue(69),
                                     integerValue(10)};
        return dice_.pick(all);
    }
    if (descriptor == "own-stage") {
        const std::vector<Bytes> all{
            textValue("a"), textValue("b"), textValue("c"), textValue("z")};
        return dice_.pick(all);
    }
    if (descriptor == "note" || descriptor == "unheard") {
        const std::vector<Bytes> all{
            textValue("leaves curl"),
            textValue("\xc3\xa9t\xc3\xa9 \"wet\""),
            MapValue().add("n", integerValue(7)).add("of", floatValue(7)).bytes(),
            listValue({integerValue(0), nullValue(), booleanValue(true)}),
            integerValue(3)};
        return dice_.pick(all);
    }
    if (descriptor == "flower-sex") {
        return integerValue(static_cast<std::int64_t>(dice_.between(1, 4)));
    }
    const std::vector<Bytes> all{integerValue(40),
                                 floatValue(40),
                                 integerValue(41),
                                 floatValue(40.5),
                                 integerValue(60),
                                 floatValue(40.25)};
    return dice_.pick(all);
}

Bytes Writer::bookRule() {
    using namespace journal;
    MapValue rule;
    const std::vector<std::string> words{
        "ask", "later", "advanced", "greatest", "least", "mean", "all", "sideways"};
    rule.add("rule", textValue(dice_.pick(words)));
    const std::vector<std::string> patterns{"*", "B2-*", "B2-01-*", "B2-01-01"};
    if (dice_.isOne(1, 2)) {
        rule.add("where", textValue(dice_.pick(patterns)));
    }
    if (dice_.isOne(1, 3)) {
        rule.add("from", textValue("2026-05-13"))
            .add("to", dice_.isOne(1, 2) ? nullValue() : textValue("2026-06-01"));
    }
    if (dice_.isOne(1, 2)) {
        rule.add("descriptors",
                 listValue({textValue(dice_.pick(kDescriptors)), textValue("clusters")}));
    }
    if (dice_.isOne(1, 2)) {
        const bool isPercent = dice_.isOne(1, 2);
        rule.add("within",
                 isPercent ? MapValue().add("percent", integerValue(5)).bytes() : integerValue(1));
    }
    if (dice_.isOne(1, 10)) {
        rule.add("unknown-part", integerValue(1));
    }
    return rule.bytes();
}

Bytes Writer::valueFor(const std::string& subject) {
    using namespace journal;
    if (isObs(subject)) {
        return observationOf(descriptorOf(subject));
    }
    if (subject.rfind("rulebook/", 0) == 0) {
        return bookRule();
    }
    if (subject == "descriptor/own-stage/kind") {
        return textValue(dice_.isOne(3, 4) ? "stage" : "text");
    }
    if (subject == "descriptor/own-stage/codes") {
        return dice_.isOne(1, 2) ? listValue({textValue("a"), textValue("b"), textValue("c")})
                                 : listValue({textValue("c"), textValue("b"), textValue("a")});
    }
    if (subject.rfind("descriptor/", 0) == 0) {
        const std::vector<std::string> words{"ask", "later", "advanced", "mean", "greatest"};
        MapValue rule;
        rule.add("rule", textValue(dice_.pick(words)));
        return dice_.isOne(1, 2) ? rule.bytes() : rule.add("within", integerValue(1)).bytes();
    }
    return textValue(dice_.isOne(1, 2) ? "Purple arch" : "Long arbour");
}

std::optional<journal::Wall> Writer::wall() {
    constexpr std::int64_t kToday = 1'778'600'000'000;
    constexpr std::int64_t kDecade = 315'360'000'000;
    if (dice_.isOne(1, 6)) {
        return std::nullopt;
    }
    const std::int64_t seconds = static_cast<std::int64_t>(dice_.below(100'000)) * 1000;
    if (dice_.isOne(1, 5)) {
        return journal::Wall{kDecade * (static_cast<std::int64_t>(dice_.below(16)) - 4) + seconds,
                             0};
    }
    return journal::Wall{kToday + seconds, -240};
}

// Over the heads that this machine shows, or over something it does not even hold.
bool Writer::retractOrEdit(Machine& machine, store::Draft& draft) {
    const auto heads = machine.database().heads(draft.subject);
    if (heads.ok()) {
        for (const store::HeadRow& head : *heads) {
            if (dice_.isOne(5, 6)) {
                draft.over.push_back(head.place);
            }
        }
    }
    if (dice_.isOne(1, 15) && !ledger_.all().empty()) {
        const LedgerEntry* any = dice_.pick(ledger_.all());
        draft.over.push_back({any->mark.origin, any->mark.seq});
    }
    std::sort(draft.over.begin(), draft.over.end());
    draft.over.erase(std::unique(draft.over.begin(), draft.over.end()), draft.over.end());
    if (dice_.isOne(1, 4)) {
        draft.value = journal::nullValue();
        if (draft.kind == Kind::Observe) {
            draft.kind = Kind::Retract;
        }
    }
    return true;
}

bool Writer::undo(Machine& machine, store::Draft& draft) {
    std::vector<const LedgerEntry*> own;
    std::vector<const LedgerEntry*> undos;
    for (const LedgerEntry* entry : ledger_.all()) {
        const bool isOwn = entry->mark.origin.device == machine.device() &&
                           entry->mark.origin.letter == machine.letter();
        if (isOwn || machine.letter() == 's') {
            (entry->naive.kind == "undo" ? undos : own).push_back(entry);
        }
    }
    const std::vector<const LedgerEntry*>& from = !undos.empty() && dice_.isOne(1, 2) ? undos : own;
    if (from.empty()) {
        return false;
    }
    const LedgerEntry* target = dice_.pick(from);
    const auto isHeld = machine.database().holds(target->mark);
    const bool mayUndo = isObs(target->naive.subject) || machine.letter() == 's' ||
                         target->naive.subject.find("/" + journal::fieldPrefix(machine.device()) +
                                                    "-") != std::string::npos;
    if (!isHeld.ok() || !*isHeld || !mayUndo) {
        return false;
    }
    draft.kind = Kind::Undo;
    draft.subject = target->naive.subject;
    draft.value = journal::nullValue();
    draft.over = {{target->mark.origin, target->mark.seq}};
    return true;
}

bool Writer::ruling(Machine& machine, store::Draft& draft) {
    std::vector<store::StateRow> open;
    const Status read = machine.database().eachConflict("", [&open](const store::StateRow& row) {
        open.push_back(row);
        return true;
    });
    if (!read || open.empty()) {
        return false;
    }
    const store::StateRow& row = dice_.pick(open);
    const auto heads = machine.database().heads(row.subject);
    if (!heads.ok() || heads->empty()) {
        return false;
    }
    draft.kind = Kind::Ruling;
    draft.subject = row.subject;
    draft.over = row.heads;
    draft.over.erase(std::unique(draft.over.begin(), draft.over.end()), draft.over.end());
    const store::HeadRow& chosen = dice_.pick(*heads);
    draft.value =
        dice_.isOne(1, 5) ? journal::nullValue() : Bytes(journal::readEntry(chosen.entry)->value);
    draft.why = "saw it";
    return true;
}

store::Draft Writer::draft(Machine& machine) {
    store::Draft draft;
    draft.author = dice_.isOne(1, 2) ? "mk" : "jb";
    draft.subject = subjectFor(machine);
    draft.kind = isObs(draft.subject) ? Kind::Observe : Kind::Catalog;
    draft.value = valueFor(draft.subject);
    const std::uint64_t what = dice_.below(100);
    if (what < 40) {
        return draft;
    }
    if (what < 65) {
        (void)retractOrEdit(machine, draft);
        return draft;
    }
    if (what < 85) {
        (void)undo(machine, draft);
        return draft;
    }
    if (what < 88) {
        draft.kind = Kind::Remark;
        draft.value = journal::textValue("look again");
        return draft;
    }
    if (machine.letter() == 's') {
        (void)ruling(machine, draft);
    }
    return draft;
}

Act Writer::act(Machine& machine) {
    Act act;
    const std::uint64_t number = dice_.isOne(1, 6) ? dice_.between(2, 4) : 1;
    act.grouping =
        number > 1 && dice_.isOne(4, 5) ? store::Grouping::OneAct : store::Grouping::Single;
    for (std::uint64_t i = 0; i < number; ++i) {
        act.drafts.push_back(draft(machine));
        act.words += std::string(i > 0 ? ", " : "") +
                     std::string(journal::kindWord(act.drafts.back().kind)) + " " +
                     act.drafts.back().subject;
    }
    act.words += act.grouping == store::Grouping::OneAct ? " as one act" : "";
    return act;
}

} // namespace bullace::test
