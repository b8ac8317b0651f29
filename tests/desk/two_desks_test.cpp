// One conflict under several hands: two desks, and a tablet that syncs while the desk looks at it.
#include "core/journal/json_value.hpp"
#include "support/desk_conflicts.hpp"
#include "support/desk_glass.hpp"
#include "sync/server/device.hpp"

#include <QRegularExpression>

#include <algorithm>

using namespace bullace;
using namespace bullace::test;

namespace {

const std::string kVine = "obs/B2-01-01/2026-05-11/clusters";
const std::string kNextVine = "obs/B2-01-02/2026-05-11/clusters";

// Two tablets that did not see one another counted two vines.
std::string stationLines() {
    std::string lines =
        lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,12]]"});
    lines +=
        lineOf({"s00000000000000ff.1", 2, "hq", "catalog", "person/ed/name", R"("Edda Marl")"});
    lines +=
        lineOf({"s00000000000000ff.1", 3, "hq", "catalog", "person/hl/name", R"("Hesper Lund")"});
    int seq = 0;
    for (const std::string& subject : {kVine, kNextVine}) {
        ++seq;
        lines += lineOf({"t0000000000000001.1", seq, "im", "observe", subject, "40"});
        lines += lineOf({"t0000000000000002.1", seq, "tf", "observe", subject, "90"});
    }
    return lines;
}

std::size_t entriesOf(const std::string& path, const std::string& subject) {
    auto database = store::Database::open(path, false, store::fileSurroundings());
    REQUIRE(database.ok());
    const auto rows = (*database)->entries(subject);
    REQUIRE(rows.ok());
    return rows->size();
}

std::unique_ptr<store::Database> journalIn(const std::string& path, std::uint64_t device) {
    store::Founding founding;
    founding.device = device;
    auto made = store::Database::create(path, founding, store::fileSurroundings());
    REQUIRE(made.ok());
    return std::move(*made);
}

void syncNow(store::Database& journal) {
    const auto synced = server::syncDevice(journal, {}, {});
    INFO((synced.status ? std::string{} : synced.status.error().message));
    REQUIRE(synced.summary.isComplete);
}

// Lets the device in by the keys of the first page, pairs it, and brings it all that is known.
void pairWith(DeskGlass& desk, store::Database& journal, const char* name, char letter) {
    desk.press(Qt::Key_1, Qt::ControlModifier);
    if (!desk.app().arrivals()->isListening()) {
        desk.press("s");
    }
    desk.press(letter == 's' ? "o" : "p");
    const auto port = QRegularExpression(QStringLiteral("[0-9]+")).match(desk.page().words());
    REQUIRE(port.hasMatch());
    const std::string code = desk.app().arrivals()->pairingCode().toStdString();
    REQUIRE_FALSE(code.empty());
    const auto paired = server::pairDevice(
        journal, {"127.0.0.1:" + port.captured().toStdString(), code, name, letter}, {});
    INFO((paired ? std::string{} : paired.error().message));
    REQUIRE(paired.ok());
    syncNow(journal);
    desk.rest();
}

// A desk's own journal, synced where it is written.
void syncNow(DeskGlass& desk) {
    bool isComplete = false;
    desk.app().session().desk()->write([&isComplete](store::Database& journal) {
        isComplete = server::syncDevice(journal, {}, {}).summary.isComplete;
    });
    desk.rest();
    REQUIRE(isComplete);
    // Another program synced the journal: the page is opened anew.
    desk.press(Qt::Key_1, Qt::ControlModifier);
    desk.press(Qt::Key_2, Qt::ControlModifier);
}

} // namespace

