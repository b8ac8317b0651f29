// The plan and the book of crosses on the desk, on the demo station: what is chosen, drawn, told,
// written, and entered.
#include "quick/words.hpp"
#include "support/breeding_page.hpp"

#include <algorithm>
#include <set>

using namespace bullace;
using namespace bullace::test;

namespace {

const QString kList = QStringLiteral("list");

void keepFiles(BreedingPage& page) {
    CHECK(page.written(QStringLiteral("picture.pdf"), true).startsWith("%PDF"));
    CHECK(page.written(QStringLiteral("picture.svg"), true).contains("<svg"));
    CHECK(page.written(QStringLiteral("picture.csv"), true).count('\n') > 1);
    CHECK(page.written(QStringLiteral("table.pdf"), false).startsWith("%PDF"));
    CHECK(page.written(QStringLiteral("table.csv"), false).count('\n') ==
          static_cast<int>(page.study().rows.size()) + 1);
}

void lookAtBoth(BreedingPage& page, const std::string& name) {
    page.glass->look(name);
    page.glass->press("t");
    page.glass->look(name + "-table");
    page.glass->press("t");
}

} // namespace

TEST_CASE("the plan of crosses study keeps its limits, says whether it is proven, and draws what "
          "merit costs in kinship") {
    BreedingPage page;
    page.choose("plan",
                {{QStringLiteral("crosses"), QStringLiteral("5")},
                 {QStringLiteral("uses"), QStringLiteral("2")}});
    const desk::Study& study = page.study();
    INFO(study.words.toStdString());
    REQUIRE(study.rows.size() == 5);
    CHECK((study.words.contains(QStringLiteral("proven")) ||
           study.words.contains(QStringLiteral("further"))));
    CHECK_FALSE(study.method.isEmpty());
    CHECK_FALSE(study.cautions.isEmpty());
    std::map<QString, int> uses;
    for (const desk::GridRow& row : study.rows) {
        CHECK(row.cells.size() == static_cast<qsizetype>(study.columns.size()));
        CHECK(row.cells[5].toDouble() <= 0.125);
        ++uses[row.cells[0]];
        ++uses[row.cells[1]];
    }
    for (const auto& [parent, count] : uses) {
        INFO(parent.toStdString());
        CHECK(count <= 2);
    }
    REQUIRE(study.plot);
    CHECK(report::checkPlot(*study.plot).ok());
    CHECK(study.plot->notes.count);
    const auto& curve = study.plot->series.front().points;
    CHECK_FALSE(curve.empty()); // how many there are is a matter of time
    CHECK(std::ranges::is_sorted(curve, {}, &report::PlotPoint::y)); // more costs kinship
    lookAtBoth(page, "breeding-plan");
    keepFiles(page);
    page.choose("plan", {{kList, QStringLiteral("refused")}});
    CHECK_FALSE(page.study().rows.empty());
    for (const desk::GridRow& row : page.study().rows) {
        CHECK_FALSE(row.cells.back().isEmpty()); // each has its reason
    }
    lookAtBoth(page, "breeding-plan-refused");
}

TEST_CASE("the plan of crosses study comments her own list and takes nothing away") {
    BreedingPage page;
    page.choose("plan", {{kList, QStringLiteral("own")}});
    const desk::Study& study = page.study();
    CHECK(study.rows.size() == 8); // five of the office, three opened in the field
    CHECK_FALSE(study.deed);
    lookAtBoth(page, "breeding-plan-own");
    keepFiles(page);
}

TEST_CASE("the plan of crosses study is entered as crosses with one key, and taken back") {
    BreedingPage page;
    page.choose("plan", {{QStringLiteral("crosses"), QStringLiteral("5")}});
    REQUIRE(page.study().deed);
    CHECK(page.glass->at("cross/X26-1/mother").empty());
    page.glass->press("c");
    CHECK(page.glass->at("cross/X26-1/mother").starts_with("settled"));
    CHECK(page.glass->at("cross/X26-5/father").starts_with("settled"));
    CHECK(page.glass->at("cross/X26-6/mother").empty());
    page.glass->press(Qt::Key_Z, Qt::ControlModifier);
    CHECK_FALSE(page.glass->at("cross/X26-1/mother").starts_with("settled"));
}

