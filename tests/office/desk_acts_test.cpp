// What the office does to many things at once: bulk settling, rules, runs of vines, corrections;
// and what its search finds.
#include "office/bulk.hpp"
#include "office/case_file.hpp"
#include "office/collection.hpp"
#include "office/overruled.hpp"
#include "office/rule_desk.hpp"
#include "office/search_index.hpp"
#include "office/settling.hpp"
#include "office/vine_file.hpp"

#include "core/journal/json_value.hpp"
#include "store/read_catalogue.hpp"
#include "support/desk_stations.hpp"
#include "support/fixed_clock.hpp"

#include <algorithm>
#include <set>

using namespace bullace;
using namespace bullace::office;
using namespace bullace::test;

namespace {

constexpr const char* kOne = "t0000000000000001.1";
constexpr const char* kTwo = "t0000000000000002.1";

std::string clusters(int vine) {
    return "obs/B2-01-" + std::string(vine < 10 ? "0" : "") + std::to_string(vine) +
           "/2026-05-11/clusters";
}

// Twelve vines of a row, each counted by two people, `apart` from one another; the second an hour
// later.
std::string countedTwice(int apart) {
    std::string lines =
        lineOf({"s00000000000000ff.1", 1, "hq", "catalog", "block/B2/rows", "[[1,20]]"}) +
        lineOf(
            {"s00000000000000ff.1", 2, "hq", "catalog", "accession/A1/name", R"("Brindlecap")"}) +
        lineOf({"s00000000000000ff.1", 3, "hq", "catalog", "accession/A1/mother", R"("A8")"});
    for (int vine = 1; vine <= 12; ++vine) {
        lines += lineOf({kOne, vine, "im", "observe", clusters(vine), std::to_string(100 + vine)});
        lines += lineOf({kTwo,
                         vine,
                         "tf",
                         "observe",
                         clusters(vine),
                         std::to_string(100 + vine + apart),
                         "[]",
                         1'778'576'400'000});
    }
    return lines;
}

struct Room {
    explicit Room(const std::string& lines) {
        const std::string path = folder.file("station.db");
        makeStationFile(path, lines);
        auto opened = store::Database::open(path, true, store::fileSurroundings());
        REQUIRE(opened.ok());
        database = std::move(*opened);
        reread();
    }
    void reread() {
        auto read = store::readCatalogue(*database);
        REQUIRE(read.ok());
        catalogue = std::move(*read);
    }
    void write(const Result<Act>& act) {
        INFO((act ? std::string{} : act.error().message));
        REQUIRE(act.ok());
        REQUIRE(perform(*database, *act, clock).ok());
        reread();
    }
    std::string at(const std::string& subject) {
        const auto row = database->state(subject);
        REQUIRE(row.ok());
        return *row ? std::string(merge::stateWord((*row)->state)) + " " + (*row)->valueJson
                    : std::string{};
    }

    TempFolder folder;
    std::unique_ptr<store::Database> database;
    std::unique_ptr<vineyard::Catalogue> catalogue;
    FixedClock clock;
};

std::vector<BulkOutcome> outcomesOf(Room& room, Pick pick) {
    Condition condition;
    condition.cause = Cause::Apart;
    condition.descriptor = "clusters";
    condition.pick = pick;
    auto outcomes = bulkOutcomes(*room.database, condition, {});
    REQUIRE(outcomes.ok());
    return *outcomes;
}

} // namespace

TEST_CASE("a condition decides each conflict as it says, and all of them as one act that is undone "
          "whole") {
    for (const auto& [pick, first] : {std::pair{Pick::Later, "settled 141"},
                                      std::pair{Pick::Greatest, "settled 141"},
                                      std::pair{Pick::Least, "settled 101"},
                                      std::pair{Pick::Mean, "settled 121"}}) {
        Room room(countedTwice(40));
        const auto outcomes = outcomesOf(room, pick);
        REQUIRE(outcomes.size() == 12);
        room.write(bulkAct(*room.database, outcomes, {}, {"ed", "the condition's words"}));
        CHECK(room.at(clusters(1)) == first);
        CHECK(room.database->counts()->open == 0);
        REQUIRE(undoLast(*room.database, "ed", room.clock).ok());
        CHECK(room.database->counts()->open == 12);
    }
}

TEST_CASE("a condition leaves open what it cannot decide, and names only what it is asked for") {
    Room room(countedTwice(40));
    const auto photographed = outcomesOf(room, Pick::Photographed);
    REQUIRE(photographed.size() == 12);
    CHECK(std::all_of(photographed.begin(), photographed.end(), [](const auto& outcome) {
        return outcome.taken.empty();
    }));
    CHECK_FALSE(bulkAct(*room.database, photographed, {}, {"ed", "why"}).ok());
    Condition narrow;
    narrow.cause = Cause::Apart;
    narrow.mostApart = 39;
    CHECK(bulkOutcomes(*room.database, narrow, {})->empty());
    narrow.mostApart.reset();
    narrow.block = "B3";
    CHECK(bulkOutcomes(*room.database, narrow, {})->empty());
    narrow.block.clear();
    narrow.authors = {"im", "wo"};
    CHECK(bulkOutcomes(*room.database, narrow, {})->empty());
    narrow.authors = {"im", "tf"};
    CHECK(bulkOutcomes(*room.database, narrow, {})->size() == 12);
}

