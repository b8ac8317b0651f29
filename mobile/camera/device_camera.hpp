// The tablet's own camera, or one on its USB socket, through Qt Multimedia.
#pragma once

#include "camera/camera.hpp"
#include "camera/camera_format.hpp"
#include "camera/video_frames.hpp"

#include <QByteArray>

#include <memory>

namespace bullace::camera {

// Touches no device, and nothing of Qt Multimedia, before start(); stop() closes the device.
// Without a camera, with one that another program holds, or that stops giving pictures, failed() is
// told once and it is closed; start() tries again.
class DeviceCamera : public Camera {
    Q_OBJECT

public:
    // `deviceId` is the system's name of one camera; where it is empty, the camera that looks away
    // from the person is taken, else the system's first.
    explicit DeviceCamera(CameraUse use, QByteArray deviceId = {}, QObject* parent = nullptr);
    ~DeviceCamera() override;
    Q_DISABLE_COPY_MOVE(DeviceCamera)

    void start() override;
    void stop() override;
    [[nodiscard]] bool isOpen() const override { return open_ != nullptr; }
    [[nodiscard]] bool isThere() const override { return isThere_; }

private:
    struct Open;

    void close();
    void fail(const QString& words);

    CameraUse use_;
    QByteArray deviceId_;
    VideoFrames frames_;
    bool isThere_ = true;
    int openings_ = 0; // what an earlier opening still has to say is not listened to
    std::unique_ptr<Open> open_;
};

} // namespace bullace::camera
