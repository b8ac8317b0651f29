// The views of the sciences on the demo station: what is chosen, drawn, told and written.
#include "quick/words.hpp"
#include "support/desk_glass.hpp"

#include <QFile>

#include <algorithm>
#include <string>
#include <vector>

using namespace bullace;
using namespace bullace::test;

namespace {

struct Station {
    TempFolder folder;
    std::string path = folder.file("station.db");
    FixedClock clock{1'760'000'000'000}; // 2025-10-09
    std::unique_ptr<DeskGlass> glass;

    Station() {
        makeDemoFile(path);
        glass = std::make_unique<DeskGlass>(path, clock);
        glass->sit("hl");
        glass->press(Qt::Key_Escape); // the notice that the file is a copy
        glass->go(desk::DeskApp::Study);
    }
    desk::StudyViewModel& study() { return *glass->app().study(); }
    void choose(const char* view, const desk::Chosen& chosen = {}) {
        study().choose(QLatin1String(view), chosen);
        glass->rest();
    }
    QByteArray written(const QString& name, bool isPicture) {
        const QString file = QString::fromStdString(folder.file(name.toStdString()));
        CHECK(quick::toText(isPicture ? study().writePicture(file) : study().writeTable(file)) ==
              "");
        QFile read(file);
        REQUIRE(read.open(QIODevice::ReadOnly));
        return read.readAll();
    }
};

// The views that have something to show on the demo station.
const std::vector<const char*>& views() {
    static const std::vector<const char*> all{"season",
                                              "bloom",
                                              "weather",
                                              "measures",
                                              "identity",
                                              "cold",
                                              "winter",
                                              "growth",
                                              "colour",
                                              "people",
                                              "comparison"};
    return all;
}

} // namespace

TEST_CASE(
    "every view of the sciences draws itself on the demo, says what it rests on, and is written") {
    Station station;
    for (const char* view : views()) {
        INFO(view);
        station.choose(view);
        const desk::Study& study = station.study().study();
        CHECK_FALSE(study.title.isEmpty());
        CHECK_FALSE(study.words.isEmpty());
        CHECK_FALSE(study.method.isEmpty());
        CHECK_FALSE(study.rows.empty());
        REQUIRE(study.plot);
        const Status drawable = report::checkPlot(*study.plot);
        INFO((drawable ? std::string() : drawable.error().message));
        CHECK(drawable.ok());
        CHECK(study.plot->notes.count);
        station.glass->look(std::string("study-") + view);
        station.glass->press("t");
        CHECK(station.study().isTableShown());
        station.glass->look(std::string("study-") + view + "-table");
        station.glass->press("t");
        CHECK(station.written(QStringLiteral("picture.pdf"), true).startsWith("%PDF"));
        CHECK(station.written(QStringLiteral("picture.svg"), true).contains("<svg"));
        CHECK(station.written(QStringLiteral("picture.csv"), true).count('\n') > 1);
        CHECK(station.written(QStringLiteral("table.pdf"), false).startsWith("%PDF"));
        CHECK(station.written(QStringLiteral("table.csv"), false).count('\n') ==
              static_cast<int>(study.rows.size()) + 1);
    }
}

TEST_CASE("what holds of some accessions is told with their names, and the picture counts what it "
          "draws") {
    Station station;
    station.choose("cold");
    const desk::Study& cold = station.study().study();
    CHECK(cold.rows.size() == 8);
    CHECK(cold.plot->notes.count == 6U * 210U);
    const auto bands = [&cold] {
        return std::ranges::count(
            cold.plot->series, report::PlotSeries::Band, &report::PlotSeries::kind);
    };
    CHECK(bands() == 0);
    station.choose("cold", {{QStringLiteral("accessions"), QStringLiteral("A001,A018")}});
    CHECK(bands() == 2);
    station.choose("colour");
    const desk::Study& colour = station.study().study();
    QStringList told;
    for (const desk::RemarkOfSome& remark : colour.ofSome) {
        told << desk::remarkWords(remark, colour);
    }
    CHECK(told.filter(QStringLiteral("A039: The half-life is longer than the 56 days")).size() ==
          1);
    const auto dilutions =
        std::ranges::count_if(colour.plot->series, [](const report::PlotSeries& series) {
            return series.kind == report::PlotSeries::Line &&
                   series.name.find("dilution") != std::string::npos;
        });
    CHECK(dilutions == 2);
}

