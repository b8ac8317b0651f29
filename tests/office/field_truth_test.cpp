// What was noted on the demo's walks gives back what its vines were really like: when accessions
// flower beside a reference, how large their berries are, and what taxon the unnamed ones are of.
#include "core/fruit/identity.hpp"
#include "core/fruit/variation.hpp"
#include "core/season/onset_comparison.hpp"
#include "core/season/vine_seasons.hpp"
#include "core/weather/degree_days.hpp"
#include "core/weather/frosts.hpp"
#include "core/weather/weather_days.hpp"
#include "support/demo_notes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

using namespace bullace;
using test::Coverage;
using test::holds;

namespace {

const season::StationNotes& notes() {
    return test::demoNotes();
}
const demo::Orchard& orchard() {
    return test::demoStation().orchard;
}
const demo::BenchTruth& truth() {
    return test::demoStation().truth.bench;
}

std::size_t notedAs(std::size_t accession) {
    const auto at = notes().accession(orchard().collection[accession].id);
    REQUIRE(at.has_value());
    return *at;
}

// Full bloom: half of the caps are off. The generator's vines reach code 65, and 50 %, on their
// bloomDay, and are not there on the day before.
const season::StageQuestion kFullBloom{65, 50};

// By accession of the notes.
std::map<std::size_t, std::vector<season::YearOnset>> bloomOnsets() {
    std::map<std::pair<std::uint32_t, int>, season::VineReadings> vines;
    for (const auto& [code, kind] : {std::pair("stage", season::StageReading::Kind::Stage),
                                     std::pair("caps-off", season::StageReading::Kind::Percent)}) {
        for (const season::NumberNote& note : notes().notesOf(code).numbers) {
            const CivilDate day = season::dateOfDay(note.day);
            const int year = static_cast<int>(day.year());
            season::VineReadings& vine = vines[{note.vine, year}];
            vine.year = year;
            for (const double value : {note.low, note.high}) {
                vine.readings.push_back({day, kind, value, season::Organs::MostAdvanced});
            }
        }
    }
    std::map<std::size_t, std::vector<season::YearOnset>> onsets;
    for (const auto& [key, vine] : vines) {
        const season::VineOnset onset = season::onsetOf(vine.readings, kFullBloom, vine.year);
        onsets[notes().vines[key.first].accession].push_back({vine.year, onset.days});
    }
    return onsets;
}

// Samples of the third season at each vine of an accession.
std::map<std::size_t, std::map<std::uint32_t, std::vector<double>>>
samplesOf(std::string_view descriptor) {
    std::map<std::size_t, std::map<std::uint32_t, std::vector<double>>> samples;
    for (const season::NumberNote& note : notes().notesOf(descriptor).numbers) {
        if (static_cast<int>(season::dateOfDay(note.day).year()) == demo::kYears.back()) {
            samples[notes().vines[note.vine].accession][note.vine].push_back(note.value);
        }
    }
    return samples;
}

constexpr std::array kCharacters{fruit::kBerriesPerCluster,
                                 fruit::kBerryDiameter,
                                 fruit::kSeedLength,
                                 fruit::kSkin,
                                 fruit::kChromosomes};

// From wild accessions alone: cultivars have been bred for large berries.
std::vector<fruit::TaxonProfile> stationProfiles() {
    std::set<std::string> wild;
    for (const demo::Accession& accession : orchard().collection) {
        if (accession.status == demo::Status::Wild) {
            wild.insert(accession.id);
        }
    }
    std::map<std::size_t, fruit::VerifiedAccession> verified;
    for (const std::string_view character : kCharacters) {
        for (const auto& [accession, vines] : samplesOf(character)) {
            const season::NotedAccession& noted = notes().accessions[accession];
            if (!noted.isVerified || !wild.contains(noted.id)) {
                continue;
            }
            verified[accession].taxon = noted.taxon;
            for (const auto& [vine, values] : vines) {
                verified[accession].vines[std::string(character)].push_back(values);
            }
        }
    }
    std::vector<fruit::VerifiedAccession> all;
    for (auto& [accession, one] : verified) {
        all.push_back(std::move(one));
    }
    return fruit::profilesWith(all);
}

fruit::Identity identityOf(const std::vector<fruit::TaxonProfile>& profiles, std::size_t noted) {
    fruit::VineValues values;
    for (const std::string_view character : kCharacters) {
        const auto samples = samplesOf(character);
        const auto found = samples.find(noted);
        if (found == samples.end()) {
            continue;
        }
        for (const auto& [vine, of] : found->second) {
            auto& all = values[std::string(character)];
            all.insert(all.end(), of.begin(), of.end());
        }
    }
    return fruit::identify(profiles, values);
}

} // namespace

TEST_CASE(
    "how much earlier or later an accession flowers than a reference is as its nature has it") {
    const auto onsets = bloomOnsets();
    Coverage coverage;
    // Three references, so that one unlucky one does not decide.
    for (const std::size_t reference : {std::size_t{21}, std::size_t{25}, std::size_t{31}}) {
        for (std::size_t i = 0; i < orchard().collection.size(); ++i) {
            const auto of = onsets.find(notedAs(i));
            if (i == reference || of == onsets.end()) {
                continue;
            }
            const auto told = season::differenceTo(of->second, onsets.at(notedAs(reference)));
            REQUIRE(told.ok());
            if (!told->difference || !told->difference->interval) {
                CHECK_FALSE(told->remarks.empty());
                continue;
            }
            const int days = orchard().collection[i].nature.bloomDay -
                             orchard().collection[reference].nature.bloomDay;
            CAPTURE(orchard().collection[i].id);
            coverage.add(holds(told->difference->interval, days));
        }
    }
    MESSAGE("offsets of bloom held: ", coverage.held, " of ", coverage.of);
    CHECK(coverage.of > 60);
    CHECK(coverage.share() >= 0.9);
}

