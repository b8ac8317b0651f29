// Plots as they are drawn: on the glass, as PDF and as SVG; and in words.
#include "plots.hpp"

#include "plots/plot_files.hpp"
#include "plots/plot_item.hpp"
#include "plots/plot_painter.hpp"
#include "plots/plot_words.hpp"

#include "quick/palette.hpp"
#include "support/screen.hpp"
#include "support/temp_folder.hpp"

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QProcess>
#include <QSignalSpy>
#include <QSvgRenderer>

#include <doctest/doctest.h>

#include <functional>

using namespace bullace;
using namespace bullace::plots;
using namespace bullace::test;

namespace {

constexpr QSizeF kSize(760, 460);
const QString kFamily = QStringLiteral("DejaVu Sans");

PlotLook day() {
    return {Qt::black, Qt::white, kFamily, 13, 3.78};
}
PlotLook dusk() {
    const auto palette = quick::paletteOf(quick::Light::Dusk);
    return {palette.ink, palette.paper, kFamily, 13, 3.78};
}

QImage pictureOf(const report::Plot& plot, const PlotLook& look = day(), QSizeF size = kSize) {
    QImage image(size.toSize(), QImage::Format_RGB32);
    image.fill(Qt::magenta); // what is not painted is seen
    QPainter painter(&image);
    paintPlot(painter, plot, look, size);
    return image;
}

void keep(const QImage& image, const QString& name) {
    REQUIRE(QDir().mkpath(QStringLiteral(BULLACE_PICTURES)));
    CHECK(image.save(QStringLiteral(BULLACE_PICTURES "/plot-%1.png").arg(name)));
}

// How many pixels have about that colour.
int pixelsOf(const QImage& image, QColor colour) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QColor there = image.pixelColor(x, y);
            count += std::abs(there.red() - colour.red()) +
                                 std::abs(there.green() - colour.green()) +
                                 std::abs(there.blue() - colour.blue()) <
                             24
                         ? 1
                         : 0;
        }
    }
    return count;
}