TEST_CASE(
    "one line for each accession's shoots, and one for each shoot of the two that are chosen") {
    Station station;
    station.choose("growth");
    const desk::Study& growth = station.study().study();
    CHECK(growth.plot->series.size() == 6);
    CHECK(growth.plot->notes.count == 840U);
    station.choose("growth", {{QStringLiteral("accessions"), QStringLiteral("A001,A011")}});
    CHECK(growth.plot->series.size() == 20);
    CHECK(growth.rows.size() == 2);
    station.glass->look("study-growth-two");
}

TEST_CASE("a file with another end is refused in words") {
    Station station;
    CHECK_FALSE(station.study().writeTable(QStringLiteral("table.png")).isEmpty());
    CHECK_FALSE(station.study().writePicture(QStringLiteral("picture.doc")).isEmpty());
}

TEST_CASE("choosing accessions leaves only them, and giving them back shows all") {
    Station station;
    station.choose("identity");
    const auto all = station.study().study().rows.size();
    station.choose("identity", {{QStringLiteral("accessions"), QStringLiteral("A001,A002")}});
    CHECK(station.study().study().rows.size() == 2);
    station.choose("identity", {{QStringLiteral("accessions"), QString()}});
    CHECK(station.study().study().rows.size() == all);
    station.choose("identity", {{QStringLiteral("accessions"), QStringLiteral("no-such")}});
    CHECK(station.study().study().rows.size() == all);
}

TEST_CASE(
    "the sheet has bloom, cold and colour beside counts, and taxa in the place of accessions") {
    Station station;
    station.choose(
        "comparison",
        {{QStringLiteral("items"), QStringLiteral("clusters,!bloom,!ripe,!cold,!colour")},
         {QStringLiteral("picture"), QStringLiteral("!bloom")},
         {QStringLiteral("reference"), QStringLiteral("A022")}});
    const desk::Study& study = station.study().study();
    CHECK(study.columns.size() == 6);
    std::vector<int> filled(study.columns.size(), 0);
    for (const desk::GridRow& row : study.rows) {
        for (qsizetype i = 1; i < row.cells.size(); ++i) {
            filled[static_cast<std::size_t>(i)] += row.cells[i].isEmpty() ? 0 : 1;
        }
    }
    for (std::size_t i = 1; i < filled.size(); ++i) {
        INFO(i);
        CHECK(filled[i] >= (i == 3 ? 1 : 4)); // few visits bound the ripe date
    }
    REQUIRE(study.plot);
    CHECK(report::checkPlot(*study.plot).ok());
    station.glass->press("t");
    station.glass->look("study-sheet-further");
    station.choose("comparison", {{QStringLiteral("side"), QStringLiteral("taxa")}});
    CHECK(station.study().study().rows.size() >= 4);
    CHECK(station.study().study().rows.size() < 12);
    station.glass->look("study-sheet-taxa");
}

TEST_CASE("a person reads her own figures, and nobody else's") {
    Station station;
    const auto own = [&station] {
        for (const Remark& remark : station.study().study().remarks) {
            if (remark.sentence.starts_with("Your own values")) {
                return true;
            }
        }
        return false;
    };
    station.choose("people");
    CHECK_FALSE(own()); // Hesper noted no stage twice
    station.glass->sit("im");
    station.choose("people");
    CHECK(own());
    station.choose("people", {{QStringLiteral("what"), QStringLiteral("!all")}});
    CHECK(station.study().study().rows.size() > 1);
    station.glass->look("study-people-all");
}

