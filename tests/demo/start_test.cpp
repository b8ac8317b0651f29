// What a tablet is given to be tried on: rounds that can be walked, labels that can be read, and
// crosses between vines that stand and can be crossed.
#include "demo/start.hpp"

#include "demo/json_lines.hpp"
#include "demo/station.hpp"

#include "core/descriptors/catalog.hpp"
#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"
#include "core/vineyard/label_code.hpp"
#include "core/walk/round.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace bullace::demo {

namespace {

using Fields = std::map<std::string, Bytes>; // what the office says last of each field

struct Office {
    std::vector<walk::Round> rounds;
    std::map<std::string, Fields> crosses;
    std::map<std::string, Fields> lots;
    std::map<std::string, std::string> labels; // code to position
    std::vector<vineyard::Block> blocks;
    std::size_t labelEntries = 0;
};

Office officeOf(const DemoStation& station) {
    Office office;
    office.blocks = station.orchard.blocks;
    std::map<std::string, walk::Round> rounds;
    for (const journal::Entry& entry : station.journals.front().entries) {
        const auto subject = journal::readSubject(entry.subject);
        const std::string id(subject.id);
        const std::string field(subject.field);
        if (subject.form == journal::SubjectForm::Round) {
            CHECK(walk::setField(rounds[id], field, entry.value));
        } else if (subject.form == journal::SubjectForm::Cross) {
            office.crosses[id][field] = entry.value;
        } else if (subject.form == journal::SubjectForm::Lot) {
            office.lots[id][field] = entry.value;
        } else if (field.starts_with("label-")) {
            const auto code = journal::textOf(entry.value);
            REQUIRE(code.has_value());
            office.labels[std::string(*code)] = id + "-" + field.substr(6);
            ++office.labelEntries;
        }
    }
    for (auto& [id, round] : rounds) {
        office.rounds.push_back(std::move(round));
    }
    return office;
}

std::string text(const Fields& fields, const std::string& field) {
    const auto found = fields.find(field);
    return found == fields.end() ? std::string{}
                                 : std::string(journal::textOf(found->second).value_or(""));
}

const Vine* vineAt(const DemoStation& station, std::string_view position) {
    const auto& vines = station.orchard.vines;
    const auto found = std::find_if(
        vines.begin(), vines.end(), [&](const Vine& vine) { return vine.position == position; });
    return found == vines.end() ? nullptr : &*found;
}

const Accession* accessionCalled(const DemoStation& station, std::string_view id) {
    const auto& all = station.orchard.collection;
    const auto found = std::find_if(
        all.begin(), all.end(), [&](const Accession& accession) { return accession.id == id; });
    return found == all.end() ? nullptr : &*found;
}

bool has(const std::vector<walk::Round>& rounds, bool (*is)(const walk::Round&)) {
    return std::any_of(rounds.begin(), rounds.end(), is);
}

} // namespace

TEST_CASE("each kind of round is planned, and all but the one whose rows are gone can be walked") {
    const Office office = officeOf(makeStation());
    CHECK(office.rounds.size() == 9);
    std::size_t gone = 0;
    for (const walk::Round& round : office.rounds) {
        CAPTURE(round.title);
        CHECK(round.unknownFields.empty());
        CHECK(round.isOpenOn(startDate()));
        REQUIRE(round.by.has_value());
        CHECK(round.by->year() == std::chrono::year(kYears[2]));
        CHECK_FALSE(round.descriptors.empty());
        for (const std::string& code : round.descriptors) {
            CHECK(descriptors::findBuiltIn(code) != nullptr);
        }
        for (const std::int64_t stage : round.stages) {
            CHECK(descriptors::stageStep(stage).has_value());
        }
        const bool isGone = walk::vinesOf(round, office.blocks).empty();
        CHECK(isGone == !walk::goneFromPlan(round, office.blocks).empty());
        gone += isGone ? 1U : 0U;
    }
    CHECK(gone == 1);
    using walk::Round;
    CHECK(has(office.rounds, [](const Round& r) { return r.asksLeast && r.stages.size() == 7; }));
    CHECK(has(office.rounds, [](const Round& r) { return r.isRepeat && r.isBlind; }));
    CHECK(has(office.rounds, [](const Round& r) { return r.isDecision; }));
    CHECK(has(office.rounds, [](const Round& r) { return r.isOnlyWhatStandsOut; }));
    CHECK(has(office.rounds, [](const Round& r) {
        return walk::isListOfVines(r) && r.samples.count("berry-diameter") > 0 &&
               r.samples.at("berry-diameter") == 10 && r.precisionPercent.at("berry-diameter") == 5;
    }));
    CHECK(has(office.rounds, [](const Round& r) {
        return r.descriptors == std::vector<std::string>{"stage", "cross-work"};
    }));
}

