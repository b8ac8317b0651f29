#include "camera/contrast.hpp"

#include <QRect>

#include <algorithm>
#include <cstddef>
#include <vector>

namespace bullace::camera {

namespace {

constexpr int kSquarePx = 8;       // three modules of a label that is just near enough
constexpr int kLeastContrast = 24; // greys; below it there is only the camera's own noise

// The darkest and the brightest grey of a part of the picture.
struct Light {
    int dark = 255;
    int bright = 0;
};

Light operator+(Light one, Light other) {
    return {std::min(one.dark, other.dark), std::max(one.bright, other.bright)};
}

// The squares of kSquarePx of a picture; those at its right and lower edge may be smaller.
struct Squares {
    std::vector<Light> lights; // row by row
    int columns = 0;
    int rows = 0;
    [[nodiscard]] std::size_t placeOf(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
               static_cast<std::size_t>(column);
    }
};

Squares squaresOf(const QImage& grey) {
    Squares squares;
    squares.columns = (grey.width() + kSquarePx - 1) / kSquarePx;
    squares.rows = (grey.height() + kSquarePx - 1) / kSquarePx;
    squares.lights.resize(static_cast<std::size_t>(squares.columns) *
                          static_cast<std::size_t>(squares.rows));
    for (int y = 0; y < grey.height(); ++y) {
        const uchar* line = grey.constScanLine(y);
        Light* row = squares.lights.data() + squares.placeOf(0, y / kSquarePx);
        for (int x = 0; x < grey.width(); ++x) {
            Light& light = row[x / kSquarePx];
            light = light + Light{line[x], line[x]};
        }
    }
    return squares;
}

Light lightWithin(const Squares& squares, int column, int row, int reach) {
    Light sum;
    for (int y = std::max(row - reach, 0); y <= std::min(row + reach, squares.rows - 1); ++y) {
        for (int x = std::max(column - reach, 0);
             x <= std::min(column + reach, squares.columns - 1);
             ++x) {
            sum = sum + squares.lights[squares.placeOf(x, y)];
        }
    }
    return sum;
}

// Of the square and as few neighbours as show both black and white: beyond the code's white margin
// there may be bright sky or deep shade, which must not be what its greys are measured by.
Light lightAround(const Squares& squares, int column, int row) {
    Light light;
    for (const int reach : {1, 2, 4}) {
        light = lightWithin(squares, column, row, reach);
        if (light.bright - light.dark >= kLeastContrast) {
            break;
        }
    }
    return light;
}

// The greys of a square from black to white; white where there is only the camera's own noise.
void stretchSquare(QImage& grey, QRect square, Light light) {
    const int range = light.bright - light.dark;
    for (int y = square.top(); y <= square.bottom(); ++y) {
        uchar* line = grey.scanLine(y) + square.left();
        std::transform(line, line + square.width(), line, [light, range](uchar pixel) {
            const int stretched = range < kLeastContrast ? 255 : (pixel - light.dark) * 255 / range;
            return static_cast<uchar>(stretched);
        });
    }
}

} // namespace

QImage drawnApart(const QImage& picture) {
    const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
    const Squares squares = squaresOf(grey);
    QImage apart = grey;
    for (int row = 0; row < squares.rows; ++row) {
        for (int column = 0; column < squares.columns; ++column) {
            const QRect square(column * kSquarePx, row * kSquarePx, kSquarePx, kSquarePx);
            stretchSquare(apart, square & grey.rect(), lightAround(squares, column, row));
        }
    }
    return apart;
}

} // namespace bullace::camera
