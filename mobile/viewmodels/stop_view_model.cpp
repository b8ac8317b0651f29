// The page of one stop: what it shows.
#include "tablet/stop_view_model.hpp"

#include "field/memory.hpp"
#include "tablet/words.hpp"

#include "core/descriptors/stages.hpp"
#include "core/fruit/sample_size.hpp"
#include "core/journal/json_value.hpp"
#include "core/vineyard/position.hpp"
#include "quick/trade_words.hpp"
#include "quick/wire_item.hpp"

#include <algorithm>
#include <set>

namespace bullace::tablet {

using descriptors::DescriptorKind;
using quick::tradeWord;
using Kind = quick::WireItem::Kind;

namespace {

constexpr std::size_t kAround = 3; // stops drawn to either side
constexpr std::size_t kCheckEvery =
    10; // stops; FIELD 1.7: 1 % of values misplaced at one slip in 500

// What a stop needs besides its number where its neighbours lie in other rows.
QString wirePlace(const field::WalkPlan& plan, std::size_t stop) {
    const std::string& position = plan.stops[stop].position;
    return plan.isList ? rowWords(position) + QStringLiteral("–") + vineWords(position)
                       : vineWords(position);
}

} // namespace

StopViewModel::StopViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session) {
    connect(&session_, &Session::walked, this, &StopViewModel::refresh);
    connect(&session_, &Session::bookChanged, this, [this] {
        entry_.reset();
        entryFor_.clear();
        mark_ = {};
        panel_ = Keys;
        refresh();
    });
}

const field::Asked* StopViewModel::asked() const {
    return session_.book()->catalogue().descriptor(walk()->asked().descriptor);
}

void StopViewModel::refresh() {
    if (walk() == nullptr) {
        return;
    }
    refreshPlace();
    refreshWire();
    refreshQuestion();
    refreshBoxes();
    emit changed();
}

void StopViewModel::speakAgain() {
    mark_ = {};
    refresh();
}

void StopViewModel::refreshPlace() {
    const field::WalkPlan& plan = walk()->plan();
    const walk::Stop& here = walk()->here();
    place_ = fromText(here.position);
    QStringList parts;
    if (here.side != walk::Side::Whole) {
        parts << sideWord(here.side);
    }
    const auto& catalogue = session_.book()->catalogue();
    const std::string accession = catalogue.accessionAt(here.position, plan.date);
    if (plan.isBlind) {
        parts << tr("blind round");
    } else if (!accession.empty()) {
        parts << fromText(catalogue.accessionWords(accession));
    }
    parts << dateWords(plan.date);
    identity_ = parts.join(QStringLiteral(" · "));
    side_ = static_cast<int>(here.side);
    history_.clear();
    if (!plan.isDecision) {
        return;
    }
    field::Memory memory(session_.book()->database(), catalogue, plan.date);
    const auto past = memory.of(here.position);
    QStringList lines;
    const std::size_t count = past ? (*past)->size() : 0;
    for (std::size_t i = count > 6 ? count - 6 : 0; i < count; ++i) {
        const field::Earlier& earlier = (**past)[i];
        const field::Asked* known = catalogue.descriptor(earlier.descriptor);
        if (known != nullptr) {
            lines << tr("%1: %2 %3")
                         .arg(dateWords(earlier.date),
                              titleWords(*known),
                              valueWords(*known, earlier.value, session_.wishes()));
        }
    }
    history_ = lines.join(QStringLiteral("\n"));
}

QString StopViewModel::tagAt(std::size_t stop, bool& isMarked, int& kind) const {
    const auto& sheet = walk()->sheet();
    const auto& catalogue = session_.book()->catalogue();
    const std::string vine = sheet.vineState(stop);
    kind = vine == "missing" ? Kind::Missing : vine == "dead" ? Kind::Dead : Kind::Plain;
    QStringList tags;
    bool isAllNone = false;
    bool isPast = false;
    for (const field::Ask& ask : walk()->plan().asks) {
        const auto noted = sheet.at(stop, ask.descriptor);
        const field::Asked* known = catalogue.descriptor(ask.descriptor);
        if (noted.empty() || known == nullptr) {
            continue;
        }
        for (const field::NotedValue* one : noted) {
            isMarked = isMarked || (one->doubt && !one->isKept);
        }
        isAllNone = noted.front()->isNone();
        isPast = isAllNone && noted.front()->noneReason() == "walked-past";
        if (!isPast) {
            tags << cellWords(*known, noted, session_.wishes());
        }
    }
    if (kind == Kind::Plain && isPast && tags.isEmpty()) {
        kind = Kind::WalkedPast;
    } else if (kind == Kind::Plain && isAllNone && tags.size() == 1) {
        kind = Kind::NotObserved;
    }
    if (kind == Kind::Missing || kind == Kind::Dead) {
        return tradeWord(kind == Kind::Missing ? "no-vine" : "dead");
    }
    if (!vine.empty() && tags.isEmpty()) {
        tags << tradeWord(vine);
    }
    return tags.join(QStringLiteral(", "));
}

