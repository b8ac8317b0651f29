#include "desk/table_files.hpp"

#include "desk/desk_session.hpp"
#include "desk/desk_words.hpp"
#include "paper/pdf.hpp"

#include "core/report/csv.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

namespace bullace::desk {

using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(TableFiles)
};

Error wrongEnd() {
    return {ErrorCode::InvalidInput, toText(Tr::tr("The file's name ends in .pdf or .csv.")), {}};
}

QByteArray csvOf(const paper::TablePage& page) {
    std::string text;
    std::vector<std::string> cells;
    for (const paper::TableColumn& column : page.columns) {
        cells.push_back(toText(column.title));
    }
    report::appendCsvRow(text, cells);
    for (const QStringList& row : page.rows) {
        cells.clear();
        for (const QString& cell : row) {
            cells.push_back(toText(cell));
        }
        cells.resize(page.columns.size());
        report::appendCsvRow(text, cells);
    }
    return QByteArray::fromStdString(text);
}

} // namespace

paper::TablePage tablePage(const DeskSession& session,
                           const QString& title,
                           const QString& words,
                           const std::vector<GridColumn>& columns,
                           const std::vector<GridRow>& rows) {
    paper::TablePage page{title, words, {}, {}, {}, {}};
    for (const GridColumn& column : columns) {
        page.columns.push_back({column.title, column.isNumber});
    }
    for (const GridRow& row : rows) {
        page.rows.push_back(row.cells);
    }
    page.asOf = whenWords(session.clock().nowMs(), session.clock());
    return page;
}

paper::PaperSize paperSize(const DeskSession& session) {
    return session.settings().isA4 ? paper::PaperSize::A4 : paper::PaperSize::Letter;
}

QString writeTableFile(const QString& path, const paper::TablePage& page, paper::PaperSize size) {
    Status written = wrongEnd();
    if (path.endsWith(QStringLiteral(".pdf"), Qt::CaseInsensitive)) {
        written = paper::writeFile(path, paper::tablePdf(page, size));
    } else if (path.endsWith(QStringLiteral(".csv"), Qt::CaseInsensitive)) {
        written = paper::writeFile(path, csvOf(page));
    }
    return written ? QString() : quick::errorWords(written.error());
}

} // namespace bullace::desk
