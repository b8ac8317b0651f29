// Before a walk: what each step shows.
#include "tablet/choose_view_model.hpp"
#include "tablet/walk_words.hpp"

#include <algorithm>

namespace bullace::tablet {

void ChooseViewModel::showWho() {
    const field::FieldBook& book = *session_.book();
    title_ = tr("Who walks today?");
    std::vector<Choice> choices;
    for (const vineyard::Person& person : book.catalogue().people()) {
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
    const auto rounds = store::roundsOn(book.database(), book.catalogue(), book.today());
    if (!rounds) {
        emit session_.failed(rounds.error());
        return;
    }
    std::vector<Choice> choices;
    QStringList gone;
    for (const store::RoundProgress& progress : *rounds) {
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
        const vineyard::Asked* asked = session_.book()->catalogue().descriptor(code);
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
    auto rows = store::rowsOn(book.database(), book.catalogue(), round_, book.today());
    if (!rows) {
        emit session_.failed(rows.error());
        return;
    }
    rows_ = std::move(*rows);
    std::vector<Choice> choices;
    for (const store::RowProgress& row : rows_) {
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
        const store::RowProgress& row = rows_[*row_];
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

// Closed and untasted blocks stand before the first stop, whichever row is chosen.
QString ChooseViewModel::cautionWords() const {
    QStringList lines;
    for (const store::BlockCaution& caution :
         store::cautionsOf(session_.book()->catalogue(), round_, session_.book()->today())) {
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

} // namespace bullace::tablet