TEST_CASE("five are drawn for deciding by hand, each once, others with another seed") {
    Room room(countedTwice(40));
    const auto outcomes = outcomesOf(room, Pick::Later);
    const auto drawn = byHandFirst(outcomes, 7);
    CHECK(drawn.size() == kByHandFirst);
    CHECK(std::set(drawn.begin(), drawn.end()).size() == kByHandFirst);
    CHECK(drawn == byHandFirst(outcomes, 7));
    CHECK(drawn != byHandFirst(outcomes, 8));
}

TEST_CASE("both kept as samples: the observation is no value, its samples are both") {
    Room room(countedTwice(40));
    const auto outcomes = outcomesOf(room, Pick::Samples);
    room.write(bulkAct(*room.database, outcomes, {}, {"ed", "two counts"}));
    CHECK(room.at(clusters(1)) == "retracted ");
    std::multiset<std::string> samples;
    REQUIRE(room.database
                ->eachState(clusters(1),
                            [&](const store::StateRow& row) {
                                if (row.subject != clusters(1)) {
                                    samples.insert(row.valueJson);
                                }
                                return true;
                            })
                .ok());
    CHECK(samples == std::multiset<std::string>{"101", "141"});
}

TEST_CASE("what a rule would settle and open is what it does settle and open once it is saved") {
    Room room(countedTwice(40));
    const auto value = ruleValue({"B2-01-*", "2026-01-01", "", "clusters", "greatest", ""});
    REQUIRE(value.ok());
    const std::vector<RuleChange> change{{10, *value, {}}};
    const auto preview = previewRules(*room.database, change, {});
    REQUIRE(preview.ok());
    CHECK(preview->contested == 12);
    CHECK(preview->becomeSettled == 12);
    CHECK(preview->becomeOpen == 0);
    CHECK(preview->sample.size() == 12);
    CHECK(room.database->counts()->open == 12); // nothing was written
    room.write(ruleAct(change, "ed", "the later round counted more"));
    CHECK(room.database->counts()->open == 0);
    CHECK(room.at(clusters(1)) == "ruled 141");
    const auto rules = readRules(*room.database);
    REQUIRE(rules->size() == 1);
    CHECK(rules->front().draft.rule == "greatest");
    const auto away = previewRules(*room.database, {{10, {}, rules->front().heads}}, {});
    CHECK(away->becomeOpen == 12);
}

TEST_CASE("a rule that cannot be is refused by the field that is wrong") {
    const auto refused = [](const RuleDraft& draft, const char* field) {
        const auto value = ruleValue(draft);
        return !value.ok() && value.error().message.starts_with(field);
    };
    CHECK(refused({"B2-7-*", "", "", "", "mean", ""}, "Where"));
    CHECK(refused({"", "2026-02-30", "", "", "mean", ""}, "From"));
    CHECK(refused({"", "2026-05-01", "2026-04-01", "", "mean", ""}, "To"));
    CHECK(refused({"", "", "", "", "newest", ""}, "Rule"));
    CHECK(refused({"", "", "", "", "mean", "much"}, "Within"));
    CHECK(ruleValue({"", "", "", "", "mean", "5 %"}).ok());
}

TEST_CASE("a run is planted with a family in one act, each vine an accession of its own") {
    Room room(countedTwice(40));
    room.write(plantRun(*room.database,
                        *room.catalogue,
                        {"B2-01-03", "B2-01-05", "A1", true, *readDate("2026-03-01")},
                        "ed",
                        "planted"));
    CHECK(room.catalogue->accessionAt("B2-01-04", *readDate("2026-05-11")) == "A1-2");
    CHECK(room.at("accession/A1-2/mother") == R"(settled "A8")");
    CHECK(room.at("accession/A1-2/status") == R"(settled "seedling")");
    room.write(removeRun(*room.database,
                         *room.catalogue,
                         "B2-01-03",
                         "B2-01-04",
                         *readDate("2026-06-30"),
                         "ed",
                         "died"));
    CHECK(room.catalogue->accessionAt("B2-01-04", *readDate("2026-06-30")) == "A1-2");
    CHECK(room.catalogue->accessionAt("B2-01-04", *readDate("2026-07-01")).empty());
    CHECK(room.catalogue->accessionAt("B2-01-05", *readDate("2026-07-01")) == "A1-3");
    CHECK_FALSE(plantRun(*room.database,
                         *room.catalogue,
                         {"B2-01-19", "B2-01-21", "A1", false, *readDate("2026-03-01")},
                         "ed",
                         "")
                    .ok());
}