TEST_CASE("every place of the plan has a label of its own that can be typed") {
    const DemoStation station = makeStation();
    const Office office = officeOf(station);
    CHECK(office.labelEntries == station.orchard.vines.size());
    std::set<std::string> labelled;
    for (const auto& [code, position] : office.labels) {
        CHECK(vineyard::readLabelCode(code) == code);
        CHECK(vineAt(station, position) != nullptr);
        labelled.insert(position);
    }
    CHECK(labelled.size() == station.orchard.vines.size());
    for (const auto& [id, lot] : office.lots) {
        CHECK(vineyard::readLabelCode(text(lot, "label")).has_value());
        CHECK(office.labels.count(text(lot, "label")) == 0);
    }
}

TEST_CASE(
    "five crosses are planned at vines that bear, with fathers that have pollen, whatever the "
    "seed") {
    for (const std::uint64_t seed : {kDefaultSeed, std::uint64_t{1}, std::uint64_t{2}}) {
        CAPTURE(seed);
        const DemoStation station = makeStation(seed);
        const Office office = officeOf(station);
        CHECK(office.crosses.size() == 5);
        REQUIRE(office.lots.size() == 1);
        std::size_t fromLot = 0;
        std::set<std::string> mothers;
        for (const auto& [id, cross] : office.crosses) {
            CAPTURE(id);
            CHECK_FALSE(text(cross, "number").empty());
            const Vine* const vine = vineAt(station, text(cross, "mother-at"));
            REQUIRE(vine != nullptr);
            const VineSeason& season = vine->seasons[2];
            CHECK(season.bears);
            const Accession& mother = station.orchard.collection[season.accession];
            CHECK(mother.id == text(cross, "mother"));
            CHECK(mother.flowerSex >= 3);
            const Accession* const father = accessionCalled(station, text(cross, "father"));
            REQUIRE(father != nullptr);
            CHECK(father->flowerSex <= 3);
            CHECK(father->id != mother.id);
            mothers.insert(mother.id);
            if (cross.count("pollen-lot") > 0) {
                const auto lot = office.lots.find(text(cross, "pollen-lot"));
                REQUIRE(lot != office.lots.end());
                CHECK(text(lot->second, "kind") == "pollen");
                CHECK(text(lot->second, "accession") == father->id);
                CHECK(vineAt(station, text(lot->second, "from")) != nullptr);
                ++fromLot;
            }
        }
        CHECK(mothers.size() == 5);
        CHECK(fromLot >= 1);
    }
}

TEST_CASE("a tablet is tried on the office's journal and the two seasons before, and on nothing of "
          "the third") {
    const std::string lines = startLines();
    CHECK(startLines() == lines);
    const DemoStation station = makeStation();
    std::size_t expected = 0;
    for (const Journal& journal : station.journals) {
        expected += journal.season == 3 ? 0 : journal.entries.size();
        if (journal.season != 3) {
            CHECK(lines.find(journalLines(journal.entries)) != std::string::npos);
        }
    }
    std::size_t count = 0;
    std::size_t noted = 0;
    std::istringstream in(lines);
    for (std::string line; std::getline(in, line); ++count) {
        const bool isNoted = line.find("\"subject\":\"obs/") != std::string::npos;
        noted += isNoted ? 1U : 0U;
        CHECK_FALSE((isNoted && line.find("/2025-") != std::string::npos));
    }
    CHECK(count == expected);
    CHECK(noted > 1000);
    CHECK(startDate() > *readDate("2025-05-01"));
    CHECK(startDate() < *readDate("2025-05-20"));
}

} // namespace bullace::demo
