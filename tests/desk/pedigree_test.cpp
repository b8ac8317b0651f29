// The view of the pedigree: who is drawn, what is told of each, and what is written.
#include "quick/words.hpp"
#include "support/breeding_page.hpp"

#include <algorithm>

using namespace bullace;
using namespace bullace::test;

namespace {

// The cell of a row's accession in the column of that title.
QString cellOf(const desk::Study& study, const QString& accession, const QString& column) {
    const auto at = std::ranges::find(study.columns, column, &desk::GridColumn::title);
    const auto row = std::ranges::find(study.rows, accession, &desk::GridRow::key);
    REQUIRE(at != study.columns.end());
    REQUIRE(row != study.rows.end());
    return row->cells[at - study.columns.begin()];
}

} // namespace

TEST_CASE("the pedigree study draws the accession's parents and offspring, and is written") {
    BreedingPage page;
    page.choose("pedigree", {{QStringLiteral("focus"), QStringLiteral("A044")}});
    const desk::Study& study = page.study();
    REQUIRE(study.drawing);
    CHECK(report::checkDrawing(*study.drawing).ok());
    CHECK(report::countOf(*study.drawing, report::DrawingBox::Strong) == 1);
    const auto rows = report::tableOf(*study.drawing);
    const auto joins = [&rows](const char* from, const char* line, const char* to) {
        return std::ranges::any_of(rows, [&](const report::DrawingRow& row) {
            return row.from == from && row.line == line && row.to == to;
        });
    };
    CHECK(joins("A023", "mother", "A023 × A026"));
    CHECK(joins("A026", "father", "A023 × A026"));
    CHECK(joins("A023 × A026", "offspring", "A044"));
    CHECK(cellOf(study, QStringLiteral("A044"), QStringLiteral("Mother")) == "A023");
    CHECK(cellOf(study, QStringLiteral("A023"), QStringLiteral("Kinship with it")) == "0.250");
    CHECK(cellOf(study, QStringLiteral("A044"), QStringLiteral("Kinship with it")) == "0.500");
    CHECK(study.words.contains(QStringLiteral("Inbreeding 0.000")));
    CHECK_FALSE(study.method.isEmpty());
    page.glass->look("breeding-pedigree");
    page.glass->press("t");
    page.glass->look("breeding-pedigree-table");
    page.glass->press("t");
    CHECK(page.written(QStringLiteral("p.pdf"), true).startsWith("%PDF"));
    CHECK(page.written(QStringLiteral("p.svg"), true).contains("<svg"));
    CHECK(page.written(QStringLiteral("p.csv"), true).contains("A023 × A026,offspring,A044\n"));
    CHECK(page.written(QStringLiteral("t.pdf"), false).startsWith("%PDF"));
    CHECK(page.written(QStringLiteral("t.csv"), false).count('\n') ==
          static_cast<int>(study.rows.size()) + 1);
}

TEST_CASE("the pedigree study opens with the accession that has most kin, and draws more "
          "generations where they are asked for") {
    BreedingPage page;
    page.choose("pedigree", {{QStringLiteral("focus"), QStringLiteral("A039")}});
    const auto two = page.study().rows.size();
    page.choose("pedigree", {{QStringLiteral("generations"), QStringLiteral("1")}});
    CHECK(page.study().rows.size() <= two);
    page.choose("pedigree", {{QStringLiteral("focus"), QString()}});
    REQUIRE(page.study().drawing);
    page.choose("pedigree", {{QStringLiteral("generations"), QStringLiteral("4")}});
    page.glass->look("breeding-pedigree-large");
    // By keys alone: the drawing has the keyboard, is moved, made larger, and all of it is shown.
    const auto items = page.glass->window().findChildren<plots::DrawingItem*>("studyDrawing");
    const auto seen = std::ranges::find_if(items, &QQuickItem::isVisible);
    REQUIRE(seen != items.end());
    plots::DrawingItem* item = *seen;
    for (int i = 0; i < 3 && !item->hasActiveFocus(); ++i) {
        page.glass->press(Qt::Key_Tab);
    }
    REQUIRE(item->hasActiveFocus());
    page.glass->press("0");
    const double whole = item->view()->scale;
    page.glass->press("++++");
    CHECK(item->view()->scale > whole);
    const double middle = item->view()->middle.x();
    page.glass->press(Qt::Key_Right);
    CHECK(item->view()->middle.x() > middle);
    page.glass->look("breeding-pedigree-larger");
    page.glass->press("0");
    CHECK(item->view()->scale == doctest::Approx(whole));
}

TEST_CASE("in the pedigree study a selfing has a double line, and a parent that is not in the "
          "collection a dashed edge") {
    StationLines lines;
    lines.office("accession/A001/name", R"("Sallow Ditch")");
    lines.office("accession/S-1/mother", R"("A001")");
    lines.office("accession/S-1/father", R"("A001")");
    lines.office("accession/S-2/mother", R"("S-1")");
    lines.office("accession/S-2/father", R"("Q77")");
    BreedingPage page(lines.text());
    page.choose("pedigree", {{QStringLiteral("focus"), QStringLiteral("S-1")}});
    const desk::Study& study = page.study();
    REQUIRE(study.drawing);
    CHECK(std::ranges::count(
              study.drawing->lines, report::DrawingLine::Double, &report::DrawingLine::kind) == 1);
    CHECK(report::countOf(*study.drawing, report::DrawingBox::Faint) == 1);
    CHECK(cellOf(study, QStringLiteral("S-1"), QStringLiteral("Inbreeding")) == "0.500");
    page.glass->look("breeding-pedigree-selfing");
}

TEST_CASE("the pedigree study names an accession that is its own ancestor, and draws nothing") {
    StationLines lines;
    lines.office("accession/S-1/mother", R"("S-2")");
    lines.office("accession/S-2/mother", R"("S-1")");
    BreedingPage page(lines.text());
    page.choose("pedigree");
    CHECK_FALSE(page.study().drawing);
    CHECK(page.study().words.contains(QStringLiteral("S-1")));
    CHECK(page.study().words.contains(QStringLiteral("S-2")));
    page.glass->look("breeding-pedigree-circle");
}

TEST_CASE("the pedigree study says that people disagree about a parent, and takes it as unknown") {
    StationLines lines;
    lines.office("accession/S-1/father", R"("A001")");
    lines.office("accession/S-1/mother", R"("A002")");
    lines.apart("accession/S-1/mother", R"("A003")");
    BreedingPage page(lines.text());
    page.choose("pedigree", {{QStringLiteral("focus"), QStringLiteral("S-1")}});
    CHECK(page.study().openLeft == 1);
    CHECK(cellOf(page.study(), QStringLiteral("S-1"), QStringLiteral("Mother")).isEmpty());
    CHECK(cellOf(page.study(), QStringLiteral("S-1"), QStringLiteral("Father")) == "A001");
}
