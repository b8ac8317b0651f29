#include "camera/code_reader.hpp"

#include "code_pictures.hpp"

#include "core/vineyard/label_code.hpp"
#include "quick/qr_code.hpp"

#include <QStringList>
#include <qrencode.h>

#include <doctest/doctest.h>

#include <ZXing/BitMatrix.h>
#include <ZXing/MultiFormatWriter.h>
#include <rapidcheck.h>
#include <string>

using namespace bullace;
using camera::readCode;
using quick::qrPicture;
using support::inLight;
using support::turned;
using support::withDirtyCorner;

namespace {

rc::Gen<std::string> labels() {
    return rc::gen::map(rc::gen::inRange<std::uint64_t>(0, vineyard::kLabelCodes),
                        [](std::uint64_t number) { return vineyard::labelCode(number); });
}

// What a pairing code may hold: addresses, hashes and secrets, in the case in which they stand.
rc::Gen<std::string> printableTexts() {
    return rc::gen::mapcat(rc::gen::inRange<std::size_t>(1, 200), [](std::size_t length) {
        return rc::gen::container<std::string>(length, rc::gen::inRange<char>(' ', '~' + 1));
    });
}

QImage sideBySide(const QImage& left, const QImage& right, int gapPx) {
    QImage both(left.width() + gapPx + right.width(), left.height(), QImage::Format_RGB32);
    both.fill(Qt::white);
    QPainter painter(&both);
    painter.drawImage(0, 0, left);
    painter.drawImage(left.width() + gapPx, 0, right);
    return both;
}

QImage dataMatrix(const std::string& text) {
    const auto bits = ZXing::MultiFormatWriter(ZXing::BarcodeFormat::DataMatrix)
                          .setMargin(4)
                          .encode(text, 150, 150);
    QImage picture(bits.width(), bits.height(), QImage::Format_Grayscale8);
    for (int y = 0; y < bits.height(); ++y) {
        for (int x = 0; x < bits.width(); ++x) {
            picture.scanLine(y)[x] = bits.get(x, y) ? uchar{0} : uchar{255};
        }
    }
    return picture;
}

// The modules of a code that another program made.
QImage drawn(const QRcode& code) {
    QImage picture(code.width + 8, code.width + 8, QImage::Format_Grayscale8);
    picture.fill(Qt::white);
    for (int i = 0; i < code.width * code.width; ++i) {
        if ((code.data[i] & 1U) != 0) {
            picture.scanLine(4 + i / code.width)[4 + i % code.width] = 0;
        }
    }
    return picture.scaled(picture.size() * 4);
}

} // namespace

TEST_CASE("what is printed is read, letter for letter and in the same case") {
    CHECK(rc::check([] {
        const std::string text = *printableTexts();
        const int modulePx = *rc::gen::inRange(3, 7);
        RC_ASSERT(readCode(qrPicture(text, modulePx)) == text);
    }));
}

TEST_CASE("a vine's label is read at three pixels a module, however the tablet is turned") {
    CHECK(rc::check([] {
        const std::string label = *labels();
        const double degrees = *rc::gen::inRange(0, 360);
        RC_ASSERT(readCode(turned(qrPicture(label, 3), degrees)) == label);
    }));
}

