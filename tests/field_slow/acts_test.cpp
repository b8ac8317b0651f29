// Whatever a person does on a walk, in whatever order: undo gives back what was, a restart changes
// nothing, and the screen shows what the journal says.
#include "core/journal/subject.hpp"
#include "support/field_books.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <rapidcheck.h>
#include <set>
#include <string>
#include <vector>

using namespace bullace;
using namespace bullace::test;

namespace {

using Fields = std::vector<std::pair<std::string, std::string>>;

constexpr const char* kChosenVines = R"(["B2-01-02","B2-01-04","B2-02-03"])";

// Rounds of every kind, over two rows of five vines.
const std::vector<Fields>& kindsOfRound() {
    static const std::vector<Fields> kinds{
        {{"descriptors", R"(["stage","vigour"])"}, {"least", "true"}},
        {{"descriptors", R"(["clusters"])"}},
        {{"descriptors", R"(["berry-diameter","vigour"])"}, {"samples", R"({"berry-diameter":3})"}},
        {{"descriptors", R"(["rot","vigour"])"}, {"only-what-stands-out", "true"}},
        {{"descriptors", R"(["clusters"])"}, {"both-sides", "true"}},
        {{"descriptors", R"(["vigour"])"}, {"repeat", "true"}, {"blind", "true"}},
        {{"descriptors", R"(["vigour","clusters"])"}, {"order", R"("one-way")"}},
        {{"descriptors", R"(["clusters","verdict"])"}, {"where", kChosenVines}}};
    return kinds;
}

void plan(Book& tablet, const Fields& round) {
    Fields says{{"block/B2/rows", "[[1,5],[2,5]]"}, {"round/r1/title", R"("Any walk")"}};
    bool isList = false;
    for (const auto& [field, json] : round) {
        says.emplace_back("round/r1/" + field, json);
        isList = isList || field == "where";
    }
    if (!isList) {
        says.emplace_back("round/r1/where", R"(["B2-*"])");
    }
    tablet.office(says);
}

Bytes valueFor(const std::string& descriptor, std::uint32_t choice) {
    if (descriptor.starts_with("stage")) {
        constexpr std::array<std::int64_t, 4> kStages{57, 61, 65, 69};
        return journal::integerValue(kStages[choice % kStages.size()]);
    }
    if (descriptor == "berry-diameter") {
        return journal::numberValue(10 + choice % 200 / 10.0);
    }
    if (descriptor == "verdict") {
        return journal::textValue(choice % 2 == 0 ? "pull" : "take-on");
    }
    return journal::integerValue(choice % 9 + 1);
}

// What a value looks like on the sheet, with the stop at which it stands.
std::string sheetLine(const field::Walk& walk, std::size_t stop, const field::NotedValue& noted) {
    const walk::Stop& place = walk.plan().stops[stop];
    return noted.subject + " " + journal::valueToJson(noted.value) + " " + noted.as.value_or("") +
           " at " + place.position + std::string(field::sideWords(place.side)) + "\n";
}

std::multiset<std::string> sheetOf(const field::Walk& walk) {
    std::multiset<std::string> lines;
    for (std::size_t stop = 0; stop < walk.plan().stops.size(); ++stop) {
        for (const field::NotedValue& noted : walk.sheet().all(stop)) {
            lines.insert(sheetLine(walk, stop, noted));
        }
    }
    return lines;
}

bool isOfWalk(const store::Database& database,
              const field::WalkPlan& plan,
              const journal::Place& place) {
    return place.origin.device == database.about().own.device &&
           std::none_of(plan.before.begin(), plan.before.end(), [&](const auto& end) {
               return end.origin == place.origin && place.seq <= end.seq;
           });
}

// The same, from the heads of the journal alone.
std::multiset<std::string> journalOf(field::FieldBook& book) {
    const field::WalkPlan& plan = book.walk()->plan();
    const bool hasSides =
        std::any_of(plan.stops.begin(), plan.stops.end(), [](const walk::Stop& stop) {
            return stop.side != walk::Side::Whole;
        });
    std::vector<std::string> subjects;
    REQUIRE(book.database()
                .eachState("obs",
                           [&](const store::StateRow& row) {
                               subjects.push_back(row.subject);
                               return true;
                           })
                .ok());
    std::multiset<std::string> lines;
    for (const std::string& text : subjects) {
        const journal::Subject subject = journal::readSubject(text);
        const auto heads = book.database().heads(text);
        REQUIRE(heads.ok());
        for (const store::HeadRow& head : *heads) {
            const auto entry = journal::readEntry(head.entry);
            REQUIRE(entry.ok());
            if (entry->isNull() || subject.date != writeDate(plan.date) ||
                !isOfWalk(book.database(), plan, head.place)) {
                continue;
            }
            lines.insert(text + " " + journal::valueToJson(entry->value) + " " +
                         std::string(entry->as.value_or("")) + " at " + std::string(subject.id) +
                         (hasSides ? std::string(entry->why.value_or("")) : "") + "\n");
        }
    }
    return lines;
}

std::string footingWords(const field::Footing& footing) {
    return std::to_string(footing.stop) + "," + std::to_string(footing.ask) + "," +
           std::to_string(footing.front) + (footing.isAtRowEnd ? " at the end" : "");
}

// Which of the stops are done, as the row's end counts them.
std::string doneWords(const field::Walk& walk) {
    std::string words;
    for (std::size_t stop = 0; stop < walk.plan().stops.size(); ++stop) {
        words += walk.isDone(stop) ? '1' : '0';
    }
    return words;
}

// One person who does what the numbers say, and checks after each act what must hold.
class Person {
public:
    explicit Person(std::uint32_t kind) {
        const auto& kinds = kindsOfRound();
        plan(tablet_, kinds[kind % kinds.size()]);
        // Somebody else was there before, and noted one vine today.
        std::istringstream others(
            R"({"origin":"t00000000000000aa.1","seq":1,"count":1,"author":"tf","kind":"observe","subject":"obs/B2-01-02/2026-05-12/vigour","value":4,"over":[]})"
            "\n"
            R"({"origin":"t00000000000000aa.1","seq":2,"count":2,"author":"tf","kind":"observe","subject":"obs/B2-01-03/2025-06-12/clusters","value":90,"over":[]})"
            "\n");
        REQUIRE(tablet_->database().importLines(others, "others", {}).ok());
        tablet_.begin();
        start_ = tablet_.observations();
    }

