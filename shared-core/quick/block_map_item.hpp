// The block map on the glass: painted when its picture, its size or its zoom changes, and not when
// the cursor moves.
#pragma once

#include "quick/block_map.hpp"

#include <QPointer>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

#include <memory>

namespace bullace::quick {

class BlockMapLayout;
class Theme;

// What is to be mapped; a view-model owns one and hands it to the page.
class BlockMapSource : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("it belongs to a view-model")

public:
    using QObject::QObject;
    [[nodiscard]] const BlockMapPicture& picture() const { return picture_; }
    void setPicture(BlockMapPicture picture);

signals:
    void changed();

private:
    BlockMapPicture picture_;
};

// Keys: arrows move the cursor from vine to vine, Home and End to the row's ends, Page Up and Page
// Down ten rows; Enter chooses; + and - zoom, 0 shows all. The wheel moves what is zoomed, with
// Ctrl it zooms about the pointer; dragging moves it, too. A click moves the cursor and chooses.
class BlockMapItem : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(
        bullace::quick::BlockMapSource* source READ source WRITE setSource NOTIFY sourceChanged)
    Q_PROPERTY(double zoom READ zoom WRITE setZoom NOTIFY viewChanged)
    // The position under the cursor; empty where the map has no vine. A position that is not on the
    // map is not taken.
    Q_PROPERTY(QString cursor READ cursor WRITE setCursor NOTIFY cursorMoved)
    Q_PROPERTY(QString cursorWords READ cursorWords NOTIFY cursorMoved) // the cell in words
    Q_PROPERTY(QRectF cursorBox READ cursorBox NOTIFY cursorMoved)      // where it is seen
    Q_PROPERTY(QString summary READ summary NOTIFY pictureChanged)      // the map in words

public:
    explicit BlockMapItem(QQuickItem* parent = nullptr);
    ~BlockMapItem() override;

    [[nodiscard]] BlockMapSource* source() const { return source_; }
    void setSource(BlockMapSource* source);
    [[nodiscard]] double zoom() const { return look_.zoom; }
    void setZoom(double value); // 1 to 12; about the cursor
    [[nodiscard]] QString cursor() const;
    void setCursor(const QString& position);
    [[nodiscard]] QString cursorWords() const;
    [[nodiscard]] QRectF cursorBox() const;
    [[nodiscard]] QString summary() const;

    void paint(QPainter* painter) override;
    [[nodiscard]] int paintings() const { return paintings_; } // how often it was painted so far

signals:
    void sourceChanged();
    void pictureChanged();
    void viewChanged();
    void cursorMoved();
    void chosen(const QString& position);

protected:
    void componentComplete() override;
    void geometryChange(const QRectF& now, const QRectF& before) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    [[nodiscard]] const BlockMapPicture& picture() const;
    [[nodiscard]] const BlockMapLayout& layout() const;
    void takePicture();
    void renew();
    void zoomAbout(QPointF point, double zoom);
    void panTo(QPointF pan);
    void keepInside();
    void showCursor();
    void placeCursor(BlockMapPlace place);
    [[nodiscard]] bool moveCursor(int key);
    [[nodiscard]] std::optional<BlockMapPlace> nearest(std::size_t row, double vine) const;
    [[nodiscard]] std::size_t rowBeside(int by) const;
    void choose();

    QPointer<BlockMapSource> source_;
    QPointer<Theme> theme_;
    BlockMapLook look_;
    mutable std::unique_ptr<BlockMapLayout> layout_;
    std::optional<BlockMapPlace> cursor_;
    QPointF pressedAt_;
    QPointF pannedAt_;
    bool isDragged_ = false;
    int paintings_ = 0;
};

} // namespace bullace::quick
