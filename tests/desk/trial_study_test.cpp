// The page Breeding on the demo station: trials and predictions, what is drawn, told and written.
#include "desk/breeding_views.hpp"

#include "quick/words.hpp"
#include "support/desk_glass.hpp"

#include <QElapsedTimer>
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
        glass->go(desk::DeskApp::Breeding);
    }
    desk::StudyViewModel& page() { return *glass->app().breeding(); }
    const desk::Study& choose(const char* view, const desk::Chosen& chosen = {}) {
        page().choose(QLatin1String(view), chosen);
        glass->rest();
        return page().study();
    }
    QByteArray written(const QString& name, bool isPicture) {
        const QString file = QString::fromStdString(folder.file(name.toStdString()));
        CHECK(quick::toText(isPicture ? page().writePicture(file) : page().writeTable(file)) == "");
        QFile read(file);
        REQUIRE(read.open(QIODevice::ReadOnly));
        return read.readAll();
    }
    // Draws itself, says what it rests on, and is written.
    void lookOver(const std::string& name) {
        INFO(name);
        const desk::Study& study = page().study();
        INFO(study.words.toStdString());
        CHECK_FALSE(study.title.isEmpty());
        CHECK_FALSE(study.words.isEmpty());
        CHECK_FALSE(study.method.isEmpty());
        CHECK_FALSE(study.rows.empty());
        REQUIRE(study.plot);
        const Status drawable = report::checkPlot(*study.plot);
        INFO((drawable ? std::string() : drawable.error().message));
        CHECK(drawable.ok());
        CHECK(study.plot->notes.count);
        glass->look("breeding-" + name);
        glass->press("t");
        CHECK(page().isTableShown());
        glass->look("breeding-" + name + "-table");
        glass->press("t");
        CHECK(written(QStringLiteral("picture.pdf"), true).startsWith("%PDF"));
        CHECK(written(QStringLiteral("picture.svg"), true).contains("<svg"));
        CHECK(written(QStringLiteral("picture.csv"), true).count('\n') > 1);
        CHECK(written(QStringLiteral("table.pdf"), false).startsWith("%PDF"));
        CHECK(written(QStringLiteral("table.csv"), false).count('\n') ==
              static_cast<int>(study.rows.size()) + 1);
    }
};

QString q(const char* text) {
    return QLatin1String(text);
}

} // namespace

TEST_CASE("trial study: means with letters, analysis of variance and residuals of the demo") {
    Station station;
    station.choose("trials", {{q("what"), q("clusters")}});
    station.lookOver("trials-means");
    station.choose("trials", {{q("shown"), q("variance")}});
    station.lookOver("trials-variance");
    station.choose("trials", {{q("shown"), q("residuals")}});
    station.lookOver("trials-residuals");
    station.choose("trials", {{q("shown"), q("means")}, {q("reference"), q("A001")}});
    station.lookOver("trials-reference");
    station.choose("trials", {{q("scale"), q("logarithm")}});
    station.lookOver("trials-logarithm");
}

TEST_CASE("trial study: predictions, what varies and correlations of the demo") {
    Station station;
    station.choose("predictions", {{q("what"), q("clusters")}});
    station.lookOver("predictions");
    station.choose("predictions", {{q("kin"), q("pedigree")}});
    station.lookOver("predictions-pedigree");
    station.choose("predictions", {{q("shown"), q("variances")}, {q("kin"), q("-")}});
    station.lookOver("predictions-variances");
    station.choose("predictions",
                   {{q("shown"), q("correlations")}, {q("other"), q("pruning-weight")}});
    station.lookOver("predictions-correlation");
}

TEST_CASE("trial study: a smooth surface takes out the trends of one block") {
    Station station;
    station.choose("predictions", {{q("what"), q("clusters")}, {q("blocks"), q("B3")}});
    const auto hasSurface = [&station] {
        return std::ranges::any_of(station.page().groups(), [](const desk::ChoiceGroup& group) {
            return std::ranges::find(group.lines, q("surface"), &desk::ChoiceLine::key) !=
                   group.lines.end();
        });
    };
    CHECK(hasSurface());
    station.choose("predictions", {{q("place"), q("surface")}});
    station.lookOver("predictions-surface");
    station.choose("predictions", {{q("shown"), q("variances")}});
    station.lookOver("predictions-surface-variances");
    station.choose("predictions", {{q("blocks"), q("B2,B3")}});
    CHECK_FALSE(hasSurface());
}

TEST_CASE("trial study: every descriptor of the demo gives an answer or says why there is none") {
    Station station;
    for (const char* view : {"trials", "predictions"}) {
        station.choose(view);
        for (const char* repeats : {"blocks", "rows", "vines"}) {
            const std::vector<desk::ChoiceLine> lines = station.page().groups()[1].lines;
            for (const desk::ChoiceLine& line : lines) {
                const desk::Study& study = station.choose(
                    view,
                    {{q("what"), line.key}, {q("repeats"), q(repeats)}, {q("place"), q(repeats)}});
                INFO(view << ' ' << repeats << ' ' << line.key.toStdString() << ' '
                          << study.words.toStdString());
                CHECK_FALSE(study.words.isEmpty());
                CHECK((study.plot.has_value() || !study.rows.empty() || study.words.size() > 20));
            }
        }
    }
}

TEST_CASE("trial study: an empty station says that there is nothing yet") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(path, "");
    FixedClock clock(1'760'000'000'000);
    DeskGlass desk(path, clock);
    desk.go(desk::DeskApp::Breeding);
    for (const auto& view : desk::makeBreedingViews()) {
        INFO(view->key().toStdString());
        desk.app().breeding()->choose(view->key(), {});
        desk.rest();
        CHECK_FALSE(desk.app().breeding()->study().words.isEmpty());
        CHECK_FALSE(desk.app().breeding()->study().plot);
        desk.look("breeding-empty-" + view->key().toStdString());
    }
}
