#include "quick/key_grid.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::quick {

namespace {

int rowsFor(int count, int columns) {
    return std::max(1, (count + columns - 1) / columns);
}

qreal heightOf(int rows, qreal keyHeight, qreal gap) {
    return rows * keyHeight + (rows - 1) * gap;
}

} // namespace

GridPlan planGrid(int count, QSizeF room, QSizeF least, qreal gap) {
    const qreal step = std::max(1.0, least.width() + gap);
    const int most = std::max(1, static_cast<int>(std::floor((room.width() + gap) / step)));
    GridPlan plan;
    plan.columns = std::clamp(most, 1, std::max(1, count));
    for (int columns = 1; columns < plan.columns; ++columns) {
        if (heightOf(rowsFor(count, columns), least.height(), gap) <= room.height()) {
            plan.columns = columns;
        }
    }
    plan.rows = rowsFor(count, plan.columns);
    plan.keyWidth =
        std::max(least.width(), (room.width() - (plan.columns - 1) * gap) / plan.columns);
    const qreal even = (room.height() - (plan.rows - 1) * gap) / plan.rows;
    plan.keyHeight = std::clamp(even, least.height(), 2 * least.height());
    return plan;
}

qreal KeyGrid::neededHeight() const {
    const GridPlan planned = plan();
    return heightOf(planned.rows, planned.keyHeight, gap_);
}

qreal KeyGrid::keyX(int index) const {
    const GridPlan planned = plan();
    return (index % planned.columns) * (planned.keyWidth + gap_);
}

qreal KeyGrid::keyY(int index) const {
    const GridPlan planned = plan();
    return (index / planned.columns) * (planned.keyHeight + gap_);
}

} // namespace bullace::quick
