#include "quick/wire_model.hpp"

namespace bullace::quick {

int WireModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(stops_.size());
}

QVariant WireModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() < 0 || index.row() >= rowCount()) {
        return {};
    }
    const WireStop& stop = stops_[static_cast<std::size_t>(index.row())];
    switch (role) {
    case PlaceRole:
    case Qt::DisplayRole:
        return stop.place;
    case TagRole:
        return stop.tag;
    case KindRole:
        return stop.kind;
    case IsMarkedRole:
        return stop.isMarked;
    case IsHereRole:
        return stop.isHere;
    default:
        return {};
    }
}

QHash<int, QByteArray> WireModel::roleNames() const {
    return {{PlaceRole, "place"},
            {TagRole, "tag"},
            {KindRole, "kind"},
            {IsMarkedRole, "isMarked"},
            {IsHereRole, "isHere"}};
}

// The picture is one: a stop further, and every row of it is another.
void WireModel::set(std::vector<WireStop> stops) {
    if (stops == stops_) {
        return;
    }
    if (stops.size() == stops_.size() && !stops.empty()) {
        stops_ = std::move(stops);
        emit dataChanged(index(0), index(rowCount() - 1));
        return;
    }
    beginResetModel();
    stops_ = std::move(stops);
    endResetModel();
}

} // namespace bullace::quick
