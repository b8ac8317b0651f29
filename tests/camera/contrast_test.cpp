#include "camera/contrast.hpp"

#include "code_pictures.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using camera::drawnApart;

namespace {

// Upright bars, five pixels wide, of two greys.
QImage bars(QSize size, int dark, int bright) {
    QImage picture(size, QImage::Format_Grayscale8);
    for (int y = 0; y < size.height(); ++y) {
        uchar* line = picture.scanLine(y);
        for (int x = 0; x < size.width(); ++x) {
            line[x] = static_cast<uchar>(x / 5 % 2 == 0 ? dark : bright);
        }
    }
    return picture;
}

} // namespace

TEST_CASE("pale bars become black and white, to the very edges of the picture") {
    CHECK(drawnApart(bars({83, 61}, 150, 180)) == bars({83, 61}, 0, 255));
    CHECK(drawnApart(bars({83, 61}, 0, 255)) == bars({83, 61}, 0, 255));
}

TEST_CASE("a pale part is drawn apart though there is bright and dark elsewhere") {
    QImage picture = bars({400, 80}, 0, 255);
    QPainter painter(&picture);
    painter.drawImage(200, 0, bars({200, 80}, 100, 140));
    painter.end();
    CHECK(drawnApart(picture).copy(260, 0, 140, 80) == bars({140, 80}, 0, 255));
}

TEST_CASE("what is all of one grey but for the camera's noise is left bare") {
    const QImage ground = support::inLight(support::noise({100, 100}, 3), 80, 100);
    QImage white(100, 100, QImage::Format_Grayscale8);
    white.fill(255);
    CHECK(drawnApart(ground) == white);
}

TEST_CASE("the smallest and no picture are drawn apart without harm") {
    CHECK(drawnApart(QImage()).isNull());
    CHECK(drawnApart(bars({1, 1}, 7, 9)).size() == QSize(1, 1));
}
