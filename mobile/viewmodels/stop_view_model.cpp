// The page of one stop: what it shows.
#include "tablet/stop_view_model.hpp"

#include "field/memory.hpp"
#include "tablet/walk_words.hpp"

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

const vineyard::Asked* StopViewModel::asked() const {
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
        const vineyard::Asked* known = catalogue.descriptor(earlier.descriptor);
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
        const vineyard::Asked* known = catalogue.descriptor(ask.descriptor);
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
    std::vector<quick::WireStop> stops;
    for (std::size_t i = first; i <= last; ++i) {
        quick::WireStop stop;
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
    const vineyard::Asked* known = asked();
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
    const vineyard::Asked* known = asked();
    if (wanted < 2 || known == nullptr) {
        return;
    }
    for (const field::NotedValue* noted : walk()->sheet().at(stop, walk()->asked().descriptor)) {
        const auto number = vineyard::comparableNumber(*known, noted->value);
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

} // namespace bullace::tablet
