#include "quick/page_picture.hpp"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QImage>
#include <QQuickWindow>
#include <QThread>

namespace bullace::quick {

bool savePagePicture(QQuickWindow& window,
                     const QString& file,
                     const std::function<bool()>& isIdle) {
    constexpr qint64 kPatienceMs = 60'000;
    constexpr int kQuietRounds = 5; // of events, in which nothing more comes
    constexpr unsigned long kRoundMs = 10;
    QElapsedTimer timer;
    timer.start();
    for (int quiet = 0; quiet < kQuietRounds;) {
        QCoreApplication::processEvents();
        quiet = isIdle() ? quiet + 1 : 0;
        if (timer.elapsed() > kPatienceMs) {
            return false;
        }
        QThread::msleep(kRoundMs);
    }
    return window.grabWindow().save(file, "PNG");
}

} // namespace bullace::quick
