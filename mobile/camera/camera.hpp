// What gives pictures to the pages that read a label's code or take a photo. One small interface,
// so that tests put pictures in front of a page without any device.
#pragma once

#include <QImage>
#include <QObject>
#include <QString>

namespace bullace::camera {

// Closed until start(). It is open only while a page needs it: a camera is heat and battery.
class Camera : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    // Opens it; without effect where it is open. Either pictures follow, or failed() once.
    virtual void start() = 0;
    // Closes it; without effect where it is closed. No picture follows. A slot of frame() may call
    // it, but not destroy the camera.
    virtual void stop() = 0;
    [[nodiscard]] virtual bool isOpen() const = 0;
    // False where the last start() found no camera or a dead one. True before the first, because
    // looking for a camera may touch it.
    [[nodiscard]] virtual bool isThere() const = 0;

signals:
    // The newest picture, upright; at most ten a second from a device.
    void frame(const QImage& picture);
    // It gives no pictures, and is closed. `words` is one plain sentence in the screen's language.
    void failed(const QString& words);
};

} // namespace bullace::camera