TEST_CASE("a renumbered vine keeps all that was noted of it under its older name") {
    Room room(countedTwice(40));
    room.write(plantRun(*room.database,
                        *room.catalogue,
                        {"B2-01-10", "B2-01-12", "A1", false, *readDate("2020-03-01")},
                        "ed",
                        ""));
    CHECK_FALSE(renumberRun(*room.database,
                            *room.catalogue,
                            "B2-01-10",
                            "B2-01-11",
                            1,
                            *readDate("2026-06-01"),
                            "ed",
                            "")
                    .ok()); // 12 is another vine's
    room.write(renumberRun(*room.database,
                           *room.catalogue,
                           "B2-01-10",
                           "B2-01-12",
                           2,
                           *readDate("2026-06-01"),
                           "ed",
                           ""));
    const auto file =
        readVine(*room.database, *room.catalogue, "B2-01-12", *readDate("2026-07-01"));
    REQUIRE(file.ok());
    CHECK(file->accession == "A1");
    REQUIRE(file->values.size() == 1);
    CHECK(file->values.front().subject == clusters(10));
}

TEST_CASE("a value is put right over what stands, and its history tells who, what and why") {
    Room room(lineOf({kOne, 1, "im", "observe", clusters(1), "101"}));
    const auto before = readHistory(*room.database, clusters(1));
    CHECK_FALSE(correct(*before, journal::integerValue(110), {}, "ed", "").ok());
    room.write(correct(*before, journal::integerValue(110), {}, "ed", "counted from the photo"));
    CHECK(room.at(clusters(1)) == "settled 110");
    const auto history = readHistory(*room.database, clusters(1));
    REQUIRE(history->lines.size() == 2);
    CHECK(history->lines[0].isHead);
    CHECK(history->lines[0].entry.why == "counted from the photo");
    CHECK_FALSE(history->lines[1].isHead);
    CHECK(history->lines[1].replacedBy == std::vector{history->lines[0].entry.place});
    // Over what was on the screen: the older history is refused by now.
    const auto late = correct(*before, journal::integerValue(99), {}, "ed", "late");
    REQUIRE(late.ok());
    const auto written = perform(*room.database, *late, room.clock);
    REQUIRE_FALSE(written.ok());
    CHECK(written.error().code == ErrorCode::Outdated);
    REQUIRE(undoLast(*room.database, "ed", room.clock).ok());
    CHECK(room.at(clusters(1)) == "settled 101");
    CHECK(readHistory(*room.database, clusters(1))->lines[1].isUndone);
}

TEST_CASE(
    "one line finds a position, an accession by name, and the words of a note, accents aside") {
    Room room(countedTwice(40) + lineOf({"t0000000000000003.1",
                                         1,
                                         "wo",
                                         "observe",
                                         "obs/B2-01-07/2026-05-11/note",
                                         R"("Hojas púrpura y zarcillos")"}));
    const auto index =
        SearchIndex::build(*room.database, *room.catalogue, *readDate("2026-05-12"), {});
    REQUIRE(index.ok());
    const auto first = [&](const char* query) {
        const auto found = index->find(query, 10);
        return found.empty() ? std::string{} : found.front().id;
    };
    CHECK(first("b2-01-07") == "B2-01-07");
    CHECK(first("brindle") == "A1");
    CHECK(first("purpura hojas") == "B2-01-07");
    CHECK(index->find("PÚRPURA", 10).front().kind == FoundKind::Note);
    CHECK(index->find("nothing of this", 10).empty());
    CHECK(index->find("", 10).empty());
    CHECK(index->find("b2", 5).size() == 5);
}

TEST_CASE("how often people decided otherwise than a rule would have is counted by the rule") {
    // Five apart of about a hundred lie within the descriptor's five percent: the rule takes means.
    Room room(countedTwice(2));
    const auto read = [&room] {
        const auto counts = readOverruled(*room.database, {});
        REQUIRE(counts.ok());
        const auto found = counts->find(ruleOf({}, "clusters"));
        return found == counts->end() ? Overruled{} : found->second;
    };
    CHECK(read().proposals == 12);
    CHECK(read().overruled == 0);
    const auto rule = [&room](int vine, const char* value) {
        const auto file = readCase(*room.database, *room.catalogue, clusters(vine));
        REQUIRE(file.ok());
        room.write(ruleFor(*room.catalogue,
                           *file,
                           journal::numberValue(std::stod(value)),
                           {"ed", "knows the vine"}));
    };
    rule(1, "90");  // not what the mean of 101 and 103 is
    rule(2, "103"); // the mean of 102 and 104
    CHECK(read().proposals == 12);
    CHECK(read().overruled == 1);
    REQUIRE(undoLast(*room.database, "ed", room.clock).ok());
    REQUIRE(undoLast(*room.database, "ed", room.clock).ok());
    CHECK(read().proposals == 12);
    CHECK(read().overruled == 0);
}
