#include "desk/file_rows.hpp"

#include "desk/desk_words.hpp"

#include <QCoreApplication>
#include <QDir>
#include <QStandardPaths>

#include <algorithm>

namespace bullace::desk {

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(FileRows)
};

constexpr std::size_t kMostFiles = 40;

} // namespace

std::vector<GridColumn> fileColumns() {
    return {{Tr::tr("File"), 40, false, true}, {Tr::tr("Changed"), 20}, {Tr::tr("Size"), 12, true}};
}

std::vector<GridRow> fileRows(const QStringList& patterns, const Clock& clock) {
    std::vector<GridRow> rows;
    for (const auto where : {QStandardPaths::DocumentsLocation,
                             QStandardPaths::DownloadLocation,
                             QStandardPaths::HomeLocation}) {
        const QDir folder(QStandardPaths::writableLocation(where));
        for (const QFileInfo& file : folder.entryInfoList(patterns, QDir::Files, QDir::Time)) {
            const bool isThere =
                std::ranges::find(rows, file.absoluteFilePath(), &GridRow::key) != rows.end();
            if (isThere || rows.size() >= kMostFiles) {
                continue;
            }
            GridRow row;
            row.key = file.absoluteFilePath();
            row.cells << file.absoluteFilePath()
                      << whenWords(file.lastModified().toMSecsSinceEpoch(), clock)
                      << Tr::tr("%1 kB").arg(std::max<qint64>(1, file.size() / 1000));
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

} // namespace bullace::desk
