// The selection meeting on the demo station: candidates, evidence, a decision and its undoing.
#include "quick/words.hpp"
#include "support/desk_glass.hpp"

#include <QFile>

#include <algorithm>
#include <string>

using namespace bullace;
using namespace bullace::test;

namespace {

struct Meeting {
    TempFolder folder;
    std::string path = folder.file("station.db");
    FixedClock clock{1'765'300'000'000}; // 2025-12-09
    std::unique_ptr<DeskGlass> glass;

    Meeting() {
        makeDemoFile(path);
        glass = std::make_unique<DeskGlass>(path, clock);
        glass->sit("hl");
        glass->press(Qt::Key_Escape); // the notice that the file is a copy
        glass->go(desk::DeskApp::Selection);
        glass->rest();
    }
    desk::SelectionViewModel& page() { return *glass->app().selection(); }
    QByteArray written(const QString& name, bool isList) {
        const QString file = QString::fromStdString(folder.file(name.toStdString()));
        const QString refused = isList ? page().writeList(file) : page().writePages(file);
        CHECK(quick::toText(refused) == "");
        QFile read(file);
        REQUIRE(read.open(QIODevice::ReadOnly));
        return read.readAll();
    }
    std::string cell(int row, int column) {
        return quick::toText(page().table()->textAt(row, column));
    }
};

} // namespace

TEST_CASE(
    "the demo's selections are ranked by what counts, the truly good ones before the others") {
    Meeting meeting;
    const auto& ground = meeting.page().ground();
    REQUIRE(ground);
    CHECK(meeting.page().table()->count() >= 60);
    meeting.glass->look("selection-list");
    // The trial's truth: merit by the breeding values, each over its own deviation.
    const demo::BreedingTruth& truth = demoStation().truth.breeding;
    double top = 0;
    double all = 0;
    std::size_t met = 0;
    for (const season::Candidate& candidate : ground->list.candidates) {
        const std::string& id = ground->notes.accessions[candidate.accession].id;
        for (const demo::BredSelection& selection : truth.selections) {
            if (selection.id == id) {
                const double merit = selection.yieldKg / std::sqrt(truth.yield.additive) +
                                     selection.brix / std::sqrt(truth.brix.additive);
                all += merit / static_cast<double>(truth.selections.size());
                top += met < 10 ? merit / 10 : 0;
                ++met;
            }
        }
    }
    CHECK(met == truth.selections.size());
    CHECK(top > all + 0.8);
}

TEST_CASE("one candidate a page, decided by a key with a reason, and taken back") {
    Meeting meeting;
    meeting.glass->press(Qt::Key_Return);
    meeting.glass->rest();
    CHECK(meeting.page().isOneShown());
    meeting.glass->look("selection-one");
    const QString first = meeting.page().title();
    meeting.glass->press("n");
    CHECK(meeting.page().title() != first);
    meeting.glass->press("b");
    CHECK(meeting.page().title() == first);

    const std::size_t before = meeting.page().ground()->verdicts.size();
    meeting.glass->press("3");
    REQUIRE(meeting.page().isAsking());
    meeting.page().setTyped(QStringLiteral("heavy crops in three years"));
    meeting.page().answer();
    meeting.glass->rest();
    const auto& verdicts = meeting.page().ground()->verdicts;
    REQUIRE(verdicts.size() > before);
    CHECK(verdicts.front().word == "take-on");
    CHECK(verdicts.front().author == "hl");
    CHECK(verdicts.front().why == "heavy crops in three years");
    meeting.glass->look("selection-decided");

    meeting.glass->press(Qt::Key_Z, Qt::ControlModifier);
    meeting.glass->rest();
    CHECK(meeting.page().ground()->verdicts.size() == before);
    meeting.glass->press(Qt::Key_Escape);
    CHECK_FALSE(meeting.page().isOneShown());
}

TEST_CASE("what counts is typed, and what is no such thing is refused in words") {
    Meeting meeting;
    meeting.glass->press("w");
    REQUIRE(meeting.page().isAsking());
    meeting.page().setTyped(QStringLiteral("yield two"));
    meeting.page().answer();
    CHECK(meeting.page().isAsking());
    CHECK(meeting.page().refusal().contains(QStringLiteral("yield two")));
    meeting.page().setTyped(QStringLiteral("soluble-solids 1"));
    meeting.page().answer();
    meeting.glass->rest();
    CHECK_FALSE(meeting.page().isAsking());
    CHECK(meeting.page().ground()->list.wishes.size() == 1);
}

TEST_CASE("the meeting is printed, a page for each, and its list is a table for others") {
    Meeting meeting;
    CHECK(meeting.written(QStringLiteral("pages.pdf"), false).startsWith("%PDF"));
    CHECK(meeting.written(QStringLiteral("list.pdf"), true).startsWith("%PDF"));
    const QByteArray csv = meeting.written(QStringLiteral("list.csv"), true);
    CHECK(csv.count('\n') >= 61);
    CHECK(quick::toText(meeting.page().writeList(QStringLiteral("list.doc"))) ==
          "The file's name ends in .pdf or .csv.");
}

TEST_CASE("an empty station has nobody to decide about, and says so") {
    const TempFolder folder;
    const std::string path = folder.file("empty.db");
    makeStationFile(path, "");
    FixedClock clock;
    DeskGlass glass(path, clock);
    glass.go(desk::DeskApp::Selection);
    glass.rest();
    CHECK(quick::toText(glass.app().selection()->words()) ==
          "The station has no accession of this kind.");
    glass.look("selection-empty");
}
