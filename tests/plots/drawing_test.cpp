// Drawings as they are painted: on the glass, as PDF and as SVG; and in words.
#include "plots/drawing_files.hpp"
#include "plots/drawing_painter.hpp"
#include "plots/drawing_words.hpp"

#include "quick/palette.hpp"
#include "quick/words.hpp"
#include "support/screen.hpp"
#include "support/temp_folder.hpp"

#include <QDir>
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QProcess>
#include <QSvgRenderer>

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::plots;
using namespace bullace::test;

namespace {

constexpr QSizeF kSize(760, 460);
const QString kFamily = QStringLiteral("DejaVu Sans");

PlotLook look(int textPx = 13, quick::Light light = quick::Light::Day) {
    const auto palette = quick::paletteOf(light);
    return {palette.ink, palette.paper, kFamily, textPx, 3.78};
}

// `count` accessions beside one another below one pair of parents.
report::Drawing family(int count) {
    report::Drawing drawing;
    drawing.title = "Pedigree of S-017";
    const double wide = 40;
    drawing.width = std::max(2, count) * (wide + 5) - 5;
    drawing.height = 60;
    const auto add = [&](double x, double y, const std::string& id) {
        drawing.boxes.push_back(
            {report::DrawingBox::Plain, {x, y}, wide, 14, {id, "Sallow Ditch", "selection"}, id});
    };
    add(0, 0, "A001");
    add(45, 0, "A018");
    drawing.boxes.push_back({report::DrawingBox::Knot, {40, 28}, 4, 4, {}, "A001 × A018"});
    for (int i = 0; i < count; ++i) {
        add(45.0 * i, 46, "S-0" + std::to_string(17 + i));
        drawing.lines.push_back({report::DrawingLine::Solid,
                                 {{42, 30}, {45.0 * i + wide / 2, 46}},
                                 2,
                                 static_cast<std::size_t>(3 + i),
                                 "offspring"});
    }
    drawing.boxes[3].kind = report::DrawingBox::Strong;
    drawing.boxes[1].kind = report::DrawingBox::Faint;
    drawing.lines.push_back({report::DrawingLine::Double, {{20, 14}, {42, 30}}, 0, 2, "selfing"});
    drawing.lines.push_back({report::DrawingLine::Dashed, {{65, 14}, {42, 30}}, 1, 2, "father"});
    drawing.key = {{report::DrawingLine::Double, {}, "selfing"},
                   {report::DrawingLine::Dashed, {}, "father"},
                   {{}, report::DrawingBox::Knot, "a cross"}};
    drawing.notes = {"Parents that nobody noted are not drawn."};
    return drawing;
}

QImage pictureOf(const report::Drawing& drawing, const PlotLook& as, const DrawingView& view) {
    QImage image(kSize.toSize(), QImage::Format_RGB32);
    image.fill(Qt::magenta); // what is not painted is seen
    QPainter painter(&image);
    paintDrawing(painter, drawing, as, kSize, view);
    return image;
}

QSizeF roomOf(const report::Drawing& drawing, const PlotLook& as) {
    return drawingRoom(drawing, as, kSize, DrawingTitle::Shown).size();
}

void keep(const QImage& image, const QString& name) {
    REQUIRE(QDir().mkpath(QStringLiteral(BULLACE_PICTURES)));
    CHECK(image.save(QStringLiteral(BULLACE_PICTURES "/drawing-%1.png").arg(name)));
}

int pixelsOf(const QImage& image, QColor colour) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            count += image.pixelColor(x, y) == colour ? 1 : 0;
        }
    }
    return count;
}

// How far the ink reaches, in pixels from the left and from above.
QRect inkOf(const QImage& image) {
    QRect all;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            if (image.pixelColor(x, y).lightness() < 128) {
                all |= QRect(x, y, 1, 1);
            }
        }
    }
    return all;
}

