// The page of a planting plan: chosen by keys, looked at, printed, planted and taken back.
#include "desk/plan_typing.hpp"

#include "quick/words.hpp"
#include "support/desk_glass.hpp"

#include <QFile>

#include <string>

using namespace bullace;
using namespace bullace::test;

namespace {

// A block of three rows with one old vine, and four accessions, two of them selections.
std::string vineyard() {
    const char* office = "s00000000000000ff.1";
    int seq = 0;
    const auto line = [&](const std::string& subject, const std::string& json) {
        return lineOf({office, ++seq, "hq", "catalog", subject, json});
    };
    return line("block/B2/rows", "[[1,8],[2,8],[3,8]]") +
           line("planting/B2-01-02/2020-03-01", R"({"accession":"A1","until":null})") +
           line("accession/A1/name", R"("Tallow")") + line("accession/A2/name", R"("Rushlight")") +
           line("accession/A3/status", R"("selection")") +
           line("accession/A4/status", R"("selection")");
}

QString q(const char* text) {
    return QLatin1String(text);
}

struct Station {
    TempFolder folder;
    std::string path = folder.file("station.db");
    FixedClock clock{1'760'000'000'000}; // 2025-10-09
    std::unique_ptr<DeskGlass> glass;

    explicit Station(double textScale = 1) {
        makeStationFile(path, vineyard());
        glass = std::make_unique<DeskGlass>(path, clock);
        desk::DeskSettings settings = glass->app().session().settings();
        settings.author = "hl";
        settings.textScale = textScale;
        glass->app().session().change(settings);
        glass->go(desk::DeskApp::Breeding);
        glass->press("l");
        REQUIRE(glass->app().page() == desk::DeskApp::PlantingPlan);
    }
    desk::PlantingPlanViewModel& page() { return glass->app().plantingPlan(); }
    void ask(const char* key, const char* answer) {
        glass->press(key);
        glass->press(Qt::Key_A, Qt::ControlModifier);
        glass->answer(q(answer));
    }
};

} // namespace

TEST_CASE("planting plan: from keys to plantings, and back with one undo") {
    Station station;
    station.glass->look("planting-empty");
    CHECK_FALSE(station.page().plan());
    station.ask("b", "B2 1-2");
    station.ask("e", "A1-A2 selection");
    station.ask("n", "3");
    station.ask("s", "11");
    REQUIRE(station.page().plan());
    CHECK(station.page().plan()->layout.vines.size() == 12);
    CHECK(station.page().plan()->layout.lost.size() == 1);
    CHECK(station.page().table()->count() == 12);
    station.glass->look("planting-plan");
    const QString file = QString::fromStdString(station.folder.file("plan.pdf"));
    CHECK(quick::toText(station.page().writePlan(file)) == "");
    QFile pdf(file);
    REQUIRE(pdf.open(QIODevice::ReadOnly));
    CHECK(pdf.readAll().startsWith("%PDF"));
    QFile::copy(file, q(BULLACE_PICTURES "/desk-planting-plan.pdf"));
    const std::string first =
        "planting/" + quick::toText(station.page().table()->at(0).key) + "/2025-10-09";
    CHECK(station.glass->at(first).empty());
    station.glass->press("t");
    CHECK(station.glass->app().page() == desk::DeskApp::Breeding);
    CHECK(station.glass->at(first).find("settled") == 0);
    CHECK(station.glass->at("block/B2/replicates").find("settled") == 0);
    station.glass->press(Qt::Key_Z, Qt::ControlModifier);
    CHECK(station.glass->at(first).find("settled") != 0);
}

TEST_CASE("planting plan: an augmented design and one of rows and columns") {
    Station station;
    station.ask("e", "A3, A4, S1, S2, S3");
    station.ask("c", "A1");
    station.glass->press("d");
    REQUIRE(station.page().plan());
    CHECK(station.page().plan()->wish.kind == trials::LayoutKind::Augmented);
    CHECK(station.page().plan()->layout.vines.size() == 7);
    station.glass->look("planting-augmented");
    station.glass->press("d");
    REQUIRE(station.page().plan());
    CHECK(station.page().plan()->wish.kind == trials::LayoutKind::RowsAndColumns);
    CHECK(station.page().plan()->layout.vines.size() == 12);
}

TEST_CASE("planting plan: what cannot be laid out or read is said, and nothing is planted") {
    Station station(2);
    station.ask("e", "A1-A4");
    station.ask("n", "9");
    CHECK_FALSE(station.page().plan());
    CHECK(station.page().words().contains(q("too few")));
    station.glass->look("planting-too-few");
    station.glass->press("t");
    CHECK(station.glass->app().page() == desk::DeskApp::PlantingPlan);
    station.glass->press("y");
    station.glass->press(Qt::Key_A, Qt::ControlModifier);
    station.glass->answer(q("spring"));
    CHECK(station.page().isAsking());
    CHECK_FALSE(station.page().refusal().isEmpty());
}

TEST_CASE("planting plan: rows and accessions as they are typed") {
    const auto places = desk::typedPlaces(q("b2 1-3, 7"));
    REQUIRE(places);
    CHECK(places->block == "B2");
    CHECK(places->rows == std::vector<unsigned>{1, 2, 3, 7});
    CHECK(desk::placesText(*places) == q("B2 1-3 7"));
    for (const char* wrong : {"", "B2 x", "B2 3-1", "B2 0", "B2 1-2-3"}) {
        CHECK_FALSE(desk::typedPlaces(q(wrong)));
    }
}
