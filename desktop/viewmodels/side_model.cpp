#include "desk/side_model.hpp"

namespace bullace::desk {

int SideModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(cards_.size());
}

QVariant SideModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() < 0 || index.row() >= rowCount()) {
        return {};
    }
    const SideCard& card = cards_[static_cast<std::size_t>(index.row())];
    switch (role) {
    case NumberRole:
        return card.number;
    case Qt::DisplayRole:
    case ValueRole:
        return card.value;
    case DetailRole:
        return card.detail;
    case WhoRole:
        return card.who;
    case WhenRole:
        return card.when;
    case DeviceRole:
        return card.device;
    case MoreRole:
        return card.more;
    case IsChosenRole:
        return card.isChosen;
    case SpokenRole: {
        QStringList parts;
        for (const QString& part :
             {card.number, card.value, card.detail, card.who, card.when, card.device, card.more}) {
            if (!part.isEmpty()) {
                parts << part;
            }
        }
        return parts.join(QStringLiteral(", "));
    }
    default:
        return {};
    }
}

QHash<int, QByteArray> SideModel::roleNames() const {
    return {{NumberRole, "number"},
            {ValueRole, "value"},
            {DetailRole, "detail"},
            {WhoRole, "who"},
            {WhenRole, "when"},
            {DeviceRole, "device"},
            {MoreRole, "more"},
            {IsChosenRole, "isChosen"},
            {SpokenRole, "spoken"}};
}

void SideModel::set(std::vector<SideCard> cards) {
    if (cards == cards_) {
        return;
    }
    if (cards.size() == cards_.size() && !cards.empty()) {
        cards_ = std::move(cards);
        emit dataChanged(index(0), index(rowCount() - 1));
        return;
    }
    beginResetModel();
    cards_ = std::move(cards);
    endResetModel();
}

} // namespace bullace::desk
