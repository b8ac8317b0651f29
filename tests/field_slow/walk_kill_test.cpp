// A tablet whose program is killed at random moments of a walk, a hundred times: the next start is
// at the same vine, with everything that was said to be recorded, and at most the one act in hand.
#include "support/field_books.hpp"

#include <doctest/doctest.h>

#include <array>
#include <chrono>
#include <csignal>
#include <map>
#include <optional>
#include <random>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>
#include <vector>

using namespace bullace;
using namespace bullace::test;

namespace {

constexpr unsigned kRows = 120;
constexpr unsigned kVines = 60;
constexpr int kKills = 100;
constexpr int kLongestMs = 40; // until it is killed
// Between two acts; with it a hundred walks of that length end within the rows on any disk.
constexpr std::chrono::microseconds kBreath{300};

std::string words(const field::Footing& footing) {
    return std::to_string(footing.stop) + (footing.isAtRowEnd ? ",end" : "");
}

// The person in the other process: one act after the other, and each said only when it returned.
class Walker {
public:
    Walker(int out, std::uint64_t seed) : out_(out), dice_(seed) {}

    // Until it is killed; ends by itself only where something fails.
    void walk(const std::string& path) {
        const FixedClock clock;
        auto book = field::FieldBook::open(path, "Etc/GMT+5", clock);
        if (!book || (*book)->walk() == nullptr) {
            return say("failed");
        }
        say("open");
        while (true) {
            const auto done = act(*(*book)->walk());
            if (!done) {
                return say("failed");
            }
            say("at " + words((*book)->walk()->footing()) + " " + *done);
            std::this_thread::sleep_for(kBreath);
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

    // What was done, in words; nothing where it failed.
    std::optional<std::string> act(field::Walk& walk) {
        if (walk.footing().isAtRowEnd) {
            return told(walk.nextLeg(false), "next");
        }
        const auto choice = dice_() % 10;
        if (choice == 0) {
            const auto taken = walk.undo();
            return taken ? std::optional<std::string>(taken->has_value() ? "undone" : "nothing")
                         : std::nullopt;
        }
        const std::size_t stop = walk.footing().stop;
        const std::string vigour = "act " + walk.sheet().subjectAt(stop, "vigour") + " ";
        if (choice == 1) {
            const std::string vine = " " + walk.sheet().subjectAt(stop, "vine") + " \"dead\"";
            return told(walk.markVine("dead"), vigour + R"({"none":"dead"})" + vine);
        }
        if (choice == 2) {
            return told(walk.noteNothing("not-observed"), vigour + R"({"none":"not-observed"})");
        }
        const auto score = static_cast<std::int64_t>(dice_() % 9 + 1);
        return told(walk.note(journal::integerValue(score)), vigour + std::to_string(score));
    }

    static std::optional<std::string> told(const Status& done, std::string what) {
        return done ? std::optional(std::move(what)) : std::nullopt;
    }

    int out_;
    std::mt19937_64 dice_;
};

// From when the time to the kill is counted.
enum class Since { Start, Open };

// Starts the walker, kills it after so long, and returns what it had said, line by line.
std::vector<std::string> walkAndKill(const std::string& path,
                                     std::uint64_t seed,
                                     Since since,
                                     std::chrono::microseconds after) {
    std::array<int, 2> pipe{};
    REQUIRE(::pipe(pipe.data()) == 0);
    const int child = ::fork();
    if (child == 0) {
        ::close(pipe[0]);
        Walker(pipe[1], seed).walk(path);
        ::_exit(1);
    }
    REQUIRE(child > 0);
    ::close(pipe[1]);
    std::string said;
    std::array<char, 4096> piece{};
    if (since == Since::Open) {
        const ssize_t got = ::read(pipe[0], piece.data(), 1);
        said.assign(piece.data(), got > 0 ? 1 : 0);
    }
    std::this_thread::sleep_for(after);
    ::kill(child, SIGKILL);
    for (ssize_t got = 0; (got = ::read(pipe[0], piece.data(), piece.size())) > 0;) {
        said.append(piece.data(), static_cast<std::size_t>(got));
    }
    ::close(pipe[0]);
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(WIFSIGNALED(status));
    std::vector<std::string> lines;
    std::istringstream in(said);
    for (std::string line; std::getline(in, line);) {
        lines.push_back(line);
    }
    return lines;
}

// What was said to be recorded, and where the person was then.
struct Said {
    using Act = std::vector<std::pair<std::string, std::string>>; // subjects with their values
    std::vector<Act> acts;                                        // that stand
    std::string footing;

    void hear(const std::string& line) {
        std::istringstream in(line);
        std::string word;
        in >> word;
        CHECK(word != "failed");
        if (word != "at") {
            return;
        }
        in >> footing >> word;
        if (word == "undone") {
            REQUIRE_FALSE(acts.empty());
            acts.pop_back();
        } else if (word == "act") {
            Act act;
            for (std::string subject, value; in >> subject >> value;) {
                act.emplace_back(subject, value);
            }
            acts.push_back(act);
        }
    }

    // As Book::observations() writes it.
    [[nodiscard]] std::string observations() const {
        std::map<std::string, std::string> standing;
        for (const Act& act : acts) {
            standing.insert(act.begin(), act.end());
        }
        std::string all;
        for (const auto& [subject, value] : standing) {
            all.append(subject).append(" ").append(value).append("\n");
        }
        return all;
    }
};

struct Tally {
    std::size_t acts = 0; // said over all starts
    int oneMore = 0;      // starts with the act in hand there as well
    int undoMore = 0;     // with the undo in hand done
    int idle = 0;         // killed before the first act
};

// The act in hand when the program was killed is there whole, or not at all.
void checkInHand(Book& tablet, Said& said, Tally& tally) {
    const std::string found = tablet.observations();
    if (found == said.observations()) {
        return;
    }
    Said before = said;
    if (!before.acts.empty()) {
        before.acts.pop_back();
        if (found == before.observations()) {
            ++tally.undoMore;
            said.acts.pop_back();
            return;
        }
    }
    // One act more: taking one act back gives exactly what was said, at the vine where she stood.
    ++tally.oneMore;
    const auto taken = tablet.walk().undo();
    REQUIRE(taken.ok());
    REQUIRE(taken->has_value());
    CHECK(tablet.observations() == said.observations());
    CHECK(words(tablet.walk().footing()) == said.footing);
}

void checkStart(Book& tablet, Said& said, Tally& tally) {
    tablet.reopen();
    CHECK_FALSE(tablet->database().about().tookNewEpoch);
    const std::size_t stop = tablet.walk().footing().stop;
    const std::size_t saidStop = std::stoul(said.footing);
    const std::string found = words(tablet.walk().footing());
    const bool isSame = tablet.observations() == said.observations();
    if (isSame && said.footing.ends_with(",end")) {
        // Only the step into the next row can have been in hand.
        CHECK((found == said.footing || found == std::to_string(saidStop + 1)));
    } else if (isSame) {
        CHECK(found == said.footing);
    } else {
        CHECK(stop + 1 >= saidStop);
        CHECK(stop <= saidStop + 1);
    }
    checkInHand(tablet, said, tally);
    said.footing = words(tablet.walk().footing());
}

} // namespace

TEST_CASE("killed a hundred times at random moments of a walk, the tablet starts at the same vine, "
          "with all that was recorded and at most the act in hand") {
    constexpr unsigned kSeed = 20'260'512;
    MESSAGE("seed " << kSeed);
    std::mt19937 dice(kSeed);
    Book tablet;
    tablet.plant(kRows, kVines, {{"descriptors", R"(["vigour"])"}});
    tablet.begin();
    Said said;
    said.footing = words(tablet.walk().footing());
    Tally tally;
    for (int kill = 0; kill < kKills; ++kill) {
        CAPTURE(kill);
        tablet.close();
        const auto lines = walkAndKill(tablet.path(),
                                       kSeed + static_cast<std::uint64_t>(kill),
                                       kill % 3 == 0 ? Since::Start : Since::Open,
                                       std::chrono::microseconds(dice() % (kLongestMs * 1000)));
        for (const std::string& line : lines) {
            said.hear(line);
            tally.acts += line.starts_with("at ") ? 1U : 0U;
        }
        tally.idle += lines.size() < 2 ? 1 : 0;
        checkStart(tablet, said, tally);
    }
    MESSAGE(tally.acts << " acts, " << tally.oneMore << " starts with the act in hand, "
                       << tally.undoMore << " with the undo, " << tally.idle
                       << " killed before the first act");
    CHECK(tally.acts > 100);
    CHECK(tally.oneMore + tally.undoMore > 0);
    const auto verdict = tablet->database().verify({});
    REQUIRE(verdict.ok());
    CHECK(verdict->faults.empty());
}
