#include "desk/bench_view_model.hpp"

#include "desk/desk_words.hpp"
#include "desk/word_codes.hpp"

#include "core/journal/json_value.hpp"
#include "quick/field_sign.hpp"
#include "quick/trade_words.hpp"

#include <algorithm>

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::string_view kLot = "lot:";

} // namespace

BenchViewModel::BenchViewModel(DeskSession& session, QObject* parent) : DeskPage(session, parent) {
    connect(&session_, &DeskSession::deskChanged, this, [this] {
        hasBegun_ = false;
        view_ = View::Grid;
        plan_ = {};
        grid_ = {};
        sheet_.reset();
    });
    connect(&table_, &GridModel::currentChanged, this, [this] {
        if (view_ == View::Sheet) {
            offerSheet();
        }
    });
}

QString BenchViewModel::help() const {
    return tr(
        "The list chooses what the grid shows: lots or vines, the day, the columns. In the grid "
        "arrows move, a digit or F2 types, Enter takes it and goes down, Tab goes to the right. "
        "G takes a scanned or typed label and goes to its line. \"-\" is not observed; a word "
        "such as dead says why there is no value. What stands there already is replaced only "
        "with a reason. A row sheet from paper is typed twice; what differs is shown, and nothing "
        "is written before. Acids, caustic titrants, solvents and dry ice: the laboratory's own "
        "safety rules come first.");
}

void BenchViewModel::begin() {
    hasBegun_ = true;
    plan_.day = session_.today();
    for (const vineyard::Lot& lot : session_.catalogue()->lots()) {
        if (plan_.places.empty() || plan_.descriptors == office::usualDescriptors(lot.kind)) {
            plan_.descriptors = office::usualDescriptors(lot.kind);
            plan_.places.push_back(std::string(kLot) + lot.id);
            rowsKind_ = QStringLiteral("rows ") + fromText(lot.kind);
        }
    }
    if (plan_.descriptors.empty()) {
        plan_.descriptors = office::usualDescriptors({});
    }
    session_.read(
        this,
        office::Lane::Page,
        {},
        [](store::Database& database) { return office::readTyping(database); },
        [this](std::optional<office::PaperTyping> kept) {
            sheet_ = std::move(kept);
            showChoices();
        });
}

void BenchViewModel::refresh() {
    if (!hasBegun_) {
        begin();
    }
    showChoices();
    switch (view_) {
    case View::Grid:
        readGrid();
        break;
    case View::Sheet:
        showSheet();
        break;
    case View::Opened:
        showOpened();
        break;
    }
}

void BenchViewModel::leave() {
    token_.cancel();
}

void BenchViewModel::readGrid() {
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Page,
        token_,
        [catalogue = session_.catalogue(), plan = plan_](store::Database& database) {
            return office::readBench(database, *catalogue, plan);
        },
        [this](office::BenchGrid grid) {
            grid_ = std::move(grid);
            if (view_ == View::Grid) {
                showGrid();
            }
        });
}

std::vector<GridColumn>
BenchViewModel::columnsFor(const std::vector<office::BenchColumn>& columns) const {
    constexpr int kLeastLetters = 11;
    constexpr int kMostLetters = 24;
    std::vector<GridColumn> made{{tr("Place"), 18}, {tr("What it is"), 20}};
    for (const office::BenchColumn& column : columns) {
        const vineyard::Asked* one = session_.catalogue()->descriptor(column.descriptor);
        QString title = descriptorWords(*session_.catalogue(), column.descriptor);
        if (column.sample > 0) {
            title += QStringLiteral(" ") + QString::number(column.sample);
        }
        if (one != nullptr && !one->known.unit.empty()) {
            const Unit unit = unitFor(one->known.unit, session_.settings().units);
            title += QStringLiteral(", ") + fromText(unit.shown);
        }
        const bool isNumber = one != nullptr &&
                              one->known.kind != descriptors::DescriptorKind::Category &&
                              one->known.kind != descriptors::DescriptorKind::Record &&
                              one->known.kind != descriptors::DescriptorKind::Text;
        made.push_back({title,
                        std::clamp(static_cast<int>(title.size()) + 1, kLeastLetters, kMostLetters),
                        isNumber});
    }
    return made;
}

QString BenchViewModel::whatStands(const std::string& place, CivilDate day) const {
    const vineyard::Catalogue& catalogue = *session_.catalogue();
    if (!std::string_view(place).starts_with(kLot)) {
        const std::string accession = catalogue.accessionAt(place, day);
        return accession.empty() ? tr("no vine") : fromText(catalogue.accessionWords(accession));
    }
    for (const vineyard::Lot& lot : catalogue.lots()) {
        if (lot.id == std::string_view(place).substr(kLot.size())) {
            return tr("%1 of %2").arg(quick::tradeWord(lot.kind), fromText(lot.from));
        }
    }
    return {};
}

