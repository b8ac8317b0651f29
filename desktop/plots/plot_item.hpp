// A plot on the glass.
#pragma once

#include "plots/themed_item.hpp"

#include <QPointer>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

QT_BEGIN_NAMESPACE
class QQmlEngine;
QT_END_NAMESPACE

namespace bullace::plots {

// What is to be plotted; a view-model owns one and hands it to the page.
class PlotSource : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("it belongs to a view-model")
    Q_PROPERTY(QString title READ title NOTIFY changed)
    Q_PROPERTY(QString summary READ summary NOTIFY changed) // the plot in words
    Q_PROPERTY(QStringList tableHeader READ tableHeader NOTIFY changed)
    Q_PROPERTY(int tableRowCount READ tableRowCount NOTIFY changed)

public:
    using QObject::QObject;
    [[nodiscard]] const report::Plot& plot() const { return plot_; }
    void setPlot(report::Plot plot);
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString summary() const;
    [[nodiscard]] QStringList tableHeader() const;
    [[nodiscard]] int tableRowCount() const { return static_cast<int>(rows_.size()); }
    // Empty for no such row.
    Q_INVOKABLE [[nodiscard]] QStringList tableRow(int row) const;

signals:
    void changed();

private:
    report::Plot plot_;
    QStringList header_;
    std::vector<QStringList> rows_;
};

class PlotItem : public bullace::plots::ThemedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(bullace::plots::PlotSource* source READ source WRITE setSource NOTIFY sourceChanged)
    Q_PROPERTY(QString summary READ summary NOTIFY plotChanged)

public:
    explicit PlotItem(QQuickItem* parent = nullptr) : ThemedItem(parent) {}

    [[nodiscard]] PlotSource* source() const { return source_; }
    void setSource(PlotSource* source);
    [[nodiscard]] QString summary() const;

signals:
    void sourceChanged();
    void plotChanged();

protected:
    void updatePolish() override;

private:
    QPointer<PlotSource> source_;
};

// Makes `import Bullace.Plots` work in this engine; registerControls() must have been called.
void registerPlots(QQmlEngine& engine);

} // namespace bullace::plots
