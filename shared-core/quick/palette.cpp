#include "quick/palette.hpp"

#include "core/report/palettes.hpp"

#include <span>

namespace bullace::quick {

namespace {

report::Rgb rgbOf(const QColor& colour) {
    return {colour.redF(), colour.greenF(), colour.blueF()};
}

QList<QColor> coloursOf(std::span<const report::Rgb> fills) {
    QList<QColor> colours;
    for (const report::Rgb& fill : fills) {
        colours << colourOf(fill);
    }
    return colours;
}

} // namespace

QColor colourOf(const report::Rgb& colour) {
    return QColor(qRound(colour.red * 255), qRound(colour.green * 255), qRound(colour.blue * 255));
}

Palette paletteOf(Light light) {
    const QColor black(0, 0, 0);
    const QColor white(255, 255, 255);
    if (light == Light::Day) {
        return {black, white, black, white, white, black, black, QColor(0x00, 0x72, 0xB2)};
    }
    const QColor lamp(0xFF, 0xF4, 0xE0);
    const QColor night(0x0A, 0x0A, 0x0A);
    return {
        lamp, night, lamp, QColor(0x24, 0x24, 0x24), night, lamp, lamp, QColor(0x56, 0xB4, 0xE9)};
}

const QList<QColor>& categoryFills() {
    static const QList<QColor> fills = coloursOf(report::categoryColours());
    return fills;
}

const QList<QColor>& stageFills() {
    static const QList<QColor> fills = coloursOf(report::orderedColours());
    return fills;
}

QColor inkOn(const QColor& fill) {
    const report::Rgb ground = rgbOf(fill);
    const double black = report::contrast({0, 0, 0}, ground);
    const double white = report::contrast({1, 1, 1}, ground);
    return black >= white ? QColor(0, 0, 0) : QColor(255, 255, 255);
}

} // namespace bullace::quick
