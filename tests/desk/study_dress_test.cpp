// Every view of the sciences, as picture and as table, in every dress; and the page that takes
// weather in. Nothing is cut short, overlaps or reaches out of the window.
#include "desk/breeding_views.hpp"

#include "core/base/numbers.hpp"
#include "support/desk_glass.hpp"
#include "support/pseudo_language.hpp"
#include "support/season_station.hpp"

#include <QFile>

#include <string>

using namespace bullace;
using namespace bullace::test;

namespace {

struct Dress {
    const char* name;
    double textScale = 1;
    bool isDusk = false;
    const char* language = "en";
    DeskSize size = kDeskLeast;
};

void lookAtViews(DeskGlass& desk,
                 desk::StudyViewModel& page,
                 const std::vector<std::unique_ptr<desk::StudyView>>& views,
                 const std::string& dress) {
    for (const auto& view : views) {
        page.choose(view->key(), {});
        desk.rest();
        const std::string name = dress + "-" + view->key().toStdString();
        INFO(name);
        CHECK_FALSE(page.study().title.isEmpty());
        desk.look(name);
        if (!page.study().rows.empty()) {
            desk.press("t");
            desk.look(name + "-table");
            desk.press("t");
        }
    }
}

std::string twoWeeks() {
    std::string text = "DATE,TMAX,TMIN\n";
    for (int i = 0; i < 14; ++i) {
        const CivilDate day = addDays(std::chrono::year(2023) / 3 / 1, i);
        text += i == 5 ? "" : writeDate(day) + "," + std::to_string(60 + i) + ",41\n";
    }
    return text;
}

void lookAtIntake(DeskGlass& desk, const TempFolder& folder, const std::string& dress) {
    const QString file = QString::fromStdString(folder.file("weather.csv"));
    QFile out(file);
    REQUIRE(out.open(QIODevice::WriteOnly));
    out.write(twoWeeks().c_str());
    out.close();
    desk.go(desk::DeskApp::Study);
    desk.app().study()->choose(QStringLiteral("weather"), {});
    desk.rest();
    desk.press("i");
    desk.look(dress + "-intake");
    desk.press("f");
    desk.answer(file);
    desk.look(dress + "-intake-unit");
    desk.answer(QStringLiteral("F"));
    desk.look(dress + "-intake-site");
    desk.answer(QStringLiteral("north field"));
    REQUIRE(desk.app().weatherIntake().plan());
    desk.look(dress + "-intake-plan");
}

void dressAndLook(const Dress& dress, bool isOfYears) {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    if (isOfYears) {
        makeStationFile(path, SeasonStation().lines());
    } else {
        makeDemoFile(path);
    }
    FixedClock clock(1'760'000'000'000);
    DeskGlass desk(path, clock, dress.size);
    desk::DeskSettings settings = desk.app().session().settings();
    settings.author = "hl";
    settings.textScale = dress.textScale;
    settings.isDusk = dress.isDusk;
    settings.language = dress.language;
    desk.app().session().change(settings);
    desk.rest();
    desk.press(Qt::Key_Escape); // the notice that the file is a copy
    const std::string name = std::string(dress.name) + (isOfYears ? "-years" : "-demo");
    desk.go(desk::DeskApp::Study);
    lookAtViews(desk, *desk.app().study(), desk::makeStudyViews(), name);
    desk.go(desk::DeskApp::Breeding);
    lookAtViews(desk, *desk.app().breeding(), desk::makeBreedingViews(), name + "-breeding");
    if (isOfYears) {
        lookAtIntake(desk, folder, name);
    }
    settings.language = "en"; // of the whole program: as other tests found it
    desk.app().session().change(settings);
    desk.rest();
}

void inBothStations(const Dress& dress) {
    for (const bool isOfYears : {false, true}) {
        dressAndLook(dress, isOfYears);
    }
}

} // namespace

TEST_CASE("views of the sciences fit the least window with letters of twice the size") {
    inBothStations({"views-twice", 2});
}

TEST_CASE("views of the sciences in dusk in a wide window") {
    inBothStations({"views-dusk", 1, true, "en", kDeskWide});
}

TEST_CASE("views of the sciences fit the least window in Spanish, half as large again") {
    inBothStations({"views-spanish", 1.5, false, "es"});
}

TEST_CASE("views of the sciences in a longer language than any") {
    PseudoTranslator pseudo;
    QCoreApplication::installTranslator(&pseudo);
    inBothStations({"views-pseudo", 1, false, ""});
    QCoreApplication::removeTranslator(&pseudo);
}
