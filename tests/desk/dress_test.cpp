// Every page of the desk in every dress: letters of twice the size, dusk, Spanish, and a language
// that nobody speaks, in the least window and in a wide one. Nothing is cut short, overlaps or
// reaches out of the window; everything can be heard.
#include "support/desk_glass.hpp"
#include "support/pseudo_language.hpp"

#include <functional>
#include <vector>

using namespace bullace;
using namespace bullace::test;

namespace {

using App = desk::DeskApp;

struct Dress {
    const char* name;
    double textScale = 1;
    bool isDusk = false;
    const char* language = "";
    DeskSize size = kDeskLeast;
};

struct Page {
    const char* name;
    std::function<void(DeskGlass&)> open;
};

void ask(DeskGlass& desk, const char* page, const char* about) {
    emit desk.app().session().asked(QLatin1String(page), QLatin1String(about));
    desk.rest();
}

const std::vector<Page>& pages() {
    static const std::vector<Page> all{
        {"arrivals", [](DeskGlass& desk) { desk.go(App::Arrivals); }},
        {"conflicts", [](DeskGlass& desk) { desk.go(App::Conflicts); }},
        {"conflict-choice",
         [](DeskGlass& desk) {
             desk.go(App::Conflicts);
             desk.press("1");
         }},
        {"bulk",
         [](DeskGlass& desk) {
             desk.go(App::Conflicts);
             desk.press(Qt::Key_Escape);
             desk.press("g");
         }},
        {"findings", [](DeskGlass& desk) { desk.go(App::Findings); }},
        {"rulebook", [](DeskGlass& desk) { desk.go(App::Rulebook); }},
        {"bench", [](DeskGlass& desk) { desk.go(App::Bench); }},
        {"vine", [](DeskGlass& desk) { ask(desk, "vine", "B1-02-01"); }},
        {"history", [](DeskGlass& desk) { desk.press("h"); }},
        {"map", [](DeskGlass& desk) { desk.go(App::Map); }},
        {"collection", [](DeskGlass& desk) { desk.go(App::Collection); }},
        {"card",
         [](DeskGlass& desk) {
             desk.press("3");
             desk.press(Qt::Key_Return);
         }},
        {"print", [](DeskGlass& desk) { ask(desk, "print", "B1"); }},
        {"observations", [](DeskGlass& desk) { ask(desk, "observations", ""); }},
        {"import", [](DeskGlass& desk) { ask(desk, "import", ""); }},
        {"study", [](DeskGlass& desk) { desk.go(App::Study); }},
        {"study-table", [](DeskGlass& desk) { desk.press("t"); }},
        {"comparison",
         [](DeskGlass& desk) {
             desk.app().study()->choose(QStringLiteral("comparison"), {});
             desk.rest();
         }},
        {"people",
         [](DeskGlass& desk) {
             desk.app().study()->choose(QStringLiteral("people"), {});
             desk.rest();
             desk.press("t");
         }},
        {"breeding", [](DeskGlass& desk) { desk.go(App::Breeding); }},
        {"planting-plan", [](DeskGlass& desk) { ask(desk, "planting-plan", ""); }},
        {"planting-question", [](DeskGlass& desk) { desk.press("e"); }},
        {"settings", [](DeskGlass& desk) { desk.go(App::Settings); }},
        {"help",
         [](DeskGlass& desk) {
             desk.go(App::Conflicts);
             desk.press(Qt::Key_F1);
         }},
    };
    return all;
}

void walkThrough(DeskGlass& desk, const std::string& dress) {
    for (const Page& page : pages()) {
        page.open(desk);
        CHECK_FALSE(desk.page().title().isEmpty());
        desk.look(dress + "-" + page.name);
    }
}

void dressAndWalk(const Dress& dress) {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeDemoFile(path);
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
    walkThrough(desk, dress.name);
    settings.language = "en"; // of the whole program: as other tests found it
    desk.app().session().change(settings);
    desk.rest();
}

} // namespace

TEST_CASE("letters of twice the size fit the least window") {
    dressAndWalk({"twice", 2});
}

TEST_CASE("dusk in a wide window") {
    dressAndWalk({"dusk", 1, true, "", kDeskWide});
}

TEST_CASE("Spanish fits the least window, and letters half as large again") {
    dressAndWalk({"spanish", 1.5, false, "es"});
}

TEST_CASE("a longer language than any shows nothing that the translators never saw") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeDemoFile(path);
    FixedClock clock(1'760'000'000'000);
    PseudoTranslator pseudo;
    QCoreApplication::installTranslator(&pseudo);
    {
        DeskGlass desk(path, clock);
        desk.sit("hl");
        desk.press(Qt::Key_Escape);
        walkThrough(desk, "pseudo");
    }
    QCoreApplication::removeTranslator(&pseudo);
}

TEST_CASE("the language changes at once, on the page and in the rail") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeDemoFile(path);
    FixedClock clock(1'760'000'000'000);
    DeskGlass desk(path, clock);
    desk.go(App::Settings);
    CHECK(desk.page().title() == QStringLiteral("This desk"));
    desk.press("l"); // English by name
    desk.press("l");
    CHECK(desk.page().title() != QStringLiteral("This desk"));
    CHECK(desk.app().rail()->textAt(0, 0) != QStringLiteral("Arrivals"));
    desk.press("l"); // as the computer: English here
    CHECK(desk.page().title() == QStringLiteral("This desk"));
}
