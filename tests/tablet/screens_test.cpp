// Every page on every glass: nothing cut, nothing over another, everything named and large enough.
// The pictures are kept in ui-pictures; look at them.
#include "support/pseudo_language.hpp"
#include "support/tablet_glass.hpp"
#include "support/tablet_station.hpp"

#include <QDir>

#include <doctest/doctest.h>

#include <functional>

using namespace bullace;
using namespace bullace::test;
using tablet::StopViewModel;
using tablet::TabletApp;

namespace {

struct Look {
    GlassSize glass;
    bool isLeftHanded = false;
    double textScale = 1;
    field::KeyLayout layout = field::KeyLayout::Bare;
    bool isDusk = false;
    const char* language = "en";

    [[nodiscard]] bool isPseudo() const { return std::string(language) == "pseudo"; }
    [[nodiscard]] QString name() const {
        return QStringLiteral("%1-%2-%3%4%5-%6")
            .arg(QString::fromLatin1(glass.name),
                 isLeftHanded ? QStringLiteral("left") : QStringLiteral("right"))
            .arg(qRound(textScale * 100))
            .arg(layout == field::KeyLayout::Glove  ? QStringLiteral("-glove")
                 : layout == field::KeyLayout::Rain ? QStringLiteral("-rain")
                                                    : QString(),
                 isDusk ? QStringLiteral("-dusk") : QString(),
                 QString::fromLatin1(language));
    }
};

using Step = std::function<void(TabletGlass&)>;

Step choose(int index) {
    return [index](TabletGlass& tablet) { tablet.tapChoice(index); };
}
Step tapKey(const char* name) {
    return [name](TabletGlass& tablet) { tablet.tapKey(name); };
}
Step walk(const char* round) {
    return [round](TabletGlass& tablet) {
        beginRound(tablet.book(), round);
        tablet.reopenWalk();
    };
}
Step go(TabletApp::Page page) {
    return [page](TabletGlass& tablet) { tablet.app().go(page); };
}
Step show(StopViewModel::Panel panel) {
    return [panel](TabletGlass& tablet) { tablet.app().stop()->show(panel); };
}
Step type(const char* text) {
    return [text](TabletGlass& tablet) { tablet.type(QString::fromLatin1(text)); };
}

struct Page {
    const char* name;
    std::vector<Step> steps;
};

// Each begins where a set-up tablet starts: at the question who walks.
std::vector<Page> pages() {
    return {
        {"who", {}},
        {"name", {choose(3), type("Ida")}},
        {"rounds", {choose(0)}},
        {"rows", {choose(0), choose(0)}},
        {"end", {choose(0), choose(0), choose(0)}},
        {"share", {choose(0), choose(0), choose(0), choose(0)}},
        {"stop-stage", {walk("a-stage"), choose(3), choose(2)}},
        {"stop-score", {walk("b-score"), choose(6), choose(5)}},
        {"stop-count", {walk("c-count"), type("42")}},
        {"stop-refused", {walk("c-count"), type("99999")}},
        {"stop-samples", {walk("d-berry"), type("24.5"), tapKey("next"), type("25")}},
        {"stop-more",
         {walk("d-berry"),
          type("24.5"),
          tapKey("next"),
          type("29"),
          tapKey("next"),
          type("20"),
          tapKey("next")}},
        {"stop-record", {walk("e-buds"), type("3"), tapKey("next")}},
        {"stop-past", {walk("f-rot"), tapKey("walkOn")}},
        {"stop-verdict", {walk("g-verdict")}},
        {"stop-words", {walk("h-note"), type("broken post")}},
        {"stop-unknown", {walk("i-new")}},
        {"stop-why", {walk("b-score"), tapKey("why")}},
        {"stop-beside", {walk("b-score"), tapKey("beside")}},
        {"stop-note", {walk("b-score"), show(StopViewModel::Note), type("wire down")}},
        {"stop-lot", {walk("b-score"), show(StopViewModel::Lot)}},
        {"label", {walk("b-score"), show(StopViewModel::Lot), choose(0)}},
        {"stop-tally", {walk("c-count"), show(StopViewModel::Tally), tapKey("tallyGlass")}},
        {"stop-undone", {walk("b-score"), choose(6), tapKey("undo")}},
        {"stop-dead",
         {walk("b-score"), tapKey("noVine"), tapKey("why"), choose(2), tapKey("why"), choose(0)}},
        {"row-end", {walk("b-score"), choose(4), go(TabletApp::RowEnd)}},
        {"row-passed", {walk("b-score"), choose(4), go(TabletApp::RowEnd), choose(3)}},
        {"where", {walk("b-score"), go(TabletApp::Where), type("A12")}},
        {"where-found",
         {walk("b-score"),
          go(TabletApp::Where),
          type("B2-01-03"),
          [](TabletGlass& tablet) { tablet.press(Qt::Key_Return); }}},
        {"sync", {go(TabletApp::Sync)}},
        {"pairing", {go(TabletApp::Sync), choose(0)}},
        {"settings", {go(TabletApp::Settings)}},
        {"units", {go(TabletApp::Settings), choose(5)}},
        {"glass", {go(TabletApp::Settings), choose(6)}},
        {"crosses", {go(TabletApp::Crosses)}},
        {"cross-work", {walk("b-score"), go(TabletApp::Crosses), choose(0)}},
        {"cross-count",
         {walk("b-score"), go(TabletApp::Crosses), choose(0), choose(0), type("14")}},
        {"photo", {walk("b-score"), go(TabletApp::Photo)}},
    };
}

void dress(const std::string& folder, const Clock& clock, const Look& look) {
    auto book = field::FieldBook::open(folder + "/journal.db", "Etc/GMT+5", clock);
    REQUIRE(book.ok());
    field::Settings settings = (*book)->settings();
    settings.isLeftHanded = look.isLeftHanded;
    settings.textScale = look.textScale;
    settings.layout = look.layout;
    settings.isDusk = look.isDusk;
    settings.language = look.isPseudo() ? "en" : look.language;
    REQUIRE((*book)->change(settings).ok());
}

void showPage(const Page& page, const Look& look, bool isKept) {
    INFO(std::string(page.name));
    TempFolder folder;
    FixedClock clock;
    layStation(folder.path(), clock);
    dress(folder.path(), clock, look);
    TabletGlass tablet(folder.path(), clock, look.glass);
    PseudoTranslator pseudo;
    if (look.isPseudo()) {
        QCoreApplication::installTranslator(&pseudo);
        tablet.engine().retranslate();
        tablet.app().speakAgain();
        tablet.settle();
    }
    for (const Step& step : page.steps) {
        step(tablet);
        tablet.settle();
    }
    for (const QString& fault : tablet.faults()) {
        FAIL_CHECK((look.name() + QStringLiteral(": ") + fault).toStdString());
    }
    if (isKept) {
        const QString path = QStringLiteral(BULLACE_PICTURES "/tablet/%1").arg(look.name());
        QDir().mkpath(path);
        CHECK(tablet.picture().save(path +
                                    QStringLiteral("/%1.png").arg(QString::fromLatin1(page.name))));
    }
}

void showAll(const Look& look) {
    for (const Page& page : pages()) {
        showPage(page, look, true);
    }
}

} // namespace

