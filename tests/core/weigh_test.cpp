// Which values are doubted after they were recorded, and which are let be.
#include "core/walk/weigh.hpp"

#include "core/descriptors/stages.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>
#include <string>
#include <vector>

namespace bullace::walk {

namespace {

using descriptors::DescriptorKind;

CivilDate day(std::string_view text) {
    return readDate(text).value();
}

Background backgroundOf(std::string_view code) {
    const auto* const descriptor = descriptors::findBuiltIn(code);
    REQUIRE(descriptor != nullptr);
    Background background;
    background.code = code;
    background.kind = descriptor->kind;
    background.range = descriptor->range;
    background.decimals = descriptor->decimals;
    return background;
}

// How the numbers of one descriptor vary: by a factor for counts and measures, by steps for scores.
struct Trait {
    std::string_view code;
    double middle = 0;
    double betweenVines = 0; // SD; of the natural logarithm, or of the score
    double betweenYears = 0; // SD, of all vines together
    double ownYear = 0;      // SD, of one vine in one year
};

const Trait kTraits[] = {{"clusters", 150, 0.45, 0.25, 0.3},
                         {"berry-diameter", 24, 0.15, 0.04, 0.06},
                         {"pruning-weight", 2.5, 0.45, 0.2, 0.3},
                         {"yield", 18, 0.4, 0.3, 0.3},
                         {"seed-length", 7, 0.12, 0.02, 0.05},
                         {"soluble-solids", 16, 0.12, 0.06, 0.06},
                         {"vigour", 5, 1.2, 0.4, 0.7}};

// A block of vines over some years; the last year is walked, the others are history.
class Station {
public:
    Station(const Trait& trait, std::uint64_t seed, int years, bool hasFrost)
        : trait_(trait),
          background_(backgroundOf(trait.code)),
          dice_(seed) {
        for (int year = 0; year <= years; ++year) {
            years_.push_back(trait.betweenYears * normal_(dice_));
        }
        if (hasFrost) {
            years_.back() -= background_.kind == DescriptorKind::Score ? 2 : 1.5;
        }
        for (int vine = 0; vine < kVines; ++vine) {
            vines_.push_back(trait.betweenVines * normal_(dice_));
        }
    }

    // Walks all vines; `put` may change a value before it is weighed. Returns how many are doubted.
    int walk(const std::function<double(double)>& put, const std::function<bool(Doubt)>& isMeant) {
        int doubted = 0;
        std::vector<double> behind; // the nearest first
        for (int vine = 0; vine < kVines; ++vine) {
            Background background = background_;
            for (std::size_t year = 0; year + 1 < years_.size(); ++year) {
                const CivilDate date = std::chrono::year(2020 + static_cast<int>(year)) / 8 / 20;
                background.history.push_back({date, noted(vine, year)});
            }
            background.neighbours = behind;
            const double value = noted(vine, years_.size() - 1);
            const auto found = weigh(background, day("2026-08-20"), put(value));
            doubted += found && isMeant(found->doubt) ? 1 : 0;
            behind.insert(behind.begin(), value);
        }
        return doubted;
    }

    static constexpr int kVines = 200;

private:
    double noted(int vine, std::size_t year) {
        const double differs =
            vines_[static_cast<std::size_t>(vine)] + years_[year] + trait_.ownYear * normal_(dice_);
        const double steps = std::pow(10.0, background_.decimals);
        const double number = background_.kind == DescriptorKind::Score
                                  ? trait_.middle + differs
                                  : trait_.middle * std::exp(differs);
        const double rounded = std::round(number * steps) / steps;
        return std::clamp(rounded, background_.range->least, background_.range->greatest);
    }

