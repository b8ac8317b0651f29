#include "desk/observations_view_model.hpp"

#include "desk/desk_words.hpp"

#include "quick/field_sign.hpp"

#include <QLocale>

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

ObservationsViewModel::ObservationsViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {
    connect(&table_, &GridModel::currentChanged, this, &ObservationsViewModel::offer);
    connect(&session_, &DeskSession::deskChanged, this, [this] {
        wish_ = {};
        pages_ = {};
    });
}

QString ObservationsViewModel::help() const {
    return tr("All that was ever observed, along the rows and then by day. B keeps to the block of "
              "the line, D to its descriptor. Enter opens the line's history, V the vine.");
}

void ObservationsViewModel::refresh() {
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [wish = wish_, token = token_](store::Database& database) {
            return office::readObservationPages(
                database, wish, static_cast<std::size_t>(GridModel::kPageRows), token);
        },
        [this](office::ObservationPages pages) { take(std::move(pages)); });
    if (pages_.starts.empty()) {
        say(tr("Observations"), tr("The station is being looked through …"));
        offer();
    }
}

void ObservationsViewModel::leave() {
    token_.cancel();
}

void ObservationsViewModel::take(office::ObservationPages pages) {
    pages_ = std::move(pages);
    table_.setColumns(tr("Observations"),
                      {{tr("Where"), 16},
                       {tr("Day"), 14},
                       {tr("What"), 30},
                       {tr("Value"), 30, false, true},
                       {tr("Now"), 14}});
    table_.setPaged(static_cast<int>(pages_.count), [this](int page) { readPage(page); });
    QStringList only;
    if (!wish_.block.empty()) {
        only << fromText(wish_.block);
    }
    if (!wish_.descriptor.empty()) {
        only << descriptorWords(*session_.catalogue(), wish_.descriptor);
    }
    const QString count = QLocale().toString(static_cast<qulonglong>(pages_.count));
    say(tr("Observations"),
        only.isEmpty() ? tr("%1 in all.").arg(count)
                       : tr("%1 of %2.").arg(count, only.join(QStringLiteral(", "))));
    offer();
}

void ObservationsViewModel::readPage(int page) {
    const auto index = static_cast<std::size_t>(page);
    if (index >= pages_.starts.size()) {
        return;
    }
    session_.read(
        this,
        office::Lane::Page,
        token_,
        [wish = wish_, from = pages_.starts[index], most = pages_.perPage](
            store::Database& database) {
            return office::readObservationPage(database, wish, from, most);
        },
        [this, page](std::vector<office::VineValue> lines) {
            std::vector<GridRow> rows;
            for (const office::VineValue& line : lines) {
                rows.push_back(rowOf(line));
            }
            table_.givePage(page, std::move(rows));
            offer();
        });
}

GridRow ObservationsViewModel::rowOf(const office::VineValue& line) const {
    const bool isOpen = line.state == merge::State::Open;
    const bool isBack = line.state == merge::State::Retracted;
    const auto day = readDate(line.date);
    const QString title = descriptorWords(*session_.catalogue(), line.descriptor);
    GridRow row;
    row.key = fromText(line.subject);
    row.sign = isOpen ? FieldSign::Open : isBack ? FieldSign::Withdrawn : FieldSign::Done;
    row.signWord = isOpen ? tr("open") : isBack ? tr("taken back") : tr("settled");
    row.cells << fromText(line.position) << (day ? quick::dateWords(*day) : fromText(line.date))
              << (line.sample.empty() ? title : tr("%1, a sample").arg(title))
              << sayValue(
                     *session_.catalogue(), line.descriptor, line.value, session_.settings().units)
              << row.signWord;
    return row;
}

std::string ObservationsViewModel::currentSubject() const {
    return toText(table_.currentKey());
}

void ObservationsViewModel::offer() {
    const journal::Subject subject = journal::readSubject(currentSubject());
    const bool isLine = subject.form == journal::SubjectForm::Observation;
    actions_.set(
        {{QStringLiteral("history"), tr("Its history"), QStringLiteral("H"), isLine},
         {QStringLiteral("vine"), tr("Everything on this vine"), QStringLiteral("V"), isLine},
         {QStringLiteral("block"),
          wish_.block.empty() ? tr("Only this block") : tr("All blocks"),
          QStringLiteral("B"),
          !wish_.block.empty() || (isLine && subject.position),
          !wish_.block.empty()},
         {QStringLiteral("descriptor"),
          wish_.descriptor.empty() ? tr("Only this descriptor") : tr("All descriptors"),
          QStringLiteral("D"),
          !wish_.descriptor.empty() || isLine,
          !wish_.descriptor.empty()}});
}

void ObservationsViewModel::open(int row) {
    table_.setCurrent(row);
    act(QStringLiteral("history"));
}

void ObservationsViewModel::act(const QString& id) {
    const std::string current = currentSubject();
    const journal::Subject subject = journal::readSubject(current);
    const QString place = fromText(subject.id);
    if (id == QStringLiteral("history") && !current.empty()) {
        emit session_.asked(QStringLiteral("vine"), place + QLatin1Char('#') + fromText(current));
    } else if (id == QStringLiteral("vine") && !current.empty()) {
        emit session_.asked(QStringLiteral("vine"), place);
    } else if (id == QStringLiteral("block")) {
        wish_.block = wish_.block.empty() && subject.position ? std::string(subject.position->block)
                                                              : std::string{};
        refresh();
    } else if (id == QStringLiteral("descriptor")) {
        wish_.descriptor =
            wish_.descriptor.empty() ? std::string(subject.descriptor) : std::string{};
        refresh();
    }
}

} // namespace bullace::desk
