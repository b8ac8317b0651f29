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

int mostColumns(int count, qreal width, QSizeF least, qreal gap) {
    const int fit =
        static_cast<int>(std::floor((width + gap) / std::max(1.0, least.width() + gap)));
    return std::clamp(fit, 1, std::max(1, count));
}

GridPlan planWith(int columns, int count, QSizeF room, QSizeF least, qreal gap) {
    GridPlan plan;
    plan.columns = columns;
    plan.rows = rowsFor(count, columns);
    plan.keyWidth = std::max(least.width(), (room.width() - (columns - 1) * gap) / columns);
    const qreal even = (room.height() - (plan.rows - 1) * gap) / plan.rows;
    plan.keyHeight = std::clamp(even, least.height(), 2 * least.height());
    return plan;
}

} // namespace

GridPlan planGrid(int count, QSizeF room, QSizeF least, qreal gap) {
    const int most = mostColumns(count, room.width(), least, gap);
    GridPlan best = planWith(most, count, room, least, gap);
    const auto growth = [&least](const GridPlan& plan) {
        return std::min(plan.keyWidth / least.width(), plan.keyHeight / least.height());
    };
    for (int columns = most - 1; columns >= 1; --columns) {
        const GridPlan plan = planWith(columns, count, room, least, gap);
        const bool fits = heightOf(plan.rows, plan.keyHeight, gap) <= room.height();
        best = fits && growth(plan) >= growth(best) ? plan : best;
    }
    return best;
}

void KeyGrid::setCount(int value) {
    if (value != count_) {
        count_ = value;
        emit countChanged();
        renew();
    }
}

void KeyGrid::setRoomWidth(qreal value) {
    if (!qFuzzyCompare(value + 1, room_.width() + 1)) {
        room_.setWidth(value);
        emit roomWidthChanged();
        renew();
    }
}

void KeyGrid::setRoomHeight(qreal value) {
    if (!qFuzzyCompare(value + 1, room_.height() + 1)) {
        room_.setHeight(value);
        emit roomHeightChanged();
        renew();
    }
}

void KeyGrid::setLeast(QSizeF value) {
    const QSizeF inside = value.expandedTo({1, 1});
    if (inside != least_) {
        least_ = inside;
        emit leastChanged();
        renew();
    }
}

void KeyGrid::setGap(qreal value) {
    if (!qFuzzyCompare(value + 1, gap_ + 1)) {
        gap_ = value;
        emit gapChanged();
        renew();
    }
}

void KeyGrid::renew() {
    const GridPlan plan = planGrid(count_, room_, least_, gap_);
    const int rows = rowsFor(count_, mostColumns(count_, room_.width(), least_, gap_));
    const qreal compact = heightOf(rows, least_.height(), gap_);
    const bool isOther = !(plan == plan_);
    plan_ = plan;
    if (!qFuzzyCompare(compact, compactHeight_)) {
        compactHeight_ = compact;
        emit compactHeightChanged();
    }
    if (isOther) {
        emit planChanged();
    }
}

qreal KeyGrid::neededHeight() const {
    return heightOf(plan_.rows, plan_.keyHeight, gap_);
}

qreal KeyGrid::keyX(int index) const {
    return (index % plan_.columns) * (plan_.keyWidth + gap_);
}

qreal KeyGrid::keyY(int index) const {
    return (index / plan_.columns) * (plan_.keyHeight + gap_);
}

} // namespace bullace::quick