    void act(std::uint32_t word) {
        const std::string before = tablet_.observations();
        const std::string footing = footingWords(walk().footing());
        const std::uint64_t entries = tablet_->ownEntries();
        const bool isUndo = word % kActs == 0;
        const Status done = isUndo ? undo() : turn(word % kActs, word / kActs);
        if (!done) {
            RC_ASSERT(tablet_.observations() == before);
            RC_ASSERT(footingWords(walk().footing()) == footing);
            RC_ASSERT(tablet_->ownEntries() == entries);
        }
        if (!isUndo && tablet_->ownEntries() > entries) {
            earlier_.push_back(before);
        }
        RC_ASSERT(sheetOf(walk()) == journalOf(*tablet_));
    }

    // After it the journal holds all of the acts and their undoing, and says what it said at first.
    void undoAll() {
        while (!earlier_.empty()) {
            RC_ASSERT(undo().ok());
        }
        const auto nothing = walk().undo();
        RC_ASSERT((nothing.ok() && !nothing->has_value()));
        RC_ASSERT(tablet_.observations() == start_);
        RC_ASSERT(sheetOf(walk()).empty());
    }

private:
    static constexpr std::uint32_t kActs = 14;

    field::Walk& walk() { return tablet_.walk(); }

    // Takes exactly the last act back that still stood.
    Status undo() {
        const auto taken = walk().undo();
        if (!taken) {
            return taken.error();
        }
        RC_ASSERT(taken->has_value() == !earlier_.empty());
        if (taken->has_value()) {
            RC_ASSERT(tablet_.observations() == earlier_.back());
            earlier_.pop_back();
        }
        return {};
    }

    Status turn(std::uint32_t act, std::uint32_t choice) {
        switch (act) {
        case 1:
            return reopen();
        case 2:
            return walk().noteNothing(choice % 2 == 0 ? "not-observed" : "no-crop");
        case 3:
            return markVine(choice);
        case 4:
            return walk().walkOn();
        case 5:
            return goSomewhere(choice);
        case 6:
            return walk().shiftRun(choice % walk().plan().stops.size(),
                                   choice / 16 % 2 == 0 ? 1 : -1);
        case 7:
            return nextRow(choice);
        case 8:
            return walk().takeMore(walk().footing().stop, walk().footing().ask, choice % 3 + 1);
        case 9:
            return walk().noteBeside("note", journal::textValue("wire " + std::to_string(choice)));
        default:
            return walk().note(valueFor(walk().asked().descriptor, choice),
                               choice % 5 == 0 ? std::optional<std::string>("typed")
                                               : std::nullopt);
        }
    }

    Status markVine(std::uint32_t choice) {
        constexpr std::array<const char*, 4> kStates{"dead", "missing", "replanted", "weak"};
        return walk().markVine(kStates[choice % kStates.size()]);
    }

    Status goSomewhere(std::uint32_t choice) {
        return walk().goTo(choice % (walk().plan().stops.size() + 1),
                           choice / 16 % walk().plan().asks.size());
    }

    Status nextRow(std::uint32_t choice) {
        const bool isThere = walk().footing().isAtRowEnd && walk().hasNextLeg();
        return isThere ? walk().nextLeg(choice % 2 == 1) : Status{};
    }

    Status reopen() {
        const std::string footing = footingWords(walk().footing());
        const auto sheet = sheetOf(walk());
        const std::string done = doneWords(walk());
        const field::WalkPlan plan = walk().plan();
        tablet_.reopen();
        RC_ASSERT(footingWords(walk().footing()) == footing);
        RC_ASSERT(sheetOf(walk()) == sheet);
        RC_ASSERT(doneWords(walk()) == done);
        RC_ASSERT(walk().plan() == plan);
        return {};
    }

    Book tablet_;
    std::string start_;
    std::vector<std::string> earlier_; // observations before each act that stands
};

} // namespace

TEST_CASE("whatever is done on a walk, undo takes back act by act, a restart changes nothing, and "
          "the sheet is what the journal says") {
    CHECK(rc::check([](std::uint32_t kind) {
        const auto acts = *rc::gen::container<std::vector<std::uint32_t>>(
            rc::gen::resize(100, rc::gen::arbitrary<std::uint32_t>()));
        Person person(kind);
        for (const std::uint32_t word : acts) {
            person.act(word);
        }
        person.undoAll();
    }));
}
