#include "camera/code_reader.hpp"
#include "camera/device_camera.hpp"
#include "camera/picture_camera.hpp"

#include "quick/qr_code.hpp"

#include <QFile>
#include <QSignalSpy>

#include <doctest/doctest.h>

using namespace bullace::camera;
using bullace::quick::qrPicture;

namespace {

bool isOneSentence(const QString& words) {
    return words.size() > 10 && words.endsWith(QLatin1Char('.')) &&
           words.count(QLatin1Char('.')) == 1 && words.front().isUpper();
}

// Another media library than any that is installed, for the length of one test.
struct OtherMediaLibrary {
    OtherMediaLibrary() { qputenv("QT_MEDIA_BACKEND", "no-such-library"); }
    ~OtherMediaLibrary() {
        had_.isNull() ? qunsetenv("QT_MEDIA_BACKEND") : qputenv("QT_MEDIA_BACKEND", had_);
    }
    Q_DISABLE_COPY_MOVE(OtherMediaLibrary)
    QByteArray had_ = qgetenv("QT_MEDIA_BACKEND");
};

// Whether Qt's media library, and with it anything that could touch a device, is in this process.
bool mediaLibraryIsLoaded() {
    QFile maps(QStringLiteral("/proc/self/maps"));
    REQUIRE(maps.open(QIODevice::ReadOnly));
    return maps.readAll().contains("mediaplugin");
}

} // namespace

TEST_CASE("a camera touches nothing before it is started") {
    const bool before = mediaLibraryIsLoaded();
    DeviceCamera camera(CameraUse::Codes);
    camera.stop();
    CHECK(camera.isThere());
    CHECK_FALSE(camera.isOpen());
    CHECK(mediaLibraryIsLoaded() == before);
}

TEST_CASE("a tablet without that camera says so in one sentence, each time it is tried") {
    DeviceCamera camera(CameraUse::Photos, "no-such-camera");
    QSignalSpy failed(&camera, &Camera::failed);
    for (int tries = 1; tries <= 2; ++tries) {
        camera.start();
        REQUIRE(failed.count() == tries);
        CHECK(isOneSentence(failed.last().first().toString()));
        CHECK_FALSE(camera.isOpen());
        CHECK_FALSE(camera.isThere());
    }
    camera.stop();
    CHECK(failed.count() == 2);
}

TEST_CASE("a tablet without the media library says that it has no camera, and goes on") {
    const OtherMediaLibrary other;
    DeviceCamera camera(CameraUse::Codes);
    QSignalSpy failed(&camera, &Camera::failed);
    camera.start();
    REQUIRE(failed.count() == 1);
    CHECK(isOneSentence(failed.last().first().toString()));
}

TEST_CASE("a camera of pictures shows them one by one, and only while it is open") {
    PictureCamera camera({qrPicture("A1", 4), qrPicture("A2", 4)});
    QStringList read;
    QObject::connect(&camera, &Camera::frame, [&read](const QImage& picture) {
        read << QString::fromStdString(readCode(picture).value_or("nothing"));
    });
    CHECK_FALSE(camera.giveNext());
    camera.start();
    CHECK(camera.giveNext());
    CHECK(camera.giveNext());
    CHECK(camera.giveNext());
    camera.give(QImage(8, 8, QImage::Format_RGB32));
    camera.stop();
    camera.give(qrPicture("A3", 4));
    CHECK_FALSE(camera.giveNext());
    CHECK(read == QStringList{"A1", "A2", "A1", "nothing"});
}

TEST_CASE("a camera of pictures fails as a dead one does, and can be mended") {
    PictureCamera camera({qrPicture("A1", 4)});
    QSignalSpy failed(&camera, &Camera::failed);
    camera.start();
    camera.breakWith(QStringLiteral("The camera gives no pictures."));
    CHECK(failed.count() == 1);
    CHECK_FALSE(camera.isOpen());
    CHECK_FALSE(camera.isThere());
    camera.start();
    CHECK(failed.count() == 2);
    CHECK_FALSE(camera.giveNext());
    camera.mend();
    camera.start();
    CHECK(camera.isThere());
    CHECK(camera.giveNext());
}
