// A tablet whose program is killed a hundred times while fingers tap on its real pages: the next
// start shows the same stop; all that a page showed as recorded is in the journal, and besides it
// at most the one tap in flight.
#include "store/json_reader.hpp"
#include "support/tablet_glass.hpp"

#include <QAccessible>

#include <doctest/doctest.h>

#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <map>
#include <random>
#include <spawn.h>
#include <string>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>
#include <vector>

using namespace bullace;
using namespace bullace::test;
using tablet::TabletApp;

namespace {

constexpr int kKills = 50; // of each round
constexpr unsigned kRows = 60;
constexpr unsigned kVines = 12;
constexpr std::size_t kMostLines = 9; // read before a kill
constexpr int kLongestMs = 25;        // from the last line that was read to the kill
constexpr int kStartMs = 700;         // within which a kill at the start comes
constexpr const char* kFolder = "BULLACE_KILLED_FOLDER";
constexpr const char* kPipe = "BULLACE_KILLED_PIPE";
constexpr const char* kSeed = "BULLACE_KILLED_SEED";
constexpr GlassSize kGlass{"killed", {217, 136}, 3};

// ---- The other process: a person whose tablet is killed --------------------------------------

class Fingers {
public:
    Fingers(TabletGlass& glass, int out, std::uint64_t seed)
        : glass_(glass),
          out_(out),
          dice_(seed) {
        sayPage();
    }
    // Every tap is announced, and what the page shows after it is said.
    void go() {
        while (true) {
            act();
        }
    }

private:
    // One write, so that a line is there whole or not at all.
    void say(const std::string& line) const {
        const std::string whole = line + "\n";
        if (::write(out_, whole.data(), whole.size()) < 0) {
            ::_exit(2);
        }
    }
    void tap(const std::string& key, const std::string& what) {
        say("tap " + what);
        glass_.tapKey(key.c_str());
        sayPage();
    }
    void act() {
        if (glass_.app().page() == TabletApp::RowEnd) {
            tap("choice0", "row");
            return;
        }
        const auto choice = dice_() % 10;
        if (choice == 0) {
            tap("undo", "undo");
        } else if (choice == 1) {
            tap("noVine", "act missing, no vine");
        } else if (choice == 2) {
            tap("why", "nothing");
            tap("choice0", "act not observed, not observed");
        } else if (glass_.found("digit1")->isVisible()) {
            const std::string tens = std::to_string(dice_() % 9 + 1);
            const std::string ones = std::to_string(dice_() % 10);
            tap("digit" + tens, "nothing");
            tap("digit" + ones, "nothing");
            tap("next", "act " + tens + ones);
        } else {
            const auto score = dice_() % 9;
            tap("choice" + std::to_string(score), "act " + std::to_string(score + 1));
        }
    }
    // Where one stands, and what is read aloud of each vine on the wire.
    void sayPage() {
        if (glass_.app().page() == TabletApp::RowEnd) {
            say("end");
            return;
        }
        std::string line = "at " + glass_.item("place").property("text").toString().toStdString();
        for (int slot = 0; true; ++slot) {
            QQuickItem* vine = glass_.found(("stop" + std::to_string(slot)).c_str());
            if (vine == nullptr || !vine->isVisible()) {
                break;
            }
            QAccessibleInterface* face = QAccessible::queryAccessibleInterface(vine);
            line += "|" + face->text(QAccessible::Name).toStdString();
        }
        say(line);
    }

    TabletGlass& glass_;
    int out_;
    std::mt19937_64 dice_;
};

// A page that warns is a fault of it, also in a process whose assertions nobody reads.
void sayWarning(QtMsgType type, const QMessageLogContext& /*where*/, const QString& text) {
    if (type == QtDebugMsg || type == QtInfoMsg) {
        return;
    }
    const std::string line = "warned " + text.toStdString() + "\n";
    if (::write(std::atoi(std::getenv(kPipe)), line.data(), line.size()) < 0) {
        ::_exit(2);
    }
}

// ---- This process -------------------------------------------------------------------------------

// What hangs at each vine, in the words of the wire; vines without anything are not in it.
using Noted = std::map<std::string, std::string>;

// What the pages showed.
struct Shown {
    Noted at;
    std::string place;           // a position, or "end" at the end of a row
    std::string stop;            // the position where the last page stood
    std::string inFlight = "no"; // what was tapped and not answered yet
    bool isFirst = true;         // the next page is the first one of this start

