// Labels: read back by the tablet's own reader, in their right sizes, on their places.
#include "paper/label_sheet.hpp"

#include "camera/code_reader.hpp"
#include "paper/row_code.hpp"
#include "printed.hpp"

#include "core/vineyard/label_code.hpp"
#include "support/pseudo_language.hpp"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>

using namespace bullace;
using namespace bullace::paper;
using bullace::tests::faultsOf;
using bullace::tests::partOf;
using bullace::tests::PdfFile;
using bullace::tests::printed;

namespace {

constexpr PaperSize kSizes[] = {PaperSize::Letter, PaperSize::A4};

std::string codeOf(std::size_t number) {
    return vineyard::labelCode(7'000'000'000ULL + 977'351ULL * number);
}

std::string positionOf(std::size_t number) {
    const auto padded = [](std::size_t part) {
        return (part < 10 ? "0" : "") + std::to_string(part);
    };
    return "B2-" + padded(1 + number / 40) + "-" + padded(1 + number % 40);
}

std::vector<Label> vines(std::size_t count) {
    std::vector<Label> labels;
    for (std::size_t i = 0; i < count; ++i) {
        labels.push_back(*vineLabel(codeOf(i), positionOf(i)));
    }
    return labels;
}

Label labelOf(LabelKind kind, std::size_t number) {
    switch (kind) {
    case LabelKind::Vine:
        return *vineLabel(codeOf(number), positionOf(number));
    case LabelKind::WalkStrip:
        return *stripLabel(codeOf(number), positionOf(number));
    case LabelKind::RowEnd:
        return *rowEndLabel("B2", static_cast<unsigned>(1 + number), 1);
    default:
        return *lotLabel(kind, codeOf(number), {"Cross 26-014", "12 May 2026"});
    }
}

std::vector<Page> pagesOf(LabelKind kind, std::size_t count, PaperSize paper) {
    std::vector<Label> labels;
    for (std::size_t i = 0; i < count; ++i) {
        labels.push_back(labelOf(kind, i));
    }
    const auto pages = labelPages(labels, usualSheet(kind, paper));
    const std::string fault = pages.ok() ? "" : pages.error().message;
    CAPTURE(fault);
    REQUIRE(pages.ok());
    return *pages;
}

std::vector<LabelKind> allKinds() {
    std::vector<LabelKind> kinds;
    for (int i = 0; i < kLabelKinds; ++i) {
        kinds.push_back(static_cast<LabelKind>(i));
    }
    return kinds;
}

} // namespace

TEST_CASE("every label of every kind is read back from the printed page as what it says") {
    for (const PaperSize paper : kSizes) {
        for (const LabelKind kind : allKinds()) {
            CAPTURE(static_cast<int>(kind));
            const LabelSheet sheet = usualSheet(kind, paper);
            const auto count = static_cast<std::size_t>(sheet.columns * sheet.rows);
            const auto pages = pagesOf(kind, count, paper);
            REQUIRE(pages.size() == 1);
            const QImage page = printed(pages[0], 10);
            for (std::size_t i = 0; i < count; i += 1 + count / 12) {
                const QImage label = partOf(page, placeOf(sheet, i).boxMm, 10);
                const auto read = camera::readCode(label);
                REQUIRE(read.has_value());
                CHECK(*read == labelOf(kind, i).code);
            }
        }
    }
}

TEST_CASE(
    "a vine's label has a code of 30 to 40 mm, its letters 8 mm high, and block, row and vine "
    "in words") {
    const auto pages = pagesOf(LabelKind::Vine, 12, PaperSize::Letter);
    int codes = 0;
    double letters = 100;
    QStringList words;
    for (const PageItem& item : pages[0].items) {
        if (item.kind == PageItem::Code) {
            ++codes;
            CHECK(item.boxMm.width() >= 30);
            CHECK(item.boxMm.width() <= 40);
            CHECK(item.boxMm.width() == doctest::Approx(item.boxMm.height()));
        } else if (item.kind == PageItem::Words && item.words.size() == 4) {
            letters = std::min(letters, item.capsMm);
            CHECK(item.isBold);
        } else if (item.kind == PageItem::Words) {
            words << item.words;
        }
    }
    CHECK(codes == 12);
    CHECK(letters >= 8);
    CHECK(letters < 100);
    CHECK(words.contains(QStringLiteral("B2 · row 1 · vine 7")));
}

