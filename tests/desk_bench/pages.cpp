#include "pages.hpp"

#include "bench/measure.hpp"
#include "bench/station_past.hpp"
#include "floors.hpp"
#include "station.hpp"
#include "table.hpp"

#include "quick/block_map_item.hpp"

#include <QCoreApplication>
#include <QImage>
#include <QPainter>

namespace bullace::desk_bench {

using bench::secondsOf;
using desk::DeskApp;

namespace {

constexpr double kMs = 1000;
constexpr int kOpenings = 7;
constexpr int kPages = 60;
constexpr int kAccessions = 15;
constexpr int kReadings = 5;
constexpr int kPaintings = 30;
constexpr int kPreviews = 9;
constexpr int kSearches = 20;

// Whether the first rows of the table hold a key that begins so.
bool shows(const desk::GridModel& table, const QString& key) {
    constexpr int kFirst = 3;
    for (int row = 0; row < std::min(table.count(), kFirst); ++row) {
        if (table.at(row).key.startsWith(key)) {
            return true;
        }
    }
    return false;
}

double openingMs(const std::string& path, const Clock& clock, const QString& lastRow) {
    std::unique_ptr<DeskScreen> screen;
    const double took =
        kMs * secondsOf([&] {
            screen = std::make_unique<DeskScreen>(path, clock);
            screen->drawn([&] { return screen->page().table()->rowOf(lastRow) >= 0; });
        });
    screen->rest();
    return took;
}

} // namespace

void measureOpening(const std::string& path, const std::string& empty, BenchClock& clock) {
    const QString round = QStringLiteral("round ") + QLatin1String(bench::kPastRound);
    const QString nothing = QStringLiteral("no arrival");
    Figure later{"open to the first page with its rounds drawn", {}, "ms", 1500, {}, ""};
    Figure first{"the same, first of the day: a backup is made beside it", {}, "ms", 1500, {}, ""};
    later.floorWhat = "an empty station";
    first.floorWhat = "reading the file once";
    for (int turn = 0; turn < kOpenings; ++turn) {
        clock.nextDay();
        first.values.push_back(openingMs(path, clock, round));
        first.floor.push_back(readingFile(path));
        later.values.push_back(openingMs(path, clock, round));
        later.floor.push_back(openingMs(empty, clock, nothing));
    }
    print(later);
    print(first);
}

void measureVines(DeskScreen& screen) {
    const std::vector<std::string> positions = bench::pastPositions();
    BareReader bare(screen.app().session().desk()->path());
    Figure vines{"a vine's page", {}, "ms", 100, {}, "the bare query"};
    for (std::size_t i = 0; i < kPages; ++i) {
        const std::string& position = positions[(i * 7919 + 13) % positions.size()];
        const QString key = QStringLiteral("obs/") + QString::fromStdString(position);
        vines.values.push_back(kMs * secondsOf([&] {
                                   emit screen.app().session().asked(
                                       QStringLiteral("vine"), QString::fromStdString(position));
                                   screen.drawn([&] { return shows(*screen.page().table(), key); });
                               }));
        vines.floor.push_back(bare.notedAt(position + "/"));
    }
    print(vines);
    const vineyard::Catalogue& catalogue = *screen.app().session().catalogue();
    Figure accessions{"an accession's page", {}, "ms", 100, {}, "the bare queries of its vines"};
    std::size_t values = 0;
    for (std::size_t i = 0; i < kAccessions; ++i) {
        const std::string accession = "A" + std::to_string(i * 37 + 5);
        const QString before = screen.page().title();
        accessions.values.push_back(
            kMs * secondsOf([&] {
                emit screen.app().session().asked(QStringLiteral("vine"),
                                                  QStringLiteral("accession:") +
                                                      QString::fromStdString(accession));
                screen.drawn([&] { return screen.page().title() != before; });
            }));
        values += static_cast<std::size_t>(screen.page().table()->count());
        double floor = 0;
        for (const std::string& position : positions) {
            if (catalogue.accessionAt(position, bench::pastToday()) == accession) {
                floor += bare.notedAt(position + "/");
            }
        }
        accessions.floor.push_back(floor);
    }
    accessions.what += " of " + std::to_string(values / kAccessions) + " lines";
    print(accessions);
}

void measureMap(DeskScreen& screen) {
    BareReader bare(screen.app().session().desk()->path());
    const auto cells = [&screen] {
        return quick::countsOf(screen.app().map()->map()->picture()).cells;
    };
    screen.app().go(DeskApp::Map);
    screen.rest();
    Figure one{"the map of a block of 2,400 vines, read and drawn", {}, "ms", 0, {}, ""};
    Figure all{"the map of all 12,000 vines, read and drawn", {}, "ms", 0, {}, ""};
    one.floorWhat = all.floorWhat = "the bare query";
    for (int turn = 0; turn < kReadings; ++turn) {
        for (Figure* figure : {&one, &all}) {
            const bool isAll = figure == &all;
            figure->values.push_back(
                kMs * secondsOf([&] {
                    const QString key =
                        isAll ? QStringLiteral("block ") : QStringLiteral("block B3");
                    screen.page().open(screen.page().table()->rowOf(key));
                    screen.drawn([&] { return cells() == (isAll ? 12'000 : 2'400); });
                }));
            figure->floor.push_back(bare.notedAt(isAll ? "B" : "B3-"));
        }
    }
    print(one);
    print(all);
    auto* map = qobject_cast<quick::BlockMapItem*>(screen.item(QStringLiteral("blockMap")));
    bench::must(map != nullptr, "the map is on the screen");
    QImage image(map->size().toSize(), QImage::Format_ARGB32_Premultiplied);
    Figure paint{"painting 12,000 vines, paint alone", {}, "ms", 16, {}, ""};
    for (int turn = 0; turn < kPaintings; ++turn) {
        paint.values.push_back(kMs * secondsOf([&] {
                                   QPainter painter(&image);
                                   map->paint(&painter);
                               }));
    }
    print(paint);
}

void measureRulebook(DeskScreen& screen) {
    BareReader bare(screen.app().session().desk()->path());
    Figure preview{"what a rule would settle: 5,000 of 10,000", {}, "ms", 1000, {}, ""};
    preview.floorWhat = "the bare query";
    screen.app().go(DeskApp::Rulebook);
    screen.rest();
    for (int turn = 0; turn < kPreviews; ++turn) {
        screen.press(Qt::Key_A);
        screen.page().type(3, 1, QStringLiteral("clusters"));
        screen.page().type(4, 1, QStringLiteral("greatest"));
        const QString before = screen.page().title();
        preview.values.push_back(kMs * secondsOf([&] {
                                     screen.press(Qt::Key_P);
                                     screen.drawn([&] { return screen.page().title() != before; });
                                 }));
        bench::must(screen.page().words().contains(QString::number(kConflicts)),
                    "the rule settles the conflicts");
        preview.floor.push_back(
            bare.query("SELECT h.subject, s.path, s.state, e.id, e.digest, e.bytes "
                       "FROM subject_heads h JOIN subjects s ON s.id = h.subject "
                       "JOIN entries e ON e.id = h.entry WHERE s.state IN (3, 4) "
                       "ORDER BY h.subject"));
        screen.press(Qt::Key_Escape);
        screen.rest();
    }
    print(preview);
}

void measureSearch(DeskScreen& screen) {
    screen.rest();
    const QString asks[] = {QStringLiteral("B4-31-17"),
                            QStringLiteral("Sel. 413"),
                            QLatin1String(kRareWord),
                            QStringLiteral("b")};
    const char* const names[] = {"a position", "an accession", "a word of one note", "a letter"};
    for (std::size_t ask = 0; ask < std::size(asks); ++ask) {
        Figure figure{std::string("search: ") + names[ask], {}, "ms", 100, {}, ""};
        for (int turn = 0; turn < kSearches; ++turn) {
            figure.values.push_back(kMs * secondsOf([&] {
                                        screen.app().search(asks[ask]);
                                        screen.drawn(
                                            [&] { return screen.page().table()->count() > 0; });
                                    }));
            screen.app().search(QString());
        }
        print(figure);
    }
}

} // namespace bullace::desk_bench
