// What can be done now, each with its key: the strip at the foot of every page of the desk.
#pragma once

#include <QAbstractListModel>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <vector>

namespace bullace::desk {

struct Action {
    QString id;      // what it does, for the page; not shown
    QString text;    // a verb and what it works on
    QString keyText; // as QKeySequence writes it: "1", "B", "Ctrl+Z", "Space"
    bool isEnabled = true;
    bool isChosen = false;
    bool operator==(const Action&) const = default;
};

class ActionModel : public QAbstractListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the page's view-model")

public:
    enum Role { IdRole = Qt::UserRole + 1, TextRole, KeyTextRole, IsEnabledRole, IsChosenRole };
    Q_ENUM(Role)

    explicit ActionModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

    void set(std::vector<Action> actions);
    // The enabled action of the key with its modifiers; an empty id where there is none.
    [[nodiscard]] QString idOf(int key, int modifiers) const;
    [[nodiscard]] bool isEnabled(const QString& id) const;
    [[nodiscard]] const std::vector<Action>& actions() const { return actions_; }

private:
    std::vector<Action> actions_;
};

} // namespace bullace::desk
