#include "camera/video_frames.hpp"

#include <QCoreApplication>
#include <QSignalSpy>
#include <QVideoFrame>
#include <QVideoSink>

#include <doctest/doctest.h>

#include <cstring>
#include <memory>

using namespace bullace::camera;
using namespace std::chrono_literals;

namespace {

// A frame as cameras give it: luminance, then colour at half the size; all of one grey.
QVideoFrame greyFrame(QSize size, int grey) {
    QVideoFrame frame(QVideoFrameFormat(size, QVideoFrameFormat::Format_NV12));
    REQUIRE(frame.map(QVideoFrame::WriteOnly));
    std::memset(frame.bits(0), grey, static_cast<std::size_t>(frame.mappedBytes(0)));
    std::memset(frame.bits(1), 128, static_cast<std::size_t>(frame.mappedBytes(1)));
    frame.unmap();
    return frame;
}

struct Device {
    explicit Device(std::chrono::milliseconds silence = 1h)
        : frames([this] { return now; }, silence) {
        QObject::connect(&frames, &VideoFrames::frame, [this](const QImage& picture) {
            ++count;
            lastGrey = qGray(picture.pixel(picture.width() / 2, picture.height() / 2));
        });
        frames.follow(*sink);
    }
    void give(int grey) { sink->setVideoFrame(greyFrame({64, 48}, grey)); }
    void giveAndLook(int grey) {
        give(grey);
        QCoreApplication::processEvents();
    }
    std::chrono::steady_clock::time_point now{1h};
    std::unique_ptr<QVideoSink> sink = std::make_unique<QVideoSink>();
    VideoFrames frames;
    int count = 0;
    int lastGrey = -1;
};

} // namespace

TEST_CASE("a frame of the camera becomes a picture of the same light") {
    Device device;
    device.giveAndLook(235); // the white of video
    CHECK(device.count == 1);
    CHECK(device.lastGrey > 245);
    device.now += 1s;
    device.giveAndLook(16); // its black
    CHECK(device.lastGrey < 10);
}

TEST_CASE("of the frames that came while nobody could look only the newest is shown") {
    Device device;
    device.give(60);
    device.give(120);
    device.give(235);
    QCoreApplication::processEvents();
    CHECK(device.count == 1);
    CHECK(device.lastGrey > 245);
}

TEST_CASE("a camera of sixty pictures a second is looked at no more than ten times a second") {
    Device device;
    for (int i = 0; i < 60; ++i) {
        device.giveAndLook(100);
        device.now += 16667us;
    }
    CHECK(device.count <= 10);
    CHECK(device.count >= 8);
}

TEST_CASE("a reader that takes longer than the pictures' pace is not fed a queue") {
    Device device;
    QObject::connect(&device.frames, &VideoFrames::frame, [&device] { device.now += 300ms; });
    device.giveAndLook(100);
    device.giveAndLook(100); // came while the first was being read
    CHECK(device.count == 1);
    device.now += 100ms;
    device.giveAndLook(100);
    CHECK(device.count == 2);
}

TEST_CASE("once left, the camera shows nothing, also what was on its way") {
    Device device;
    device.give(100);
    device.frames.leave();
    QCoreApplication::processEvents();
    device.giveAndLook(100);
    CHECK(device.count == 0);
}

TEST_CASE("a page that has read its code may close the camera at once") {
    Device device;
    QObject::connect(&device.frames, &VideoFrames::frame, [&device] {
        device.frames.leave();
        device.sink.reset();
    });
    device.giveAndLook(100);
    CHECK(device.count == 1);
    CHECK(device.sink == nullptr);
}

TEST_CASE("a camera that falls silent is noticed, once") {
    Device device(20ms);
    QSignalSpy silent(&device.frames, &VideoFrames::silent);
    device.giveAndLook(100);
    CHECK(silent.isEmpty());
    REQUIRE(silent.wait(2000));
    CHECK_FALSE(silent.wait(60));
    CHECK(silent.count() == 1);
}

TEST_CASE("a camera that gives only frames that cannot be shown counts as silent") {
    Device device(20ms);
    QSignalSpy silent(&device.frames, &VideoFrames::silent);
    device.sink->setVideoFrame(QVideoFrame());
    REQUIRE(silent.wait(2000));
    CHECK(device.count == 0);
}

TEST_CASE("a camera that is pulled out is noticed as silent") {
    Device device(20ms);
    QSignalSpy silent(&device.frames, &VideoFrames::silent);
    device.sink.reset();
    CHECK(silent.wait(2000));
}
