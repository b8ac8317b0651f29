#include "camera/picture_camera.hpp"

#include <utility>

namespace bullace::camera {

PictureCamera::PictureCamera(std::vector<QImage> pictures, QObject* parent)
    : Camera(parent),
      pictures_(std::move(pictures)) {}

void PictureCamera::start() {
    if (!words_.isEmpty()) {
        emit failed(words_);
        return;
    }
    open_ = true;
}

void PictureCamera::stop() {
    open_ = false;
}

void PictureCamera::give(const QImage& picture) {
    if (open_) {
        emit frame(picture);
    }
}

bool PictureCamera::giveNext() {
    if (!open_ || pictures_.empty()) {
        return false;
    }
    const QImage picture = pictures_[next_];
    next_ = (next_ + 1) % pictures_.size();
    emit frame(picture);
    return true;
}

void PictureCamera::breakWith(const QString& words) {
    words_ = words;
    if (open_) {
        open_ = false;
        emit failed(words);
    }
}

} // namespace bullace::camera
