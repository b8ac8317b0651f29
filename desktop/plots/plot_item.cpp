#include "plots/plot_item.hpp"

#include "plots/plot_words.hpp"

#include "quick/words.hpp"

#include <QQmlEngine>

#include <utility>

// Written by Qt for the module.
extern void qml_register_types_Bullace_Plots();

namespace bullace::plots {

void PlotSource::setPlot(report::Plot plot) {
    plot_ = std::move(plot);
    auto table = plotTableText(plot_);
    header_ = std::move(table.header);
    rows_ = std::move(table.rows);
    emit changed();
}

QString PlotSource::title() const {
    return quick::fromText(plot_.title);
}

QString PlotSource::summary() const {
    return plotSummary(plot_);
}

QStringList PlotSource::tableHeader() const {
    return header_;
}

QStringList PlotSource::tableRow(int row) const {
    const auto index = static_cast<std::size_t>(row);
    return row >= 0 && index < rows_.size() ? rows_[index] : QStringList();
}

void PlotItem::setSource(PlotSource* source) {
    if (source == source_) {
        return;
    }
    if (source_ != nullptr) {
        source_->disconnect(this);
    }
    source_ = source;
    if (source_ != nullptr) {
        connect(source_, &PlotSource::changed, this, [this] {
            renew();
            emit plotChanged();
        });
    }
    renew();
    emit sourceChanged();
    emit plotChanged();
}

QString PlotItem::summary() const {
    return source_ == nullptr ? QString() : source_->summary();
}

void PlotItem::updatePolish() {
    forgetPicture();
    if (source_ != nullptr && hasRoom()) {
        draw([this](QPainter& painter, const PlotLook& look) {
            paintPlot(painter, source_->plot(), look, size());
        });
    }
}

void registerPlots(QQmlEngine& engine) {
    // Named so that the linker keeps the file that it is in, which registers itself.
    [[maybe_unused]] static void (*const volatile kept)() = &qml_register_types_Bullace_Plots;
    engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
}

} // namespace bullace::plots
