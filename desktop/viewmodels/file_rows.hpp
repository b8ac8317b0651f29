// Files that a page may take up: those of the usual folders, as the rows of its table.
#pragma once

#include "desk/grid_model.hpp"

#include "core/base/clock.hpp"

#include <QStringList>

#include <vector>

namespace bullace::desk {

[[nodiscard]] std::vector<GridColumn> fileColumns();
// Files among documents, downloads and in the home folder whose names fit ("*.csv"), each folder's
// newest first, at most 40; a row's key is the file's path.
[[nodiscard]] std::vector<GridRow> fileRows(const QStringList& patterns, const Clock& clock);

} // namespace bullace::desk