    void hear(const std::string& line) {
        if (line.starts_with("warned ")) {
            FAIL_CHECK(line);
            return;
        }
        if (line.starts_with("tap ")) {
            inFlight = line.substr(4);
            return;
        }
        const std::string now = line == "end" ? line : line.substr(3, line.find('|') - 3);
        if (isFirst) {
            CHECK(now == place); // the same stop as before the kill
        }
        isFirst = false;
        if (now == "end") {
            put(at, inFlight); // the page of the row's end has no wire
        } else {
            stop = now;
            hearWire(line);
        }
        place = now;
        inFlight = "no";
    }
    // Adds what a tap notes at the vine where it was made.
    void put(Noted& noted, const std::string& tap) const {
        if (tap.starts_with("act ")) {
            noted[stop] = tap.substr(4);
        }
    }

private:
    void hearWire(const std::string& line) {
        std::istringstream vines(line.substr(line.find('|') + 1));
        for (std::string vine; std::getline(vines, vine, '|');) {
            for (const std::string aside : {", you stand here", ", marked"}) {
                const auto found = vine.find(aside);
                vine.erase(std::min(found, vine.size()),
                           found == std::string::npos ? 0 : aside.size());
            }
            REQUIRE(vine.starts_with("Vine "));
            const auto comma = vine.find(", ");
            const std::string number = vine.substr(5, comma - 5);
            const std::string position =
                stop.substr(0, stop.rfind('-') + 1) + (number.size() < 2 ? "0" : "") + number;
            at.erase(position);
            if (comma != std::string::npos) {
                at[position] = vine.substr(comma + 2);
            }
        }
    }
};

// What a wire says of a value.
std::string wireWords(const std::string& json) {
    return json == R"("missing")" || json == R"({"none":"no-vine"})" ? "missing, no vine"
           : json == R"({"none":"not-observed"})"                    ? "not observed, not observed"
                                                                     : json;
}

struct Tally {
    int taps = 0;
    int oneMore = 0; // starts with the tap in flight there as well
    int atStart = 0; // killed before the first page
};

class Killed {
public:
    explicit Killed(const std::string& descriptor) {
        auto book = open();
        std::string lines = officeLine(1, "block/B2/rows", rows()) +
                            officeLine(2, "round/r1/title", R"("Walk")") +
                            officeLine(3, "round/r1/where", R"(["B2-*"])") +
                            officeLine(4, "round/r1/descriptors", "[\"" + descriptor + "\"]");
        std::istringstream in(lines);
        const auto report = book->database().importLines(in, "station", {});
        REQUIRE(report.ok());
        REQUIRE(report->refusedCount == 0);
        field::Settings settings = book->settings();
        settings.isSetUp = true;
        REQUIRE(book->change(settings).ok());
        REQUIRE(book->reload().ok());
        field::WalkWish wish;
        wish.author = "im";
        wish.firstRow = 0;
        auto plan = field::planWalk(book->database(),
                                    book->catalogue(),
                                    *book->catalogue().round("r1"),
                                    wish,
                                    book->today());
        REQUIRE(plan.ok());
        REQUIRE(book->beginWalk(std::move(*plan)).ok());
        shown_.place = shown_.stop = book->walk()->here().position;
    }

    // One start of the tablet, and its end.
    void startAndKill(std::uint64_t seed, std::size_t lines, std::chrono::microseconds after) {
        const auto said = runAndKill(seed, lines, after);
        shown_.isFirst = true;
        tally.atStart += said.empty() ? 1 : 0;
        for (std::size_t i = 0; i < said.size(); ++i) {
            CAPTURE(said[i]);
            tally.taps += said[i].starts_with("tap ") ? 1 : 0;
            shown_.hear(said[i]);
        }
        check();
    }
    void verify() {
        const auto verdict = open()->database().verify({});
        REQUIRE(verdict.ok());
        CHECK(verdict->faults.empty());
    }

    Tally tally;

private:
    [[nodiscard]] static std::string rows() {
        std::string list;
        for (unsigned row = 1; row <= kRows; ++row) {
            list += (list.empty() ? "[[" : ",[") + std::to_string(row) + "," +
                    std::to_string(kVines) + "]";
        }
        return list + "]";
    }
    [[nodiscard]] std::unique_ptr<field::FieldBook> open() {
        auto book = field::FieldBook::open(folder_.file("journal.db"), "Etc/GMT+5", clock_);
        REQUIRE_MESSAGE(book.ok(), (book ? "" : book.error().message));
        return std::move(*book);
    }

    // A second process of this program: a QGuiApplication does not live through a fork.
    [[nodiscard]] int start(int out, std::uint64_t seed) const {
        ::setenv(kFolder, folder_.path().c_str(), 1);
        ::setenv(kPipe, std::to_string(out).c_str(), 1);
        ::setenv(kSeed, std::to_string(seed).c_str(), 1);
        std::string self = "test_tablet";
        std::string noSkip = "--no-skip";
        std::string which = "--test-case=the process of a tablet that is killed";
        std::array<char*, 4> arguments{self.data(), noSkip.data(), which.data(), nullptr};
        posix_spawn_file_actions_t files;
        ::posix_spawn_file_actions_init(&files);
        ::posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
        int child = -1;
        const int failed =
            ::posix_spawn(&child, "/proc/self/exe", &files, nullptr, arguments.data(), environ);
        ::posix_spawn_file_actions_destroy(&files);
        ::unsetenv(kFolder);
        REQUIRE(failed == 0);
        return child;
    }