TEST_CASE("the mean diameter of an accession's berries is as its nature has it") {
    const auto samples = samplesOf("berry-diameter");
    Coverage coverage;
    for (std::size_t i = 0; i < orchard().collection.size(); ++i) {
        const auto of = samples.find(notedAs(i));
        if (of == samples.end()) {
            continue;
        }
        fruit::AccessionVines vines;
        for (const auto& [vine, values] : of->second) {
            vines.push_back(values);
        }
        const auto summary = fruit::summaryOfVines(vines);
        REQUIRE(summary.has_value());
        CAPTURE(orchard().collection[i].id);
        if (!summary->interval) {
            CHECK(vines.size() == 1);
            continue;
        }
        coverage.add(holds(summary->interval, orchard().collection[i].nature.diameterMm));
    }
    MESSAGE("diameters held: ", coverage.held, " of ", coverage.of);
    CHECK(coverage.of > 30);
    CHECK(coverage.share() >= 0.9);
}

TEST_CASE("wild accessions that nobody has named are told by their fruit, and no taxon is told "
          "where there is none to tell") {
    const auto profiles = stationProfiles();
    std::size_t decided = 0;
    std::size_t fruiting = 0;
    CHECK(truth().unverified.size() == 9);
    for (const std::size_t at : truth().unverified) {
        const demo::Accession& accession = orchard().collection[at];
        CAPTURE(accession.id);
        CHECK_FALSE(notes().accessions[notedAs(at)].isVerified);
        const fruit::Identity identity = identityOf(profiles, notedAs(at));
        if (accession.isMale() || accession.isOf(2)) {
            // No fruit, or of a taxon that is known neither from books nor from enough vines.
            CHECK(identity.verdict != fruit::Verdict::Decided);
            continue;
        }
        REQUIRE(identity.leading.has_value());
        CHECK(profiles[*identity.leading].taxon == demo::taxonOf(accession));
        // One in twenty is unusual for its own taxon, and is then left undecided.
        const bool isDecided = identity.verdict == fruit::Verdict::Decided;
        CHECK((isDecided || !identity.isUsual));
        CHECK(identity.verdict != fruit::Verdict::Contradictory);
        decided += isDecided ? 1U : 0U;
        ++fruiting;
    }
    MESSAGE("wild accessions decided, all rightly: ", decided, " of ", fruiting);
    CHECK(fruiting == 4);
    CHECK(decided >= 3);
}

TEST_CASE("a vine with 39 chromosomes is a hybrid, whatever its fruit") {
    const auto profiles = stationProfiles();
    for (const season::NumberNote& note : notes().notesOf("chromosomes").numbers) {
        const season::NotedVine& vine = notes().vines[note.vine];
        const bool isHybrid = vine.position == truth().hybrid;
        CHECK(note.value == (isHybrid ? 39 : 40));
        const auto verdict = identityOf(profiles, vine.accession).verdict;
        CHECK((verdict == fruit::Verdict::Hybrid) == isHybrid);
    }
    CHECK(notes().notesOf("chromosomes").numbers.size() == 7);
}

TEST_CASE("the weather's gap is named, its freezes are found, and each season bloomed at the same "
          "sum of heat") {
    const demo::FieldWeather& weather = truth().weather;
    const auto& record = notes().weather.at(weather.site);
    const auto all = weather::daysOf(record, {weather.from, weather.to});
    REQUIRE(all.gaps.size() == 1);
    CHECK(all.gaps.front().first == weather.gapFrom);
    CHECK(all.gaps.front().last == weather.gapTo);
    CHECK(all.reversed.empty());
    const auto freezes = weather::freezesOf(record, {weather.from, weather.to}, -10);
    for (const auto& [date, lowest] : weather.freezes) {
        CHECK(std::any_of(freezes.begin(), freezes.end(), [&](const weather::Freeze& freeze) {
            return freeze.first <= date && date <= freeze.last && freeze.lowest <= lowest;
        }));
    }
    CHECK(freezes.size() >= 4);
    for (std::size_t season = 0; season < demo::kYears.size(); ++season) {
        double sum = 0;
        double vines = 0;
        for (const demo::Vine& vine : orchard().vines) {
            if (vine.seasons[season].stands) {
                sum += vine.seasons[season].bloomDay;
                vines += 1;
            }
        }
        const int year = demo::kYears[season];
        const CivilDate bloom = season::dateOfSeason(sum / vines, year);
        const CivilDate first = std::chrono::year(year) /
                                std::chrono::month(weather.heatFromMonth) / std::chrono::day(1);
        const auto spring = weather::daysOf(record, {first, bloom});
        const auto heat = weather::heatSum(
            weather::DegreeDayMethod::MeanClamped, spring.days, {weather.heatBaseC, {}});
        REQUIRE((heat.ok() && heat->gaps.empty()));
        CAPTURE(year);
        // Within the tenths of a degree that are written down.
        CHECK(std::abs(heat->days.back().sum - weather.heatToBloom) < 5);
    }
}