TEST_CASE("a station without notes says so on every view, and nothing is drawn") {
    const TempFolder folder;
    const std::string path = folder.file("empty.db");
    makeStationFile(path, "");
    FixedClock clock(1'760'000'000'000);
    DeskGlass desk(path, clock);
    desk.go(desk::DeskApp::Study);
    for (const auto& view : desk::makeStudyViews()) {
        desk.app().study()->choose(view->key(), {});
        desk.rest();
        INFO(view->key().toStdString());
        CHECK_FALSE(desk.app().study()->study().words.isEmpty());
        CHECK_FALSE(desk.app().study()->hasPlot());
        desk.look("study-empty-" + view->key().toStdString());
    }
}

namespace {

// Lines of an office that knows two vines of one accession, and of a tablet that noted them.
class Lines {
public:
    Lines() {
        office("block/B1/rows", "[[1,4]]");
        for (const char* vine : {"01", "02"}) {
            office("planting/B1-01-" + std::string(vine) + "/2018-03-01",
                   R"({"accession":"A001","until":null})");
        }
        office("accession/A001/name", R"("Sallow Ditch")");
    }
    void office(const std::string& subject, const std::string& json) {
        add("s0000000000000009.1", "catalog", ++officeSeq_, subject, json);
    }
    void noted(const std::string& subject, const std::string& json) {
        add("t0000000000000001.1", "observe", ++tabletSeq_, subject, json);
    }
    // A sample of an observation.
    void sample(const std::string& subject, const std::string& json) {
        noted(subject + "/t0000000000000001.1," + std::to_string(++samples_), json);
    }
    [[nodiscard]] const std::string& text() const { return text_; }

private:
    void add(const char* origin,
             const char* kind,
             int seq,
             const std::string& subject,
             const std::string& json) {
        text_ += std::string(R"({"origin":")") + origin + R"(","seq":)" + std::to_string(seq) +
                 R"(,"count":)" + std::to_string(seq) + R"(,"author":"im","kind":")" + kind +
                 R"(","subject":")" + subject + R"(","value":)" + json + R"(,"over":[]})" + "\n";
    }
    std::string text_;
    int officeSeq_ = 0;
    int tabletSeq_ = 0;
    int samples_ = 0;
};

} // namespace

TEST_CASE(
    "picks of a season are added up, a missed one is told, and the crop to come is a product") {
    Lines lines;
    lines.sample("obs/B1-01-01/2025-08-30/yield", "4.5");
    lines.sample("obs/B1-01-01/2025-08-30/yield", "1.5"); // two buckets of one day
    lines.sample("obs/B1-01-01/2025-09-12/yield", "6.0");
    lines.sample("obs/B1-01-02/2025-08-30/yield", "9.0");
    lines.noted("obs/B1-01-02/2025-09-12/yield", R"({"none":"walked-past"})");
    for (const char* vine : {"01", "02"}) {
        const std::string at = "obs/B1-01-" + std::string(vine) + "/2025-07-01/";
        lines.noted(at + "clusters", "100");
        lines.sample(at + "berries-per-cluster", "6");
        lines.sample(at + "berry-weight", "5.0");
    }
    const TempFolder folder;
    const std::string path = folder.file("crop.db");
    makeStationFile(path, lines.text());
    FixedClock clock(1'760'000'000'000);
    DeskGlass desk(path, clock);
    desk.go(desk::DeskApp::Study);
    desk.app().study()->choose(QStringLiteral("crop"), {});
    desk.rest();
    const desk::Study& study = desk.app().study()->study();
    REQUIRE(study.rows.size() == 1);
    const QStringList& cells = study.rows[0].cells;
    CHECK(cells[1] == QStringLiteral("1")); // the vine with every pick
    CHECK(cells[2] == QStringLiteral("12.0"));
    CHECK(cells[3] == QStringLiteral("1"));
    CHECK(cells[4] == QStringLiteral("100"));
    CHECK(cells[5].startsWith(QStringLiteral("3.0"))); // 100 × 6 × 5 g
    CHECK(study.missedLeft == 1);
    desk.look("study-crop");
}
