#include "tablet/choose_view_model.hpp"

#include "field/crosses.hpp"
#include "tablet/words.hpp"

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

void ChooseViewModel::showWho() {
    const field::FieldBook& book = *session_.book();
    title_ = tr("Who walks today?");
    std::vector<Choice> choices;
    for (const field::Person& person : book.catalogue().people()) {
        Choice choice{fromText(person.name), fromText(person.code), {}, false, {}, {}};
        choice.value = fromText(person.code);
        choice.isChosen = person.code == book.settings().lastAuthor;
        choices.push_back(std::move(choice));
    }
    choices.push_back({tr("Somebody else"), {}, {}, false, {}, QStringLiteral("+")});
    offer(std::move(choices));
}

void ChooseViewModel::showRounds() {
    field::FieldBook& book = *session_.book();
    title_ = tr("Which walk?");
    backText_ = tr("Back");
    const auto rounds = field::roundsOn(book.database(), book.catalogue(), book.today());
    if (!rounds) {
        emit session_.failed(rounds.error());
        return;
    }
    std::vector<Choice> choices;
    QStringList gone;
    for (const field::RoundProgress& progress : *rounds) {
        const walk::Round& round = *progress.round;
        const QString name = fromText(round.title.empty() ? round.id : round.title);
        if (progress.stops == 0) {
            gone << tr("%1: its rows are on no plan any more.").arg(name);
            continue;
        }
        QString detail = tr("%1 of %2 vines").arg(progress.done).arg(progress.stops);
        if (round.by) {
            detail += QStringLiteral(", ") +
                      (progress.isLate ? tr("was due %1") : tr("by %1")).arg(dateWords(*round.by));
        }
        choices.push_back({name, detail, {}, false, {}, fromText(round.id)});
    }
    for (const vineyard::Block& block : book.catalogue().blocks()) {
        if (rounds->empty() && !block.isClosed(book.today())) {
            choices.push_back({tr("Block %1").arg(fromText(block.code)),
                               fromText(block.name),
                               {},
                               false,
                               {},
                               QStringLiteral("block:") + fromText(block.code)});
        }
    }
    words_ = gone.join(QStringLiteral("\n"));
    if (choices.empty()) {
        words_ +=
            (words_.isEmpty() ? QString() : QStringLiteral("\n")) +
            tr("There is nothing to walk today. Sync with the office, or type a block of your "
               "own in the settings.");
    }
    choices.push_back(
        {tr("Crosses"), tr("today's work"), {}, false, {}, QStringLiteral("crosses")});
    offer(std::move(choices));
}

void ChooseViewModel::showDescriptors() {
    title_ = tr("What do you note?");
    backText_ = tr("Back");
    std::vector<Choice> choices;
    for (const char* code : {"stage",
                             "vigour",
                             "clusters",
                             "berry-diameter",
                             "soluble-solids",
                             "disease",
                             "rot",
                             "trunk",
                             "primary-buds",
                             "shoot-tip",
                             "pruning-weight",
                             "flower-sex"}) {
        const field::Asked* asked = session_.book()->catalogue().descriptor(code);
        if (asked != nullptr) {
            choices.push_back({titleWords(*asked), {}, {}, false, {}, QString::fromLatin1(code)});
        }
    }
    offer(std::move(choices));
}

void ChooseViewModel::showRows() {
    field::FieldBook& book = *session_.book();
    title_ = tr("Which row?");
    backText_ = tr("Back");
    caution_ = cautionWords();
    auto rows = field::rowsOn(book.database(), book.catalogue(), round_, book.today());
    if (!rows) {
        emit session_.failed(rows.error());
        return;
    }
    rows_ = std::move(*rows);
    std::vector<Choice> choices;
    for (const field::RowProgress& row : rows_) {
        QString detail = tr("%1 of %2").arg(row.done).arg(row.stops);
        QStringList people;
        for (const std::string& person : row.people) {
            people << fromText(person);
        }
        if (!people.isEmpty()) {
            detail += QStringLiteral(" · ") + people.join(QStringLiteral(" "));
        }
        choices.push_back({tr("%1 row %2").arg(fromText(row.row.block)).arg(row.row.row),
                           detail,
                           {},
                           false,
                           {},
                           QString::number(choices.size())});
    }
    if (choices.empty()) {
        words_ = tr("None of its rows can be walked today.");
    }
    offer(std::move(choices));
}

void ChooseViewModel::showEnd() {
    title_ = tr("At which end do you stand?");
    backText_ = tr("Back");
    picture_ = RowEnds;
    caution_ = cautionWords();
    words_ = tr("Heat, storms, footing: stand still to note. A wet or hot tablet is not charged.");
    if (row_) {
        const field::RowProgress& row = rows_[*row_];
        vineCount_ = static_cast<int>(row.row.vines);
        title_ = tr("%1 row %2: at which end do you stand?")
                     .arg(fromText(row.row.block))
                     .arg(row.row.row);
        firstText_ = tr("Vine 1");
        lastText_ = tr("Vine %1").arg(row.row.vines);
    } else {
        firstText_ = tr("First vine");
        lastText_ = tr("Last vine");
        vineCount_ = 12;
    }
    std::vector<Choice> choices{
        {shareText_, tr("who else walks?"), QStringLiteral("3"), false, {}, {}}};
    choices_.set(std::move(choices));
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

// Closed and untasted blocks stand before the first stop, whichever row is chosen.
QString ChooseViewModel::cautionWords() const {
    QStringList lines;
    for (const field::BlockCaution& caution :
         field::cautionsOf(session_.book()->catalogue(), round_, session_.book()->today())) {
        const QString block = fromText(caution.block);
        if (caution.closedUntil) {
            lines << tr("Block %1 is closed until %2: not walked. The product label and the "
                        "worker-protection rules decide.")
                         .arg(block, dateWords(*caution.closedUntil));
        }
        if (caution.noTastingUntil) {
            lines << tr("Block %1: taste nothing until %2.")
                         .arg(block, dateWords(*caution.noTastingUntil));
        }
    }
    const auto tastes = [](const std::string& code) { return code == "flavour"; };
    if (std::any_of(round_.descriptors.begin(), round_.descriptors.end(), tastes)) {
        lines << tr("Never taste to identify: wild vines have poisonous look-alikes. Taste only "
                    "known, unsprayed fruit.");
    }
    return lines.join(QStringLiteral("\n"));
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
