#include "tablet/choose_view_model.hpp"

#include "field/crosses.hpp"
#include "tablet/walk_words.hpp"

#include <algorithm>
#include <array>

namespace bullace::tablet {

namespace {

struct ShareKey {
    const char* value;
    walk::Share share;
};
using By = walk::Share::By;
constexpr ShareKey kShares[] = {{"alone", {0, 1, By::Stops}},
                                {"odd", {0, 2, By::Stops}},
                                {"even", {1, 2, By::Stops}},
                                {"left", {0, 2, By::Sides}},
                                {"right", {1, 2, By::Sides}},
                                {"row1", {0, 2, By::Rows}},
                                {"row2", {1, 2, By::Rows}},
                                {"three1", {0, 3, By::Rows}},
                                {"three2", {1, 3, By::Rows}},
                                {"three3", {2, 3, By::Rows}}};

// Offered on a walk without a round: from bud swell to leaf fall, as many as fit on the glass.
// Common practice, no source.
constexpr std::array<std::int64_t, 14> kUsualStages{
    1, 5, 9, 13, 53, 57, 61, 65, 69, 73, 77, 81, 85, 89};

} // namespace

void ChooseViewModel::open() {
    share_ = {};
    shareText_ = tr("Alone");
    row_.reset();
    show(Step::Who);
}

void ChooseViewModel::show(Step step) {
    step_ = step;
    clear();
    switch (step) {
    case Step::Who:
        showWho();
        break;
    case Step::NewName:
        title_ = tr("A new person");
        ask(Letters, tr("Name"));
        backText_ = tr("Back");
        break;
    case Step::Round:
        showRounds();
        break;
    case Step::Descriptor:
        showDescriptors();
        break;
    case Step::Row:
        showRows();
        break;
    case Step::End:
        showEnd();
        break;
    case Step::Share:
        showShare();
        break;
    }
    emit changed();
}

void ChooseViewModel::showShare() {
    title_ = tr("Who else walks this round?");
    backText_ = tr("Back");
    const QString names[] = {tr("Alone"),
                             tr("Odd vines"),
                             tr("Even vines"),
                             tr("Left side"),
                             tr("Right side"),
                             tr("First of two rows"),
                             tr("Second of two rows"),
                             tr("First of three rows"),
                             tr("Second of three rows"),
                             tr("Third of three rows")};
    std::vector<Choice> choices;
    for (std::size_t i = 0; i < std::size(kShares); ++i) {
        choices.push_back(
            {names[i], {}, {}, names[i] == shareText_, {}, QString::fromLatin1(kShares[i].value)});
    }
    offer(std::move(choices));
}

void ChooseViewModel::chooseRound(const QString& value) {
    if (value == QStringLiteral("crosses")) {
        emit othersWanted(value);
        return;
    }
    if (value.startsWith(QStringLiteral("block:"))) {
        block_ = toText(value.mid(6));
        show(Step::Descriptor);
        return;
    }
    const walk::Round* round = session_.book()->catalogue().round(toText(value));
    if (round == nullptr) {
        return;
    }
    round_ = *round;
    row_.reset();
    show(walk::isListOfVines(round_) ? Step::End : Step::Row);
}

void ChooseViewModel::choose(int index) {
    if (!choices_.holds(index)) {
        return;
    }
    const QString value = choices_.at(index).value;
    switch (step_) {
    case Step::Who:
        if (value == QStringLiteral("+")) {
            show(Step::NewName);
        } else {
            author_ = toText(value);
            show(Step::Round);
        }
        break;
    case Step::Round:
        chooseRound(value);
        break;
    case Step::Descriptor:
        round_ = {};
        round_.where = {block_ + "-*"};
        round_.descriptors = {toText(value)};
        round_.stages = {kUsualStages.begin(), kUsualStages.end()};
        round_.title = toText(choices_.at(index).text);
        show(Step::Row);
        break;
    case Step::Row:
        row_ = static_cast<std::size_t>(index);
        show(Step::End);
        break;
    case Step::End:
        show(Step::Share);
        break;
    case Step::Share:
        share_ = kShares[index].share;
        shareText_ = choices_.at(index).text;
        show(Step::End);
        break;
    case Step::NewName:
        break;
    }
}

void ChooseViewModel::commit() {
    const QString name = typed_.trimmed();
    if (step_ != Step::NewName || name.isEmpty()) {
        return;
    }
    field::FieldBook& book = *session_.book();
    const auto opened = field::openPerson(book.database(), book.pen(), toText(name));
    if (!opened) {
        emit session_.failed(opened.error());
        return;
    }
    author_ = *opened;
    if (session_.accept(book.reload())) {
        show(Step::Round);
    }
}

void ChooseViewModel::begin(walk::End end) {
    field::FieldBook& book = *session_.book();
    field::WalkWish wish;
    wish.author = author_;
    wish.firstRow = row_;
    wish.end = end;
    wish.share = share_;
    auto plan = field::planWalk(book.database(), book.catalogue(), round_, wish, book.today());
    if (!plan) {
        emit session_.failed(plan.error());
        return;
    }
    if (session_.accept(book.beginWalk(std::move(*plan)))) {
        emit begun();
    }
}

void ChooseViewModel::firstEnd() {
    if (step_ == Step::End) {
        begin(walk::End::First);
    }
}

void ChooseViewModel::lastEnd() {
    if (step_ == Step::End) {
        begin(walk::End::Last);
    }
}

void ChooseViewModel::back() {
    switch (step_) {
    case Step::NewName:
    case Step::Round:
        show(Step::Who);
        break;
    case Step::Descriptor:
    case Step::Row:
        show(Step::Round);
        break;
    case Step::End:
        show(row_ ? Step::Row : Step::Round);
        break;
    case Step::Share:
        show(Step::End);
        break;
    case Step::Who:
        break;
    }
}

// A row is chosen by typing its number as well: digits gather until Enter, or until no other row
// can be meant.
bool ChooseViewModel::press(int key, const QString& text) {
    if (step_ != Step::Row || text.size() != 1 || !text.front().isDigit()) {
        const bool isEnter = key == Qt::Key_Enter || key == Qt::Key_Return;
        if (step_ == Step::Row && isEnter && !typed_.isEmpty()) {
            const QString wanted = typed_;
            typed_.clear();
            for (std::size_t i = 0; i < rows_.size(); ++i) {
                if (QString::number(rows_[i].row.row) == wanted) {
                    choose(static_cast<int>(i));
                    return true;
                }
            }
            emit session_.told(tr("There is no row %1 here.").arg(wanted));
            return true;
        }
        return SheetViewModel::press(key, text);
    }
    typed_ += text;
    int meant = -1;
    int count = 0;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (QString::number(rows_[i].row.row).startsWith(typed_)) {
            meant = static_cast<int>(i);
            ++count;
        }
    }
    if (count == 1) {
        typed_.clear();
        choose(meant);
    } else if (count == 0) {
        emit session_.told(tr("There is no row %1 here.").arg(typed_));
        typed_.clear();
    } else {
        emit changed();
    }
    return true;
}

} // namespace bullace::tablet
