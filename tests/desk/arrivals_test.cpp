// A tablet is let in, paired, synced and revoked through the desk's first page.
#include "core/journal/json_value.hpp"
#include "support/desk_glass.hpp"
#include "sync/server/device.hpp"

#include <QRegularExpression>

using namespace bullace;
using namespace bullace::test;

namespace {

std::unique_ptr<store::Database> tabletIn(const TempFolder& folder) {
    store::Founding founding;
    founding.device = 0x7ab1e7;
    auto made =
        store::Database::create(folder.file("tablet.db"), founding, store::fileSurroundings());
    REQUIRE(made.ok());
    return std::move(*made);
}

// "Tablets may sync, on port 40123."
std::string addressOn(DeskGlass& desk) {
    const auto port = QRegularExpression(QStringLiteral("[0-9]+")).match(desk.page().words());
    REQUIRE(port.hasMatch());
    return "127.0.0.1:" + port.captured().toStdString();
}

} // namespace

TEST_CASE(
    "a tablet is let in, paired by the typed code, syncs, and is turned away once it is revoked") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(
        path, lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,12]]"}));
    FixedClock clock;
    DeskGlass desk(path, clock);
    desk.sit("ed");
    desk.go(desk::DeskApp::Arrivals);
    CHECK_FALSE(desk.app().arrivals()->isListening());
    desk.press("p"); // not offered while nobody is let in
    CHECK(desk.app().arrivals()->pairingCode().isEmpty());
    desk.press("s");
    REQUIRE(desk.app().arrivals()->isListening());
    const std::string at = addressOn(desk);
    desk.press("p");
    const std::string code = desk.app().arrivals()->pairingCode().toStdString();
    REQUIRE_FALSE(code.empty());
    CHECK(desk.app().arrivals()->pairingWords().contains(
        QString::fromStdString(at.substr(at.find(':')))));
    CHECK(desk.picture().save(QStringLiteral(BULLACE_PICTURES "/desk-pairing.png")));
    for (const QString& fault : desk.faults()) {
        FAIL_CHECK(fault.toStdString());
    }

    const auto tablet = tabletIn(folder);
    const auto paired = server::pairDevice(*tablet, {at, code, "Field tablet"}, {});
    INFO((paired ? std::string{} : paired.error().message));
    REQUIRE(paired.ok());
    store::Draft note;
    note.author = "im";
    note.subject = "obs/B2-01-01/2026-05-12/clusters";
    note.value = journal::integerValue(41);
    REQUIRE(tablet->append(std::vector{note}, std::nullopt).ok());
    const auto synced = server::syncDevice(*tablet, {}, {});
    REQUIRE(synced.summary.isComplete);
    CHECK(desk.at(note.subject) == "settled 41");
    const auto says = [&](const QString& words) {
        const desk::GridModel& table = *desk.page().table();
        for (int row = 0; row < table.count(); ++row) {
            if (table.at(row).cells.join(QLatin1Char(' ')).contains(words)) {
                return true;
            }
        }
        return false;
    };
    CHECK(says(QStringLiteral("Field tablet")));
    desk.until([&says] { return says(QStringLiteral("1 entry came")); });

    desk.page().table()->setCurrent(desk.page().table()->rowOf(
        QStringLiteral("device ") +
        QString::fromStdString(journal::deviceText('t', tablet->about().own.device))));
    desk.press("x");
    desk.answer(QStringLiteral("wrong"));
    CHECK(desk.page().isAsking());
    desk.press(Qt::Key_Escape);
    desk.press("x");
    desk.answer(
        QString::fromStdString(journal::deviceText('t', tablet->about().own.device)).left(5));
    const auto late = server::syncDevice(*tablet, {}, {});
    CHECK_FALSE(late.summary.isComplete);
    desk.press("s");
    CHECK_FALSE(desk.app().arrivals()->isListening());
}

TEST_CASE("an office device syncs with its station from its own desk, and each sees the other's "
          "rulings") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    const std::string vine = "obs/B2-01-01/2026-05-11/clusters";
    makeStationFile(
        path,
        lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,12]]"}) +
            lineOf({"t0000000000000001.1", 1, "im", "observe", vine, "40"}) +
            lineOf({"t0000000000000002.1", 1, "tf", "observe", vine, "140"}));
    FixedClock clock;
    DeskGlass station(path, clock);
    station.sit("ed");
    station.go(desk::DeskApp::Arrivals);
    station.press("s");
    station.press("o");
    const std::string beside = folder.file("beside.db");
    {
        store::Founding founding;
        founding.device = 0x0ff1ce;
        auto journal = store::Database::create(beside, founding, store::fileSurroundings());
        REQUIRE(journal.ok());
        const std::string code = station.app().arrivals()->pairingCode().toStdString();
        const auto paired =
            server::pairDevice(**journal, {addressOn(station), code, "Second desk", 's'}, {});
        INFO((paired ? std::string{} : paired.error().message));
        REQUIRE(paired.ok());
    }
    DeskGlass second(beside, clock);
    second.sit("hl");
    second.go(desk::DeskApp::Arrivals);
    second.press("s");
    CHECK(second.app().notice().contains(QStringLiteral("3 entries received")));
    second.go(desk::DeskApp::Conflicts);
    REQUIRE(second.app().conflicts()->openCount() == 1);
    second.press("1");
    second.press("k");
    CHECK(second.app().conflicts()->openCount() == 0);
    const std::string ruled = second.at(vine);
    CHECK(ruled.starts_with("settled "));
    second.go(desk::DeskApp::Arrivals);
    second.press("s");
    CHECK(station.at(vine) == ruled);
    // The station is gone: the desk says so, and goes on.
    station.go(desk::DeskApp::Arrivals);
    station.press("s");
    second.press("s");
    CHECK_FALSE(second.app().notice().isEmpty());
    CHECK(second.at(vine) == ruled);
}
