// A table with its words on lying pages, as small as it has to be to stand on one where it can.
#pragma once

#include "paper/page.hpp"

#include <QByteArray>
#include <QString>
#include <QStringList>

#include <span>
#include <vector>

namespace bullace::paper {

struct TableColumn {
    QString title;
    bool isNumber = false; // stands on the right
};

struct TablePage {
    QString title;
    QString words; // one sentence below it
    std::vector<TableColumn> columns;
    std::vector<QStringList> rows;
    QStringList notes;        // sentences at the end: methods, what was left out, cautions
    QString asOf;             // a date and time in words
    double leastCapsMm = 1.1; // letters are not shrunk below it
};

// Letters are shrunk from 2.2 mm of a capital down to the least so that all of it stands on one
// page; where that is not enough it goes on, with the heads again. Cells are cut to their column's
// width only where the columns cannot stand beside one another at the smallest letters.
[[nodiscard]] std::vector<Page> tablePages(const TablePage& table, PaperSize size);
// Several tables, each from a new page on, numbered through; at least one.
[[nodiscard]] std::vector<Page> tablePages(std::span<const TablePage> tables, PaperSize size);
[[nodiscard]] QByteArray tablesPdf(std::span<const TablePage> tables, PaperSize size);
[[nodiscard]] QByteArray tablePdf(const TablePage& table, PaperSize size);

} // namespace bullace::paper
