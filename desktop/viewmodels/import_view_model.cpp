#include "desk/import_view_model.hpp"

#include "desk/desk_words.hpp"
#include "desk/file_rows.hpp"

#include "quick/field_sign.hpp"

#include <QFile>
#include <QFileInfo>

#include <algorithm>

namespace bullace::desk {

using office::StageScale;
using office::TableKind;
using quick::FieldSign;
using quick::fromText;
using quick::toText;

namespace {

constexpr int kPreviewRows = 10;

} // namespace

ImportViewModel::ImportViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {}

QString ImportViewModel::help() const {
    return tr(
        "Choose a CSV file. Its kind and its columns are guessed by their titles; R shows the "
        "first "
        "rows, C the columns, L the lines that cannot be taken. Say in which scale and edition "
        "stages were noted. Nothing is written before you press T, and then all of it or nothing. "
        "What is there already is left as it is.");
}

void ImportViewModel::begin() {
    csv_.reset();
    plan_.reset();
    view_ = View::Files;
}

void ImportViewModel::refresh() {
    if (view_ == View::Files) {
        showFiles();
    }
}

void ImportViewModel::showFiles() {
    table_.setColumns(tr("Files"), fileColumns());
    table_.setRows(
        fileRows({QStringLiteral("*.csv"), QStringLiteral("*.tsv"), QStringLiteral("*.txt")},
                 session_.clock()));
    facts_.setRows({});
    say(tr("Take a table in"), tr("Enter takes a file up; F types the name of another."));
    actions_.set({{QStringLiteral("file"), tr("Type a file's name"), QStringLiteral("F")}});
}

QString ImportViewModel::takeFile(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        return tr("%1 cannot be read.").arg(path);
    }
    const QByteArray bytes = file.readAll();
    Result<report::CsvTable> csv =
        report::readCsv(BytesView(bytes.constData(), static_cast<std::size_t>(bytes.size())));
    if (!csv) {
        return quick::errorWords(csv.error());
    }
    csv_ = std::move(*csv);
    path_ = path;
    wish_ = office::guessWish(*csv_, *session_.catalogue());
    wish_.author = session_.author();
    wish_.why = toText(tr("from %1").arg(QFileInfo(path).fileName()));
    view_ = View::Rows;
    planAgain();
    return {};
}

void ImportViewModel::planAgain() {
    plan_.reset();
    token_.cancel();
    token_ = {};
    auto csv = std::make_shared<report::CsvTable>(*csv_);
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [csv, wish = wish_, catalogue = session_.catalogue()](
            store::Database& database) -> Result<office::TablePlan> {
            auto plan = office::planTable(database, *catalogue, *csv, wish);
            if (plan || plan.error().code != ErrorCode::InvalidInput) {
                return plan;
            }
            // A column is missing: said as a line of its own.
            office::TablePlan missing;
            missing.wish = wish;
            missing.problemCount = 1;
            missing.problems.push_back({1, plan.error().message});
            return missing;
        },
        [this](office::TablePlan plan) {
            plan_ = std::move(plan);
            view_ = plan_->problemCount > 0 ? View::Problems : view_;
            show();
        });
}

QString ImportViewModel::kindWords(TableKind kind) const {
    switch (kind) {
    case TableKind::ObservationsLong:
        return tr("observations, one value a line");
    case TableKind::ObservationsWide:
        return tr("observations, a column for each descriptor");
    case TableKind::Accessions:
        return tr("accessions");
    case TableKind::Plantings:
        return tr("plantings");
    case TableKind::Rows:
        return tr("rows of blocks");
    case TableKind::People:
        return tr("people");
    }
    return {};
}

