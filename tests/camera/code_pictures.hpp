// What happens to a label between the printer and the camera: turned, shrunk, dimmed, dirty.
#pragma once

#include <QColor>
#include <QImage>
#include <QPainter>
#include <QTransform>

#include <algorithm>
#include <random>

namespace bullace::support {

// The picture turned by `degrees` on a white ground that holds all of it.
inline QImage turned(const QImage& picture, double degrees) {
    const QImage rotated = picture.convertToFormat(QImage::Format_ARGB32)
                               .transformed(QTransform().rotate(degrees), Qt::SmoothTransformation);
    QImage ground(rotated.size() + QSize(40, 40), QImage::Format_RGB32);
    ground.fill(Qt::white);
    QPainter painter(&ground);
    painter.drawImage(20, 20, rotated);
    return ground;
}

// Black becomes `black` and white `white` (0 to 255), what lies between in proportion.
inline QImage inLight(const QImage& picture, int black, int white) {
    QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
    for (int y = 0; y < grey.height(); ++y) {
        uchar* line = grey.scanLine(y);
        for (int x = 0; x < grey.width(); ++x) {
            line[x] = static_cast<uchar>(black + (white - black) * line[x] / 255);
        }
    }
    return grey;
}

// A blot of `modules` × `modules` with its lower right corner on that of a qrPicture's modules: the
// corner without a finder pattern.
inline QImage withDirtyCorner(const QImage& picture, int modulePx, int modules, QColor mud) {
    QImage dirty = picture.convertToFormat(QImage::Format_RGB32);
    QPainter painter(&dirty);
    const int end = picture.width() - 4 * modulePx;
    const int side = modules * modulePx;
    painter.fillRect(end - side, end - side, side, side, mud);
    return dirty;
}

inline QImage noise(QSize size, unsigned seed) {
    std::mt19937 engine(seed);
    std::uniform_int_distribution<int> grey(0, 255);
    QImage picture(size, QImage::Format_Grayscale8);
    for (int y = 0; y < size.height(); ++y) {
        uchar* line = picture.scanLine(y);
        for (int x = 0; x < size.width(); ++x) {
            line[x] = static_cast<uchar>(grey(engine));
        }
    }
    return picture;
}

// Leaves and sky, from black to white, 1280×720, with the label in the middle at `modulePx` pixels
// a module and a camera's noise (SD 3 greys) over all.
inline QImage amongLeaves(const QImage& label, double modulePx, unsigned seed) {
    QImage scene = noise({80, 45}, seed)
                       .scaled(1280, 720, Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
                       .convertToFormat(QImage::Format_RGB32);
    const int side = static_cast<int>(33 * modulePx);
    const QImage seen = label.scaled(side, side, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    QPainter painter(&scene);
    painter.drawImage((1280 - side) / 2, (720 - side) / 2, seen);
    painter.end();
    QImage grey = scene.convertToFormat(QImage::Format_Grayscale8);
    std::mt19937 engine(seed);
    std::normal_distribution<double> grain(0, 3);
    for (int y = 0; y < grey.height(); ++y) {
        uchar* line = grey.scanLine(y);
        for (int x = 0; x < grey.width(); ++x) {
            line[x] = static_cast<uchar>(std::clamp(line[x] + grain(engine), 0.0, 255.0));
        }
    }
    return grey;
}

} // namespace bullace::support
