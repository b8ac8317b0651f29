#include "camera/photo.hpp"

#include <QBuffer>
#include <QColorSpace>
#include <QImageWriter>
#include <QPainter>

#include <algorithm>

namespace bullace::camera {

namespace {

// Steps of the JPEG quality until the file is small enough; 85 first, which shows lenticels. Common
// practice, no source.
constexpr int kBestQuality = 85;
constexpr int kQualityStep = 15;
constexpr int kLeastQuality = 10;

// The pixels alone, painted onto a new sheet: texts and profiles stay with the old one.
QImage pixelsOnly(const QImage& picture, int longSide) {
    QImage source = picture.convertToFormat(QImage::Format_ARGB32);
    if (source.colorSpace().isValid()) {
        source.convertToColorSpace(QColorSpace(QColorSpace::SRgb));
    }
    if (std::max(source.width(), source.height()) > longSide) {
        // A strip may be so narrow that its short side would vanish.
        const QSize size = source.size().scaled(longSide, longSide, Qt::KeepAspectRatio);
        source =
            source.scaled(size.expandedTo({1, 1}), Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    }
    source.setDevicePixelRatio(1);
    QImage sheet(source.size(), QImage::Format_RGB32);
    sheet.fill(Qt::white);
    QPainter painter(&sheet);
    painter.drawImage(0, 0, source);
    painter.end();
    return sheet;
}

QByteArray jpegOf(const QImage& picture, int quality) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    QImageWriter writer(&buffer, "jpeg");
    writer.setQuality(quality);
    writer.setOptimizedWrite(true);
    return writer.write(picture) ? bytes : QByteArray();
}

} // namespace

QByteArray photoBytes(const QImage& picture) {
    if (picture.isNull()) {
        return {};
    }
    for (int longSide = kPhotoLongSide; longSide > 0; longSide /= 2) {
        const QImage pixels = pixelsOnly(picture, longSide);
        for (int quality = kBestQuality; quality >= kLeastQuality; quality -= kQualityStep) {
            QByteArray bytes = jpegOf(pixels, quality);
            if (bytes.size() < kPhotoBytes) {
                return bytes;
            }
        }
    }
    return {};
}

} // namespace bullace::camera
