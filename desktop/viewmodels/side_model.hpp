// The values of one conflict side by side, each with its number key.
#pragma once

#include <QAbstractListModel>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <vector>

namespace bullace::desk {

struct SideCard {
    QString number; // its key
    QString value;  // with its unit
    QString detail; // what a code stands for
    QString who;    // empty while names are hidden
    QString when;
    QString device;
    QString more; // a reason, what was typed, that it is a ruling
    bool isPhotographed = false;
    bool isChosen = false;
    bool operator==(const SideCard&) const = default;
};

class SideModel : public QAbstractListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the page's view-model")

public:
    enum Role {
        NumberRole = Qt::UserRole + 1,
        ValueRole,
        DetailRole,
        WhoRole,
        WhenRole,
        DeviceRole,
        MoreRole,
        IsChosenRole,
        SpokenRole
    };
    Q_ENUM(Role)

    explicit SideModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

    void set(std::vector<SideCard> cards);
    [[nodiscard]] const std::vector<SideCard>& cards() const { return cards_; }

private:
    std::vector<SideCard> cards_;
};

} // namespace bullace::desk