QString said(const QString& program, const QStringList& words) {
    QProcess process;
    process.start(program, words);
    REQUIRE(process.waitForFinished(20'000));
    REQUIRE(process.exitCode() == 0);
    return QString::fromUtf8(process.readAllStandardOutput());
}

} // namespace

TEST_CASE("a small drawing is seen whole with letters of the wanted size, in day and dusk") {
    const report::Drawing drawing = family(3);
    for (const auto light : {quick::Light::Day, quick::Light::Dusk}) {
        const PlotLook as = look(13, light);
        const DrawingView view = firstView(drawing, as, roomOf(drawing, as));
        CHECK(view.scale == doctest::Approx(naturalScale(as)));
        const QImage image = pictureOf(drawing, as, view);
        CHECK(pixelsOf(image, Qt::magenta) == 0);
        CHECK(pixelsOf(image, as.ink) > 1'000);
        CHECK(pixelsOf(image, as.paper) > image.width() * image.height() / 2);
        keep(image, light == quick::Light::Day ? QStringLiteral("day") : QStringLiteral("dusk"));
    }
}

TEST_CASE(
    "letters of twice the size make boxes and lines twice as large, not their words shorter") {
    const report::Drawing drawing = family(2);
    const PlotLook twice = look(26);
    CHECK(naturalScale(twice) == doctest::Approx(2 * naturalScale(look())));
    const DrawingView view = firstView(drawing, twice, roomOf(drawing, twice));
    CHECK(view.scale >= 0.72 * naturalScale(twice));
    const QImage image = pictureOf(drawing, twice, view);
    CHECK(inkOf(image).right() < image.width());
    keep(image, QStringLiteral("twice"));
}

TEST_CASE("a large drawing opens with readable letters and the accession that it is about in the "
          "middle, and is never moved out of sight") {
    report::Drawing drawing = family(40);
    drawing.boxes[3].kind = report::DrawingBox::Plain;
    drawing.boxes[23].kind = report::DrawingBox::Strong;
    const PlotLook as = look();
    const QSizeF room = roomOf(drawing, as);
    const DrawingView first = firstView(drawing, as, room);
    CHECK(first.scale == doctest::Approx(naturalScale(as)));
    CHECK(first.middle.x() == doctest::Approx(45.0 * 20 + 20));
    keep(pictureOf(drawing, as, first), QStringLiteral("large"));
    const DrawingView far = keptInside(drawing, as, room, {first.scale, {99'999, -99'999}});
    const double half = room.width() / first.scale / 2;
    CHECK(far.middle.x() == doctest::Approx(drawing.width + 1.5 - half));
    CHECK(far.middle.y() == doctest::Approx(drawing.height / 2));
    const DrawingView whole = wholeView(drawing, as, room);
    CHECK(whole.scale < first.scale / 5);
    CHECK(keptInside(drawing, as, room, {whole.scale / 9, {}}).scale ==
          doctest::Approx(whole.scale));
    CHECK(keptInside(drawing, as, room, {first.scale * 99, {}}).scale ==
          doctest::Approx(3 * first.scale));
}

TEST_CASE("words without room are cut short inside their box") {
    report::Drawing drawing = family(2);
    drawing.boxes.resize(1);
    drawing.lines.clear();
    drawing.key.clear();
    drawing.notes.clear();
    drawing.title.clear();
    drawing.boxes[0].words = {std::string(300, 'M')};
    const PlotLook as = look();
    const DrawingView view = wholeView(drawing, as, roomOf(drawing, as));
    const QRect ink = inkOf(pictureOf(drawing, as, view));
    CHECK(ink.width() <= 40 * view.scale + 3);
}

TEST_CASE("as PDF its words can be searched, and a large one gets a page of its own size") {
    const TempFolder folder;
    for (const int count : {3, 40}) {
        const QString path = QString::fromStdString(folder.file("drawing.pdf"));
        REQUIRE(writeDrawingPdf(path, family(count), kFamily).ok());
        const QString words = said(QStringLiteral("pdftotext"), {path, QStringLiteral("-")});
        CHECK(words.contains(QStringLiteral("Pedigree of S-017")));
        CHECK(words.contains(QStringLiteral("Sallow Ditch")));
        CHECK(words.contains(QStringLiteral("S-0%1").arg(16 + count)));
        const QString info = said(QStringLiteral("pdfinfo"), {path});
        CHECK(info.contains(QStringLiteral("Pages:           1")));
        CHECK(info.contains(QStringLiteral("792 x 612")) == (count == 3));
    }
    CHECK_FALSE(writeDrawingPdf(QStringLiteral("/nowhere/at/all.pdf"), family(2), kFamily).ok());
}

TEST_CASE("as SVG it is drawn by whoever reads it, without a typeface") {
    const auto svg = drawingSvg(family(4), kFamily);
    REQUIRE(svg.ok());
    CHECK_FALSE(svg->contains("<text"));
    CHECK(svg->contains("Pedigree of S-017"));
    QSvgRenderer renderer(*svg);
    REQUIRE(renderer.isValid());
    QImage image(900, 500, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    renderer.render(&painter);
    painter.end();
    CHECK(inkOf(image).width() > 700);
    keep(image, QStringLiteral("svg"));
}

TEST_CASE("a drawing is read as a table and as a sentence") {
    report::Drawing drawing = family(2);
    drawing.boxes.push_back(
        {report::DrawingBox::Plain, {0, 20}, 10, 5, {"A099"}, "A099"}); // nobody's parent
    const QByteArray csv = drawingCsv(drawing);
    CHECK(csv.startsWith("From,Line,To\n"));
    CHECK(csv.contains("A001 × A018,offspring,S-017\n"));
    CHECK(csv.contains("A018,father,A001 × A018\n"));
    CHECK(csv.contains("A099,,\n"));
    CHECK(csv.count('\n') == 6);
    const QString summary = drawingSummary(drawing);
    CHECK(summary.contains(QStringLiteral("Pedigree of S-017.")));
    CHECK(summary.contains(QStringLiteral("In the middle: S-017.")));
    CHECK(summary.contains(QStringLiteral("Parents that nobody noted are not drawn.")));
}

TEST_CASE("what cannot be drawn says which box or line is at fault") {
    const auto faultOf = [](auto change) {
        report::Drawing drawing = family(2);
        change(drawing);
        const Status status = report::checkDrawing(drawing);
        return status.ok() ? std::string() : status.error().message;
    };
    CHECK(faultOf([](report::Drawing&) {}).empty());
    CHECK(faultOf([](report::Drawing& d) { d.width = 0; }) == "The drawing has no size.");
    CHECK(faultOf([](report::Drawing& d) { d.boxes[0].height = 0; }) ==
          "The drawing's box A001 has no size.");
    CHECK(faultOf([](report::Drawing& d) { d.boxes[1].at.x = 999; }) ==
          "The drawing's box A018 lies outside of it.");
    CHECK(faultOf([](report::Drawing& d) { d.lines[0].points.resize(1); }) ==
          "The drawing's line 1 has less than two points.");
    CHECK(faultOf([](report::Drawing& d) { d.lines[1].points[0].y = NAN; }) ==
          "The drawing's line 2 reaches out of it.");
    CHECK(faultOf([](report::Drawing& d) { d.lines[1].to = 77; }) ==
          "The drawing's line 2 joins a box that is not there.");
    CHECK(faultOf([](report::Drawing& d) {
              d.texts.push_back({{-5, 0}, "far"});
          }) == "The drawing's words far lie outside of it.");
    report::Drawing broken = family(2);
    broken.width = 0;
    const PlotLook as = look();
    CHECK(pixelsOf(pictureOf(broken, as, {}), as.ink) > 50); // the message
}
