// The stops around the one where a person stands, as the wire draws them: her own last ones with
// what she noted there, and the next ones. What others or earlier visits noted is never in it.
#pragma once

#include <QAbstractListModel>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <cstddef>
#include <vector>

namespace bullace::quick {

struct WireStop {
    QString place;
    QString tag;
    int kind = 0; // quick::WireItem::Kind
    bool isMarked = false;
    bool isHere = false;
    std::size_t stop = 0; // of the walk
    bool operator==(const WireStop&) const = default;
};

class WireModel : public QAbstractListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the page's view-model")

public:
    enum Role { PlaceRole = Qt::UserRole + 1, TagRole, KindRole, IsMarkedRole, IsHereRole };

    explicit WireModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

    [[nodiscard]] const std::vector<WireStop>& stops() const { return stops_; }
    void set(std::vector<WireStop> stops);

private:
    std::vector<WireStop> stops_;
};

} // namespace bullace::quick
