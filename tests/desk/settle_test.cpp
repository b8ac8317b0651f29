// Conflicts settled through the real window by keys alone.
#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"
#include "support/desk_conflicts.hpp"
#include "support/desk_glass.hpp"

#include <map>
#include <random>

using namespace bullace;
using namespace bullace::test;

namespace {

constexpr const char* kFirst = "t0000000000000001.1";
constexpr const char* kSecond = "t0000000000000002.1";

// One difference with its truth, which only the person at the desk knows.
struct Difference {
    enum Truth { First, Second, Third, Both, Elsewhere };
    std::string subject;
    std::string first;
    std::string second;
    Truth truth = First;
    std::string third;     // as it is typed
    std::string elsewhere; // the vine where the second value was really seen
};

std::string placeOf(int vine) {
    return "B2-01-" + std::string(vine < 10 ? "0" : "") + std::to_string(vine);
}

std::vector<Difference> seededDifferences(std::uint64_t seed, int count) {
    std::mt19937_64 dice(seed);
    const auto roll = [&dice](std::uint64_t sides) { return dice() % sides; };
    const std::vector<std::pair<std::string, std::vector<std::string>>> kinds{
        {"berry-colour", {R"("bronze")", R"("pink")", R"("red")", R"("black")"}},
        {"flower-sex", {"1", "2", "3", "4"}},
        {"chromosomes", {"38", "39", "40"}},
        {"cordon-length", {"120", "250", "310", "480"}},
        {"pruning-weight", {"1.25", "2.5", "3.75", "4.1"}}};
    std::vector<Difference> all;
    for (int i = 0; i < count; ++i) {
        const auto& [descriptor, values] = kinds[roll(kinds.size())];
        Difference one;
        one.subject = "obs/" + placeOf(i + 1) + "/2026-05-11/" + descriptor;
        const auto first = roll(values.size());
        const auto second = (first + 1 + roll(values.size() - 1)) % values.size();
        one.first = values[first];
        one.second = values[second];
        one.truth = static_cast<Difference::Truth>(roll(5));
        one.third = descriptor == "berry-colour"    ? "purple"
                    : descriptor == "flower-sex"    ? std::to_string(1 + roll(4))
                    : descriptor == "chromosomes"   ? "38"
                    : descriptor == "cordon-length" ? "333"
                                                    : "0.75";
        one.elsewhere = placeOf(i + 1 + 100);
        all.push_back(one);
    }
    return all;
}

std::string linesOf(const std::vector<Difference>& all) {
    std::string lines =
        lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,200]]"});
    lines +=
        lineOf({"s00000000000000ff.1", 2, "hq", "catalog", "person/ed/name", R"("Edda Marl")"});
    int seq = 0;
    for (const Difference& one : all) {
        ++seq;
        lines += lineOf({kFirst, seq, "im", "observe", one.subject, one.first});
        lines += lineOf({kSecond, seq, "tf", "observe", one.subject, one.second});
    }
    return lines;
}

// All subjects as they are settled, but for what the desk keeps of itself.
std::map<std::string, std::string> statesOf(const std::string& path) {
    std::map<std::string, std::string> states;
    auto database = store::Database::open(path, false, store::fileSurroundings());
    REQUIRE(database.ok());
    REQUIRE((*database)
                ->eachState("",
                            [&states](const store::StateRow& row) {
                                states[row.subject] =
                                    std::string(merge::stateWord(row.state)) + " " + row.valueJson;
                                return true;
                            })
                .ok());
    return states;
}

std::string settledAs(const std::string& json) {
    return "settled " + json;
}

void settle(DeskGlass& desk, const Difference& one) {
    switch (one.truth) {
    case Difference::First:
        desk.press(cardWith(desk, one.first));
        desk.press("k");
        break;
    case Difference::Second:
        desk.press(cardWith(desk, one.second));
        desk.press("p");
        break;
    case Difference::Third:
        desk.press("e");
        desk.answer(QString::fromStdString(one.third));
        desk.press("t");
        break;
    case Difference::Both:
        desk.press("b");
        desk.press("k");
        break;
    case Difference::Elsewhere: {
        const Qt::Key card = cardWith(desk, one.second);
        desk.press("w");
        desk.answer(QString::number(card - Qt::Key_0) + QStringLiteral(" ") +
                    QString::fromStdString(one.elsewhere));
        desk.press("o");
        desk.answer(QStringLiteral("the tag says so"));
        break;
    }
    }
}

} // namespace

TEST_CASE(
    "sixty differences with a known truth are settled by keys alone, and undone to what was") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    const auto all = seededDifferences(20261125, 60);
    makeStationFile(path, linesOf(all));
    const auto before = statesOf(path);
    FixedClock clock;
    DeskGlass desk(path, clock);
    desk.sit("ed");
    desk.press(Qt::Key_2, Qt::ControlModifier);
    REQUIRE(conflictsOf(desk).openCount() == 60);

    std::map<std::string, Difference> bySubject;
    for (const Difference& one : all) {
        bySubject[one.subject] = one;
    }
    for (int i = 0; i < 60; ++i) {
        REQUIRE(conflictsOf(desk).file().has_value());
        const std::string subject = conflictsOf(desk).file()->subject;
        REQUIRE(bySubject.count(subject) == 1);
        settle(desk, bySubject.at(subject));
        CHECK(conflictsOf(desk).openCount() == 59 - i);
    }
    for (const Difference& one : all) {
        INFO(one.subject);
        switch (one.truth) {
        case Difference::First:
            CHECK(desk.at(one.subject) == settledAs(one.first));
            break;
        case Difference::Second:
            CHECK(desk.at(one.subject) == settledAs(one.second));
            break;
        case Difference::Third: {
            const bool isWord = one.third == "purple";
            CHECK(desk.at(one.subject) == settledAs(isWord ? "\"purple\"" : one.third));
            break;
        }
        case Difference::Both:
            CHECK(desk.at(one.subject) == "retracted");
            break;
        case Difference::Elsewhere: {
            CHECK(desk.at(one.subject) == settledAs(one.first));
            const std::string moved =
                "obs/" + one.elsewhere + one.subject.substr(one.subject.find("/2026"));
            CHECK(desk.at(moved) == settledAs(one.second));
            break;
        }
        }
    }
    for (int i = 0; i < 60; ++i) {
        desk.press(Qt::Key_Z, Qt::ControlModifier);
    }
    CHECK(conflictsOf(desk).openCount() == 60);
    const auto after = statesOf(path);
    for (const auto& [subject, state] : before) {
        INFO(subject);
        CHECK(after.at(subject) == state);
    }
    // What was moved or kept as samples has a subject of its own now, with nothing in it.
    CHECK(after.size() == before.size());
}

