// What the bench's grid is asked to show.
#include "desk/bench_view_model.hpp"

#include "quick/field_sign.hpp"
#include "quick/trade_words.hpp"
#include "quick/words.hpp"

#include <algorithm>
#include <map>

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

constexpr unsigned kMostSamples = 60;

GridRow lineOf(const QString& key, const QString& text, bool isChosen, const QString& said) {
    GridRow row;
    row.key = key;
    row.cells << text;
    row.isStrong = isChosen;
    row.sign = isChosen ? FieldSign::Done : -1;
    row.signWord = isChosen ? said : QString();
    return row;
}

} // namespace

void BenchViewModel::showChoices() {
    const vineyard::Catalogue& catalogue = *session_.catalogue();
    const QString chosen = tr("chosen");
    choices_.setColumns(tr("What is typed"), {{tr("What is typed"), 20, false, true}});
    std::vector<GridRow> rows;
    rows.push_back(headingRow(tr("Rows"), QStringLiteral("rows")));
    std::map<std::string, int> kinds;
    for (const vineyard::Lot& lot : catalogue.lots()) {
        ++kinds[lot.kind];
    }
    for (const auto& [kind, count] : kinds) {
        const QString key = QStringLiteral("rows ") + fromText(kind);
        rows.push_back(lineOf(key,
                              tr("Lots: %1 (%2)").arg(quick::tradeWord(kind)).arg(count),
                              view_ == View::Grid && rowsKind_ == key,
                              chosen));
    }
    rows.push_back(lineOf(QStringLiteral("other"),
                          tr("A row, a run, an accession …"),
                          view_ == View::Grid && rowsKind_ == QStringLiteral("other"),
                          chosen));
    rows.push_back(lineOf(QStringLiteral("sheet"),
                          sheet_ ? tr("Go on with the sheet %1").arg(fromText(sheet_->code))
                                 : tr("A row sheet from paper …"),
                          view_ == View::Sheet,
                          chosen));
    const auto opened = static_cast<int>(office::openedInField(catalogue).size());
    rows.push_back(lineOf(QStringLiteral("opened"),
                          tr("Opened in the field (%1)").arg(opened),
                          view_ == View::Opened,
                          chosen));
    rows.push_back(headingRow(tr("Day"), QStringLiteral("day heading")));
    rows.push_back(lineOf(QStringLiteral("day"), quick::dateWords(plan_.day), false, chosen));
    rows.push_back(headingRow(tr("Columns"), QStringLiteral("columns")));
    rows.push_back(lineOf(QStringLiteral("samples"),
                          tr("%n sample(s) of each", nullptr, static_cast<int>(plan_.samples)),
                          false,
                          chosen));
    // Those that the grid has stand first, in its order.
    std::vector<const vineyard::Asked*> columns;
    for (const std::string& code : plan_.descriptors) {
        columns.push_back(catalogue.descriptor(code));
    }
    const std::size_t chosenOnes = columns.size();
    for (const vineyard::Asked* one : catalogue.descriptors()) {
        const bool isThere = std::find(columns.begin(), columns.end(), one) != columns.end();
        if (!isThere && one->known.kind != descriptors::DescriptorKind::Photo &&
            one->unknownKind.empty()) {
            columns.push_back(one);
        }
    }
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (columns[i] != nullptr) {
            rows.push_back(lineOf(QStringLiteral("column ") + fromText(columns[i]->known.code),
                                  quick::titleWords(*columns[i]),
                                  i < chosenOnes,
                                  chosen));
        }
    }
    choices_.setRows(std::move(rows));
}

void BenchViewModel::choose(int row) {
    if (!choices_.holds(row)) {
        return;
    }
    choices_.setCurrent(row);
    const QString key = choices_.currentKey();
    if (key.startsWith(QStringLiteral("rows "))) {
        const QString kind = key.mid(5);
        plan_.descriptors = office::usualDescriptors(toText(kind));
        const auto places =
            office::placesMeant(*session_.catalogue(), toText(kind), session_.today());
        setRows(key, places ? *places : std::vector<std::string>{});
    } else if (key.startsWith(QStringLiteral("column "))) {
        toggle(toText(key.mid(7)));
    } else if (key == QStringLiteral("other")) {
        askRows();
    } else if (key == QStringLiteral("sheet")) {
        sheet_ ? beginSheet(*sheet_) : askSheet();
    } else if (key == QStringLiteral("opened")) {
        view_ = View::Opened;
        refresh();
    } else if (key == QStringLiteral("day")) {
        askDay();
    } else if (key == QStringLiteral("samples")) {
        askSamples();
    }
}

void BenchViewModel::setRows(const QString& kind, std::vector<std::string> places) {
    view_ = View::Grid;
    rowsKind_ = kind;
    plan_.places = std::move(places);
    grid_ = {};
    refresh();
}

void BenchViewModel::toggle(const std::string& descriptor) {
    const auto found = std::find(plan_.descriptors.begin(), plan_.descriptors.end(), descriptor);
    if (found == plan_.descriptors.end()) {
        plan_.descriptors.push_back(descriptor);
    } else {
        plan_.descriptors.erase(found);
    }
    view_ = View::Grid;
    refresh();
}

void BenchViewModel::askRows() {
    ask(tr("A row like B2-07, a run like B2-07-01 B2-07-30, an accession, a lot, a label"),
        {},
        [this](const QString& text) {
            auto places =
                office::placesMeant(*session_.catalogue(), toText(text), session_.today());
            if (!places) {
                return quick::errorWords(places.error());
            }
            setRows(QStringLiteral("other"), std::move(*places));
            return QString();
        });
}

void BenchViewModel::askDay() {
    ask(tr("The day of the measurement, like 2026-09-14"),
        fromText(writeDate(plan_.day)),
        [this](const QString& text) {
            const auto day = readDate(toText(text));
            if (!day) {
                return tr("A day of the calendar, like 2026-09-14.");
            }
            plan_.day = *day;
            refresh();
            return QString();
        });
}

void BenchViewModel::askSamples() {
    ask(tr("How many samples of each lot or vine"),
        QString::number(plan_.samples),
        [this](const QString& text) {
            bool isNumber = false;
            const unsigned samples = text.toUInt(&isNumber);
            if (!isNumber || samples < 1 || samples > kMostSamples) {
                return tr("A whole number from 1 to %1.").arg(kMostSamples);
            }
            plan_.samples = samples;
            refresh();
            return QString();
        });
}

// A scanner types what it reads, and Enter behind it.
void BenchViewModel::askPlace() {
    ask(tr("Scan or type a lot, a label or a position"), {}, [this](const QString& text) {
        const auto places =
            office::placesMeant(*session_.catalogue(), toText(text), session_.today());
        if (!places) {
            return quick::errorWords(places.error());
        }
        for (const std::string& place : *places) {
            if (std::find(plan_.places.begin(), plan_.places.end(), place) == plan_.places.end()) {
                plan_.places.push_back(place);
            }
        }
        const QString key = fromText(places->front());
        if (table_.rowOf(key) < 0) {
            showGrid(); // its line is there at once; what stands in it is read behind
            readGrid();
        }
        table_.setCurrent(table_.rowOf(key));
        return QString();
    });
}

} // namespace bullace::desk
