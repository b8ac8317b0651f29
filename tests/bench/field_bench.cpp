// What the tablet costs at a million entries: from the start to the first entry, one tap, and a day
// of three thousand stops.
#include "bench/benches.hpp"
#include "bench/floor.hpp"
#include "bench/measure.hpp"
#include "bench/station_past.hpp"
#include "field/field_book.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <chrono>
#include <ctime>
#include <fcntl.h>
#include <malloc.h>
#include <memory>
#include <unistd.h>

namespace bullace::bench {

namespace {

constexpr std::size_t kMillion = 1'000'000;
constexpr std::size_t kDay = 3000; // stops
constexpr std::size_t kPart = 500; // of them at its beginning and its end
constexpr int kOpenings = 10;
constexpr double kMs = 1000; // in a second

// A morning that does not end.
class BenchClock : public Clock {
public:
    [[nodiscard]] std::int64_t nowMs() const override {
        const auto day = std::chrono::sys_days(pastToday()).time_since_epoch();
        return std::chrono::duration_cast<std::chrono::milliseconds>(day).count() + 13 * 3'600'000;
    }
    [[nodiscard]] std::int64_t minutesFromUtc(std::int64_t /*ms*/) const override { return -300; }
    [[nodiscard]] CivilDate dateAt(std::int64_t /*ms*/) const override { return pastToday(); }
};

const BenchClock kClock;

std::unique_ptr<field::FieldBook> openBook(const std::string& path) {
    auto book = field::FieldBook::open(path, "Etc/GMT+5", kClock);
    must(book.ok(), book ? "" : book.error().message);
    return std::move(*book);
}

// Processor seconds of this thread.
double workedNow() {
    timespec now{};
    ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

struct Cost {
    double seconds = 0; // by the clock on the wall
    double worked = 0;  // of the processor
};

template<typename Work>
Cost costOf(const Work& work) {
    const double worked = workedNow();
    Cost cost;
    cost.seconds = secondsOf(work);
    cost.worked = workedNow() - worked;
    return cost;
}

// What is in use of the heap, without what earlier parts of this run gave back to it.
double heapMiB() {
    const auto heap = ::mallinfo2();
    return static_cast<double>(heap.uordblks + heap.hblkhd) / 1'048'576;
}

// Costs of one kind of act in order.
struct Costs {
    std::vector<double> seconds;
    std::vector<double> worked;

    void add(const Cost& cost) {
        seconds.push_back(cost.seconds);
        worked.push_back(cost.worked);
    }
};

std::vector<double> part(const std::vector<double>& values, std::size_t from, std::size_t count) {
    const auto begin = values.begin() + static_cast<std::ptrdiff_t>(from);
    return {begin, begin + static_cast<std::ptrdiff_t>(std::min(count, values.size() - from))};
}

std::string figure(const std::string& name, double value) {
    return "\"" + name + "\":" + std::to_string(value);
}

void beginRound(field::FieldBook& book) {
    const walk::Round* round = book.catalogue().round(kPastRound);
    must(round != nullptr, "finding the round");
    field::WalkWish wish;
    wish.author = "im";
    auto plan = field::planWalk(book.database(), book.catalogue(), *round, wish, book.today());
    must(plan && plan->stops.size() == kDay, "planning the day");
    must(book.beginWalk(std::move(*plan)).ok(), "beginning the walk");
}

Bytes stageHere(const field::Walk& walk) {
    return journal::integerValue(stageOf(walk.here().position, walk.plan().date));
}

// What the disk still holds of the file in memory is given up, as after the tablet was switched
// off.
void forgetFile(const std::string& path) {
    for (const char* const of : {"", "-wal"}) {
        const int file = ::open((path + of).c_str(), O_RDONLY);
        if (file >= 0) {
            static_cast<void>(::fsync(file));
            static_cast<void>(::posix_fadvise(file, 0, 0, POSIX_FADV_DONTNEED));
            ::close(file);
        }
    }
}

void tellSeconds(const std::string& what, double seconds, double most, const std::string& more) {
    tell(what, seconds, "s", "under " + std::to_string(most).substr(0, 3), seconds < most, more);
}

double roundsSeconds(field::FieldBook& book) {
    return secondsOf([&] {
        must(store::roundsOn(book.database(), book.catalogue(), book.today()).ok(),
             "listing the rounds");
    });
}

// Nobody walks: the rounds with what is done of them, the rows, the walk and its first value.
void startingFresh(const std::string& path) {
    forgetFile(path);
    double opened = 0;
    double rounds = 0;
    std::unique_ptr<field::FieldBook> book;
    const double all = secondsOf([&] {
        opened = secondsOf([&] { book = openBook(path); });
        must(book->walk() == nullptr, "nobody walks");
        rounds = roundsSeconds(*book);
        beginRound(*book);
        must(book->walk()->note(stageHere(*book->walk())).ok(), "the first value");
    });
    tellSeconds("start to the first entry of a new walk, 1,000,000 entries, nothing in memory",
                all,
                1.5,
                figure("opening_s", opened) + "," + figure("rounds_s", rounds) + "," +
                    figure("rounds_again_s", roundsSeconds(*book)));
}

// A walk goes on: to the vine where one stood, and the next value.
void startingAgain(const std::string& path, const std::string& when) {
    std::vector<double> openings;
    std::vector<double> firsts;
    std::vector<double> again; // with the file in memory
    for (int turn = 0; turn < kOpenings; ++turn) {
        forgetFile(path);
        std::unique_ptr<field::FieldBook> book;
        openings.push_back(secondsOf([&] { book = openBook(path); }));
        must(book->walk() != nullptr, "the walk goes on");
        firsts.push_back(openings.back() + secondsOf([&] {
                             must(book->walk()->note(stageHere(*book->walk())).ok(), "noting");
                         }));
        must(book->walk()->undo().ok(), "taking back");
        book.reset();
        again.push_back(secondsOf([&] { book = openBook(path); }));
    }
    tellSeconds("opening with a walk that goes on " + when + ", nothing in memory",
                percentile(openings, 0.5),
                1.0,
                figure("most_s", percentile(openings, 1)) + "," +
                    figure("with_the_first_value_s", percentile(firsts, 0.5)) + "," +
                    figure("file_in_memory_s", percentile(again, 0.5)));
}

struct Day {
    Costs notes;
    Costs weighings;
    Costs slips;
    std::vector<double> floor;
    double memoryEarly = 0; // MiB in use on the heap, after the first part
    double memoryLate = 0;
};

// Every stop of the walk as the screen does it: the value, then the silent look at it.
void walkDay(field::FieldBook& book, BareCommits& bare, Day& day) {
    field::Walk& walk = *book.walk();
    const Bytes entry(120, 'x'); // as long as an entry
    while (true) {
        if (walk.footing().isAtRowEnd) {
            if (!walk.hasNextLeg()) {
                return;
            }
            must(walk.nextLeg(false).ok(), "going into the next row");
        }
        const Bytes value = stageHere(walk);
        day.notes.add(costOf([&] { must(walk.note(value).ok(), "noting"); }));
        day.weighings.add(costOf([&] { must(walk.weighLast().ok(), "weighing"); }));
        day.slips.add(costOf([&] { static_cast<void>(walk.slip()); }));
        day.floor.push_back(secondsOf([&] { bare.commit(entry); }));
        if (day.notes.seconds.size() == kPart) {
            day.memoryEarly = heapMiB();
        }
    }
}

void tellNotes(const Day& day) {
    const double note99 = percentile(day.notes.seconds, 0.99) * kMs;
    const double note50 = percentile(day.notes.seconds, 0.5) * kMs;
    const double bare50 = percentile(day.floor, 0.5) * kMs;
    const double own = percentile(day.notes.worked, 0.99) * kMs;
    tell("a tap to durable, 1,000,000 entries, p99 of " + std::to_string(day.notes.seconds.size()),
         note99,
         "ms",
         "under 50",
         note99 < 50,
         figure("p50_ms", note50) + "," + figure("bare_commit_p50_ms", bare50) + "," +
             figure("bare_commit_p99_ms", percentile(day.floor, 0.99) * kMs));
    tell("the app's own share of it, p99 of processor time",
         own,
         "ms",
         "under 8",
         own < 8,
         figure("p50_ms", percentile(day.notes.worked, 0.5) * kMs) + "," +
             figure("p50_above_bare_commit_ms", note50 - bare50));
}

void tellLooks(const Day& day) {
    const double weigh = percentile(day.weighings.seconds, 0.99) * kMs;
    const double slip = percentile(day.slips.seconds, 0.99) * kMs;
    tell("looking at the value (weighLast), p99",
         weigh,
         "ms",
         "under 8",
         weigh < 8,
         figure("p50_ms", percentile(day.weighings.seconds, 0.5) * kMs));
    tell("looking for a slip along the row, p99",
         slip,
         "ms",
         "under 8",
         slip < 8,
         figure("p50_ms", percentile(day.slips.seconds, 0.5) * kMs));
}

void tellFlat(const Day& day) {
    const std::size_t late = day.notes.seconds.size() - kPart;
    const double first = percentile(part(day.notes.worked, 0, kPart), 0.5);
    const double last = percentile(part(day.notes.worked, late, kPart), 0.5);
    tell(
        "a day of 3,000 stops: own share of the last 500 taps",
        last / first,
        "of that of the first 500, p50 of processor time",
        "at most 1.25",
        last / first <= 1.25,
        figure("first_p99_ms", percentile(part(day.notes.seconds, 0, kPart), 0.99) * kMs) + "," +
            figure("last_p99_ms", percentile(part(day.notes.seconds, late, kPart), 0.99) * kMs) +
            "," +
            figure("first_own_p99_ms", percentile(part(day.notes.worked, 0, kPart), 0.99) * kMs) +
            "," +
            figure("last_own_p99_ms", percentile(part(day.notes.worked, late, kPart), 0.99) * kMs));
    tell("memory in use at its end, the engine without a screen",
         day.memoryLate,
         "MiB",
         "no more than 4 above that after 500 stops",
         day.memoryLate - day.memoryEarly <= 4,
         figure("after_500_mib", day.memoryEarly) + "," +
             figure("whole_process_mib", memoryMiB(kThisProcess, "VmRSS")));
}

void undoing(field::FieldBook& book) {
    Costs undos;
    for (std::size_t i = 0; i < kPart; ++i) {
        undos.add(costOf([&] { must(book.walk()->undo().ok(), "taking back"); }));
    }
    const double most = percentile(undos.seconds, 0.99) * kMs;
    tell("taking back 500 acts at the end of the day, p99",
         most,
         "ms",
         "under 50",
         most < 50,
         figure("own_p99_ms", percentile(undos.worked, 0.99) * kMs) + "," +
             figure("own_last_ms", undos.worked.back() * kMs));
}

} // namespace

void runFieldBenches() {
    const Folder folder;
    const std::string path = folder.file("tablet.db");
    fillWithPast(openBook(path)->database(), kMillion);
    startingFresh(path);
    startingAgain(path, "at its first vine");
    Day day;
    {
        BareCommits bare(folder.file("bare.db"));
        const auto book = openBook(path);
        walkDay(*book, bare, day);
        day.memoryLate = heapMiB();
    }
    tellNotes(day);
    tellLooks(day);
    tellFlat(day);
    startingAgain(path, "after 3,000 stops");
    undoing(*openBook(path));
}

} // namespace bullace::bench