TEST_CASE("the plan of crosses study without any limit that can be kept says which is in the way") {
    StationLines lines;
    lines.office("block/B1/rows", "[[1,9]]");
    for (int vine = 1; vine <= 9; ++vine) {
        const std::string number = "B1-01-0" + std::to_string(vine);
        lines.office("planting/" + number + "/2018-03-01",
                     R"({"accession":"A)" + std::to_string(1 + vine % 3) + R"(","until":null})");
        lines.noted("obs/" + number + "/2025-08-30/clusters",
                    std::to_string(10 * (1 + vine % 3) + vine));
    }
    for (int i = 1; i <= 3; ++i) { // females all
        lines.office("accession/A" + std::to_string(i) + "/flower-sex", "4");
    }
    BreedingPage page(lines.text());
    page.choose("plan");
    CHECK(page.study().rows.empty());
    CHECK_FALSE(page.study().deed);
    CHECK(page.study().words.contains(QStringLiteral("No set of crosses")));
    CHECK_FALSE(page.study().remarks.empty());
    page.glass->look("breeding-plan-none");
}

TEST_CASE("the book of crosses study follows the demo's crosses from bag to seedling") {
    BreedingPage page;
    page.choose("book");
    const desk::Study& study = page.study();
    const demo::BreedingTruth& truth = demoStation().truth.breeding;
    CHECK(study.rows.size() == truth.crosses.size() + 8);
    REQUIRE(study.plot);
    CHECK(report::checkPlot(*study.plot).ok());
    CHECK(study.plot->notes.count);
    const auto column = std::ranges::find(
        study.columns, QStringLiteral("Seeds germinated"), &desk::GridColumn::title);
    REQUIRE(column != study.columns.end());
    for (const demo::BredCross& cross : truth.crosses) {
        const auto row = std::ranges::find_if(study.rows, [&cross](const desk::GridRow& one) {
            return one.cells[0] == quick::fromText(cross.id);
        });
        REQUIRE(row != study.rows.end());
        CHECK(row->cells[column - study.columns.begin()].startsWith(
            QLocale().toString(cross.germinated)));
    }
    lookAtBoth(page, "breeding-book");
    keepFiles(page);
    page.choose("book", {{kList, QStringLiteral("due")}});
    CHECK(page.study().rows.size() == 3); // pollinated in May, and nobody counted the set
    lookAtBoth(page, "breeding-book-due");
    page.choose("book", {{kList, QStringLiteral("names")}});
    CHECK_FALSE(page.study().rows.empty());
    lookAtBoth(page, "breeding-book-names");
}

TEST_CASE("the success rates of the book of crosses study hold the demo's true shares in most of "
          "their intervals") {
    BreedingPage page;
    page.choose("book",
                {{kList, QStringLiteral("rates")},
                 {QStringLiteral("rate"), QStringLiteral("set")},
                 {QStringLiteral("by"), QStringLiteral("mother")}});
    const desk::Study& study = page.study();
    REQUIRE(study.plot);
    std::map<std::string, double> shares;
    for (const demo::BredCross& cross : demoStation().truth.breeding.crosses) {
        shares[cross.mother] = cross.setShare; // a mother's own, the same in all years
    }
    std::size_t held = 0;
    std::size_t asked = 0;
    for (const report::PlotPoint& point : study.plot->series.front().points) {
        for (const auto& [mother, share] : shares) {
            if (point.label.starts_with(mother)) {
                ++asked;
                held += *point.xLow <= 100 * share && 100 * share <= *point.xHigh ? 1U : 0U;
            }
        }
    }
    CHECK(asked == shares.size());
    CHECK(held + 1 >= asked); // one in twenty may miss
    lookAtBoth(page, "breeding-book-rates");
}

TEST_CASE("an empty station says so in each study of pedigree and crosses") {
    BreedingPage page(std::string{});
    for (const char* view : {"pedigree", "plan", "book"}) {
        page.choose(view);
        INFO(view);
        CHECK_FALSE(page.study().words.isEmpty());
        CHECK_FALSE(page.page().hasPicture());
        page.glass->look(std::string("breeding-empty-") + view);
    }
}