void StopViewModel::refreshWire() {
    const field::WalkPlan& plan = walk()->plan();
    const std::size_t here = walk()->footing().stop;
    const field::Leg leg = walk()->legOf(here);
    const std::size_t first = here > leg.first + kAround ? here - kAround : leg.first;
    const std::size_t last = std::min(leg.last, here + kAround);
    std::vector<WireStop> stops;
    for (std::size_t i = first; i <= last; ++i) {
        WireStop stop;
        stop.place = wirePlace(plan, i);
        stop.tag = tagAt(i, stop.isMarked, stop.kind);
        stop.isHere = i == here;
        stop.stop = i;
        stops.push_back(std::move(stop));
    }
    wire_.set(std::move(stops));
    const auto begin = vineyard::readPosition(plan.stops[leg.first].position);
    const auto end = vineyard::readPosition(plan.stops[leg.last].position);
    direction_ = begin && end && vineyard::compareAlongRows(*end, *begin) < 0 ? -1 : 1;
    hasFirstPost_ = first == leg.first && !plan.isList;
    hasLastPost_ = last == leg.last && !plan.isList;
}

void StopViewModel::refreshQuestion() {
    const field::Asked* known = asked();
    const std::string entryFor =
        std::to_string(walk()->footing().stop) + "/" + walk()->asked().descriptor + "/" +
        std::to_string(
            walk()->sheet().at(walk()->footing().stop, walk()->asked().descriptor).size());
    if (known == nullptr) {
        question_ = fromText(walk()->asked().descriptor);
        entry_.reset();
        panel_ = Unknown;
        return;
    }
    question_ = titleWords(*known);
    if (entryFor != entryFor_ || entry_ == nullptr) {
        entryFor_ = entryFor;
        entry_ =
            std::make_unique<field::EntryPad>(*known, session_.wishes(), walk()->plan().stages);
        typedCode_.clear();
        typedWords_.clear();
        tally_ = 0;
        panel_ = answerPanel();
    }
    if (const descriptors::RecordPart* part = entry_->part()) {
        question_ += QStringLiteral(": ") + tradeWord(part->name);
        panel_ = panel_ == Keys || panel_ == Number ? answerPanel() : panel_;
    }
    setPanel(panel_);
}

StopViewModel::Panel StopViewModel::answerPanel() const {
    if (entry_ == nullptr) {
        return Unknown;
    }
    switch (entry_->way()) {
    case field::Way::Words:
        return Words;
    case field::Way::Unknown:
        return Unknown;
    case field::Way::Picture:
    case field::Way::Keys:
        return Keys;
    case field::Way::Number:
    case field::Way::Parts:
        return entry_->takesKeys() ? Keys : Number;
    }
    return Unknown;
}

void StopViewModel::setPanel(Panel panel) {
    panel_ = panel;
    std::vector<Choice> choices;
    switch (panel) {
    case Keys:
        choices = answerChoices();
        break;
    case Why:
        choices = whyChoices();
        break;
    case Beside:
        choices = besideChoices();
        break;
    case Note:
    case Words:
        choices = noteChoices();
        break;
    case Lot:
        choices = lotChoices();
        break;
    default:
        break;
    }
    choices_.set(std::move(choices));
    emit viewWanted(panel == Beside);
}

