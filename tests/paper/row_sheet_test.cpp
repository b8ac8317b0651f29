// Row sheets: a page for a row on which nothing is missing, cut or over something else.
#include "paper/row_sheet.hpp"

#include "camera/code_reader.hpp"
#include "paper/paper_words.hpp"
#include "paper/row_code.hpp"
#include "printed.hpp"

#include "core/descriptors/catalog.hpp"
#include "core/journal/json_value.hpp"
#include "support/pseudo_language.hpp"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>
#include <array>

using namespace bullace;
using namespace bullace::paper;
using bullace::tests::faultsOf;
using bullace::tests::partOf;
using bullace::tests::PdfFile;
using bullace::tests::printed;

namespace {

vineyard::Asked asked(std::string_view code) {
    const auto* known = descriptors::findBuiltIn(code);
    REQUIRE(known != nullptr);
    return {*known, {}};
}

std::vector<RowSheetQuestion> questions(std::initializer_list<std::string_view> codes,
                                        int samples = 1,
                                        const std::vector<std::int64_t>& stages = {}) {
    std::vector<RowSheetQuestion> all;
    for (const std::string_view code : codes) {
        for (auto& question : questionsOf(asked(code), samples, stages)) {
            all.push_back(std::move(question));
        }
    }
    return all;
}

RowSheet sheetOf(std::vector<RowSheetQuestion> asks, int vines, PaperSize paper) {
    RowSheet sheet;
    sheet.paper = paper;
    sheet.block = "B2";
    sheet.row = 7;
    sheet.roundTitle = QStringLiteral("Bloom, first walk");
    for (int vine = 1; vine <= vines; ++vine) {
        sheet.vines.push_back(
            {QString::number(vine), vine == 4 ? QStringLiteral("no vine") : QString()});
    }
    sheet.questions = std::move(asks);
    vineyard::Block block;
    block.code = "B2";
    block.closedUntil = readDate("2026-05-20");
    sheet.cautions = cautionsOf(block, *readDate("2026-05-14"));
    return sheet;
}

std::vector<Page> pagesOf(const RowSheet& sheet) {
    const auto pages = rowSheetPages(sheet);
    const std::string fault = pages.ok() ? "" : pages.error().message;
    CAPTURE(fault);
    REQUIRE(pages.ok());
    return *pages;
}

// Boxes for digits among a page's items.
std::ptrdiff_t boxesOn(const Page& page) {
    return std::count_if(page.items.begin(), page.items.end(), [](const PageItem& item) {
        return item.kind == PageItem::Frame && item.boxMm.width() == 7 &&
               item.boxMm.height() == 7 && !item.isDashed;
    });
}

std::string codeOn(const Page& page) {
    for (const PageItem& item : page.items) {
        if (item.kind == PageItem::Code) {
            return item.words.toStdString();
        }
    }
    return {};
}

constexpr std::array kSizes{PaperSize::Letter, PaperSize::A4};

} // namespace

TEST_CASE("each descriptor gets as many boxes as its greatest number has digits") {
    const auto one = [](std::string_view code) {
        const auto all = questions({code});
        REQUIRE(all.size() == 1);
        return all.front();
    };
    CHECK(one("clusters").digits == 4);
    CHECK(one("bud-break").digits == 3);
    CHECK(one("berry-diameter").digits == 2);
    CHECK(one("berry-diameter").decimals == 1);
    CHECK(one("vigour").digits == 1);
    CHECK(one("note").digits == 0);
    CHECK(questions({"photo"}).empty());
    CHECK(questions({"clusters-on-shoots"}).size() == 2);
}

TEST_CASE("stages are listed with their words, only those of the round; colours by number") {
    const auto all = questions({"stage"}, 1, {61, 65, 68});
    REQUIRE(all.size() == 1);
    CHECK(all[0].digits == 2);
    REQUIRE(all[0].codes.size() == 3);
    CHECK(all[0].codes[1].code == QStringLiteral("65"));
    CHECK(questions({"stage"})[0].codes.size() == 43);
    const auto colour = questions({"berry-colour"});
    CHECK(colour[0].digits == 1);
    REQUIRE(colour[0].codes.size() == 5);
    CHECK(colour[0].codes[0].code == QStringLiteral("1"));
    CHECK(colour[0].codes[0].meaning == QStringLiteral("bronze"));
}

