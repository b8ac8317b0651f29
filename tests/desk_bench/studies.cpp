// The comparison sheet at a million entries: the station read into plain tables, and the sheet made
// from them and drawn.
#include "bench/measure.hpp"
#include "pages.hpp"
#include "table.hpp"

namespace bullace::desk_bench {

using bench::secondsOf;
using desk::DeskApp;

namespace {

constexpr int kTurns = 5;
constexpr int kAccessions = 60;
constexpr double kMs = 1000;

// The first accessions that were counted or measured, by their IDs.
QString firstAccessions(desk::StudyViewModel& page) {
    QStringList ids;
    for (const desk::GridRow& row : page.study().rows) {
        if (ids.size() < kAccessions) {
            ids << row.key;
        }
    }
    bench::must(ids.size() == kAccessions, "sixty accessions");
    return ids.join(QLatin1Char(','));
}

} // namespace

void measureStudies(DeskScreen& screen) {
    screen.app().go(DeskApp::Study);
    screen.rest();
    desk::StudyViewModel& page = *screen.app().study();
    page.choose(QStringLiteral("comparison"), {});
    screen.rest();
    const QString sixty = firstAccessions(page);
    page.choose(QStringLiteral("comparison"), {{QStringLiteral("accessions"), sixty}});
    screen.rest();
    bench::must(page.study().rows.size() == kAccessions, "a sheet of sixty accessions");
    Figure fresh{"the comparison sheet of 60 accessions, station read", {}, "ms", 1000, {}, ""};
    Figure again{"the comparison sheet of 60 accessions again", {}, "ms", 1000, {}, ""};
    for (int turn = 0; turn < kTurns; ++turn) {
        fresh.values.push_back(kMs * secondsOf([&] {
                                   screen.app().session().announce(
                                       desk::DeskSession::Touches::Observations);
                                   screen.rest();
                               }));
        again.values.push_back(kMs * secondsOf([&] {
                                   page.refresh();
                                   screen.rest();
                               }));
    }
    print(fresh);
    print(again);
}

} // namespace bullace::desk_bench