    Trait trait_;
    Background background_;
    std::mt19937_64 dice_;
    std::normal_distribution<double> normal_;
    std::vector<double> years_;
    std::vector<double> vines_;
};

double same(double value) {
    return value;
}
bool isAny(Doubt) {
    return true;
}

double percent(int part, int of) {
    return 100.0 * part / of;
}

} // namespace

TEST_CASE("on sound walks at most two values in a hundred are doubted") {
    int all = 0;
    int walks = 0;
    for (const Trait& trait : kTraits) {
        int doubted = 0;
        int mine = 0;
        // Years differ, so that a few walks tell little of how many are doubted over many.
        for (int seed = 0; seed < 60; ++seed) {
            // Vines new on this walk, and such with one to three years of notes; every fourth walk
            // follows a frost that took most of the crop everywhere.
            Station station(trait, 700 + static_cast<std::uint64_t>(seed), seed % 4, seed % 4 == 2);
            doubted += station.walk(same, isAny);
            mine += Station::kVines;
        }
        MESSAGE(std::string(trait.code) << ": " << percent(doubted, mine) << " % doubted");
        CHECK(percent(doubted, mine) <= 2);
        all += doubted;
        walks += mine;
    }
    MESSAGE("all: " << percent(all, walks) << " %");
    CHECK(percent(all, walks) <= 1.5);
}

TEST_CASE("ten times too much or too little is caught where the vine has a history") {
    const auto tenfold = [](double value) { return value * 10; };
    const auto tenth = [](double value) { return value / 10; };
    for (const Trait& trait : kTraits) {
        if (trait.code == "vigour") {
            continue; // no score can be ten times another
        }
        int caught = 0;
        int named = 0;
        int all = 0;
        for (std::uint64_t seed = 0; seed < 20; ++seed) {
            for (const auto& slip : {std::function(tenfold), std::function(tenth)}) {
                Station station(trait, 800 + seed, 3, false);
                caught += station.walk(slip, isAny);
                Station again(trait, 800 + seed, 3, false);
                named += again.walk(slip, [](Doubt doubt) { return doubt == Doubt::TenTimes; });
                all += Station::kVines;
            }
        }
        MESSAGE(std::string(trait.code) << ": " << percent(caught, all) << " % caught, "
                                        << percent(named, all) << " % called tenfold");
        CHECK(percent(caught, all) >= 95);
        CHECK(percent(named, all) >= 80);
    }
}

TEST_CASE("an inch written for a millimetre is caught and called so") {
    for (const Trait& trait : {kTraits[1], kTraits[4]}) {
        Station station(trait, 900, 3, false);
        const auto inInches = [](double value) { return std::round(value / 25.4 * 100) / 100; };
        const int named =
            station.walk(inInches, [](Doubt doubt) { return doubt == Doubt::InchForMillimetre; });
        MESSAGE(std::string(trait.code)
                << ": " << percent(named, Station::kVines) << " % called inches");
        CHECK(percent(named, Station::kVines) >= 95);
    }
}

TEST_CASE("what a slip should have been is told beside it") {
    Background berries = backgroundOf("berry-diameter");
    berries.neighbours = {24.1, 23.8, 25.0, 24.4, 22.9, 23.5};
    const auto tenfold = weigh(berries, day("2026-08-20"), 2.4);
    REQUIRE(tenfold.has_value());
    CHECK(tenfold->doubt == Doubt::TenTimes);
    CHECK(tenfold->other == doctest::Approx(24.0));
    const auto inch = weigh(berries, day("2026-08-20"), 0.96);
    REQUIRE(inch.has_value());
    CHECK(inch->doubt == Doubt::InchForMillimetre);
    CHECK(inch->other == doctest::Approx(24.384));
    berries.unit = "g"; // a descriptor in another unit knows no inches
    CHECK(weigh(berries, day("2026-08-20"), 0.96)->doubt != Doubt::InchForMillimetre);
}

TEST_CASE("a value outside of the range is doubted though nothing else is known") {
    const auto high = weigh(backgroundOf("caps-off"), day("2026-05-20"), 101);
    REQUIRE(high.has_value());
    CHECK(high->doubt == Doubt::OutOfRange);
    CHECK(high->other == 100);
    CHECK(weigh(backgroundOf("clusters"), day("2026-05-20"), -1)->other == 0);
    CHECK(weigh(backgroundOf("flower-sex"), day("2026-05-20"), 5)->doubt == Doubt::OutOfRange);
    CHECK(weigh(backgroundOf("stage"), day("2026-05-20"), 30)->doubt == Doubt::OutOfRange);
    CHECK_FALSE(weigh(backgroundOf("clusters"), day("2026-05-20"), 1800).has_value());
}

TEST_CASE("a vine unlike its own history is told with the last note") {
    Background berries = backgroundOf("berry-diameter");
    for (const double noted : {24.1, 23.0, 25.2, 24.4, 23.6, 24.9}) {
        berries.history.push_back({day("2025-08-20"), noted});
    }
    const auto found = weigh(berries, day("2026-08-20"), 7.0); // ten times that is beyond any berry
    REQUIRE(found.has_value());
    CHECK(found->doubt == Doubt::FarFromHistory);
    CHECK(found->other == 24.9);
    CHECK(found->on == day("2025-08-20"));
    CHECK_FALSE(weigh(berries, day("2026-08-20"), 19.0).has_value());
    // Where the whole row is like that this year, the vine is not unusual.
    berries.neighbours = {7.5, 6.8, 8.0, 7.1, 6.4, 7.7};
    CHECK_FALSE(weigh(berries, day("2026-08-20"), 7.0).has_value());
}

TEST_CASE("a vine unlike its neighbours is told with their median, unless it always was") {
    Background weight = backgroundOf("cluster-weight");
    weight.neighbours = {60, 75, 66, 70, 64, 71, 58};
    const auto found = weigh(weight, day("2026-09-01"), 350);
    REQUIRE(found.has_value());
    CHECK(found->doubt == Doubt::FarFromNeighbours);
    CHECK(found->other == 66);
    weight.history = {{day("2024-09-01"), 330}, {day("2025-09-01"), 360}};
    CHECK_FALSE(weigh(weight, day("2026-09-01"), 350).has_value());
}

TEST_CASE("a flower sex or chromosome number unlike all that was noted is doubted") {
    Background sex = backgroundOf("flower-sex");
    CHECK_FALSE(weigh(sex, day("2026-05-20"), 4).has_value());
    sex.history = {{day("2024-05-20"), 4}, {day("2025-05-18"), 4}};
    CHECK_FALSE(weigh(sex, day("2026-05-20"), 4).has_value());
    const auto found = weigh(sex, day("2026-05-20"), 3);
    REQUIRE(found.has_value());
    CHECK(found->other == 4);
}

TEST_CASE("a stage behind that of an earlier day of the season is doubted, last year's is not") {
    Background stage = backgroundOf("stage");
    stage.history = {{day("2025-09-20"), 89}, {day("2026-04-03"), 7}};
    const auto found = weigh(stage, day("2026-04-10"), 5);
    REQUIRE(found.has_value());
    CHECK(found->doubt == Doubt::StageBackwards);
    CHECK(found->other == 7);
    CHECK(found->on == day("2026-04-03"));
    CHECK_FALSE(weigh(stage, day("2026-04-10"), 7).has_value());
    CHECK_FALSE(weigh(stage, day("2026-04-10"), 13).has_value());
    CHECK_FALSE(weigh(stage, day("2026-04-03"), 5).has_value()); // two notes of one day
    CHECK_FALSE(weigh(stage, day("2026-04-05"), 5).has_value()); // one step in two days is noise
    stage.history = {{day("2026-04-03"), 15}, {day("2026-04-10"), 12}};
    CHECK(weigh(stage, day("2026-04-17"), 12)->on == day("2026-04-03"));
}

TEST_CASE("a station's own stages are weighed by their order in its list") {
    Background stage = backgroundOf("stage");
    stage.ownStages = {30, 10, 20, 40};
    stage.history = {{day("2026-04-03"), 20}};
    CHECK(weigh(stage, day("2026-04-10"), 30)->doubt == Doubt::StageBackwards);
    CHECK_FALSE(weigh(stage, day("2026-04-10"), 10).has_value());
    CHECK(weigh(stage, day("2026-04-10"), 65)->doubt == Doubt::OutOfRange);
}

TEST_CASE("seasons of stages with noise are hardly doubted, and planted steps back are caught") {
    const auto stages = descriptors::grapevineStages();
    std::mt19937_64 dice(1000);
    const auto noted = [&](double truth) {
        const double u = std::uniform_real_distribution<double>(0, 1)(dice);
        const double off = u < 0.08 ? -1 : u < 0.16 ? 1 : 0; // 16 % of notes are one step off
        const double step = std::clamp(std::floor(truth) + off, 0.0, 42.0);
        return static_cast<double>(stages[static_cast<std::size_t>(step)].code);
    };
    // Steps along the list by day of the year: bud break to bloom in seven weeks, fruit over the
    // summer, leaf fall in autumn; long rests before, in the fruit and after.
    const auto truth = [](double date) {
        return date < 80    ? 0.0
               : date < 130 ? 0.54 * (date - 80)
               : date < 150 ? 27 + 0.1 * (date - 130)
               : date < 240 ? 29 + 7.0 * (date - 150) / 90
               : date < 280 ? 36.0
               : date < 320 ? 36 + 5.0 * (date - 280) / 40
                            : 41.0;
    };
    int sound = 0;
    int doubted = 0;
    int planted = 0;
    int caught = 0;
    for (int vine = 0; vine < 300; ++vine) {
        const double late = std::normal_distribution<double>(0, 5)(dice);
        Background background = backgroundOf("stage");
        for (int date = 60; date < 340; date += 7) {
            const CivilDate today = addDays(day("2026-01-01"), date);
            const double code = noted(truth(date - late));
            ++sound;
            doubted += weigh(background, today, code) ? 1 : 0;
            const auto last =
                background.history.empty()
                    ? std::nullopt
                    : descriptors::stageStep(std::llround(background.history.back().number));
            if (last && *last >= 4) {
                ++planted;
                const auto back = static_cast<double>(stages[*last - 2 - dice() % 3].code);
                const auto found = weigh(background, today, back);
                caught += found && found->doubt == Doubt::StageBackwards ? 1 : 0;
            }
            background.history.push_back({today, code});
        }
    }
    MESSAGE("stages: " << percent(doubted, sound) << " % of sound notes doubted, "
                       << percent(caught, planted) << " % of steps back caught");
    CHECK(percent(doubted, sound) <= 2);
    CHECK(percent(caught, planted) >= 95);
}

TEST_CASE("words, texts and percentages are not compared with anything") {
    Background colour = backgroundOf("berry-colour");
    colour.history = {{day("2025-05-20"), 1}};
    CHECK_FALSE(weigh(colour, day("2026-05-20"), 3).has_value());
    Background caps = backgroundOf("caps-off");
    caps.history = {{day("2026-05-10"), 5}, {day("2026-05-12"), 6}};
    caps.neighbours = {4, 5, 6, 5, 4, 6, 5};
    CHECK_FALSE(weigh(caps, day("2026-05-20"), 95).has_value());
}

} // namespace bullace::walk