TEST_CASE("10 inches, wide, right hand") {
    showAll({k10Wide});
}
TEST_CASE("10 inches, upright, left hand") {
    showAll({k10Upright, true});
}
TEST_CASE("8 inches, wide, left hand") {
    showAll({k8Wide, true});
}
TEST_CASE("8 inches, upright, right hand") {
    showAll({k8Upright});
}
TEST_CASE("10 inches, wide, text at 200 %") {
    showAll({k10Wide, false, 2});
}
TEST_CASE("8 inches, upright, text at 200 %") {
    showAll({k8Upright, false, 2});
}
TEST_CASE("12 inches, wide, right hand") {
    showAll({k12Wide});
}
TEST_CASE("10 inches, wide, Spanish") {
    showAll({k10Wide, false, 1, field::KeyLayout::Bare, false, "es"});
}
TEST_CASE("8 inches, upright, Spanish") {
    showAll({k8Upright, false, 1, field::KeyLayout::Bare, false, "es"});
}
TEST_CASE("8 inches, wide, Spanish, left hand") {
    showAll({k8Wide, true, 1, field::KeyLayout::Bare, false, "es"});
}
TEST_CASE("10 inches, wide, in a language with 40 % more letters") {
    showAll({k10Wide, false, 1, field::KeyLayout::Bare, false, "pseudo"});
}
TEST_CASE("8 inches, upright, in a language with 40 % more letters") {
    showAll({k8Upright, false, 1, field::KeyLayout::Bare, false, "pseudo"});
}
TEST_CASE("10 inches, upright, gloves, at dusk") {
    showAll({k10Upright, false, 1, field::KeyLayout::Glove, true});
}
