#include "tablet/crosses_view_model.hpp"

#include "tablet/walk_words.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/json_value.hpp"
#include "quick/trade_words.hpp"

namespace bullace::tablet {

using quick::tradeWord;

namespace {

constexpr std::uint64_t kMostCounted = 100'000;
constexpr std::uint64_t kGreatestTag = 999'999;
constexpr const char* kWork[] = {"bagged",
                                 "emasculated",
                                 "pollen-collected",
                                 "pollinated",
                                 "re-pollinated",
                                 "bag-off",
                                 "set",
                                 "harvested"};

} // namespace

std::string CrossesViewModel::here() const {
    return session_.walk() == nullptr ? std::string{} : session_.walk()->here().position;
}

void CrossesViewModel::open() {
    show(Step::List);
}

void CrossesViewModel::show(Step step) {
    step_ = step;
    clear();
    backText_ = tr("Back");
    switch (step) {
    case Step::List:
        showList();
        break;
    case Step::Work:
        showWork();
        break;
    case Step::Count:
        title_ = tradeWord(work_);
        words_ = tr("How many? Nothing typed: not counted.");
        ask(Digits, tr("How many"));
        break;
    case Step::Tag:
        title_ = tradeWord(work_);
        words_ = tr("The number on the bag's tag. Nothing typed: none.");
        ask(Digits, tr("Bag number"));
        break;
    case Step::New:
        title_ = tr("Open something new");
        words_ = tr("Wild plants: permits, quarantine and access rules first.");
        offer({{tr("A cross on this vine"), {}, {}, false, {}, QStringLiteral("cross")},
               {tr("A wild vine"), {}, {}, false, {}, QStringLiteral("wild")}});
        break;
    case Step::Father:
        title_ = tr("Pollen of which accession?");
        ask(Letters, tr("Accession or lot"), QStringLiteral("-"));
        break;
    case Step::WildName:
        title_ = tr("What do you call the wild vine?");
        ask(Letters, tr("Name"));
        break;
    case Step::WildSite:
        title_ = tr("Where does it stand?");
        ask(Letters, tr("In a few words"), QStringLiteral(".,-"));
        break;
    }
    emit changed();
}

void CrossesViewModel::showList() {
    field::FieldBook& book = *session_.book();
    const std::string at = here();
    title_ = at.empty() ? tr("Today's work on crosses") : tr("Crosses at %1").arg(placeWords(at));
    auto due = field::crossesDue(book.database(), book.catalogue(), book.today(), at);
    if (!due) {
        emit session_.failed(due.error());
        return;
    }
    due_.clear();
    std::vector<Choice> choices;
    for (field::CrossDue& cross : *due) {
        if (cross.step.empty()) {
            continue;
        }
        const QString name =
            fromText(cross.cross->number.empty() ? cross.cross->id : cross.cross->number);
        QString detail =
            at.empty() ? placeWords(cross.position) + QStringLiteral(" · ") : QString();
        detail += tr("due: %1").arg(tradeWord(cross.step));
        if (cross.step == "pollinated") {
            detail += QStringLiteral(", ") + fromText(cross.pollen);
        }
        if (cross.isAboutToLoseCaps) {
            detail += QStringLiteral(" · ") + tr("caps are about to come off");
        }
        choices.push_back({name, detail, {}, false, {}, QString::number(due_.size())});
        due_.push_back(std::move(cross));
    }
    if (choices.empty()) {
        words_ =
            at.empty() ? tr("No cross has work due.") : tr("No cross is planned on this vine.");
    }
    if (!at.empty()) {
        choices.push_back({tr("Something new"), {}, {}, false, {}, QStringLiteral("new")});
    } else {
        choices.push_back({tr("A wild vine"),
                           tr("nobody had a number for"),
                           {},
                           false,
                           {},
                           QStringLiteral("wild")});
    }
    offer(std::move(choices));
}

void CrossesViewModel::showWork() {
    const field::CrossDue& cross = due_[at_];
    title_ = fromText(cross.cross->number.empty() ? cross.cross->id : cross.cross->number);
    QStringList lines{placeWords(cross.position), tr("Pollen: %1").arg(fromText(cross.pollen))};
    if (cross.flowers > 0) {
        lines << tr("%n flower(s) pollinated so far.", nullptr, static_cast<int>(cross.flowers));
    }
    words_ = lines.join(QStringLiteral("\n"));
    if (here() != cross.position) {
        words_ += QStringLiteral("\n") + tr("Work is noted at the vine: walk there first.");
        return;
    }
    std::vector<Choice> choices;
    for (const char* work : kWork) {
        choices.push_back(
            {tradeWord(work), {}, {}, cross.step == work, {}, QString::fromLatin1(work)});
    }
    offer(std::move(choices));
}

void CrossesViewModel::choose(int index) {
    if (!choices_.holds(index)) {
        return;
    }
    const QString value = choices_.at(index).value;
    if (value == QStringLiteral("new")) {
        show(Step::New);
    } else if (value == QStringLiteral("wild")) {
        show(Step::WildName);
    } else if (value == QStringLiteral("cross")) {
        show(Step::Father);
    } else if (step_ == Step::List) {
        at_ = value.toULongLong();
        show(Step::Work);
    } else if (step_ == Step::Work) {
        work_ = toText(value);
        show(Step::Count);
    }
}

void CrossesViewModel::commit() {
    const QString text = typed_.trimmed();
    switch (step_) {
    case Step::Count:
        count_ = text;
        if (!text.isEmpty() && !readCount(toText(text), kMostCounted)) {
            emit session_.told(tr("At most %1 can be counted.").arg(kMostCounted));
            return;
        }
        show(Step::Tag);
        break;
    case Step::Tag:
        if (!text.isEmpty() && !readCount(toText(text), kGreatestTag)) {
            emit session_.told(tr("A tag has at most six digits, and does not begin with 0."));
            return;
        }
        if (session_.accept(note())) {
            emit session_.told(tr("Noted: %1.").arg(tradeWord(work_)));
            emit session_.walked();
            show(Step::List);
        }
        break;
    case Step::Father:
        if (!text.isEmpty()) {
            openCross();
        }
        break;
    case Step::WildName:
        if (!text.isEmpty()) {
            wildName_ = text;
            show(Step::WildSite);
        }
        break;
    case Step::WildSite:
        openWild();
        break;
    default:
        break;
    }
}

Status CrossesViewModel::note() {
    journal::MapValue value;
    value.add("cross", journal::textValue(due_[at_].cross->id));
    value.add("step", journal::textValue(work_));
    const auto count = readCount(toText(count_), kMostCounted);
    const auto tag = readCount(toText(typed_.trimmed()), kGreatestTag);
    if (count && !count_.isEmpty()) {
        value.add("count", journal::integerValue(static_cast<std::int64_t>(*count)));
    }
    if (tag && !typed_.trimmed().isEmpty()) {
        value.add("tag", journal::integerValue(static_cast<std::int64_t>(*tag)));
    }
    const std::string& lot = due_[at_].cross->pollenLot;
    if (!lot.empty() && work_.ends_with("pollinated")) {
        value.add("lot", journal::textValue(lot));
    }
    return session_.walk()->noteBeside("cross-work", value.bytes());
}

void CrossesViewModel::openCross() {
    field::FieldBook& book = *session_.book();
    field::NewCross cross;
    cross.author = session_.author();
    cross.motherAt = here();
    cross.mother = book.catalogue().accessionAt(cross.motherAt, book.today());
    cross.father = toText(typed_.trimmed());
    const auto opened = field::openCross(book.database(), book.pen(), cross);
    if (!opened) {
        emit session_.failed(opened.error());
        return;
    }
    if (session_.accept(book.reload())) {
        emit session_.told(
            tr("Cross %1 is opened; the office gives it a number.").arg(fromText(*opened)));
        emit session_.walked();
        show(Step::List);
    }
}

void CrossesViewModel::openWild() {
    field::FieldBook& book = *session_.book();
    const auto opened = field::openWildVine(book.database(),
                                            book.pen(),
                                            session_.author(),
                                            toText(wildName_),
                                            toText(typed_.trimmed()));
    if (!opened) {
        emit session_.failed(opened.error());
        return;
    }
    if (session_.accept(book.reload())) {
        emit session_.told(tr("Wild vine %1 is opened.").arg(fromText(*opened)));
        show(Step::List);
    }
}

void CrossesViewModel::back() {
    switch (step_) {
    case Step::List:
        emit closed();
        break;
    case Step::Work:
    case Step::New:
        show(Step::List);
        break;
    case Step::Count:
        show(Step::Work);
        break;
    case Step::Tag:
        show(Step::Count);
        break;
    default:
        show(here().empty() ? Step::List : Step::New);
        break;
    }
}

} // namespace bullace::tablet
