// The wire on the glass: follows a model of stops, and is painted only when that changes.
#pragma once

#include "quick/wire.hpp"

#include <QAbstractItemModel>
#include <QPointer>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

namespace bullace::quick {

class Theme;

// `vines` is a list model with the roles place and tag (text), kind (WireItem.Kind), isMarked and
// isHere (yes or no), in walking order. The model is borrowed.
class WireItem : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QAbstractItemModel* vines READ vines WRITE setVines NOTIFY vinesChanged)
    Q_PROPERTY(int direction READ direction WRITE setDirection NOTIFY sceneChanged)
    Q_PROPERTY(Side side READ side WRITE setSide NOTIFY sceneChanged)
    Q_PROPERTY(bool hasFirstPost READ hasFirstPost WRITE setFirstPost NOTIFY sceneChanged)
    Q_PROPERTY(bool hasLastPost READ hasLastPost WRITE setLastPost NOTIFY sceneChanged)
    // How many vines are drawn; from left to right they are slots 0 to slotCount - 1.
    Q_PROPERTY(int slotCount READ slotCount NOTIFY sceneChanged)
    // The picture in words.
    Q_PROPERTY(QString summary READ summary NOTIFY sceneChanged)

public:
    enum Kind {
        Plain = WireVine::Plain,
        Missing = WireVine::Missing,
        Dead = WireVine::Dead,
        NotObserved = WireVine::NotObserved,
        WalkedPast = WireVine::WalkedPast
    };
    Q_ENUM(Kind)
    enum Side { Whole = WireScene::Whole, Left = WireScene::Left, Right = WireScene::Right };
    Q_ENUM(Side)

    explicit WireItem(QQuickItem* parent = nullptr);

    [[nodiscard]] QAbstractItemModel* vines() const { return model_; }
    void setVines(QAbstractItemModel* model);
    [[nodiscard]] int direction() const { return scene_.direction; }
    void setDirection(int value);
    [[nodiscard]] Side side() const { return static_cast<Side>(scene_.side); }
    void setSide(Side value);
    [[nodiscard]] bool hasFirstPost() const { return scene_.hasFirstPost; }
    void setFirstPost(bool value);
    [[nodiscard]] bool hasLastPost() const { return scene_.hasLastPost; }
    void setLastPost(bool value);

    [[nodiscard]] int slotCount() const;
    [[nodiscard]] QString summary() const;
    // Of the slot: its rectangle in this item, the row of `vines` it shows (-1 for no such slot),
    // its vine in words.
    Q_INVOKABLE [[nodiscard]] QRectF slotBox(int slot) const;
    Q_INVOKABLE [[nodiscard]] int slotVine(int slot) const;
    Q_INVOKABLE [[nodiscard]] QString slotName(int slot) const;

    [[nodiscard]] const WireScene& scene() const { return scene_; }

    void paint(QPainter* painter) override;

signals:
    void vinesChanged();
    void sceneChanged();

protected:
    void componentComplete() override;
    void geometryChange(const QRectF& now, const QRectF& before) override;

private:
    void read();
    void renew();
    [[nodiscard]] WireStyle style() const;
    [[nodiscard]] QString wordsOf(const WireVine& vine) const;

    QPointer<QAbstractItemModel> model_;
    QPointer<Theme> theme_;
    WireScene scene_;
};

// A whole row between its two posts.
class RowItem : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(int vineCount READ vineCount WRITE setVineCount NOTIFY vineCountChanged)

public:
    explicit RowItem(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}

    [[nodiscard]] int vineCount() const { return vineCount_; }
    void setVineCount(int value);
    void paint(QPainter* painter) override;

signals:
    void vineCountChanged();

protected:
    void componentComplete() override;

private:
    QPointer<Theme> theme_;
    int vineCount_ = 0;
};

} // namespace bullace::quick
