#include "quick/qr_code.hpp"

#include <QUtf8StringView>
#include <qrencode.h>

#include <memory>

namespace bullace::quick {

namespace {

constexpr int kQuietModules = 4;
constexpr int kLeastVersion = 2;

bool isText(const std::string& text) {
    return !text.empty() && text.find('\0') == std::string::npos &&
           QUtf8StringView(text.data(), static_cast<qsizetype>(text.size())).isValidUtf8();
}

} // namespace

QImage qrPicture(const std::string& text, int modulePx) {
    if (!isText(text) || modulePx < 1 || modulePx > kGreatestModulePx) {
        return {};
    }
    // The last argument keeps the case; without it lower-case letters are silently raised.
    const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
        QRcode_encodeString(text.c_str(), kLeastVersion, QR_ECLEVEL_H, QR_MODE_8, 1), &QRcode_free);
    if (code == nullptr) {
        return {};
    }
    const int side = code->width + 2 * kQuietModules;
    QImage modules(side, side, QImage::Format_Grayscale8);
    modules.fill(Qt::white);
    for (int y = 0; y < code->width; ++y) {
        uchar* line = modules.scanLine(y + kQuietModules) + kQuietModules;
        for (int x = 0; x < code->width; ++x) {
            const bool isBlack = (code->data[y * code->width + x] & 1U) != 0;
            line[x] = isBlack ? uchar{0} : uchar{255};
        }
    }
    const int sidePx = side * modulePx;
    return modules.scaled(sidePx, sidePx, Qt::IgnoreAspectRatio, Qt::FastTransformation);
}

} // namespace bullace::quick
