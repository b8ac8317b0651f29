#include "tablet/choice_model.hpp"

#include <algorithm>

namespace bullace::tablet {

int ChoiceModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : count();
}

QVariant ChoiceModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !holds(index.row())) {
        return {};
    }
    const Choice& choice = at(index.row());
    switch (role) {
    case TextRole:
    case Qt::DisplayRole:
        return choice.text;
    case DetailRole:
        return choice.detail;
    case KeyHintRole:
        return choice.keyHint;
    case IsChosenRole:
        return choice.isChosen;
    case NameRole:
        if (!choice.name.isEmpty()) {
            return choice.name;
        }
        return choice.detail.isEmpty() ? choice.text : choice.text + ", " + choice.detail;
    default:
        return {};
    }
}

QHash<int, QByteArray> ChoiceModel::roleNames() const {
    return {{TextRole, "text"},
            {DetailRole, "detail"},
            {KeyHintRole, "keyHint"},
            {IsChosenRole, "isChosen"},
            {NameRole, "name"}};
}

void ChoiceModel::set(std::vector<Choice> choices) {
    const int before = count();
    const int after = static_cast<int>(choices.size());
    if (after < before) {
        beginRemoveRows({}, after, before - 1);
        choices_.resize(choices.size());
        endRemoveRows();
    }
    for (std::size_t i = 0; i < choices_.size(); ++i) {
        if (choices_[i] == choices[i]) {
            continue;
        }
        choices_[i] = choices[i];
        const QModelIndex row = index(static_cast<int>(i));
        emit dataChanged(row, row);
    }
    if (after > before) {
        beginInsertRows({}, before, after - 1);
        choices_ = std::move(choices);
        endInsertRows();
    }
    if (after != before) {
        emit countChanged();
    }
}

void ChoiceModel::number(std::vector<Choice>& choices) {
    for (std::size_t i = 0; i < choices.size() && i < 9; ++i) {
        choices[i].keyHint = QString::number(i + 1);
    }
}

int ChoiceModel::hinted(const QString& text) const {
    const auto found = std::find_if(choices_.begin(), choices_.end(), [&](const Choice& choice) {
        return !text.isEmpty() && choice.keyHint == text;
    });
    return found == choices_.end() ? -1 : static_cast<int>(found - choices_.begin());
}

} // namespace bullace::tablet
