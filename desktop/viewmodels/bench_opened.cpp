// What tablets opened in the field, and the office's numbers for it.
#include "desk/bench_view_model.hpp"

#include "quick/field_sign.hpp"
#include "quick/words.hpp"

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

void BenchViewModel::showOpened() {
    opened_ = office::openedInField(*session_.catalogue());
    table_.setColumns(tr("Opened in the field"),
                      {{tr("What"), 14},
                       {tr("ID from the tablet"), 22},
                       {tr("More"), 30, false, true},
                       {tr("The office's number"), 24}});
    std::vector<GridRow> rows;
    for (const office::FieldOpened& one : opened_) {
        GridRow row;
        row.key = fromText(one.id);
        row.sign = FieldSign::Open;
        row.signWord = tr("opened on a tablet, without a number of the office");
        row.cells << (one.kind == office::CardKind::Cross       ? tr("Cross")
                      : one.kind == office::CardKind::Lot       ? tr("Lot")
                      : one.kind == office::CardKind::Accession ? tr("Accession")
                                                                : tr("Person"))
                  << fromText(one.id) << fromText(one.words)
                  << (one.suggested.empty() ? QString() : tr("%1?").arg(fromText(one.suggested)));
        if (!session_.isReadOnly()) {
            row.editable = {3};
        }
        rows.push_back(std::move(row));
    }
    const auto count = static_cast<int>(rows.size());
    table_.setRows(std::move(rows));
    say(tr("Opened in the field"),
        count == 0 ? tr("Everything that was opened in the field has its number.")
                   : tr("%n thing(s) without a number of the office. Type the number; the next "
                        "free one is offered, and taken with Enter on an empty line.",
                        nullptr,
                        count));
    actions_.set({});
}

void BenchViewModel::confirm(int row, const QString& number) {
    if (row < 0 || row >= static_cast<int>(opened_.size()) || !isSomebodyThere()) {
        return;
    }
    const office::FieldOpened& opened = opened_[static_cast<std::size_t>(row)];
    QString given = number.trimmed();
    if (given.isEmpty() || given == tr("%1?").arg(fromText(opened.suggested))) {
        given = fromText(opened.suggested);
    }
    session_.write(
        this,
        [catalogue = session_.catalogue(),
         opened,
         given = toText(given),
         author = session_.author(),
         &clock =
             session_.clock()](store::Database& database) -> Result<std::vector<journal::Place>> {
            return office::perform(
                database, office::confirmWith(database, *catalogue, opened, given, author), clock);
        },
        [this](Result<std::vector<journal::Place>> written) {
            if (!written) {
                session_.fail(written.error());
            }
        });
}

} // namespace bullace::desk
