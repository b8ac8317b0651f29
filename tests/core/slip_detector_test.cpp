// Whether a walk that slipped by one vine is seen, on simulated rows.
#include "core/walk/slip_detector.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <iomanip>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace bullace::walk {

namespace {

constexpr int kStops = 200;

// A season of rows: how the vines of a row differ, and how they moved on since the last visit.
struct Season {
    double betweenVines = 0.6; // SD, in steps
    double advance = 2;        // of all vines, in steps
    double ownAdvance = 0;     // SD about it
};

// A row of kStops vines and one more, scored 1 to 9 on two visits; each note is one off in 16 % of
// cases. The vines stand in the order of the walk.
struct Row {
    std::vector<double> last;
    std::vector<double> now;
};

class Field {
public:
    explicit Field(std::uint64_t seed) : dice_(seed) {}

    Row row(const Season& season) {
        Row made;
        const double middle = 3.5 + 2 * chance();
        for (int i = 0; i <= kStops; ++i) {
            const double vine = middle + season.betweenVines * normal_(dice_);
            const double moved = vine + season.advance + season.ownAdvance * normal_(dice_);
            made.last.push_back(noted(vine));
            made.now.push_back(noted(moved));
        }
        return made;
    }
    double chance() { return std::uniform_real_distribution<double>(0, 1)(dice_); }

private:
    double noted(double truth) {
        const double u = chance();
        const double off = u < 0.08 ? -1 : u < 0.16 ? 1 : 0;
        return std::clamp(std::clamp(std::round(truth), 1.0, 9.0) + off, 1.0, 9.0);
    }

    std::mt19937_64 dice_;
    std::normal_distribution<double> normal_;
};

void addStop(SlipDetector& detector, const Row& row, int stop, int vine) {
    const auto at = [&row](int place) {
        return place < 0 || place >= kStops
                   ? std::nullopt
                   : std::optional(row.last[static_cast<std::size_t>(place)]);
    };
    detector.add(row.now[static_cast<std::size_t>(vine)], at(stop), at(stop - 1), at(stop + 1));
}

// The stop at which a slip is told; -1: none is. From stop `from` on, the vine noted is `along` on.
struct Told {
    int stop = -1;
    Slip slip;
};

Told walk(const Row& row, int from, int along) {
    SlipDetector detector;
    for (int stop = 0; stop < kStops; ++stop) {
        const int vine = stop < from ? stop : stop + along;
        addStop(detector, row, stop, vine);
        if (const auto slip = detector.slip()) {
            return {stop, *slip};
        }
    }
    return {};
}

struct Record {
    int rows = 0;
    int falseAlarms = 0;
    int slips = 0; // those without a false alarm before
    int found = 0;
    int wrongWay = 0;
    std::vector<int> delays; // stops from the slip on until it was told

    [[nodiscard]] double falsePercent() const { return 100.0 * falseAlarms / rows; }
    [[nodiscard]] double foundPercent() const { return 100.0 * found / slips; }
    // Slips that were never told are as late as can be.
    [[nodiscard]] int delay(double share) const {
        const auto place = static_cast<std::size_t>(share * slips);
        return place < delays.size() ? delays[place] : kStops;
    }
};

Record record(Field& field, const Season& season, int rows) {
    Record kept;
    for (int i = 0; i < rows; ++i) {
        const Row row = field.row(season);
        ++kept.rows;
        kept.falseAlarms += walk(row, kStops, 0).stop >= 0 ? 1 : 0;
        const int from = 20 + static_cast<int>(100 * field.chance());
        const int along = field.chance() < 0.5 ? -1 : 1;
        const Told told = walk(row, from, along);
        if (told.stop >= 0 && told.stop < from) {
            continue;
        }
        ++kept.slips;
        if (told.stop >= 0) {
            ++kept.found;
            kept.wrongWay += told.slip.along == along ? 0 : 1;
            kept.delays.push_back(told.stop - from + 1);
        }
    }
    std::sort(kept.delays.begin(), kept.delays.end());
    return kept;
}

std::string line(const Season& season, const Record& kept) {
    std::ostringstream out;
    out << std::fixed << std::setprecision(1) << "between vines " << season.betweenVines
        << ", advance " << season.advance << " +- " << season.ownAdvance << ": found "
        << kept.foundPercent() << " %, median " << kept.delay(0.5) << " vines, 90 % "
        << kept.delay(0.9) << ", false alarms " << kept.falsePercent() << " % of 200-stop rows";
    return out.str();
}

} // namespace

