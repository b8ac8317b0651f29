#include "camera/photo.hpp"

#include "code_pictures.hpp"

#include <QColorSpace>

#include <doctest/doctest.h>

using namespace bullace;
using camera::kPhotoBytes;
using camera::photoBytes;

namespace {

QImage vine(QSize size) {
    QImage picture(size, QImage::Format_RGB32);
    picture.fill(QColor(60, 110, 40));
    QPainter painter(&picture);
    painter.fillRect(0, 0, size.width() / 2, size.height() / 2, QColor(70, 20, 90));
    return picture;
}

QImage readBack(const QByteArray& bytes) {
    return QImage::fromData(bytes, "JPEG");
}

} // namespace

TEST_CASE("a photo has at most 2048 pixels on its long side, and keeps its shape") {
    CHECK(readBack(photoBytes(vine({4096, 3072}))).size() == QSize(2048, 1536));
    CHECK(readBack(photoBytes(vine({3000, 4000}))).size() == QSize(1536, 2048));
    CHECK(readBack(photoBytes(vine({20000, 2}))).size() == QSize(2048, 1));
}

TEST_CASE("a small photo is not enlarged") {
    CHECK(readBack(photoBytes(vine({640, 480}))).size() == QSize(640, 480));
    CHECK(readBack(photoBytes(vine({1, 1}))).size() == QSize(1, 1));
}

TEST_CASE("a photo shows what the camera saw") {
    const QImage photo = readBack(photoBytes(vine({1280, 720})));
    const QColor berry = photo.pixelColor(100, 100);
    const QColor leaf = photo.pixelColor(1200, 700);
    CHECK(std::abs(berry.red() - 70) <= 4);
    CHECK(std::abs(berry.blue() - 90) <= 4);
    CHECK(std::abs(leaf.green() - 110) <= 4);
}

TEST_CASE("even a picture of nothing but noise is below one mebibyte") {
    QImage worst(2048, 2048, QImage::Format_RGB32);
    const QImage red = support::noise({2048, 2048}, 1);
    const QImage green = support::noise({2048, 2048}, 2);
    const QImage blue = support::noise({2048, 2048}, 3);
    for (int y = 0; y < 2048; ++y) {
        for (int x = 0; x < 2048; ++x) {
            worst.setPixel(
                x,
                y,
                qRgb(qGray(red.pixel(x, y)), qGray(green.pixel(x, y)), qGray(blue.pixel(x, y))));
        }
    }
    const QByteArray bytes = photoBytes(worst);
    CHECK(bytes.size() > 0);
    CHECK(bytes.size() < kPhotoBytes);
    CHECK_FALSE(readBack(bytes).isNull());
}

TEST_CASE("nothing but the picture is in the file: no owner, place, device or profile") {
    QImage picture = vine({640, 480});
    picture.setText(QStringLiteral("Artist"), QStringLiteral("Somebody-By-Name"));
    picture.setText(QStringLiteral("Description"), QStringLiteral("Wild-Site-7"));
    picture.setColorSpace(QColorSpace(QColorSpace::DisplayP3));
    picture.setDotsPerMeterX(1234);
    const QByteArray bytes = photoBytes(picture);
    REQUIRE(bytes.startsWith("\xff\xd8"));
    for (const char* foreign : {"Somebody", "Wild-Site", "Artist", "Exif", "ICC_PROFILE", "http"}) {
        CAPTURE(foreign);
        CHECK_FALSE(bytes.contains(foreign));
    }
    CHECK_FALSE(bytes.contains("\xff\xfe")); // a JPEG comment
    CHECK(readBack(bytes).textKeys().isEmpty());
}

TEST_CASE("a camera with colours of its own gives a photo with everybody's colours") {
    QImage picture(64, 64, QImage::Format_RGB32);
    picture.fill(QColor(200, 60, 60));
    picture.setColorSpace(QColorSpace(QColorSpace::DisplayP3));
    const QColor photo = readBack(photoBytes(picture)).pixelColor(30, 30);
    // 200, 60, 60 of Display P3 is 217, 42, 52 in sRGB: by the matrices of both standards.
    CHECK(std::abs(photo.red() - 217) <= 4);
    CHECK(std::abs(photo.green() - 42) <= 4);
    CHECK(std::abs(photo.blue() - 52) <= 4);
}

TEST_CASE("transparent parts of a picture become white, not black") {
    QImage picture(64, 64, QImage::Format_ARGB32);
    picture.fill(Qt::transparent);
    CHECK(readBack(photoBytes(picture)).pixelColor(30, 30).lightness() > 250);
}

TEST_CASE("no picture gives no photo") {
    CHECK(photoBytes(QImage()).isEmpty());
}