TEST_CASE("two desks rule on one conflict: the later is told, writes nothing blind, and two "
          "decisions that did not see each other are a conflict again") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    const std::string secondPath = folder.file("second.db");
    makeStationFile(path, stationLines());
    FixedClock clock;
    DeskGlass first(path, clock);
    first.sit("ed");
    pairWith(first, *journalIn(secondPath, 0x0ff1ce), "Second desk", 's');
    DeskGlass second(secondPath, clock);
    second.sit("hl");
    for (DeskGlass* desk : {&first, &second}) {
        desk->press(Qt::Key_2, Qt::ControlModifier);
        REQUIRE(conflictsOf(*desk).openCount() == 2);
        REQUIRE(conflictsOf(*desk).file()->subject == kVine);
    }

    // The first has chosen and thinks of a reason; meanwhile the second decides and syncs.
    first.press(cardWith(first, "40"));
    second.press(cardWith(second, "90"));
    second.press("k");
    REQUIRE(second.at(kVine) == "settled 90");
    CHECK(first.at(kVine) == "open");
    syncNow(second);
    const std::size_t entries = entriesOf(path, kVine);
    CHECK(entries == 3);
    first.press("t");
    CHECK(first.app().notice().contains(QStringLiteral("since it was shown")));
    CHECK(first.at(kVine) == "settled 90");
    CHECK(entriesOf(path, kVine) == entries);
    CHECK(conflictsOf(first).openCount() == 1);
    REQUIRE(conflictsOf(first).file().has_value());
    REQUIRE(conflictsOf(first).file()->subject == kVine);
    CHECK(conflictsOf(first).file()->state == merge::State::Settled);
    CHECK(conflictsOf(first).outcomeText().contains(QStringLiteral("90")));
    // What is settled takes no decision any more.
    first.press("1");
    first.press("k");
    CHECK(entriesOf(path, kVine) == entries);

    // Now neither sees the other: both decide, then they sync.
    first.press(Qt::Key_Space);
    for (DeskGlass* desk : {&first, &second}) {
        REQUIRE(conflictsOf(*desk).file()->subject == kNextVine);
    }
    first.press(cardWith(first, "40"));
    first.press("k");
    second.press(cardWith(second, "90"));
    second.press("k");
    CHECK(first.at(kNextVine) == "settled 40");
    CHECK(second.at(kNextVine) == "settled 90");
    CHECK(conflictsOf(first).openCount() == 0);
    syncNow(second);
    first.rest();
    for (DeskGlass* desk : {&first, &second}) {
        CHECK(desk->at(kNextVine) == "open");
        desk->until([desk] { return conflictsOf(*desk).openCount() == 1; });
        desk->press(Qt::Key_Space);
        REQUIRE(conflictsOf(*desk).file()->subject == kNextVine);
        CHECK(conflictsOf(*desk).file()->cause == office::Cause::TwoRulings);
    }
    first.press(cardWith(first, "40"));
    first.press("k");
    CHECK(first.at(kNextVine) == "settled 40");
    syncNow(second);
    CHECK(second.at(kNextVine) == "settled 40");
    CHECK(conflictsOf(second).openCount() == 0);
}

TEST_CASE("a tablet notes the vine anew while the desk has its conflict on the screen: nothing is "
          "decided over what was not seen") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(path, stationLines());
    FixedClock clock;
    DeskGlass desk(path, clock);
    desk.sit("ed");
    const auto tablet = journalIn(folder.file("tablet.db"), 0x7ab1e7);
    pairWith(desk, *tablet, "Field tablet", 't');
    desk.press(Qt::Key_2, Qt::ControlModifier);
    REQUIRE(conflictsOf(desk).file()->subject == kVine);
    const auto note = [&](std::int64_t count) {
        const auto heads = tablet->heads(kVine);
        REQUIRE(heads.ok());
        store::Draft draft;
        draft.author = "wo";
        draft.subject = kVine;
        draft.value = journal::integerValue(count);
        // Counted again by somebody who had the ninety before her.
        for (const store::HeadRow& head : *heads) {
            const auto entry = journal::readEntry(head.entry);
            if (entry && journal::valueToJson(entry->value) != "40") {
                draft.over.push_back(head.place);
            }
        }
        REQUIRE(tablet->append(std::vector{draft}, std::nullopt).ok());
        syncNow(*tablet);
        desk.rest();
    };

    desk.press(cardWith(desk, "90"));
    REQUIRE_FALSE(conflictsOf(desk).choiceText().isEmpty());
    note(44); // in place of the ninety
    const std::size_t entries = entriesOf(path, kVine);
    desk.press("k");
    CHECK(desk.app().notice().contains(QStringLiteral("since it was shown")));
    CHECK(desk.at(kVine) == "open");
    CHECK(entriesOf(path, kVine) == entries);
    // The page shows what is there now, without the ninety.
    REQUIRE(conflictsOf(desk).file().has_value());
    CHECK(conflictsOf(desk).file()->subject == kVine);
    CHECK(conflictsOf(desk).choiceText().isEmpty());
    CHECK(conflictsOf(desk).file()->sides.size() == 2);
    cardWith(desk, "40");
    cardWith(desk, "44");

    // While nothing is chosen, what comes is shown at once, and may be decided.
    note(60);
    desk.until([&desk] {
        const auto& sides = conflictsOf(desk).file()->sides;
        return std::any_of(sides.begin(), sides.end(), [](const office::Side& side) {
            return journal::valueToJson(side.value) == "60";
        });
    });
    CHECK(conflictsOf(desk).file()->subject == kVine);
    desk.press(cardWith(desk, "60"));
    desk.press("k");
    CHECK(desk.at(kVine) == "settled 60");
    CHECK(conflictsOf(desk).openCount() == 1);
    // The decision comes to the tablet.
    syncNow(*tablet);
    const auto row = tablet->state(kVine);
    REQUIRE(row.ok());
    REQUIRE(row->has_value());
    CHECK((*row)->valueJson == "60");
}
