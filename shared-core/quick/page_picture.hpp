// What a window shows, as a file: for machines without a display.
#pragma once

#include <QString>

#include <functional>

QT_BEGIN_NAMESPACE
class QQuickWindow;
QT_END_NAMESPACE

namespace bullace::quick {

// Waits until `isIdle` says that all is read and nothing more is drawn, then writes the picture
// (PNG). False where it cannot be written, or the program is not idle within a minute.
[[nodiscard]] bool
savePagePicture(QQuickWindow& window, const QString& file, const std::function<bool()>& isIdle);

} // namespace bullace::quick
