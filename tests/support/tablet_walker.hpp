// A person with a tablet who walks a round of the small station: for tests of the pages.
#pragma once

#include "support/tablet_glass.hpp"
#include "support/tablet_station.hpp"

#include <QAccessible>

#include <initializer_list>
#include <optional>
#include <sstream>
#include <string>

namespace bullace::test {

inline constexpr const char* kFirst = "obs/B2-01-01/2026-05-12/";
inline constexpr const char* kSecond = "obs/B2-01-02/2026-05-12/";

// Every word that is seen on the page, and every name that is read aloud, a line each.
inline QStringList wordsOn(QQuickItem& from) {
    if (!from.isVisible()) {
        return {};
    }
    QStringList words;
    if (from.inherits("QQuickText")) {
        words << from.property("text").toString();
    }
    if (QAccessibleInterface* face = QAccessible::queryAccessibleInterface(&from)) {
        words << face->text(QAccessible::Name) << face->text(QAccessible::Description);
    }
    for (QQuickItem* child : from.childItems()) {
        words << wordsOn(*child);
    }
    return words;
}
inline QStringList wordsOn(TabletGlass& glass) {
    return wordsOn(*glass.window().contentItem());
}
inline bool reads(TabletGlass& glass, const char* words) {
    return wordsOn(glass).join(QLatin1Char('\n')).contains(QString::fromUtf8(words));
}

// More lines of the office, after those of layStation(); as what it observed, or as its catalog.
inline void officeSays(field::FieldBook& book, const Says& says) {
    std::string lines;
    std::uint64_t seq = 0;
    for (const journal::BranchEnd& end : book.database().vector()) {
        seq = end.origin.letter == 's' ? end.seq : seq;
    }
    for (const auto& [subject, json] : says) {
        std::string line = officeLine(++seq, subject, json);
        if (subject.starts_with("obs/")) {
            line.replace(line.find("catalog"), 7, "observe");
        }
        lines += line;
    }
    std::istringstream in(lines);
    const auto report = book.database().importLines(in, "office", {});
    REQUIRE_MESSAGE(report.ok(), (report ? "" : report.error().message));
    REQUIRE(report->refusedCount == 0);
}

// A person who stands at the first vine of row 1 and has this round to walk.
struct Walker {
    explicit Walker(const char* round) {
        layStation(folder.path(), clock);
        glass.emplace(folder.path(), clock);
        beginRound(glass->book(), round);
        glass->reopenWalk();
        REQUIRE(glass->app().page() == tablet::TabletApp::Stop);
        glass->taps = 0;
    }
    void tap(std::initializer_list<const char*> texts) {
        for (const char* text : texts) {
            glass->tapText(QString::fromUtf8(text));
        }
    }
    [[nodiscard]] std::string at(const char* place, const char* descriptor) {
        return glass->at(std::string(place) + descriptor);
    }
    [[nodiscard]] std::string sample(const char* place, const char* descriptor, int number) {
        return glass->at(std::string(place) + descriptor + "/" +
                         glass->book().database().about().own.text() + "," +
                         std::to_string(number));
    }
    [[nodiscard]] bool reads(const char* words) { return test::reads(*glass, words); }
    // What the line of words says; empty where there is none.
    [[nodiscard]] std::string stripe() {
        QQuickItem& line = glass->item("stripe");
        return line.isVisible() ? line.property("text").toString().toStdString() : std::string{};
    }
    // The tablet is switched off and on.
    void restart() {
        glass.reset();
        glass.emplace(folder.path(), clock);
    }
    [[nodiscard]] std::string here() { return glass->book().walk()->here().position; }
    // The camera sees a grey wall.
    void showPicture() {
        QImage wall(320, 240, QImage::Format_RGB32);
        wall.fill(Qt::gray);
        glass->camera().give(wall);
        glass->settle();
    }
    void checkPhotoIsKept() {
        CHECK(glass->app().page() == tablet::TabletApp::Stop);
        CHECK(here() == "B2-01-01");
        const std::string photo = at(kFirst, "photo");
        CHECK(photo.starts_with("settled \""));
        CHECK(photo.size() == std::string("settled ").size() + 66); // a SHA-256 in quotes
        CHECK_FALSE(glass->camera().isOpen());
    }

    TempFolder folder;
    FixedClock clock;
    std::optional<TabletGlass> glass;
};

} // namespace bullace::test