QString said(const QString& program, const QStringList& words) {
    QProcess process;
    process.start(program, words);
    REQUIRE(process.waitForFinished(20'000));
    REQUIRE(process.exitCode() == 0);
    return QString::fromUtf8(process.readAllStandardOutput());
}

const QColor kBlue(0x00, 0x72, 0xB2);
const QColor kVermillion(0xD5, 0x5E, 0x00);

} // namespace

TEST_CASE("plots of every kind are drawn to be looked at, by day and at dusk") {
    const std::pair<const char*, report::Plot> plots[] = {{"steps", bloomSteps(5)},
                                                          {"steps-many", bloomSteps(11)},
                                                          {"killed", killedBuds()},
                                                          {"overlaps", overlaps()},
                                                          {"boxes", boxes()},
                                                          {"bars", bars()}};
    for (const auto& [name, plot] : plots) {
        REQUIRE(report::checkPlot(plot));
        const QImage light = pictureOf(plot);
        CHECK(pixelsOf(light, Qt::magenta) == 0);
        CHECK(pixelsOf(light, Qt::black) > 500);
        keep(light, QLatin1String(name) + QStringLiteral("-day"));
        keep(pictureOf(plot, dusk()), QLatin1String(name) + QStringLiteral("-dusk"));
    }
    PlotLook large = day();
    large.textPx = 26;
    keep(pictureOf(killedBuds(), large), QStringLiteral("killed-200"));
}

TEST_CASE("each kind of series leaves its colour in the picture, and none is lost at dusk") {
    using report::PlotSeries;
    for (const auto kind : {PlotSeries::Points,
                            PlotSeries::Line,
                            PlotSeries::Steps,
                            PlotSeries::Bars,
                            PlotSeries::Spans,
                            PlotSeries::Band,
                            PlotSeries::Boxes}) {
        CAPTURE(kind);
        report::Plot plot;
        plot.series = {series(kind, "")};
        for (int i = 0; i < 6; ++i) {
            auto point = pointAt(i, 3 + i, 2.0 + i, 4.5 + i);
            point.xLow = i - 0.4;
            point.xHigh = i + 0.4;
            point.boxLow = 2.5 + i;
            point.boxHigh = 3.8 + i;
            plot.series[0].points.push_back(point);
        }
        REQUIRE(report::checkPlot(plot));
        report::Plot none = plot;
        none.series[0].points.clear();
        for (const PlotLook& look : {day(), dusk()}) {
            const QImage with = pictureOf(plot, look);
            int coloured = 0; // blue, or its tint on the paper
            for (int y = 0; y < with.height(); ++y) {
                for (int x = 0; x < with.width(); ++x) {
                    const QColor there = with.pixelColor(x, y);
                    coloured += there.blue() - there.red() > 30 ? 1 : 0;
                }
            }
            CHECK(coloured > 200);
        }
    }
}

TEST_CASE("a point is drawn where its values are") {
    report::Plot plot;
    plot.x.least = 0;
    plot.x.greatest = 10;
    plot.y.least = 0;
    plot.y.greatest = 10;
    plot.series = {series(report::PlotSeries::Points, ""), series(report::PlotSeries::Points, "")};
    plot.series[0].points = {pointAt(2, 8)};
    plot.series[1].points = {pointAt(8, 2)};
    const auto middleOf = [](const QImage& image, QColor colour) {
        double x = 0;
        double y = 0;
        int count = 0;
        for (int row = 0; row < image.height(); ++row) {
            for (int column = 0; column < image.width(); ++column) {
                if (image.pixelColor(column, row) == colour) {
                    x += column;
                    y += row;
                    ++count;
                }
            }
        }
        REQUIRE(count > 10);
        return QPointF(x / count, y / count);
    };
    const QImage image = pictureOf(plot);
    const QPointF blue = middleOf(image, kBlue);
    const QPointF vermillion = middleOf(image, kVermillion);
    CHECK(blue.x() < vermillion.x());
    CHECK(blue.y() < vermillion.y());
    plot.x.isReversed = true;
    plot.y.isReversed = true;
    const QImage turned = pictureOf(plot);
    CHECK(middleOf(turned, kBlue).x() == doctest::Approx(vermillion.x()).epsilon(0.01));
    CHECK(middleOf(turned, kBlue).y() == doctest::Approx(vermillion.y()).epsilon(0.01));
}

TEST_CASE("a plot that cannot be drawn says why, and one without a point that there is none") {
    report::Plot broken = bloomSteps(2);
    std::reverse(broken.series[0].points.begin(), broken.series[0].points.end());
    report::Plot empty = bloomSteps(2);
    for (auto& steps : empty.series) {
        steps.points.clear();
    }
    for (const report::Plot& plot : {broken, empty, report::Plot{}}) {
        const QImage image = pictureOf(plot);
        CHECK(pixelsOf(image, Qt::magenta) == 0);
        CHECK(pixelsOf(image, Qt::black) > 50);
        CHECK(pixelsOf(image, kBlue) == 0);
    }
    CHECK(plotSummary(empty).contains(nothingNoted()));
    CHECK_FALSE(plotSummary(bloomSteps(2)).contains(nothingNoted()));
}

TEST_CASE("a picture too small for axes is painted without a fault") {
    for (const QSizeF size : {QSizeF(1, 1), QSizeF(40, 30), QSizeF(120, 90), QSizeF(2000, 60)}) {
        CHECK(pixelsOf(pictureOf(killedBuds(), day(), size), Qt::magenta) == 0);
    }
}

TEST_CASE("the plot in words and as a table tells what is drawn") {
    const report::Plot plot = bloomSteps(2);
    const QString words = plotSummary(plot);
    for (const char* part : {"Vines in bloom or past it.",
                             "Share of the vines (percent) by Date.",
                             "A011: 9 point",
                             "at 20 Apr 2026",
                             "n = 412",
                             "Vines that were not observed are left out."}) {
        CHECK_MESSAGE(words.contains(QString::fromUtf8(part)), words.toStdString());
    }
    const PlotTableText table = plotTableText(plot);
    CHECK(table.header == QStringList({QStringLiteral("Series"),
                                       QStringLiteral("Date"),
                                       QStringLiteral("Share of the vines (percent)")}));
    REQUIRE(table.rows.size() == 18);
    CHECK(
        table.rows[0] ==
        QStringList({QStringLiteral("A011"), QStringLiteral("20 Apr 2026"), QStringLiteral("3")}));
    const QByteArray csv = plotCsv(plot);
    CHECK(csv.startsWith("Series,Date,Share of the vines (percent)\n"));
    CHECK(csv.contains("A011,2026-04-20,3\n"));
    CHECK(csv.count('\n') == 19);
}

TEST_CASE("on paper the words stay words and the typeface is in the file") {
    const TempFolder folder;
    REQUIRE(QDir().mkpath(QStringLiteral(BULLACE_PICTURES)));
    const QString path = QStringLiteral(BULLACE_PICTURES "/plot-killed.pdf");
    for (const auto paper : {QPageSize::Letter, QPageSize::A4}) {
        REQUIRE(writePlotPdf(path, killedBuds(), kFamily, paper));
        const QString text = said(QStringLiteral("pdftotext"), {path, QStringLiteral("-")});
        for (const char* part : {"Primary buds killed, by test temperature",
                                 "Test temperature (°C)",
                                 "fitted",
                                 "half killed at",
                                 "n = 196",
                                 "official forecasts come first"}) {
            CHECK_MESSAGE(text.contains(QString::fromUtf8(part)), text.toStdString());
        }
        const QStringList fonts =
            said(QStringLiteral("pdffonts"), {path}).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
        REQUIRE(fonts.size() > 2);
        for (qsizetype i = 2; i < fonts.size(); ++i) {
            CHECK_MESSAGE(fonts[i].contains(QStringLiteral(" yes ")), fonts[i].toStdString());
            CHECK(fonts[i].contains(QStringLiteral("DejaVu")));
        }
        const QString size = said(QStringLiteral("pdfinfo"), {path});
        CHECK(size.contains(paper == QPageSize::Letter ? QStringLiteral("792 x 612")
                                                       : QStringLiteral("842 x 595")));
        CHECK(size.contains(QStringLiteral("Pages:           1")));
    }
    report::Plot broken = bloomSteps(1);
    std::reverse(broken.series[0].points.begin(), broken.series[0].points.end());
    CHECK(writePlotPdf(path, broken, kFamily).error().code == ErrorCode::InvalidInput);
    const QString nowhere = QString::fromStdString(folder.file("none/plot.pdf"));
    CHECK(writePlotPdf(nowhere, bloomSteps(1), kFamily).error().code == ErrorCode::Io);
}

TEST_CASE("an SVG picture names no typeface, and looks like the plot on the glass") {
    const auto svg = plotSvg(killedBuds(), kFamily, {200, 120});
    REQUIRE(svg);
    CHECK_FALSE(svg->contains("<text"));
    CHECK(svg->contains("<path"));
    REQUIRE(QDir().mkpath(QStringLiteral(BULLACE_PICTURES)));
    QFile file(QStringLiteral(BULLACE_PICTURES "/plot-killed.svg"));
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write(*svg);
    QSvgRenderer renderer(*svg);
    REQUIRE(renderer.isValid());
    QImage drawn(760, 456, QImage::Format_RGB32);
    drawn.fill(Qt::white);
    QPainter painter(&drawn);
    renderer.render(&painter);
    painter.end();
    keep(drawn, QStringLiteral("killed-svg"));
    PlotLook look = day();
    look.pxPerMm = 3.8;
    look.textPx = qRound(3.3 * 3.8);
    const QImage glass = pictureOf(killedBuds(), look, {760, 456});
    for (const QColor colour : {QColor(Qt::black), kBlue}) {
        const double ratio = static_cast<double>(pixelsOf(drawn, colour)) / pixelsOf(glass, colour);
        CHECK(ratio > 0.6);
        CHECK(ratio < 1.6);
    }
    report::Plot beyond = killedBuds();
    beyond.x.greatest = -13;
    beyond.x.least = -19; // lines go on beyond the axes, and are cut there
    const auto cut = plotSvg(beyond, kFamily, {200, 120});
    REQUIRE(cut);
    drawn.fill(Qt::white);
    painter.begin(&drawn);
    QSvgRenderer(*cut).render(&painter);
    painter.end();
    keep(drawn, QStringLiteral("cut-svg"));
    const QImage margin = drawn.copy(0, 60, 40, 240);
    CHECK(pixelsOf(margin, kBlue) == 0);
    CHECK(plotSvg(killedBuds(), kFamily, {5, 120}).error().code == ErrorCode::InvalidInput);
    CHECK(plotSvg(killedBuds(), kFamily, {200, 1e9}).error().code == ErrorCode::InvalidInput);
}

TEST_CASE("many points are drawn within a glance") {
    report::Plot plot = bloomSteps(1);
    plot.series = {series(report::PlotSeries::Points, "")};
    for (int i = 0; i < 12'000; ++i) {
        plot.series[0].points.push_back(pointAt(20'000 + i % 97, 50 + 40 * std::sin(i * 0.37)));
    }
    QElapsedTimer timer;
    timer.start();
    CHECK(pixelsOf(pictureOf(plot), kBlue) > 100);
    MESSAGE("ms for 12,000 points: ", timer.elapsed());
    CHECK(timer.elapsed() < 5000);
}

TEST_CASE("the item paints its source's plot, and anew when that changes") {
    report::Plot first = bloomSteps(3);
    PlotSource source;
    source.setPlot(first);
    class PlotScreen : public support::Screen {
    public:
        PlotScreen() : Screen("import QtQuick\nItem {}", {200, 120}, 4) { registerPlots(engine()); }
    } screen;
    QQmlComponent component(&screen.engine());
    component.setData("import Bullace.Plots\nPlot {}", QUrl(QStringLiteral("qrc:/test/Plot.qml")));
    INFO(component.errorString().toStdString());
    auto* item = qobject_cast<PlotItem*>(component.create());
    REQUIRE(item != nullptr);
    item->setParentItem(&screen.root());
    item->setSize(screen.root().size());
    const QImage before = screen.picture();
    item->setSource(&source);
    const QImage bloom = screen.picture();
    CHECK(bloom != before);
    CHECK(pixelsOf(bloom, kBlue) > 50);
    keep(bloom, QStringLiteral("item"));
    CHECK(item->summary().startsWith(QStringLiteral("Vines in bloom")));
    const QSignalSpy changed(item, &PlotItem::plotChanged);
    source.setPlot(bars());
    CHECK(changed.count() == 1);
    CHECK(screen.picture() != bloom);
    CHECK(source.tableRowCount() == 6);
    CHECK(source.tableRow(0).size() == source.tableHeader().size());
    CHECK(source.tableRow(6).isEmpty());
    screen.theme().setDusk(true);
    keep(screen.picture(), QStringLiteral("item-dusk"));
    delete item;
}
