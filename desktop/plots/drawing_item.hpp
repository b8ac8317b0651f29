// A drawing on the glass: all of it, or a part that is moved and made larger.
#pragma once

#include "plots/drawing_painter.hpp"
#include "plots/themed_item.hpp"

#include <QPointer>
#include <QtQml/qqmlregistration.h>

#include <optional>

namespace bullace::plots {

// What is to be drawn; a view-model owns one and hands it to the page.
class DrawingSource : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("it belongs to a view-model")
    Q_PROPERTY(QString title READ title NOTIFY changed)
    Q_PROPERTY(QString summary READ summary NOTIFY changed)

public:
    using QObject::QObject;
    [[nodiscard]] const report::Drawing& drawing() const { return drawing_; }
    void setDrawing(report::Drawing drawing);
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString summary() const; // the drawing in words

signals:
    void changed();

private:
    report::Drawing drawing_;
};

class DrawingItem : public bullace::plots::ThemedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(bullace::plots::DrawingSource* source READ source WRITE setSource NOTIFY changed)
    // Whether some of it is out of sight.
    Q_PROPERTY(bool isPart READ isPart NOTIFY viewChanged)

public:
    explicit DrawingItem(QQuickItem* parent = nullptr) : ThemedItem(parent) {}

    [[nodiscard]] DrawingSource* source() const { return source_; }
    void setSource(DrawingSource* source);
    [[nodiscard]] bool isPart() const;
    [[nodiscard]] const std::optional<DrawingView>& view() const { return view_; }
    // What is seen moves by pixels: to the right and down what lies further on.
    Q_INVOKABLE void move(qreal right, qreal down);
    // By quarters and eighths of what is seen.
    Q_INVOKABLE void step(qreal right, qreal down);
    Q_INVOKABLE void enlarge(qreal times);
    Q_INVOKABLE void showAll();

signals:
    void changed();
    void viewChanged();

protected:
    void renew() override; // as it is first seen
    void updatePolish() override;

private:
    [[nodiscard]] bool isReady() const;
    [[nodiscard]] QSizeF room() const;
    void see(const DrawingView& view);

    QPointer<DrawingSource> source_;
    std::optional<DrawingView> view_;
};

} // namespace bullace::plots
