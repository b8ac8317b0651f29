// From the frames of a device to pictures: the newest only, never more than can be looked at, and a
// device that falls silent is noticed.
#pragma once

#include <QImage>
#include <QObject>
#include <QPointer>
#include <QTimer>

#include <chrono>
#include <functional>
#include <optional>

class QVideoSink;

namespace bullace::camera {

class VideoFrames : public QObject {
    Q_OBJECT

public:
    using Clock = std::function<std::chrono::steady_clock::time_point()>;

    // `now` paces the pictures; after `silence` without one that can be read, silent() is told.
    VideoFrames(Clock now, std::chrono::milliseconds silence, QObject* parent = nullptr);

    // Takes from this sink, and from no other, until leave(). The sink must outlive that, or be
    // destroyed: then nothing comes, and silent() follows.
    void follow(QVideoSink& sink);
    void leave();

signals:
    // Never from within the sink, so that a slot may destroy it. The next follows not sooner than a
    // tenth of a second after all slots have returned: a slow reader is not fed a queue.
    void frame(const QImage& picture);
    // Once; nothing is taken any more.
    void silent();

private:
    void noteArrival();
    void deliver();

    Clock now_;
    QPointer<QVideoSink> sink_;
    QTimer silence_;
    QTimer due_; // runs while deliver() is on its way
    std::optional<std::chrono::steady_clock::time_point> lastDone_;
};

} // namespace bullace::camera
