// What the bench's journal holds, whatever the seed; and curves that are the same everywhere.
#include "demo/bench_work.hpp"
#include "demo/portable_curves.hpp"
#include "demo/station.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>

namespace bullace::demo {

namespace {

const std::vector<journal::Entry>& benchOf(const DemoStation& station) {
    const auto found =
        std::find_if(station.journals.begin(), station.journals.end(), [](const Journal& journal) {
            return journal.file == "bench.jsonl";
        });
    REQUIRE(found != station.journals.end());
    return found->entries;
}

} // namespace

TEST_CASE("the portable curves are those of the mathematical library to nine digits") {
    for (double x = -30; x <= 30; x += 0.37) {
        CAPTURE(x);
        CHECK(std::abs(exponential(x) / std::exp(x) - 1) < 1e-9);
        CHECK(std::abs(logistic(x) - 1 / (1 + std::exp(-x))) < 1e-9);
        const double angle = 2 * 3.141592653589793 * x * 40 / 365.25;
        CHECK(std::abs(yearlyCosine(x * 40) - std::cos(angle)) < 1e-9);
    }
    CHECK(logistic(-1000) == 0);
    CHECK(logistic(1000) == 1);
    CHECK(exponential(0) == 1);
}

TEST_CASE("eight accessions are tested in two winters, six juices are kept and sixty shoots are "
          "tagged, whatever the seed") {
    for (const std::uint64_t seed : {kDefaultSeed, std::uint64_t{1}, std::uint64_t{2}}) {
        CAPTURE(seed);
        const DemoStation station = makeStation(seed);
        const BenchTruth& truth = station.truth.bench;
        CHECK(truth.hardiness.size() == 16);
        CHECK(truth.freeze.positions.size() == 32);
        CHECK(truth.freeze.lowestC < -10);
        CHECK(truth.juices.size() == 6);
        CHECK(truth.shoots.size() == 60);
        CHECK(truth.cordonsCm.size() > 140);
        CHECK(truth.unverified.size() == 9);
        CHECK_FALSE(truth.hybrid.empty());
        for (const FrostHardiness& one : truth.hardiness) {
            // Tenderer where V. popenoei is in it, within what has been seen of buds.
            CHECK(one.lt50C > -24);
            CHECK(one.lt50C < -8);
        }
        for (const JuiceColour& juice : truth.juices) {
            const double halfLife = std::log(2.0) / juice.redPerDay;
            CHECK(halfLife > 39.9);
            CHECK(halfLife < 200.1);
            CHECK(station.orchard.collection[juice.accession].berryColour != "bronze");
        }
        CHECK(benchOf(station).size() < 9000);
    }
}

TEST_CASE("every lot that is noted on is a lot of the catalogue, and comes from an accession") {
    const DemoStation station = makeStation();
    std::map<std::string, std::set<std::string>> fields;
    std::set<std::string> notedOn;
    for (const journal::Entry& entry : benchOf(station)) {
        const auto subject = journal::readSubject(entry.subject);
        if (subject.form == journal::SubjectForm::Lot) {
            fields[std::string(subject.id)].emplace(subject.field);
        } else if (subject.isLot()) {
            notedOn.emplace(subject.id.substr(4));
        }
    }
    CHECK(notedOn.size() == 16 + 18);
    for (const std::string& lot : notedOn) {
        CAPTURE(lot);
        CHECK(fields[lot] == std::set<std::string>{"date", "from", "kind"});
    }
}

TEST_CASE("the weather has each day once with its least below its greatest, but for the gap") {
    const DemoStation station = makeStation();
    const FieldWeather& truth = station.truth.bench.weather;
    std::map<std::string, std::map<std::string, double>> days;
    for (const journal::Entry& entry : benchOf(station)) {
        const auto subject = journal::readSubject(entry.subject);
        if (subject.form == journal::SubjectForm::Weather) {
            const auto number = journal::numberOf(entry.value);
            REQUIRE(number.has_value());
            const bool isNew =
                days[std::string(subject.date)].emplace(subject.field, *number).second;
            CHECK(isNew);
        }
    }
    std::size_t missing = 0;
    for (CivilDate date = truth.from; date <= truth.to; date = addDays(date, 1)) {
        const auto found = days.find(writeDate(date));
        const bool isInGap = date >= truth.gapFrom && date <= truth.gapTo;
        CHECK((found == days.end()) == isInGap);
        missing += isInGap ? 1U : 0U;
        if (found != days.end()) {
            CHECK(found->second.at("TMIN") < found->second.at("TMAX"));
            CHECK(found->second.at("TMIN") > -20);
            CHECK(found->second.at("TMAX") < 45);
            CHECK(found->second.contains("PRCP") == (date.year() == std::chrono::year(2025)));
        }
    }
    CHECK(missing == 6);
}

TEST_CASE("the office has verified the cultivars and most wild accessions, three of each species "
          "not") {
    const DemoStation station = makeStation();
    std::set<std::string> verified;
    for (const journal::Entry& entry : station.journals.front().entries) {
        const auto subject = journal::readSubject(entry.subject);
        if (subject.form == journal::SubjectForm::Accession && subject.field == "verified") {
            verified.emplace(subject.id);
        }
    }
    std::map<std::string, int> left;
    for (const Accession& accession : station.orchard.collection) {
        const bool isPure =
            accession.status == Status::Wild || accession.status == Status::Cultivar;
        CHECK((isPure || !verified.contains(accession.id)));
        left[taxonOf(accession)] += isPure && !verified.contains(accession.id) ? 1 : 0;
    }
    CHECK(left["Vitis rotundifolia"] == 3);
    CHECK(left["Vitis munsoniana"] == 3);
    CHECK(left["Vitis popenoei"] == 3);
}

} // namespace bullace::demo