void BenchViewModel::showGrid() {
    const vineyard::Catalogue& catalogue = *session_.catalogue();
    table_.setColumns(tr("The bench"), columnsFor(grid_.columns));
    std::vector<GridRow> rows;
    for (std::size_t i = 0; i < plan_.places.size(); ++i) {
        const std::string& place = plan_.places[i];
        GridRow row;
        row.key = fromText(place);
        row.cells << (std::string_view(place).starts_with(kLot)
                          ? fromText(std::string_view(place).substr(kLot.size()))
                          : fromText(place))
                  << whatStands(place, plan_.day);
        for (std::size_t column = 0; i < grid_.rows.size() && column < grid_.rows[i].size();
             ++column) {
            const office::BenchCell& cell = grid_.rows[i][column];
            const bool isOpen = cell.state == merge::State::Open;
            row.cells << (isOpen ? tr("open")
                                 : sayValue(catalogue,
                                            grid_.columns[column].descriptor,
                                            cell.value,
                                            session_.settings().units));
            if (!isOpen && !session_.isReadOnly()) {
                row.editable.push_back(static_cast<int>(column) + kPlaceColumns);
            }
        }
        rows.push_back(std::move(row));
    }
    const auto count = static_cast<int>(rows.size());
    table_.setRows(std::move(rows));
    say(tr("Bench"),
        count == 0 ? tr("Choose in the list what is to be typed.")
                   : tr("%n line(s), %1.", nullptr, count).arg(quick::dateWords(plan_.day)));
    offer();
}

void BenchViewModel::offer() {
    actions_.set({{QStringLiteral("place"), tr("Scan or type a label"), QStringLiteral("G")},
                  {QStringLiteral("rows"), tr("Other rows"), QStringLiteral("R")},
                  {QStringLiteral("day"), tr("Day"), QStringLiteral("D")},
                  {QStringLiteral("samples"), tr("Samples"), QStringLiteral("S")},
                  {QStringLiteral("open"),
                   tr("Everything noted there"),
                   QStringLiteral("V"),
                   !table_.currentKey().isEmpty()}});
}

void BenchViewModel::open(int row) {
    table_.setCurrent(row);
}

const vineyard::Asked* BenchViewModel::asked(std::size_t column) const {
    const auto& columns = view_ == View::Sheet && sheet_ ? sheet_->columns : grid_.columns;
    return column < columns.size() ? session_.catalogue()->descriptor(columns[column].descriptor)
                                   : nullptr;
}

void BenchViewModel::type(int row, int column, const QString& text) {
    if (view_ == View::Opened) {
        confirm(row, text);
    } else if (view_ == View::Sheet) {
        typeSheet(row, column, text);
    } else if (isSomebodyThere()) {
        note(row, column - kPlaceColumns, text);
    }
}

void BenchViewModel::note(int row, int column, const QString& text) {
    const auto line = static_cast<std::size_t>(row);
    const auto place = static_cast<std::size_t>(column);
    const vineyard::Asked* one = column < 0 ? nullptr : asked(place);
    if (row < 0 || line >= grid_.rows.size() || one == nullptr || text.isEmpty()) {
        return;
    }
    const Result<office::Typed> typed =
        office::readTyped(*one, toText(text), session_.settings().units, codeOfWord);
    if (!typed) {
        session_.fail(typed.error());
        return;
    }
    const office::BenchCell& cell = grid_.rows[line][place];
    if (cell.value.empty()) {
        write(line, place, *typed, {});
    } else if (!journal::isSameValue(cell.value, typed->value)) {
        askWhy([this, line, place, typed = *typed](const std::string& why) {
            write(line, place, typed, why);
            return QString();
        });
    }
}

void BenchViewModel::write(std::size_t row,
                           std::size_t column,
                           const office::Typed& typed,
                           const std::string& why) {
    session_.write(
        this,
        [place = plan_.places[row],
         day = plan_.day,
         benchColumn = grid_.columns[column],
         cell = grid_.rows[row][column],
         typed,
         author = session_.author(),
         why,
         &clock =
             session_.clock()](store::Database& database) -> Result<std::vector<journal::Place>> {
            return office::perform(
                database,
                office::noteAtBench(database, place, day, benchColumn, cell, typed, author, why),
                clock);
        },
        [this](Result<std::vector<journal::Place>> written) {
            if (!written) {
                session_.fail(written.error());
            }
        },
        DeskSession::Touches::Observations);
}

void BenchViewModel::act(const QString& id) {
    if (id == QStringLiteral("place")) {
        askPlace();
    } else if (id == QStringLiteral("rows")) {
        askRows();
    } else if (id == QStringLiteral("day")) {
        askDay();
    } else if (id == QStringLiteral("samples")) {
        askSamples();
    } else if (id == QStringLiteral("open")) {
        emit session_.asked(QStringLiteral("vine"), table_.currentKey());
    } else if (id == QStringLiteral("first") || id == QStringLiteral("second")) {
        takeDifference(id == QStringLiteral("first") ? 0 : 1);
    } else if (id == QStringLiteral("next")) {
        nextPass();
    } else if (id == QStringLiteral("write")) {
        writeSheet();
    } else if (id == QStringLiteral("drop")) {
        dropSheet();
    }
}

bool BenchViewModel::back() {
    if (view_ == View::Grid) {
        return false;
    }
    view_ = View::Grid;
    refresh();
    return true;
}

} // namespace bullace::desk
