#include "camera/code_reader.hpp"

#include "camera/contrast.hpp"

#include <QPointF>
#include <QUtf8StringView>

#define ZX_USE_UTF8 // else text() is a wstring in this version
#include <ZXing/ReadBarcode.h>
#include <exception>

namespace bullace::camera {

namespace {

bool isText(const std::string& text) {
    return !text.empty() && text.find('\0') == std::string::npos &&
           QUtf8StringView(text.data(), static_cast<qsizetype>(text.size())).isValidUtf8();
}

// Pixels squared between the middles of the code and of the picture.
double distanceToMiddle(const ZXing::Result& code, const QImage& picture) {
    QPointF middle;
    for (const ZXing::PointI& corner : code.position()) {
        middle += QPointF(corner.x, corner.y) / 4;
    }
    const QPointF away = middle - QPointF(picture.width(), picture.height()) / 2;
    return QPointF::dotProduct(away, away);
}

ZXing::Results codesIn(const QImage& grey) {
    // Looking for other formats takes three times as long, and labels have none.
    const auto formats = ZXing::BarcodeFormat::QRCode | ZXing::BarcodeFormat::DataMatrix;
    const auto hints = ZXing::DecodeHints().setFormats(formats).setCharacterSet("UTF8");
    const ZXing::ImageView view(grey.constBits(),
                                grey.width(),
                                grey.height(),
                                ZXing::ImageFormat::Lum,
                                static_cast<int>(grey.bytesPerLine()));
    return ZXing::ReadBarcodes(view, hints);
}

std::optional<std::string> nearestCode(const QImage& grey) {
    std::optional<std::string> nearest;
    double least = 0;
    for (const ZXing::Result& code : codesIn(grey)) {
        const std::string text = code.text();
        const double distance = distanceToMiddle(code, grey);
        const bool counts = code.isValid() && !code.isPartOfSequence() && isText(text);
        if (counts && (!nearest || distance < least)) {
            nearest = text;
            least = distance;
        }
    }
    return nearest;
}

} // namespace

std::optional<std::string> readCode(const QImage& picture) {
    const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
    if (grey.isNull()) {
        return std::nullopt;
    }
    try {
        const auto code = nearestCode(grey);
        return code ? code : nearestCode(drawnApart(grey));
    } catch (const std::exception&) {
        return std::nullopt; // a picture that the library cannot bear holds no code for us
    }
}

} // namespace bullace::camera