TEST_CASE("letters of 8 mm are 8 mm high on the paper") {
    Page page{PaperSize::A4, {}};
    PageItem item;
    item.boxMm = QRectF(20, 20, 100, 20);
    item.words = QStringLiteral("H");
    item.capsMm = 8;
    item.isBold = true;
    page.items = {item};
    const QImage picture = PdfFile(std::span(&page, 1)).drawn(1, 254); // 10 to a mm
    int first = -1;
    int last = -1;
    for (int y = 0; y < picture.height(); ++y) {
        for (int x = 0; x < picture.width(); ++x) {
            if (qGray(picture.pixel(x, y)) < 128) {
                first = first < 0 ? y : first;
                last = y;
            }
        }
    }
    CHECK((last - first + 1) / 10.0 == doctest::Approx(8).epsilon(0.02));
}

TEST_CASE("the widest codes still fit in their least letters on the usual sheets") {
    // W is the widest symbol of a code.
    const QString widest = QStringLiteral("WWWW WWWW");
    for (const LabelKind kind : allKinds()) {
        CAPTURE(static_cast<int>(kind));
        Label label = labelOf(kind, 3);
        label.typable = kind == LabelKind::RowEnd ? label.typable : widest;
        const auto items =
            labelItems(label, QRectF(QPointF(), usualSheet(kind, PaperSize::A4).label));
        CHECK(items.ok());
        for (const PageItem& item : items.ok() ? *items : std::vector<PageItem>()) {
            const bool isTyped = !item.words.isEmpty() && label.typable.contains(item.words);
            CHECK((!isTyped || item.capsMm >= leastCodeCapsMm(kind)));
        }
    }
}

TEST_CASE("from one label to five hundred nothing is cut, overlaps or falls off the paper") {
    for (const PaperSize paper : kSizes) {
        for (const LabelKind kind : allKinds()) {
            CAPTURE(static_cast<int>(kind));
            for (const unsigned count : {1U, 2U, 7U, 11U, 12U, 13U, 97U, 250U, 500U}) {
                CAPTURE(count);
                const auto pages = pagesOf(kind, count, paper);
                std::size_t codes = 0;
                for (const Page& page : pages) {
                    codes += static_cast<std::size_t>(
                        std::count_if(page.items.begin(), page.items.end(), [](const auto& item) {
                            return item.kind == PageItem::Code;
                        }));
                    const auto faults = faultsOf(page);
                    CHECK_MESSAGE(faults.empty(), (faults.empty() ? "" : faults.front()));
                }
                CHECK(codes == count);
            }
        }
    }
}

TEST_CASE("in a language with words half as long again labels and the test page stay whole") {
    test::PseudoTranslator longer;
    QCoreApplication::installTranslator(&longer);
    for (const LabelKind kind : allKinds()) {
        CAPTURE(static_cast<int>(kind));
        for (const Page& page : pagesOf(kind, 30, PaperSize::Letter)) {
            const auto faults = faultsOf(page);
            CHECK_MESSAGE(faults.empty(), (faults.empty() ? "" : faults.front()));
        }
        const auto faults = faultsOf(testPage(usualSheet(kind, PaperSize::Letter)));
        CHECK_MESSAGE(faults.empty(), (faults.empty() ? "" : faults.front()));
    }
    QCoreApplication::removeTranslator(&longer);
}

TEST_CASE("labels begin at the first free one of a partly used sheet and go on at the next sheet's "
          "first") {
    LabelSheet sheet = usualSheet(LabelKind::Vine, PaperSize::Letter);
    sheet.startCell = 10;
    const auto pages = labelPages(vines(4), sheet);
    REQUIRE(pages.ok());
    CHECK(pages->size() == 2);
    CHECK(placeOf(sheet, 0).page == 0);
    CHECK(placeOf(sheet, 0).boxMm.topLeft() ==
          QPointF(sheet.margin.x() + sheet.pitch.x(), sheet.margin.y() + 3 * sheet.pitch.y()));
    CHECK(placeOf(sheet, 2).page == 1);
    CHECK(placeOf(sheet, 2).boxMm.topLeft() == sheet.margin);
}

