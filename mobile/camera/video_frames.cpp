#include "camera/video_frames.hpp"

#include "camera/camera_format.hpp"

#include <QVideoFrame>
#include <QVideoSink>

#include <utility>

namespace bullace::camera {

namespace {
constexpr std::chrono::milliseconds kPause{1000 / kPicturesASecond};
}

VideoFrames::VideoFrames(Clock now, std::chrono::milliseconds silence, QObject* parent)
    : QObject(parent),
      now_(std::move(now)) {
    due_.setSingleShot(true);
    due_.setInterval(0);
    connect(&due_, &QTimer::timeout, this, &VideoFrames::deliver);
    silence_.setSingleShot(true);
    silence_.setInterval(silence);
    connect(&silence_, &QTimer::timeout, this, [this] {
        leave();
        emit silent();
    });
}

void VideoFrames::follow(QVideoSink& sink) {
    leave();
    sink_ = &sink;
    connect(&sink, &QVideoSink::videoFrameChanged, this, &VideoFrames::noteArrival);
    silence_.start();
}

void VideoFrames::leave() {
    silence_.stop();
    due_.stop();
    if (sink_ != nullptr) {
        disconnect(sink_, nullptr, this, nullptr);
    }
    sink_ = nullptr;
    lastDone_.reset();
}

void VideoFrames::noteArrival() {
    const bool isTooSoon = lastDone_ && now_() - *lastDone_ < kPause;
    if (!due_.isActive() && !isTooSoon) {
        due_.start();
    }
}

void VideoFrames::deliver() {
    if (sink_ == nullptr) {
        return;
    }
    // What the sink holds now, which may be newer than the frame that was noticed.
    const QImage picture = sink_->videoFrame().toImage();
    if (picture.isNull()) {
        return;
    }
    silence_.start();
    emit frame(picture);
    lastDone_ = now_();
}

} // namespace bullace::camera