void ImportViewModel::show() {
    view_ == View::Columns ? showColumns() : view_ == View::Problems ? showProblems() : showRows();
    const QString dialect = tr("%1 rows of %2; %3")
                                .arg(csv_->rows.size())
                                .arg(kindWords(wish_.kind),
                                     csv_->dialect.usesDecimalComma ? tr("numbers with a comma")
                                                                    : tr("numbers with a point"));
    const QString outcome =
        !plan_ ? QString()
        : plan_->problemCount > 0
            ? tr("%n line(s) cannot be taken; until they are put right nothing is.",
                 nullptr,
                 static_cast<int>(plan_->problemCount))
            : tr("%1 values are new, %2 there already; %3 will stand against another value.")
                  .arg(plan_->drafts.size())
                  .arg(plan_->there)
                  .arg(plan_->conflicting);
    say(QFileInfo(path_).fileName(), dialect + QStringLiteral(".\n") + outcome);
    offer();
}

void ImportViewModel::showRows() {
    std::vector<GridColumn> columns{{tr("Line"), 6, true}};
    for (const office::TableColumn& column : wish_.columns) {
        const bool isNumber = column.kind == report::CellKind::Number;
        columns.push_back({fromText(column.title), 16, isNumber});
    }
    table_.setColumns(tr("The first rows"), std::move(columns));
    std::vector<GridRow> rows;
    for (const report::CsvRow& line : csv_->rows) {
        if (rows.size() == kPreviewRows) {
            break;
        }
        GridRow row;
        row.key = QString::number(line.line);
        row.cells << QString::number(line.line);
        for (const std::string& cell : line.cells) {
            row.cells << fromText(cell);
        }
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
}

void ImportViewModel::showColumns() {
    const auto kindOf = [](report::CellKind kind) {
        switch (kind) {
        case report::CellKind::Empty:
            return tr("empty");
        case report::CellKind::Number:
            return tr("numbers");
        case report::CellKind::IsoDate:
            return tr("days, year first");
        case report::CellKind::DayFirst:
            return tr("days, day first");
        case report::CellKind::MonthFirst:
            return tr("days, month first");
        case report::CellKind::EitherDate:
            return tr("days; day or month first? Taken as day first");
        case report::CellKind::SerialDate:
            return tr("days, counted by a spreadsheet");
        case report::CellKind::Position:
            return tr("positions");
        case report::CellKind::Text:
            return tr("words");
        }
        return QString();
    };
    table_.setColumns(tr("Columns"),
                      {{tr("Column"), 24}, {tr("Holds"), 34}, {tr("Is for"), 24, false, true}});
    std::vector<GridRow> rows;
    for (const office::TableColumn& column : wish_.columns) {
        GridRow row;
        row.key = fromText(column.title);
        row.sign = column.field.empty() ? FieldSign::Withdrawn : FieldSign::Done;
        row.signWord = column.field.empty() ? tr("left out") : tr("taken");
        row.cells << fromText(column.title) << kindOf(column.kind)
                  << (column.field.empty() ? tr("left out") : fromText(column.field));
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
}

void ImportViewModel::showProblems() {
    table_.setColumns(tr("Lines that cannot be taken"),
                      {{tr("Line"), 8, true}, {tr("Why"), 60, false, true}});
    std::vector<GridRow> rows;
    for (const office::TableLine& problem :
         plan_ ? plan_->problems : std::vector<office::TableLine>{}) {
        GridRow row;
        row.key = QString::number(rows.size());
        row.sign = FieldSign::Marked;
        row.signWord = tr("cannot be taken");
        row.cells << QString::number(problem.line) << fromText(problem.message);
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
}

void ImportViewModel::offer() {
    const bool isReady = plan_ && plan_->problemCount == 0 && !plan_->drafts.empty();
    const bool isEl = wish_.scale == StageScale::ModifiedEichhornLorenz;
    const bool hasStages =
        wish_.kind == TableKind::ObservationsLong || wish_.kind == TableKind::ObservationsWide;
    actions_.set(
        {{QStringLiteral("take"),
          tr("Take it in"),
          QStringLiteral("T"),
          isReady && !session_.isReadOnly()},
         {QStringLiteral("rows"), tr("First rows"), QStringLiteral("R"), true, view_ == View::Rows},
         {QStringLiteral("columns"),
          tr("Columns"),
          QStringLiteral("C"),
          true,
          view_ == View::Columns},
         {QStringLiteral("problems"),
          tr("Lines that cannot be taken"),
          QStringLiteral("L"),
          plan_ && plan_->problemCount > 0,
          view_ == View::Problems},
         {QStringLiteral("scale"),
          isEl ? tr("Stages: E-L, Coombe 1995") : tr("Stages: BBCH, Lorenz 1995"),
          QStringLiteral("S"),
          hasStages},
         {QStringLiteral("kind"), tr("It is something else"), QStringLiteral("K")}});
}

void ImportViewModel::askField(int column) {
    if (column < 0 || column >= static_cast<int>(wish_.columns.size())) {
        return;
    }
    QStringList fields;
    for (const office::TableField& field : office::fieldsOf(wish_.kind, *session_.catalogue())) {
        fields << fromText(field.field);
    }
    const auto index = static_cast<std::size_t>(column);
    ask(tr("What is %1 for? %2; empty to leave it out")
            .arg(fromText(wish_.columns[index].title),
                 fields.mid(0, 14).join(QStringLiteral(", "))),
        fromText(wish_.columns[index].field),
        [this, index, fields](const QString& text) {
            if (!text.isEmpty() && !fields.contains(text)) {
                return tr("There is no field %1.").arg(text);
            }
            for (office::TableColumn& other : wish_.columns) {
                if (fromText(other.field) == text) {
                    other.field.clear(); // one column for each field
                }
            }
            wish_.columns[index].field = toText(text);
            planAgain();
            return QString();
        });
}

void ImportViewModel::open(int row) {
    table_.setCurrent(row);
    if (view_ == View::Files) {
        const QString refusal = takeFile(table_.currentKey());
        if (!refusal.isEmpty()) {
            emit session_.told(refusal);
        }
    } else if (view_ == View::Columns) {
        askField(row);
    }
}

void ImportViewModel::act(const QString& id) {
    if (id == QStringLiteral("file")) {
        ask(tr("The file's name"), {}, [this](const QString& text) { return takeFile(text); });
    } else if (id == QStringLiteral("take")) {
        import();
    } else if (id == QStringLiteral("rows") || id == QStringLiteral("columns") ||
               id == QStringLiteral("problems")) {
        view_ = id == QStringLiteral("rows")      ? View::Rows
                : id == QStringLiteral("columns") ? View::Columns
                                                  : View::Problems;
        show();
    } else if (id == QStringLiteral("scale")) {
        wish_.scale =
            wish_.scale == StageScale::Bbch ? StageScale::ModifiedEichhornLorenz : StageScale::Bbch;
        planAgain();
    } else if (id == QStringLiteral("kind")) {
        wish_.kind = static_cast<TableKind>((static_cast<int>(wish_.kind) + 1) % 6);
        planAgain();
    }
}

bool ImportViewModel::back() {
    if (view_ == View::Files) {
        return false;
    }
    begin();
    showFiles();
    return true;
}

void ImportViewModel::import() {
    if (!isSomebodyThere()) {
        return;
    }
    office::TablePlan plan = *plan_;
    for (store::Draft& draft : plan.drafts) {
        draft.author = draft.author.empty() ? session_.author() : draft.author;
    }
    session_.write(
        this,
        [plan = std::move(plan), &clock = session_.clock()](store::Database& database) {
            return office::importTable(database, plan, clock);
        },
        [this](Result<std::size_t> written) {
            if (!written) {
                session_.fail(written.error());
                planAgain();
                return;
            }
            emit session_.told(
                tr("%n value(s) were taken in.", nullptr, static_cast<int>(*written)));
            emit session_.asked(QStringLiteral("back"), {});
        });
}

} // namespace bullace::desk