TEST_CASE("what a printer puts too far right and down is taken off") {
    LabelSheet sheet = usualSheet(LabelKind::Vine, PaperSize::A4);
    const QRectF before = placeOf(sheet, 5).boxMm;
    sheet.printerOffset = QPointF(1.5, -0.75);
    CHECK(placeOf(sheet, 5).boxMm == before.translated(-1.5, 0.75));
    CHECK(checkSheet(sheet).ok());
    sheet.printerOffset = QPointF(0, 40);
    CHECK_FALSE(checkSheet(sheet).ok());
}

TEST_CASE("sheets that cannot be are refused with a reason") {
    const auto refused = [](auto&& change) {
        LabelSheet sheet = usualSheet(LabelKind::Pot, PaperSize::Letter);
        change(sheet);
        const Status status = checkSheet(sheet);
        return !status.ok() && status.error().code == ErrorCode::InvalidInput &&
               !status.error().message.empty();
    };
    CHECK(refused([](LabelSheet& sheet) { sheet.columns = 0; }));
    CHECK(refused([](LabelSheet& sheet) { sheet.label = QSizeF(0, 10); }));
    CHECK(refused([](LabelSheet& sheet) { sheet.pitch.setX(sheet.label.width() - 1); }));
    CHECK(refused([](LabelSheet& sheet) { sheet.columns = 4; }));
    CHECK(refused([](LabelSheet& sheet) { sheet.rows = 9; }));
    CHECK(refused([](LabelSheet& sheet) { sheet.startCell = 24; }));
    CHECK(refused([](LabelSheet& sheet) { sheet.startCell = -1; }));
    CHECK(refused([](LabelSheet& sheet) { sheet.margin.setX(-2); }));
    CHECK(checkSheet(usualSheet(LabelKind::Pot, PaperSize::Letter)).ok());
    CHECK_FALSE(labelPages({}, usualSheet(LabelKind::Pot, PaperSize::Letter)).ok());
}

TEST_CASE("a mistyped code, and a place that is none, get no label") {
    std::string wrong = codeOf(1);
    std::swap(wrong[3], wrong[4]);
    REQUIRE(wrong[3] != wrong[4]);
    CHECK_FALSE(vineLabel(wrong, "B2-07-14").ok());
    CHECK_FALSE(vineLabel(codeOf(1), "B2-7-14").ok());
    CHECK_FALSE(lotLabel(LabelKind::Vial, "", {}).ok());
    CHECK_FALSE(rowEndLabel("2B", 7, 1).ok());
    CHECK_FALSE(stripLabel(codeOf(1), "lot:P3").ok());
    CHECK(vineLabel(codeOf(1), "B2-07-14a").ok());
}

TEST_CASE("a label too small for its code to be read is refused") {
    const Label label = labelOf(LabelKind::Vial, 1);
    CHECK(labelItems(label, QRectF(0, 0, 32, 16)).ok());
    CHECK_FALSE(labelItems(label, QRectF(0, 0, 32, 12)).ok());
    CHECK_FALSE(labelItems(labelOf(LabelKind::Vine, 1), QRectF(0, 0, 40, 15)).ok());
}

TEST_CASE("in the PDF of labels fonts are embedded, the page has its size, and codes and words are "
          "text") {
    for (const PaperSize paper : kSizes) {
        const auto pages = pagesOf(LabelKind::Vine, 30, paper);
        const PdfFile pdf(pages);
        CHECK(bullace::tests::hasOnlyEmbeddedFonts(pdf.said("pdffonts")));
        const QString text = pdf.said("pdftotext", {"-layout"});
        CHECK(text.contains(QString::fromStdString(codeOf(0).substr(0, 4))));
        CHECK(text.contains(QStringLiteral("B2 · row 1 · vine 30")));
        const QString facts = pdf.said("pdfinfo");
        CHECK(facts.contains(QRegularExpression("Pages: +3\n")));
        CHECK(facts.contains(paper == PaperSize::Letter ? QStringLiteral("612 x 792 pts (letter)")
                                                        : QStringLiteral("(A4)")));
        const QImage drawn = pdf.drawn(2, 254);
        const LabelSheet sheet = usualSheet(LabelKind::Vine, paper);
        CHECK(camera::readCode(partOf(drawn, placeOf(sheet, 4).boxMm, 10)) == codeOf(16));
    }
}

