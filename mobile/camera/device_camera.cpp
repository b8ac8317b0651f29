#include "camera/device_camera.hpp"

#include <QCamera>
#include <QCameraDevice>
#include <QCoreApplication>
#include <QDir>
#include <QLoggingCategory>
#include <QMediaCaptureSession>
#include <QMediaDevices>
#include <QVideoSink>

#include <algorithm>
#include <chrono>
#include <utility>
#include <vector>

namespace bullace::camera {

namespace {

Q_LOGGING_CATEGORY(kLog, "bullace.camera")

// A camera that is well gives its first picture within a second or two. Common practice, no source.
constexpr std::chrono::seconds kSilence{5};

// Qt Multimedia ends the whole program where the plugin that it wants is not there (seen with Qt
// 6.4.2), so that is looked for first.
bool canAskForCameras() {
    const QString wanted = qEnvironmentVariable("QT_MEDIA_BACKEND");
    const QStringList folders = QCoreApplication::libraryPaths();
    return std::any_of(folders.begin(), folders.end(), [&wanted](const QString& folder) {
        const QStringList names =
            QDir(folder + QStringLiteral("/multimedia")).entryList(QDir::Files);
        return !names.filter(wanted + QStringLiteral("mediaplugin")).isEmpty();
    });
}

QCameraDevice deviceOf(const QByteArray& deviceId) {
    const QList<QCameraDevice> devices = QMediaDevices::videoInputs();
    for (const QCameraDevice& device : devices) {
        const bool isWanted = deviceId.isEmpty() ? device.position() == QCameraDevice::BackFace
                                                 : device.id() == deviceId;
        if (isWanted) {
            return device;
        }
    }
    return deviceId.isEmpty() ? QMediaDevices::defaultVideoInput() : QCameraDevice();
}

void askForFormat(QCamera& camera, const QCameraDevice& device, CameraUse use) {
    const QList<QCameraFormat> formats = device.videoFormats();
    std::vector<CameraFormat> offered;
    offered.reserve(static_cast<std::size_t>(formats.size()));
    for (const QCameraFormat& format : formats) {
        offered.push_back({format.resolution(), static_cast<double>(format.maxFrameRate())});
    }
    if (const auto best = formatFor(use, offered)) {
        camera.setCameraFormat(formats[static_cast<qsizetype>(*best)]);
    }
}

} // namespace

// Destroyed from the last to the first: the camera, and with it the device, goes before what it
// writes to.
struct DeviceCamera::Open {
    explicit Open(const QCameraDevice& device) : camera(device) {
        session.setVideoSink(&sink);
        session.setCamera(&camera);
    }
    QMediaCaptureSession session;
    QVideoSink sink;
    QCamera camera;
};

DeviceCamera::DeviceCamera(CameraUse use, QByteArray deviceId, QObject* parent)
    : Camera(parent),
      use_(use),
      deviceId_(std::move(deviceId)),
      frames_(&std::chrono::steady_clock::now, kSilence) {
    connect(&frames_, &VideoFrames::frame, this, &Camera::frame);
    connect(&frames_, &VideoFrames::silent, this, [this] {
        fail(tr("The camera gives no pictures."));
    });
}

DeviceCamera::~DeviceCamera() {
    close();
}

void DeviceCamera::start() {
    if (isOpen()) {
        return;
    }
    const QCameraDevice device = canAskForCameras() ? deviceOf(deviceId_) : QCameraDevice();
    if (device.isNull()) {
        fail(tr("No camera was found on this tablet."));
        return;
    }
    isThere_ = true;
    open_ = std::make_unique<Open>(device);
    askForFormat(open_->camera, device, use_);
    // Queued: failing destroys the camera, which must not happen while it is speaking.
    const auto listen = [this, opening = ++openings_](QCamera::Error, const QString& detail) {
        if (isOpen() && opening == openings_) {
            qCInfo(kLog) << "camera error:" << detail;
            fail(tr("The camera cannot be used: another program may have it open."));
        }
    };
    connect(&open_->camera, &QCamera::errorOccurred, this, listen, Qt::QueuedConnection);
    frames_.follow(open_->sink);
    open_->camera.start();
}

void DeviceCamera::stop() {
    close();
}

void DeviceCamera::close() {
    frames_.leave();
    if (open_ != nullptr) {
        open_->camera.stop();
        open_.reset();
    }
}

void DeviceCamera::fail(const QString& words) {
    close();
    isThere_ = false;
    emit failed(words);
}

} // namespace bullace::camera
