// The page of one stop: the answers and other keys that its panels offer.
#include "tablet/stop_view_model.hpp"
#include "tablet/walk_words.hpp"

#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"
#include "quick/trade_words.hpp"

namespace bullace::tablet {

using descriptors::DescriptorKind;
using quick::tradeWord;

// The whole scale. A value that stands here already is the chosen one.
std::vector<Choice> StopViewModel::answerChoices() const {
    std::vector<Choice> choices;
    const vineyard::Asked* known = asked();
    if (entry_->way() == field::Way::Picture) {
        choices.push_back(
            {tr("Photo"), {}, QStringLiteral("*"), false, {}, QStringLiteral("photo")});
        return choices;
    }
    QString standing;
    const auto noted = walk()->sheet().at(walk()->footing().stop, walk()->asked().descriptor);
    if (!noted.empty() && !noted.back()->isNone() && !known->known.isSampled) {
        const auto text = journal::textOf(noted.back()->value);
        standing = fromText(text ? std::string(*text) : journal::valueToJson(noted.back()->value));
    }
    const bool isStage = known->known.kind == DescriptorKind::Stage && entry_->part() == nullptr;
    for (const std::string& key : entry_->keys()) {
        Choice choice;
        choice.value = fromText(key);
        choice.isChosen = !standing.isEmpty() && standing == choice.value;
        if (isStage) {
            choice.text = choice.value.rightJustified(2, QLatin1Char('0'));
            choice.keyHint = {};
            for (const descriptors::Stage& stage : descriptors::grapevineStages()) {
                if (std::to_string(stage.code) == key) {
                    choice.detail = tradeWord(stage.words);
                }
            }
        } else {
            choice.text = tradeWord(key);
        }
        choices.push_back(std::move(choice));
    }
    const bool isScore = known->known.kind == DescriptorKind::Score;
    if (!isStage && !isScore) {
        ChoiceModel::number(choices);
    }
    return choices;
}

std::vector<Choice> StopViewModel::whyChoices() {
    std::vector<Choice> choices;
    for (const char* word :
         {"not-observed", "no-crop", "dead", "out-of-reach", "replanted", "not-the-accession"}) {
        choices.push_back({tradeWord(word), {}, {}, false, {}, QString::fromLatin1(word)});
    }
    ChoiceModel::number(choices);
    return choices;
}

std::vector<Choice> StopViewModel::besideChoices() const {
    std::vector<Choice> choices{
        {tr("Photo"), {}, QStringLiteral("*"), false, {}, QStringLiteral("photo")},
        {tr("Note"), {}, {}, false, {}, QStringLiteral("note")},
        {tr("Bag or vial"), tr("opens a lot"), {}, false, {}, QStringLiteral("lot")},
        {tr("Crosses here"), {}, {}, false, {}, QStringLiteral("crosses")},
        {tr("Which vine?"), tr("its label"), {}, false, {}, QStringLiteral("label")}};
    if (canTally()) {
        choices.push_back(
            {tr("Tally"), tr("the whole glass counts"), {}, false, {}, QStringLiteral("tally")});
    }
    if (canLeaveOut()) {
        choices.push_back({tr("Leave this out"), {}, {}, false, {}, QStringLiteral("leave-out")});
    }
    for (std::size_t i = 1; i < choices.size(); ++i) {
        choices[i].keyHint = QString::number(i);
    }
    return choices;
}

std::vector<Choice> StopViewModel::noteChoices() const {
    std::vector<Choice> choices;
    for (const std::string& note : session_.book()->settings().recentNotes) {
        if (choices.size() < 4) {
            choices.push_back({fromText(note), {}, {}, false, {}, fromText(note)});
        }
    }
    return choices;
}

std::vector<Choice> StopViewModel::lotChoices() {
    std::vector<Choice> choices;
    for (const char* word : {"berries", "juice", "buds", "pollen", "seed"}) {
        choices.push_back({tradeWord(word), {}, {}, false, {}, QString::fromLatin1(word)});
    }
    ChoiceModel::number(choices);
    return choices;
}

} // namespace bullace::tablet