TEST_CASE("a file that cannot be written is told") {
    const auto pages = pagesOf(LabelKind::Pot, 1, PaperSize::A4);
    const Status status = writePdf(QStringLiteral("/no-such-folder/labels.pdf"), pages, "Labels");
    REQUIRE_FALSE(status.ok());
    CHECK(status.error().code == ErrorCode::Io);
    CHECK(status.error().message.find("labels.pdf") != std::string::npos);
    CHECK_FALSE(pdfOf({}, "Labels").ok());
}

TEST_CASE("the rulers of the test page are 150 mm long, and its frames lie where labels will") {
    for (const PaperSize paper : kSizes) {
        const LabelSheet sheet = usualSheet(LabelKind::SeedLot, paper);
        const Page page = testPage(sheet);
        int frames = 0;
        int rulers = 0;
        for (const PageItem& item : page.items) {
            if (item.kind == PageItem::Frame) {
                CHECK(item.boxMm == placeOf(sheet, static_cast<std::size_t>(frames)).boxMm);
                ++frames;
            }
            rulers += item.kind == PageItem::Line &&
                              std::max(item.boxMm.width(), item.boxMm.height()) == 150
                          ? 1
                          : 0;
        }
        CHECK(frames == sheet.columns * sheet.rows);
        CHECK(rulers == 2);
        const QString text = PdfFile(std::span(&page, 1)).said("pdftotext", {"-layout"});
        CHECK(text.contains(QStringLiteral("Print at 100 %")));
    }
}

TEST_CASE("row codes say block, row, end, page and round, and nothing else is taken for one") {
    const RowCode post{"B2", 7, false, 0, ""};
    CHECK(writeRowCode(post) == "ROW/B2-07");
    const RowCode sheet{"B2", 107, true, 2, "bloom-27"};
    CHECK(writeRowCode(sheet) == "ROW/B2-107/L/2/bloom-27");
    for (const RowCode& code : {post, sheet, RowCode{"ABCDEFGH", 7, false, 3, ""}}) {
        CHECK(readRowCode(writeRowCode(code)) == code);
    }
    CHECK(writeRowCode({"ABCDEFGH", 7, false, 12, ""}).size() <= 20);
    for (const char* wrong : {"",
                              "ROW/",
                              "ROW/B2",
                              "ROW/B2-7",
                              "row/B2-07",
                              "ROW/B2-07-14",
                              "ROW/B2-07/",
                              "ROW/B2-07/L",
                              "ROW/B2-07/L/",
                              "ROW/B2-07/X/1",
                              "ROW/B2-07/L/0",
                              "ROW/B2-07/L/01",
                              "ROW/B2-07/L/1x",
                              "ROW/B2-07/L/1000",
                              "ROW/B2-07/L/1/",
                              "ROW/B2-07/L/1/a/b"}) {
        CAPTURE(wrong);
        CHECK_FALSE(readRowCode(wrong).has_value());
    }
}

TEST_CASE("pictures of all sheets are kept to be looked at") {
    const char* names[] = {"vine", "row-end", "bag", "vial", "seed-lot", "pot", "walk-strip"};
    for (const LabelKind kind : allKinds()) {
        const auto pages = pagesOf(kind, 20, PaperSize::Letter);
        bullace::tests::keep(printed(pages[0], 4), names[static_cast<int>(kind)]);
    }
    const Page page = testPage(usualSheet(LabelKind::Vine, PaperSize::Letter));
    bullace::tests::keep(printed(page, 4), "test-page");
}