TEST_CASE("a slip by one vine is told within ten vines, and few rows give a false alarm") {
    Field field(61);
    for (const double between : {0.3, 0.6, 1.0, 1.5}) {
        const Season season{between, 2, 0};
        const Record kept = record(field, season, 500);
        MESSAGE(line(season, kept));
        CHECK(kept.falsePercent() <= 3);
        CHECK(kept.wrongWay * 20 <= kept.found); // at most 5 in 100 point the wrong way
        if (between >= 0.6) {
            CHECK(kept.delay(0.5) <= 10);
            CHECK(kept.foundPercent() >= 95);
        }
    }
}

TEST_CASE("vines that moved on unevenly since the last visit are not taken for slips") {
    Field field(62);
    for (const Season& season :
         {Season{0.3, 2.4, 0.3}, Season{0.6, 2.4, 0}, Season{1.0, 3.5, 0.5}}) {
        const Record kept = record(field, season, 200);
        MESSAGE(line(season, kept));
        CHECK(kept.falsePercent() <= 3);
        if (season.betweenVines >= 0.6) {
            CHECK(kept.foundPercent() >= 85);
        }
    }
}

TEST_CASE("a row of one clone gives no evidence either way") {
    SlipDetector detector;
    for (int stop = 0; stop < 400; ++stop) {
        detector.add(6, 4, 4, 4);
        REQUIRE_FALSE(detector.slip().has_value());
    }
}

TEST_CASE("a slip tells its direction and about where it began") {
    Field field(63);
    const Row row = field.row({1.5, 2, 0});
    for (const int along : {1, -1}) {
        const Told told = walk(row, 80, along);
        REQUIRE(told.stop >= 80);
        CHECK(told.slip.along == along);
        CHECK(told.slip.evidence > 0);
        const int began = told.stop - static_cast<int>(told.slip.vines) + 1;
        CHECK(std::abs(began - 80) <= 6);
    }
}

TEST_CASE("a new row and a look at the tag begin without evidence") {
    Field field(64);
    const Row row = field.row({1.5, 2, 0});
    SlipDetector detector;
    int stop = 0;
    for (; stop < 150 && !detector.slip(); ++stop) {
        addStop(detector, row, stop, stop < 80 ? stop : stop + 1);
    }
    REQUIRE(detector.slip().has_value());
    SlipDetector next = detector;
    next.startRow();
    CHECK_FALSE(next.slip().has_value());
    detector.putAside();
    CHECK_FALSE(detector.slip().has_value());
}

TEST_CASE("a copy taken before a stop undoes it") {
    Field field(65);
    const Row row = field.row({1.0, 2, 0});
    SlipDetector walked;
    SlipDetector wandered;
    for (int stop = 0; stop < kStops - 1; ++stop) {
        const int vine = stop < 60 ? stop : stop + 1;
        addStop(walked, row, stop, vine);
        const SlipDetector before = wandered;
        wandered.add(1, 9, 9, 9); // a slip of the finger, taken back
        wandered = before;
        addStop(wandered, row, stop, vine);
        const auto one = walked.slip();
        const auto other = wandered.slip();
        REQUIRE(one.has_value() == other.has_value());
        REQUIRE((!one || (one->vines == other->vines && one->evidence == other->evidence)));
    }
    CHECK(walked.slip().has_value());
}

TEST_CASE("vines without earlier values, and values off every scale, do no harm") {
    SlipDetector detector;
    for (int stop = 0; stop < 50; ++stop) {
        detector.add(5, std::nullopt, 4.0, 4.0);
        detector.add(1e300, -1e300, std::nullopt, 3.0);
        detector.add(5, 4.0, std::nullopt, std::nullopt);
    }
    CHECK_FALSE(detector.slip().has_value());
}

} // namespace bullace::walk
