#include "quick/palette.hpp"

#include "core/report/colour.hpp"

namespace bullace::quick {

namespace {

report::Rgb rgbOf(const QColor& colour) {
    return {colour.redF(), colour.greenF(), colour.blueF()};
}

} // namespace

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
    static const QList<QColor> fills = {QColor(0x00, 0x72, 0xB2),
                                        QColor(0xD5, 0x5E, 0x00),
                                        QColor(0x00, 0x9E, 0x73),
                                        QColor(0x00, 0x00, 0x00),
                                        QColor(0xE6, 0x9F, 0x00),
                                        QColor(0x56, 0xB4, 0xE9),
                                        QColor(0xCC, 0x79, 0xA7),
                                        QColor(0xF0, 0xE4, 0x42)};
    return fills;
}

const QList<QColor>& stageFills() {
    static const QList<QColor> fills = {QColor(0x44, 0x01, 0x54),
                                        QColor(0x44, 0x39, 0x83),
                                        QColor(0x31, 0x68, 0x8E),
                                        QColor(0x21, 0x91, 0x8C),
                                        QColor(0x35, 0xB7, 0x79),
                                        QColor(0x90, 0xD7, 0x43),
                                        QColor(0xFD, 0xE7, 0x25)};
    return fills;
}

QColor inkOn(const QColor& fill) {
    const report::Rgb ground = rgbOf(fill);
    const double black = report::contrast({0, 0, 0}, ground);
    const double white = report::contrast({1, 1, 1}, ground);
    return black >= white ? QColor(0, 0, 0) : QColor(255, 255, 255);
}

} // namespace bullace::quick
