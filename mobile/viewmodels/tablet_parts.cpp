// The tablet's camera and keyboard, carried to the page that is on the glass.
#include "camera/camera.hpp"
#include "tablet/tablet_app.hpp"

namespace bullace::tablet {

void TabletApp::setCamera(bool isOn) {
    const bool isForPhoto = page_ == Photo || page_ == Stop;
    camera::Camera* wanted = !isOn ? nullptr : isForPhoto ? parts_.photoCamera : parts_.codeCamera;
    if (isOn && wanted == nullptr) {
        tell(tr("This tablet has no camera. Type what the label says."));
    }
    if (wanted == openCamera_) {
        return;
    }
    if (openCamera_ != nullptr) {
        openCamera_->stop();
    }
    openCamera_ = wanted;
    picture_ = {};
    emit pictureChanged();
    if (openCamera_ != nullptr) {
        openCamera_->start();
    }
}

void TabletApp::onFrame(const QImage& frame) {
    if (openCamera_ == nullptr) {
        return;
    }
    picture_ = frame;
    emit pictureChanged();
    if (page_ == Photo || page_ == Stop || !parts_.readCode) {
        return;
    }
    const QString code = parts_.readCode(frame);
    if (code.isEmpty()) {
        return;
    }
    if (page_ == Where) {
        where_.seen(code);
    } else if (page_ == Sync) {
        sync_.seen(code);
    }
}

void TabletApp::takePhoto() {
    if (page_ != Photo || picture_.isNull()) {
        tell(tr("There is no picture yet."));
        return;
    }
    keepPhoto(picture_);
}

void TabletApp::leavePhoto() {
    home();
}

bool TabletApp::press(int key, const QString& text) {
    if (page_ == Trouble) {
        if (key == Qt::Key_Enter || key == Qt::Key_Return) {
            tryAgain();
            return true;
        }
        return false;
    }
    if (page_ == Photo) {
        if (key == Qt::Key_Escape) {
            leavePhoto();
            return true;
        }
        if (key == Qt::Key_Enter || key == Qt::Key_Return || text == QStringLiteral("*")) {
            takePhoto();
            return true;
        }
        return false;
    }
    const bool isTaken =
        page_ == Stop ? stop_.press(key, text) : sheet() != nullptr && sheet()->press(key, text);
    if (isTaken) {
        return true;
    }
    if (key == Qt::Key_Backspace) {
        undo();
        return true;
    }
    if (page_ == Stop && text == QStringLiteral("/")) {
        go(RowEnd);
        return true;
    }
    return false;
}

} // namespace bullace::tablet