TEST_CASE("every vine has its boxes, and one that is missing has words instead") {
    for (const PaperSize paper : kSizes) {
        const RowSheet sheet = sheetOf(questions({"clusters", "berry-diameter"}), 40, paper);
        std::ptrdiff_t boxes = 0;
        std::vector<QString> vines;
        for (const Page& page : pagesOf(sheet)) {
            boxes += boxesOn(page);
            for (const PageItem& item : page.items) {
                if (item.isBold && item.alignment.testFlag(Qt::AlignRight)) {
                    vines.push_back(item.words);
                }
            }
        }
        CHECK(boxes == 39 * (4 + 3));
        REQUIRE(vines.size() == 40);
        CHECK(vines.front() == QStringLiteral("1"));
        CHECK(vines.back() == QStringLiteral("40"));
    }
}

TEST_CASE("from one vine to two hundred nothing is cut, overlaps or falls off the paper") {
    const std::vector<std::vector<RowSheetQuestion>> asks = {questions({"stage"}),
                                                             questions({"clusters"}),
                                                             questions({"clusters", "vigour"}),
                                                             questions({"berry-diameter"}, 5),
                                                             questions({"note"}),
                                                             questions({"berry-colour", "rot"}),
                                                             questions({"primary-buds"})};
    for (const PaperSize paper : kSizes) {
        for (const auto& ask : asks) {
            CAPTURE(ask.front().title.toStdString());
            for (const int vines : {1, 2, 13, 40, 97, 200}) {
                CAPTURE(vines);
                for (const Page& page : pagesOf(sheetOf(ask, vines, paper))) {
                    const auto faults = faultsOf(page);
                    CHECK_MESSAGE(faults.empty(), (faults.empty() ? "" : faults.front()));
                }
            }
        }
    }
}

TEST_CASE("in a language with words half as long again nothing is cut or falls off, either") {
    test::PseudoTranslator longer;
    QCoreApplication::installTranslator(&longer);
    for (const PaperSize paper : kSizes) {
        for (const auto& ask : {questions({"stage"}),
                                questions({"clusters", "vigour"}),
                                questions({"berry-colour", "rot"}),
                                questions({"note"})}) {
            CAPTURE(ask.front().title.toStdString());
            for (const Page& page : pagesOf(sheetOf(ask, 97, paper))) {
                const auto faults = faultsOf(page);
                CHECK_MESSAGE(faults.empty(), (faults.empty() ? "" : faults.front()));
            }
        }
    }
    QCoreApplication::removeTranslator(&longer);
}

TEST_CASE("what stands on the paper does not run into the foot of the page") {
    for (const PaperSize paper : kSizes) {
        const Page page = pagesOf(sheetOf(questions({"stage"}), 200, paper)).front();
        double lowestBox = 0;
        double footLine = 0;
        for (const PageItem& item : page.items) {
            if (item.kind == PageItem::Frame) {
                lowestBox = std::max(lowestBox, item.boxMm.bottom());
            }
            if (item.kind == PageItem::Line && item.boxMm.width() > 180) {
                footLine = std::max(footLine, item.boxMm.top());
            }
        }
        CHECK(lowestBox > 100);
        CHECK(lowestBox < footLine);
    }
}

TEST_CASE("each page's code is read from the print, and says row, end, page and round") {
    RowSheet sheet = sheetOf(questions({"clusters"}), 200, PaperSize::A4);
    sheet.isFromLast = true;
    sheet.round = "bloom-2026";
    std::reverse(sheet.vines.begin(), sheet.vines.end());
    const auto pages = pagesOf(sheet);
    REQUIRE(pages.size() > 1);
    for (std::size_t i = 0; i < pages.size(); ++i) {
        const auto read = camera::readCode(printed(pages[i]));
        REQUIRE(read.has_value());
        CHECK(*read == codeOn(pages[i]));
        CHECK(readRowCode(*read) ==
              RowCode{"B2", 7, true, static_cast<unsigned>(i + 1), "bloom-2026"});
    }
}

