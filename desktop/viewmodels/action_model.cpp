#include "desk/action_model.hpp"

#include <QKeySequence>

#include <algorithm>

namespace bullace::desk {

int ActionModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(actions_.size());
}

QVariant ActionModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() < 0 || index.row() >= rowCount()) {
        return {};
    }
    const Action& action = actions_[static_cast<std::size_t>(index.row())];
    switch (role) {
    case IdRole:
        return action.id;
    case Qt::DisplayRole:
    case TextRole:
        return action.text;
    case KeyTextRole:
        return QKeySequence(action.keyText, QKeySequence::PortableText)
            .toString(QKeySequence::NativeText);
    case IsEnabledRole:
        return action.isEnabled;
    case IsChosenRole:
        return action.isChosen;
    default:
        return {};
    }
}

QHash<int, QByteArray> ActionModel::roleNames() const {
    return {{IdRole, "actionId"},
            {TextRole, "label"},
            {KeyTextRole, "keyName"},
            {IsEnabledRole, "isEnabled"},
            {IsChosenRole, "isChosen"}};
}

void ActionModel::set(std::vector<Action> actions) {
    if (actions == actions_) {
        return;
    }
    const int before = rowCount();
    const int after = static_cast<int>(actions.size());
    if (after < before) {
        beginRemoveRows({}, after, before - 1);
        actions_.resize(actions.size());
        endRemoveRows();
    }
    for (std::size_t i = 0; i < actions_.size(); ++i) {
        if (actions_[i] != actions[i]) {
            actions_[i] = actions[i];
            emit dataChanged(index(static_cast<int>(i)), index(static_cast<int>(i)));
        }
    }
    if (after > before) {
        beginInsertRows({}, before, after - 1);
        actions_ = std::move(actions);
        endInsertRows();
    }
}

QString ActionModel::idOf(int key, int modifiers) const {
    // The number pad's digits are digits.
    const int plain = modifiers & ~static_cast<int>(Qt::KeypadModifier);
    const QKeySequence pressed(plain | key);
    for (const Action& action : actions_) {
        if (action.isEnabled && !action.keyText.isEmpty() &&
            QKeySequence(action.keyText, QKeySequence::PortableText) == pressed) {
            return action.id;
        }
    }
    return {};
}

bool ActionModel::isEnabled(const QString& id) const {
    return std::any_of(actions_.begin(), actions_.end(), [&id](const Action& action) {
        return action.id == id && action.isEnabled;
    });
}

} // namespace bullace::desk
