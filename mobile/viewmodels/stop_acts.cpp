// The page of one stop: what its keys do.
#include "field/crosses.hpp"
#include "tablet/stop_view_model.hpp"
#include "tablet/walk_words.hpp"

#include "core/journal/json_value.hpp"

#include <QTimer>

namespace bullace::tablet {

void StopViewModel::record(const Bytes& value) {
    const field::Footing before = walk()->footing();
    after(walk()->note(value, entry_->as()), before.stop, before.ask);
}

// What was noted is on the screen before it is weighed.
void StopViewModel::after(const Status& status, std::size_t stop, std::size_t ask) {
    if (!session_.accept(status)) {
        return;
    }
    lastStop_ = stop;
    lastAsk_ = ask;
    mark_ = {};
    entryFor_.clear();
    emit session_.walked();
    QTimer::singleShot(0, this, &StopViewModel::weigh);
}

void StopViewModel::weigh() {
    if (walk() == nullptr) {
        return;
    }
    const auto doubt = walk()->weighLast();
    const vineyard::Asked* known =
        doubt && *doubt != nullptr ? session_.book()->catalogue().descriptor((*doubt)->descriptor)
                                   : nullptr;
    if (known != nullptr && !(*doubt)->isKept) {
        mark_ = {MarkKind::Doubt,
                 tr("Vine %1: %2")
                     .arg(vineWords(walk()->plan().stops[lastStop_].position),
                          doubtWords(*known, **doubt, session_.wishes())),
                 tr("Keep"),
                 tr("Fix"),
                 (*doubt)->subject,
                 lastStop_,
                 lastAsk_,
                 0};
    } else {
        mark_ = slipMark();
    }
    if (mark_.kind == MarkKind::None) {
        mark_ = moreMark(lastStop_, lastAsk_);
    }
    if (mark_.kind == MarkKind::None) {
        mark_ = checkMark();
    }
    if (mark_.kind != MarkKind::None) {
        refreshWire();
        emit changed();
    }
}

void StopViewModel::choose(int index) {
    if (walk() == nullptr || !choices_.holds(index)) {
        return;
    }
    const Choice choice = choices_.at(index);
    switch (panel_) {
    case Why:
        chooseWhy(choice);
        return;
    case Beside:
        chooseBeside(choice);
        return;
    case Lot:
        openLot(choice);
        return;
    case Note:
    case Words:
        typedWords_ = choice.value;
        commitWords();
        return;
    default:
        break;
    }
    if (choice.value == QStringLiteral("photo") && entry_->way() == field::Way::Picture) {
        emit pictureWanted();
        return;
    }
    const auto value = entry_->choose(static_cast<std::size_t>(index));
    if (value) {
        record(*value);
    } else {
        refresh();
    }
}

void StopViewModel::chooseWhy(const Choice& choice) {
    const field::Footing before = walk()->footing();
    const std::string word = toText(choice.value);
    const bool isOfTheVine = word == "dead" || word == "replanted" || word == "not-the-accession";
    panel_ = answerPanel();
    after(
        isOfTheVine ? walk()->markVine(word) : walk()->noteNothing(word), before.stop, before.ask);
}

void StopViewModel::noVine() {
    if (walk() == nullptr) {
        return;
    }
    const field::Footing before = walk()->footing();
    after(walk()->markVine("missing"), before.stop, before.ask);
}

void StopViewModel::chooseBeside(const Choice& choice) {
    const QString what = choice.value;
    if (what == QStringLiteral("photo")) {
        emit pictureWanted(); // while the camera is on
        return;
    }
    setPanel(answerPanel());
    if (what == QStringLiteral("label")) {
        emit labelWanted();
    } else if (what == QStringLiteral("crosses")) {
        emit crossesWanted();
    } else if (what == QStringLiteral("tally")) {
        show(Tally);
    } else if (what == QStringLiteral("leave-out")) {
        leaveOut();
    } else {
        show(what == QStringLiteral("note") ? Note : Lot);
    }
    emit changed();
}

void StopViewModel::show(Panel panel) {
    if (walk() == nullptr) {
        return;
    }
    typedWords_.clear();
    tally_ = 0;
    setPanel(panel);
    emit changed();
}

void StopViewModel::openLot(const Choice& choice) {
    field::FieldBook& book = *session_.book();
    field::NewLot lot;
    lot.author = session_.author();
    lot.kind = toText(choice.value);
    lot.from = walk()->here().position;
    lot.accession = book.catalogue().accessionAt(lot.from, walk()->plan().date);
    const auto opened = field::openLot(book.database(), book.pen(), lot);
    setPanel(answerPanel());
    if (!opened) {
        emit session_.failed(opened.error());
        return;
    }
    mark_ = {};
    emit session_.walked();
    emit lotOpened(fromText(opened->label), choice.text, fromText(opened->id));
}

void StopViewModel::digit(const QString& character) {
    if (entry_ == nullptr || character.isEmpty()) {
        return;
    }
    static_cast<void>(entry_->pad().press(character.front().toLatin1()));
    emit changed();
}

void StopViewModel::point() {
    if (entry_ != nullptr) {
        static_cast<void>(entry_->pad().pressPoint());
        emit changed();
    }
}

void StopViewModel::erase() {
    if (panel_ == Note || panel_ == Words) {
        typedWords_.chop(1);
    } else if (entry_ != nullptr && !entry_->pad().isEmpty()) {
        static_cast<void>(entry_->pad().erase());
    } else if (entry_ != nullptr && entry_->back()) {
        refreshQuestion();
    }
    emit changed();
}

void StopViewModel::nudge(int by) {
    if (entry_ != nullptr) {
        static_cast<void>(entry_->pad().nudge(by));
        emit changed();
    }
}

// Digits and Next record; Next without digits walks on.
void StopViewModel::next() {
    if (walk() == nullptr) {
        return;
    }
    if (panel_ == Note || panel_ == Words) {
        commitWords();
        return;
    }
    if (panel_ == Tally) {
        commitTally();
        return;
    }
    if (panel_ == Number && entry_ != nullptr && !entry_->pad().isEmpty()) {
        if (!entry_->pad().canCommit()) {
            emit changed();
            return;
        }
        const auto value = entry_->next();
        if (value) {
            record(*value);
        } else {
            refresh();
        }
        return;
    }
    walkOn();
}

void StopViewModel::walkOn() {
    if (walk() == nullptr) {
        return;
    }
    const field::Footing before = walk()->footing();
    after(walk()->walkOn(), before.stop, before.ask);
}

void StopViewModel::leaveOut() {
    const auto value = entry_ == nullptr ? std::nullopt : entry_->leaveOut();
    if (value) {
        record(*value);
    } else {
        refresh();
    }
}

void StopViewModel::character(const QString& text) {
    typedWords_ += text;
    emit changed();
}

void StopViewModel::commitWords() {
    const QString words = typedWords_.trimmed();
    const bool isAsked = panel_ == Words;
    if (words.isEmpty()) {
        return;
    }
    typedWords_.clear();
    if (isAsked) {
        record(journal::textValue(toText(words)));
        return;
    }
    setPanel(answerPanel());
    if (session_.accept(session_.book()->noteText(toText(words)))) {
        mark_ = {};
        emit session_.walked();
        emit session_.told(tr("Noted: %1").arg(words));
    }
}

void StopViewModel::tally(int by) {
    const double most = asked()->known.range ? asked()->known.range->greatest : 1e6;
    tally_ = std::clamp(tally_ + by, 0, static_cast<int>(most));
    emit changed();
}

void StopViewModel::commitTally() {
    const int counted = tally_;
    setPanel(answerPanel());
    record(journal::integerValue(counted));
}

void StopViewModel::tapWire(int index) {
    const auto& stops = wire_.stops();
    if (walk() == nullptr || index < 0 || index >= static_cast<int>(stops.size())) {
        return;
    }
    if (session_.accept(walk()->goTo(stops[static_cast<std::size_t>(index)].stop))) {
        mark_ = {};
        entryFor_.clear();
        emit session_.walked();
    }
}

void StopViewModel::acceptMark() {
    if (walk() == nullptr) {
        return;
    }
    if (mark_.kind == MarkKind::Doubt) {
        walk()->keep(mark_.subject);
    } else if (mark_.kind == MarkKind::Slip) {
        walk()->putSlipAside();
    }
    mark_ = {};
    refresh();
}

void StopViewModel::answerMark() {
    const Mark mark = mark_;
    mark_ = {};
    switch (mark.kind) {
    case MarkKind::Doubt:
        session_.accept(walk()->goTo(mark.stop, mark.ask));
        break;
    case MarkKind::More:
        session_.accept(walk()->takeMore(mark.stop, mark.ask, static_cast<unsigned>(mark.by)));
        break;
    case MarkKind::Slip:
    case MarkKind::Check:
        emit labelWanted();
        break;
    default:
        break;
    }
    entryFor_.clear();
    emit session_.walked();
}

} // namespace bullace::tablet
