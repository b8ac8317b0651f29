// A drawing in words of the screen's language: for who does not see it, and as a table.
#pragma once

#include "core/report/drawing.hpp"

#include <QString>
#include <QStringList>

#include <vector>

namespace bullace::plots {

// What it is about, how many boxes and lines it has, and its notes.
[[nodiscard]] QString drawingSummary(const report::Drawing& drawing);

struct DrawingTableText {
    QStringList header;
    std::vector<QStringList> rows;
};
[[nodiscard]] DrawingTableText drawingTableText(const report::Drawing& drawing);

} // namespace bullace::plots
