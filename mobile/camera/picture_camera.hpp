// A camera that shows the pictures that it was told, when it is asked to: for tests of pages.
#pragma once

#include "camera/camera.hpp"

#include <cstddef>
#include <vector>

namespace bullace::camera {

class PictureCamera : public Camera {
    Q_OBJECT

public:
    explicit PictureCamera(std::vector<QImage> pictures = {}, QObject* parent = nullptr);

    void start() override;
    void stop() override;
    [[nodiscard]] bool isOpen() const override { return open_; }
    [[nodiscard]] bool isThere() const override { return words_.isEmpty(); }

    // Shows this picture. A closed camera shows nothing.
    void give(const QImage& picture);
    // Shows the next of its pictures, behind the last the first again. False, and nothing is shown,
    // where it is closed or has no pictures.
    bool giveNext();
    // From now on it is a dead camera with these words, not empty: an open one fails at once, a
    // closed one at its next start(). mend() ends that.
    void breakWith(const QString& words);
    void mend() { words_.clear(); }

private:
    std::vector<QImage> pictures_;
    std::size_t next_ = 0;
    bool open_ = false;
    QString words_; // not empty while it is broken
};

} // namespace bullace::camera
