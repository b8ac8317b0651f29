// A table of the screen as a file: a page of paper, or commas between cells for other programs.
#pragma once

#include "desk/grid_model.hpp"
#include "paper/table_page.hpp"

#include <QString>
#include <QStringList>

#include <vector>

namespace bullace::desk {

class DeskSession;

// The table with its title and a sentence; its date and time are now.
[[nodiscard]] paper::TablePage tablePage(const DeskSession& session,
                                         const QString& title,
                                         const QString& words,
                                         const std::vector<GridColumn>& columns,
                                         const std::vector<GridRow>& rows);
[[nodiscard]] paper::PaperSize paperSize(const DeskSession& session);

// As the path's end says: .pdf with its title, words and notes, .csv with the table alone. Why it
// could not be written; empty where it was.
[[nodiscard]] QString
writeTableFile(const QString& path, const paper::TablePage& page, paper::PaperSize size);

} // namespace bullace::desk