    // Kills it so long after it said that many lines; returns all that it said.
    [[nodiscard]] std::vector<std::string>
    runAndKill(std::uint64_t seed, std::size_t lines, std::chrono::microseconds after) const {
        std::array<int, 2> pipe{};
        REQUIRE(::pipe(pipe.data()) == 0);
        ::fcntl(pipe[0], F_SETFD, FD_CLOEXEC);
        const int child = start(pipe[1], seed);
        ::close(pipe[1]);
        std::string said;
        char letter = 0;
        while (lines > 0 && ::read(pipe[0], &letter, 1) == 1) {
            said += letter;
            lines -= letter == '\n' ? 1 : 0;
        }
        std::this_thread::sleep_for(after);
        ::kill(child, SIGKILL);
        while (::read(pipe[0], &letter, 1) == 1) {
            said += letter;
        }
        ::close(pipe[0]);
        int status = 0;
        REQUIRE(::waitpid(child, &status, 0) == child);
        CHECK(WIFSIGNALED(status)); // it had not ended by itself
        std::vector<std::string> whole;
        std::istringstream in(said);
        for (std::string line; std::getline(in, line);) {
            whole.push_back(line);
        }
        return whole;
    }

    [[nodiscard]] static Noted read(field::FieldBook& book) {
        Noted noted;
        const auto take = [&noted](const store::StateRow& row) {
            if (!row.valueJson.empty()) {
                noted[row.subject.substr(4, row.subject.find('/', 4) - 4)] =
                    wireWords(row.valueJson);
            }
            return true;
        };
        REQUIRE(book.database().eachState("obs", take).ok());
        return noted;
    }

    // The journal is what was shown, or that and the one tap in flight.
    void check() {
        const auto book = open();
        CHECK_FALSE(book->database().about().tookNewEpoch);
        const Noted found = read(*book);
        const std::string tap = shown_.inFlight;
        CAPTURE(tap);
        const field::Walk& walk = *book->walk();
        const std::string place = walk.footing().isAtRowEnd ? "end" : walk.here().position;
        if (found == shown_.at) {
            // Only a step that notes nothing can have been taken.
            if (tap != "row" && tap != "undo") {
                CHECK(place == shown_.place);
            }
        } else {
            ++tally.oneMore;
            checkInFlight(found, tap);
        }
        shown_.at = found;
        shown_.place = place;
        shown_.stop = walk.here().position;
        shown_.inFlight = "no";
    }
    void checkInFlight(const Noted& found, const std::string& tap) const {
        Noted expected = shown_.at;
        shown_.put(expected, tap);
        if (tap == "undo") {
            for (const auto& [position, words] : shown_.at) {
                if (!found.contains(position)) {
                    expected.erase(position);
                }
            }
            CHECK(expected.size() + 1 == shown_.at.size()); // one act was taken back
        }
        CHECK(found == expected);
    }

    TempFolder folder_;
    FixedClock clock_;
    Shown shown_;
};

void killOften(const std::string& descriptor, unsigned seed) {
    MESSAGE("seed " << seed);
    std::mt19937 dice(seed);
    Killed tablet(descriptor);
    for (int kill = 0; kill < kKills; ++kill) {
        CAPTURE(kill);
        const bool isAtStart = kill % 5 == 0;
        const std::size_t lines = isAtStart ? 0 : dice() % kMostLines + 1;
        const auto longest = static_cast<unsigned>(isAtStart ? kStartMs : kLongestMs) * 1000;
        tablet.startAndKill(
            seed + static_cast<unsigned>(kill), lines, std::chrono::microseconds(dice() % longest));
    }
    MESSAGE(tablet.tally.taps << " taps, " << tablet.tally.oneMore
                              << " starts with the tap in flight, " << tablet.tally.atStart
                              << " killed before the first page");
    CHECK(tablet.tally.taps > kKills);
    CHECK(tablet.tally.oneMore > 0);
    tablet.verify();
}

} // namespace

// Started by the tests below, in a process of its own, and never comes to its end.
TEST_CASE("the process of a tablet that is killed" * doctest::skip()) {
    const char* folder = std::getenv(kFolder);
    if (folder == nullptr) {
        return;
    }
    ::prctl(PR_SET_PDEATHSIG, SIGKILL); // it does not outlive the test
    qInstallMessageHandler(sayWarning);
    FixedClock clock;
    TabletGlass glass(folder, clock, kGlass);
    Fingers(glass, std::atoi(std::getenv(kPipe)), std::strtoull(std::getenv(kSeed), nullptr, 10))
        .go();
}

TEST_CASE("killed fifty times while scores are tapped, the tablet shows the same stop, with all "
          "that it showed as recorded and at most the tap in flight") {
    killOften("vigour", 20'260'512);
}

TEST_CASE("killed fifty times while counts are tapped, the tablet shows the same stop, with all "
          "that it showed as recorded and at most the tap in flight") {
    killOften("clusters", 20'260'513);
}
