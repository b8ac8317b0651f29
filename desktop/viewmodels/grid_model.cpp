#include "desk/grid_model.hpp"

#include <algorithm>

namespace bullace::desk {

int GridModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : want_ ? pagedCount_ : static_cast<int>(rows_.size());
}

int GridModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

const GridRow& GridModel::at(int row) const {
    if (!want_) {
        return rows_[static_cast<std::size_t>(row)];
    }
    static const GridRow kComing;
    const int page = row / kPageRows;
    const auto held = pages_.find(page);
    if (held == pages_.end()) {
        if (wanted_.insert(page).second) {
            want_(page);
        }
        return kComing;
    }
    const auto line = static_cast<std::size_t>(row % kPageRows);
    return line < held->second.size() ? held->second[line] : kComing;
}

void GridModel::setPaged(int count, std::function<void(int page)> want) {
    beginResetModel();
    rows_.clear();
    pages_.clear();
    wanted_.clear();
    want_ = std::move(want);
    pagedCount_ = count;
    current_ = std::min(std::max(current_, 0), count - 1);
    endResetModel();
    emit countChanged();
    emit currentChanged();
}

void GridModel::givePage(int page, std::vector<GridRow> rows) {
    constexpr std::size_t kMostPages = 24;
    wanted_.erase(page);
    if (!want_ || rows.empty()) {
        return;
    }
    const int first = page * kPageRows;
    const int last = first + static_cast<int>(rows.size()) - 1;
    pages_[page] = std::move(rows);
    while (pages_.size() > kMostPages) {
        const bool isLastFarther = pages_.rbegin()->first - page > page - pages_.begin()->first;
        pages_.erase(isLastFarther ? std::prev(pages_.end()) : pages_.begin());
    }
    emit dataChanged(index(first, 0), index(last, std::max(0, columnCount() - 1)));
    if (current_ >= first && current_ <= last) {
        emit currentChanged();
    }
}

QString GridModel::spoken(const GridRow& row, int column) const {
    const QString text = row.cells.value(column);
    if (row.isHeading) {
        return text;
    }
    const QString title = columns_[static_cast<std::size_t>(column)].title;
    const QString sign = column == 0 && !row.signWord.isEmpty() ? row.signWord + ", " : QString();
    return title.isEmpty() ? sign + text : sign + title + ": " + text;
}

QVariant GridModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !holds(index.row()) || index.column() >= columnCount()) {
        return {};
    }
    const GridRow& row = at(index.row());
    switch (role) {
    case Qt::DisplayRole:
    case TextRole:
        return row.cells.value(index.column());
    case SignRole:
        return index.column() == 0 ? row.sign : -1;
    case SignWordRole:
        return row.signWord;
    case IsHeadingRole:
        return row.isHeading;
    case IsStrongRole:
        return row.isStrong || row.isHeading;
    case IsNumberRole:
        return columns_[static_cast<std::size_t>(index.column())].isNumber;
    case IsEditableRole:
        return std::find(row.editable.begin(), row.editable.end(), index.column()) !=
               row.editable.end();
    case SpokenRole:
        return spoken(row, index.column());
    default:
        return {};
    }
}

QVariant GridModel::headerData(int section, Qt::Orientation orientation, int role) const {
    return orientation == Qt::Horizontal && role == Qt::DisplayRole ? QVariant(columnTitle(section))
                                                                    : QVariant();
}

QHash<int, QByteArray> GridModel::roleNames() const {
    return {{TextRole, "text"},
            {SignRole, "sign"},
            {SignWordRole, "signWord"},
            {IsHeadingRole, "isHeading"},
            {IsStrongRole, "isStrong"},
            {IsNumberRole, "isNumber"},
            {IsEditableRole, "isEditable"},
            {SpokenRole, "spoken"}};
}

void GridModel::setColumns(const QString& name, std::vector<GridColumn> columns) {
    if (name == name_ && columns == columns_) {
        return;
    }
    beginResetModel();
    name_ = name;
    columns_ = std::move(columns);
    endResetModel();
    emit columnsReset();
}

void GridModel::setRows(std::vector<GridRow> rows) {
    if (want_) {
        beginResetModel();
        want_ = nullptr;
        pagedCount_ = 0;
        pages_.clear();
        wanted_.clear();
        endResetModel();
    }
    const QString key = currentKey();
    const int before = rowCount();
    const int wasCurrent = current_;
    const int after = static_cast<int>(rows.size());
    if (after < before) {
        beginRemoveRows({}, after, before - 1);
        rows_.resize(rows.size());
        endRemoveRows();
    }
    // Told as one stretch: whoever listens has one thing to do, however many lines changed.
    int first = -1;
    int last = -1;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (rows_[i] != rows[i]) {
            rows_[i] = rows[i];
            last = static_cast<int>(i);
            first = first < 0 ? last : first;
        }
    }
    if (first >= 0) {
        emit dataChanged(index(first, 0), index(last, std::max(0, columnCount() - 1)));
    }
    if (after > before) {
        beginInsertRows({}, before, after - 1);
        rows_ = std::move(rows);
        endInsertRows();
    }
    if (rowCount() != before) {
        emit countChanged();
    }
    const int found = key.isEmpty() ? -1 : rowOf(key);
    current_ = found >= 0 ? found : std::min(current_, rowCount() - 1);
    if (!holds(current_) || at(current_).isHeading) {
        current_ = next(std::max(current_, 0) - 1, 1);
        current_ = holds(current_) && !at(current_).isHeading ? current_ : -1;
    }
    if (current_ != wasCurrent) {
        emit currentChanged();
    }
}

void GridModel::setCurrent(int row) {
    if (row == current_ || (row >= 0 && (!holds(row) || at(row).isHeading))) {
        return;
    }
    current_ = row;
    emit currentChanged();
}

int GridModel::rowOf(const QString& key) const {
    for (const auto& [page, rows] : pages_) {
        for (std::size_t i = 0; i < rows.size(); ++i) {
            if (rows[i].key == key) {
                return page * kPageRows + static_cast<int>(i);
            }
        }
    }
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (rows_[i].key == key) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

int GridModel::next(int row, int by) const {
    for (int at = row + by; holds(at); at += by) {
        if (!this->at(at).isHeading) {
            return at;
        }
    }
    return row;
}

QString GridModel::columnTitle(int column) const {
    return column >= 0 && column < columnCount() ? columns_[static_cast<std::size_t>(column)].title
                                                 : QString();
}

int GridModel::columnLetters(int column) const {
    return column >= 0 && column < columnCount()
               ? columns_[static_cast<std::size_t>(column)].letters
               : 0;
}

bool GridModel::columnTakesRest(int column) const {
    return column >= 0 && column < columnCount() &&
           columns_[static_cast<std::size_t>(column)].takesRest;
}

bool GridModel::columnIsNumber(int column) const {
    return column >= 0 && column < columnCount() &&
           columns_[static_cast<std::size_t>(column)].isNumber;
}

} // namespace bullace::desk