TEST_CASE("a vine's label is read when the camera sees it at three pixels of a module") {
    CHECK(rc::check([] {
        const std::string label = *labels();
        const int modulePx = *rc::gen::inRange(4, 20);
        const QImage printed = qrPicture(label, modulePx);
        const int seenPx = printed.width() * 3 / modulePx;
        const QImage seen =
            printed.scaled(seenPx, seenPx, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
        RC_ASSERT(readCode(seen) == label);
    }));
}

TEST_CASE("a vine's label is read at dusk and in the glare that leaves it pale") {
    CHECK(rc::check([] {
        const std::string label = *labels();
        const int black = *rc::gen::inRange(0, 180);
        const int white = *rc::gen::inRange(black + 60, 256);
        RC_ASSERT(readCode(inLight(qrPicture(label, 4), black, white)) == label);
    }));
}

TEST_CASE("a label that the sun has bleached is read among bright and dark leaves") {
    struct Faded {
        int black;
        int white;
    };
    for (const Faded faded : {Faded{140, 190}, Faded{190, 230}, Faded{30, 60}}) {
        for (unsigned seed = 1; seed <= 5; ++seed) {
            CAPTURE(faded.black);
            CAPTURE(seed);
            const QImage label = inLight(qrPicture("K7QJ2M4T", 12), faded.black, faded.white);
            for (const double modulePx : {5.0, 8.0}) {
                CAPTURE(modulePx);
                CHECK(readCode(support::amongLeaves(label, modulePx, seed)) == "K7QJ2M4T");
            }
        }
    }
}

TEST_CASE("a vine's label is read with mud on the corner that has no finder") {
    CHECK(rc::check([] {
        const std::string label = *labels();
        const int modules = *rc::gen::inRange(1, 7);
        const int shade = *rc::gen::inRange(0, 256);
        const QImage dirty =
            withDirtyCorner(qrPicture(label, 4), 4, modules, QColor(shade, shade, shade));
        RC_ASSERT(readCode(dirty) == label);
    }));
}

TEST_CASE("a label turned, dimmed and dirty at once is read") {
    CHECK(rc::check([] {
        const std::string label = *labels();
        const double degrees = *rc::gen::inRange(0, 360);
        const QImage dirty = withDirtyCorner(qrPicture(label, 5), 5, 4, QColor(90, 70, 50));
        RC_ASSERT(readCode(inLight(turned(dirty, degrees), 20, 120)) == label);
    }));
}

TEST_CASE("however much mud there is, a label is read as what it says or not at all") {
    CHECK(rc::check([] {
        const std::string label = *labels();
        QImage muddy = qrPicture(label, 4).convertToFormat(QImage::Format_RGB32);
        QPainter painter(&muddy);
        for (int blots = *rc::gen::inRange(1, 12); blots > 0; --blots) {
            const int x = *rc::gen::inRange(0, muddy.width());
            const int y = *rc::gen::inRange(0, muddy.height());
            const int side = *rc::gen::inRange(4, 30);
            painter.fillRect(x, y, side, side, blots % 2 == 0 ? Qt::black : Qt::white);
        }
        painter.end();
        const auto read = readCode(muddy);
        RC_ASSERT(!read || read == label);
    }));
}

TEST_CASE("nothing is read from noise, from bare ground, or from no picture") {
    CHECK(rc::check([](unsigned seed) {
        const int side = *rc::gen::inRange(1, 400);
        RC_ASSERT(!readCode(support::noise({side, 300}, seed)).has_value());
    }));
    QImage ground(640, 480, QImage::Format_RGB32);
    ground.fill(QColor(120, 90, 60));
    CHECK_FALSE(readCode(ground).has_value());
    CHECK_FALSE(readCode(QImage()).has_value());
}

TEST_CASE("of two labels in the picture the one in the middle is read") {
    const QImage near = qrPicture("A1", 4);
    const QImage far = qrPicture("A2", 4);
    const QImage withGround = sideBySide(near, far, 0);
    CHECK(readCode(withGround.copy(-300, 0, 300 + withGround.width(), near.height())) == "A1");
    CHECK(readCode(withGround.copy(0, 0, withGround.width() + 300, near.height())) == "A2");
}

TEST_CASE("a label of the other kind, a Data Matrix, is read too") {
    CHECK(readCode(turned(dataMatrix("K7QJ2M4T"), 30)) == "K7QJ2M4T");
}

TEST_CASE("one part of a text that is spread over several codes is not taken for the whole") {
    QRcode_List* parts = QRcode_encodeStringStructured(
        "ONE TEXT THAT IS TOO LONG FOR ONE SMALL CODE", 1, QR_ECLEVEL_L, QR_MODE_8, 1);
    REQUIRE(parts != nullptr);
    REQUIRE(QRcode_List_size(parts) > 1);
    CHECK_FALSE(readCode(drawn(*parts->code)).has_value());
    QRcode_List_free(parts);
}

TEST_CASE("a code that holds bytes and no text is not read") {
    for (const std::string& bytes : {std::string("A\0B", 3), std::string("\xff\xfe\x80", 3)}) {
        QRcode* code = QRcode_encodeData(static_cast<int>(bytes.size()),
                                         reinterpret_cast<const unsigned char*>(bytes.data()),
                                         2,
                                         QR_ECLEVEL_H);
        REQUIRE(code != nullptr);
        CHECK_FALSE(readCode(drawn(*code)).has_value());
        QRcode_free(code);
    }
}

TEST_CASE("a name with letters beyond ASCII is read as it was written") {
    for (const std::string text : {"Reihe 7, Süd", "hilera 3, año 2", "Ž", "葡萄", "é"}) {
        CAPTURE(text);
        CHECK(readCode(qrPicture(text, 4)) == text);
    }
}

TEST_CASE("a label code stays in version 2, with a quiet zone of four modules around it") {
    for (const std::string text : {"A", "K7QJ2M4T", "STATION:K7QJ2M4T-12"}) {
        CAPTURE(text);
        const QImage picture = qrPicture(text, 1);
        CHECK(picture.size() == QSize(33, 33));
        for (int i = 0; i < 33; ++i) {
            for (const int edge : {0, 3, 29, 32}) {
                CHECK(qGray(picture.pixel(i, edge)) == 255);
                CHECK(qGray(picture.pixel(edge, i)) == 255);
            }
        }
        CHECK(qGray(picture.pixel(4, 4)) == 0);
    }
}

TEST_CASE("what fits into no code gives no picture") {
    CHECK(qrPicture("", 4).isNull());
    CHECK(qrPicture(std::string("A\0B", 3), 4).isNull());
    CHECK(qrPicture("\xff\xfe", 4).isNull());
    CHECK(qrPicture("A", 0).isNull());
    CHECK(qrPicture("A", -1).isNull());
    CHECK(qrPicture("A", quick::kGreatestModulePx + 1).isNull());
    CHECK(qrPicture(std::string(1273, 'a'), 1).width() == 177 + 8);
    CHECK(qrPicture(std::string(1274, 'a'), 1).isNull());
}