TEST_CASE("Enter decides nothing, and a choice without a reason neither") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(path, linesOf(seededDifferences(7, 12)));
    const auto before = statesOf(path);
    FixedClock clock;
    DeskGlass desk(path, clock);
    desk.sit("ed");
    desk.go(desk::DeskApp::Conflicts);
    for (int i = 0; i < 30; ++i) {
        desk.press(Qt::Key_Return);
        desk.press(i % 2 == 0 ? Qt::Key_Down : Qt::Key_Enter);
    }
    desk.press(Qt::Key_Home);
    desk.press("1");
    desk.press(Qt::Key_Return); // why?
    desk.press(Qt::Key_Escape); // not yet
    desk.press("1");
    desk.press(Qt::Key_Down); // another conflict: the choice is not carried over
    desk.press("k");
    CHECK(conflictsOf(desk).openCount() == 12);
    CHECK(statesOf(path) == before);
}

TEST_CASE("without anybody at the desk nothing is decided, and the page says so") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(path, linesOf(seededDifferences(8, 3)));
    FixedClock clock;
    DeskGlass desk(path, clock);
    desk.go(desk::DeskApp::Conflicts);
    desk.press("1");
    desk.press("k");
    CHECK(conflictsOf(desk).openCount() == 3);
    CHECK(desk.app().notice().contains(QStringLiteral("Ctrl+0")));
}

TEST_CASE(
    "a ruling on a conflict that changed while it was on the screen is not written, and said") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    const auto all = seededDifferences(9, 3);
    makeStationFile(path, linesOf(all));
    FixedClock clock;
    DeskGlass desk(path, clock);
    desk.sit("ed");
    desk.go(desk::DeskApp::Conflicts);
    const std::string subject = conflictsOf(desk).file()->subject;
    desk.press("1");
    // A tablet's further value arrives meanwhile, behind the screen's back.
    desk.app().session().desk()->write([&](store::Database& database) {
        std::istringstream in(lineOf({"t0000000000000003.1", 1, "wo", "observe", subject, "77"}));
        REQUIRE(database.importLines(in, "tablet", {}).ok());
    });
    desk.app().session().desk()->finish();
    desk.press("k");
    CHECK(desk.at(subject) == "open");
    CHECK(desk.app().notice().contains(QStringLiteral("since it was shown")));
    REQUIRE(conflictsOf(desk).file().has_value());
    CHECK(conflictsOf(desk).file()->sides.size() == 3);
    // Looked at as it is now, it is settled.
    desk.press(cardWith(desk, "77"));
    desk.press("k");
    CHECK(desk.at(subject) == "settled 77");
}

TEST_CASE(
    "somebody looks again: a blind stop of a round that begins today, and what was seen is shown") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(path, linesOf(seededDifferences(10, 2)));
    FixedClock clock;
    DeskGlass desk(path, clock);
    desk.sit("ed");
    desk.go(desk::DeskApp::Conflicts);
    const std::string subject = conflictsOf(desk).file()->subject;
    const std::string place = conflictsOf(desk).file()->place;
    desk.press("r");
    desk.press("k");
    const std::string round = "round/look-2026-05-12/";
    CHECK(desk.at(round + "where") == settledAs("[\"" + place + "\"]"));
    CHECK(desk.at(round + "blind") == "settled true");
    CHECK(desk.at(round + "repeat") == "settled true");
    CHECK(desk.at(subject) == "open");
    desk.press(Qt::Key_Z, Qt::ControlModifier);
    CHECK(desk.at(round + "where").empty());
}

TEST_CASE(
    "a decision that follows an undo takes its redo away; without one the redo decides again") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeStationFile(path, linesOf(seededDifferences(11, 2)));
    FixedClock clock;
    DeskGlass desk(path, clock);
    desk.sit("ed");
    desk.go(desk::DeskApp::Conflicts);
    const std::string subject = conflictsOf(desk).file()->subject;
    desk.press("1");
    desk.press("k");
    const std::string decided = desk.at(subject);
    REQUIRE(decided != "open");
    desk.press(Qt::Key_Z, Qt::ControlModifier);
    CHECK(desk.at(subject) == "open");
    desk.press(Qt::Key_Y, Qt::ControlModifier);
    CHECK(desk.at(subject) == decided);
    desk.press(Qt::Key_Z, Qt::ControlModifier);
    REQUIRE(conflictsOf(desk).file()->subject == subject);
    desk.press("2");
    desk.press("k");
    const std::string other = desk.at(subject);
    CHECK(other != decided);
    desk.press(Qt::Key_Y, Qt::ControlModifier);
    CHECK(desk.at(subject) == other);
}