TEST_CASE("the printed sheet says row, order, observer, date, end, cautions, stages and its page") {
    for (const PaperSize paper : kSizes) {
        const auto pages = pagesOf(sheetOf(questions({"stage"}, 1, {61, 65, 68}), 90, paper));
        const PdfFile pdf(pages);
        const QString text = pdf.said("pdftotext", {"-layout"});
        for (const std::string words : {"B2 · row 7",
                                        "Bloom, first walk",
                                        "walked from vine 1 to vine 90",
                                        "observer",
                                        "began at vine 1",
                                        "began at vine 90",
                                        "Block B2 is closed until 20 May 2026: not walked.",
                                        "Heat, storms, footing",
                                        "N not observed, V no vine, D dead",
                                        "No line stays empty",
                                        "65 "}) {
            CAPTURE(words);
            CHECK(text.contains(QString::fromStdString(words)));
        }
        const QString last = QStringLiteral("page %1 of %1").arg(pages.size());
        CHECK(text.contains(last));
        CHECK(text.count(QStringLiteral("B2 · row 7")) == static_cast<qsizetype>(pages.size()));
        CHECK(bullace::tests::hasOnlyEmbeddedFonts(pdf.said("pdffonts")));
        const auto count = QStringLiteral("Pages: +%1\n").arg(pages.size());
        CHECK(pdf.said("pdfinfo").contains(QRegularExpression(count)));
    }
}

TEST_CASE("a block that is open has only the line about heat and footing") {
    vineyard::Block block;
    block.code = "B3";
    block.noTastingUntil = readDate("2026-06-02");
    CHECK(cautionsOf(block, *readDate("2026-06-03")).size() == 1);
    const QStringList lines = cautionsOf(block, *readDate("2026-06-02"));
    REQUIRE(lines.size() == 2);
    CAPTURE(lines[0].toStdString());
    CHECK(lines[0].contains(QStringLiteral("no tasting until 2 Jun 2026")));
}

TEST_CASE("a sheet without vines, without questions, or wider than the page is refused") {
    CHECK_FALSE(rowSheetPages(sheetOf(questions({"clusters"}), 0, PaperSize::A4)).ok());
    CHECK_FALSE(rowSheetPages(sheetOf({}, 10, PaperSize::A4)).ok());
    CHECK_FALSE(rowSheetPages(sheetOf(questions({"clusters"}, 9), 10, PaperSize::A4)).ok());
    RowSheet nowhere = sheetOf(questions({"clusters"}), 10, PaperSize::A4);
    nowhere.block = "2B";
    CHECK_FALSE(rowSheetPages(nowhere).ok());
}

TEST_CASE("a vine planted between two stands in its place, and an empty place is told") {
    vineyard::Catalogue catalogue;
    vineyard::Catalogue::Reader reader(catalogue);
    const auto plant = [&reader](const std::string& position, const Bytes& until) {
        journal::MapValue value;
        value.add("accession", journal::textValue("A1")).add("until", until);
        reader.take("planting/" + position + "/2020-03-01", value.bytes());
    };
    plant("B2-07-01", journal::nullValue());
    plant("B2-07-02", journal::textValue("2025-11-30"));
    plant("B2-07-02a", journal::nullValue());
    plant("B2-07-03", journal::nullValue());
    reader.finish();
    const vineyard::Block block{"B2", "", {{7, 3}, {8, 3}}, {}, {}};
    const auto day = *readDate("2026-05-14");
    const auto vines = vinesOf(catalogue, block, block.rows[0], day, true);
    REQUIRE(vines.size() == 4);
    CHECK(vines[0].number == QStringLiteral("3"));
    CHECK(vines[1].number == QStringLiteral("2a"));
    CHECK(vines[2].number == QStringLiteral("2"));
    CHECK(vines[2].gone == QStringLiteral("no vine"));
    CHECK(vines[1].gone.isEmpty());
    CHECK(vines[3].number == QStringLiteral("1"));
    // Of a row of which no planting is known nothing is said to be missing.
    for (const RowSheetVine& vine : vinesOf(catalogue, block, block.rows[1], day, false)) {
        CHECK(vine.gone.isEmpty());
    }
}

TEST_CASE("pictures of row sheets are kept to be looked at") {
    const auto stage = pagesOf(sheetOf(questions({"stage"}), 40, PaperSize::Letter));
    bullace::tests::keep(printed(stage[0], 4), "row-stage");
    const auto count = pagesOf(sheetOf(questions({"clusters", "vigour"}), 40, PaperSize::A4));
    bullace::tests::keep(printed(count[0], 4), "row-counts");
    const auto berries = pagesOf(sheetOf(questions({"berry-diameter"}, 5), 40, PaperSize::A4));
    bullace::tests::keep(printed(berries[0], 4), "row-berries");
}
