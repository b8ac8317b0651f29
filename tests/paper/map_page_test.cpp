// The block map on paper.
#include "paper/map_page.hpp"

#include "paper/pdf.hpp"
#include "printed.hpp"

#include <QRegularExpression>

#include <map>

using namespace bullace;
using namespace bullace::paper;
using quick::BlockMapCell;
using quick::BlockMapPicture;

namespace {

// Twelve rows of forty vines with everything that can be at a place.
BlockMapPicture someBlock() {
    BlockMapPicture picture;
    picture.title = QStringLiteral("Block B2, clusters on the vine, 14 May 2026");
    picture.notes = {
        QStringLiteral("480 places; 2 open ones have no value until they are settled.")};
    picture.scale.kind = quick::BlockMapScale::Ordered;
    picture.scale.title = QStringLiteral("Clusters on the vine");
    picture.scale.steps = quick::orderedSteps(0, 140, 7);
    picture.northDegrees = 20;
    for (int number = 1; number <= 12; ++number) {
        quick::BlockMapRow row;
        row.block = QStringLiteral("B2");
        row.number = QString::number(number);
        row.walk = number % 2 == 1 ? quick::BlockMapRow::FromFirst : quick::BlockMapRow::FromLast;
        for (int vine = 1; vine <= 40; ++vine) {
            BlockMapCell cell;
            cell.vine = vine;
            cell.position = QStringLiteral("B2-%1-%2")
                                .arg(number, 2, 10, QLatin1Char('0'))
                                .arg(vine, 2, 10, QLatin1Char('0'));
            const int kind = (number * 41 + vine * 7) % 97;
            cell.state = kind < 6 ? static_cast<BlockMapCell::State>(kind) : BlockMapCell::Value;
            if (cell.state == BlockMapCell::Value) {
                cell.value = (number * number * 3 + vine * 11) % 140;
                cell.text = QString::number(*cell.value);
            }
            cell.isMarked = kind == 50;
            row.cells.push_back(cell);
        }
        picture.rows.push_back(row);
    }
    return picture;
}

} // namespace

TEST_CASE("the map's page lies, has its fonts with it, and its words and numbers are text") {
    for (const PaperSize size : {PaperSize::Letter, PaperSize::A4}) {
        const auto bytes = blockMapPdf(someBlock(), size, QStringLiteral("14 May 2026, 09:14"));
        const bullace::tests::PdfFile pdf(bytes);
        CHECK(bullace::tests::hasOnlyEmbeddedFonts(pdf.said("pdffonts")));
        const QString text = pdf.said("pdftotext", {"-layout"});
        CHECK(text.contains(QStringLiteral("Block B2, clusters on the vine, 14 May 2026")));
        CHECK(text.contains(QStringLiteral("As of 14 May 2026, 09:14.")));
        CHECK(text.contains(QStringLiteral("page 1 of 1")));
        CHECK(text.contains(QStringLiteral("Missing")));
        const QString facts = pdf.said("pdfinfo");
        CHECK(facts.contains(size == PaperSize::Letter
                                 ? QRegularExpression("Page size: +792 x 612")
                                 : QRegularExpression("Page size: +84[12][.0-9]* x 595")));
    }
}

TEST_CASE("the page holds the map that the screen shows, cell for cell") {
    const QImage drawn = bullace::tests::PdfFile(blockMapPdf(someBlock(), PaperSize::A4, "today"))
                             .drawn(1, 102); // 4 to a mm
    std::map<QRgb, int> fills;
    for (int y = 0; y < drawn.height(); ++y) {
        for (int x = 0; x < drawn.width(); ++x) {
            ++fills[drawn.pixel(x, y) | 0xFF000000U];
        }
    }
    for (const QRgb step : {0xFF440154U, 0xFF31688EU, 0xFF35B779U, 0xFFFDE725U}) {
        CHECK(fills[step] > 2000);
    }
    bullace::tests::keep(drawn, "block-map-page");
}