// The whole scale. A value that stands here already is the chosen one.
std::vector<Choice> StopViewModel::answerChoices() const {
    std::vector<Choice> choices;
    const field::Asked* known = asked();
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

void StopViewModel::refreshBoxes() {
    boxes_.clear();
    progress_.clear();
    const std::size_t stop = walk()->footing().stop;
    const std::size_t ask = walk()->footing().ask;
    const unsigned wanted = walk()->wanted(stop, ask);
    const std::size_t asks = walk()->plan().asks.size();
    if (asks > 1) {
        progress_ = tr("%1 of %2").arg(ask + 1).arg(asks);
    }
    const field::Asked* known = asked();
    if (wanted < 2 || known == nullptr) {
        return;
    }
    for (const field::NotedValue* noted : walk()->sheet().at(stop, walk()->asked().descriptor)) {
        const auto number = field::comparableNumber(*known, noted->value);
        boxes_ << (number ? localNumber(fixedText(*number, known->known.decimals))
                          : valueWords(*known, noted->value, session_.wishes()));
    }
    while (boxes_.size() < static_cast<qsizetype>(wanted)) {
        boxes_ << QString();
    }
}

QString StopViewModel::question() const {
    switch (panel_) {
    case Why:
        return tr("%1: why is there none?").arg(question_);
    case Beside:
        return tr("Beside it, at this vine");
    case Note:
        return tr("A note at this vine");
    case Lot:
        return tr("What goes to the bench?");
    default:
        return question_;
    }
}

QString StopViewModel::typed() const {
    if (panel_ == Note || panel_ == Words || panel_ == Lot) {
        return typedWords_;
    }
    if (panel_ == Tally) {
        return QString::number(tally_);
    }
    return entry_ == nullptr ? QString() : localNumber(entry_->pad().text());
}

QString StopViewModel::unit() const {
    return panel_ == Number && entry_ != nullptr ? fromText(entry_->pad().unit()) : QString();
}

QString StopViewModel::refusal() const {
    return panel_ == Number && entry_ != nullptr ? refusalWords(entry_->pad()) : QString();
}

bool StopViewModel::canCommit() const {
    if (panel_ == Note || panel_ == Words) {
        return !typedWords_.trimmed().isEmpty();
    }
    return panel_ == Number && entry_ != nullptr && entry_->pad().canCommit();
}

bool StopViewModel::hasPoint() const {
    return entry_ != nullptr && entry_->pad().takesPoint();
}

bool StopViewModel::canLeaveOut() const {
    return entry_ != nullptr && entry_->part() != nullptr && !entry_->part()->isRequired;
}

bool StopViewModel::canTally() const {
    return walk() != nullptr && asked() != nullptr && asked()->known.kind == DescriptorKind::Count;
}

QString StopViewModel::nextText() const {
    return walk() != nullptr && walk()->plan().isOnlyWhatStandsOut ? tr("Walk past")
                                                                   : tr("Walk on");
}

// How many samples more the wanted precision needs; said once, after the last one.
StopViewModel::Mark StopViewModel::moreMark(std::size_t stop, std::size_t ask) const {
    const field::Ask& asks = walk()->plan().asks[ask];
    const field::Asked* known = session_.book()->catalogue().descriptor(asks.descriptor);
    const auto noted = walk()->sheet().at(stop, asks.descriptor);
    if (known == nullptr || noted.size() < 2 || noted.size() < walk()->wanted(stop, ask)) {
        return {};
    }
    std::vector<double> numbers;
    for (const field::NotedValue* one : noted) {
        const auto number = field::comparableNumber(*known, one->value);
        if (number) {
            numbers.push_back(*number);
        }
    }
    const fruit::Spread spread = fruit::spreadOf(numbers);
    if (!spread.cvPercent) {
        return {};
    }
    Mark mark{MarkKind::More, {}, {}, {}, {}, stop, ask, 0};
    mark.words = tr("Vine %1: mean %2, CV %3 %.")
                     .arg(vineWords(walk()->plan().stops[stop].position),
                          numberWords(*known, spread.mean, session_.wishes()),
                          localNumber(fixedText(*spread.cvPercent, 0)));
    const auto more =
        asks.precisionPercent ? fruit::moreNeeded(numbers, *asks.precisionPercent) : std::nullopt;
    if (more && *more > 0) {
        mark.by = static_cast<int>(*more);
        mark.words +=
            QStringLiteral(" ") + tr("For %1 % it takes %n more.", nullptr, mark.by)
                                      .arg(localNumber(fixedText(*asks.precisionPercent, 0)));
        mark.second = tr("Take %n more", nullptr, mark.by);
    }
    return mark;
}

StopViewModel::Mark StopViewModel::slipMark() const {
    const auto slip = walk()->slip();
    if (!slip) {
        return {};
    }
    Mark mark{MarkKind::Slip, {}, tr("In place"), tr("Check the tag"), {}, 0, 0, slip->along};
    mark.words =
        slip->along > 0
            ? tr("The last %n look like one vine further on.",
                 nullptr,
                 static_cast<int>(slip->vines))
            : tr("The last %n look like one vine back.", nullptr, static_cast<int>(slip->vines));
    return mark;
}

// Every tenth stop a quiet look: it asks for nothing, and walking on is an answer too.
StopViewModel::Mark StopViewModel::checkMark() const {
    const field::Footing& footing = walk()->footing();
    const std::size_t along = footing.stop - walk()->legOf(footing.stop).first;
    if (along == 0 || along % kCheckEvery != 0 || footing.stop != footing.front ||
        footing.ask != 0 || walk()->plan().isList) {
        return {};
    }
    return {MarkKind::Check,
            tr("Does the tag say vine %1?").arg(vineWords(walk()->here().position)),
            tr("Yes"),
            tr("No"),
            {},
            footing.stop,
            0,
            0};
}

} // namespace bullace::tablet
