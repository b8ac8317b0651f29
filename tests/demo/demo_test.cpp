// The demo station is what it says: believable, repeatable, and with every kind of trouble in it.
#include "demo/json_lines.hpp"
#include "demo/station.hpp"

#include "core/descriptors/catalog.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/standing.hpp"
#include "core/journal/subject.hpp"
#include "core/merge/settle.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <deque>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <vector>

namespace bullace::demo {

namespace {

using journal::Kind;

// All entries of all journals, each once, with bytes and digests.
struct Held {
    struct One {
        Bytes bytes;
        Digest digest;
        journal::EntryView view;
        int season = 0;
    };
    std::deque<One> entries;
    std::map<std::string_view, std::vector<const One*>> subjects;
};

Held hold(const DemoStation& station) {
    Held held;
    std::set<std::tuple<journal::Origin, std::uint64_t, Digest>> known;
    for (const Journal& journal : station.journals) {
        Digest digest;
        for (const journal::Entry& entry : journal.entries) {
            Bytes bytes = entry.encode();
            digest = journal::chainDigest(digest, bytes);
            if (known.emplace(entry.origin, entry.seq, digest).second) {
                held.entries.push_back({std::move(bytes), digest, {}, journal.season});
            }
        }
    }
    for (Held::One& one : held.entries) {
        const auto read = journal::readEntry(one.bytes);
        REQUIRE(read.ok());
        one.view = *read;
        held.subjects[one.view.subject].push_back(&one);
    }
    return held;
}

const DemoStation& station() {
    static const DemoStation made = makeStation();
    return made;
}
const Held& held() {
    static const Held made = hold(station());
    return made;
}

// The heads of a subject without the program's own merging: nobody undoes an undo here, so that
// what is undone or replaced can be read off.
std::vector<const Held::One*> plainHeads(std::string_view subject) {
    const auto& all = held().subjects.at(subject);
    std::set<journal::Place> undone;
    for (const Held::One* const one : all) {
        if (one->view.kind == Kind::Undo) {
            const auto edges = one->view.edges();
            undone.insert(edges.begin(), edges.end());
        }
    }
    std::set<journal::Place> replaced;
    for (const Held::One* const one : all) {
        if (one->view.kind != Kind::Undo && !undone.contains(one->view.place())) {
            const auto edges = one->view.edges();
            replaced.insert(edges.begin(), edges.end());
        }
    }
    std::vector<const Held::One*> heads;
    for (const Held::One* const one : all) {
        const bool canBeHead = one->view.kind != Kind::Undo && one->view.kind != Kind::Remark;
        if (canBeHead && !undone.contains(one->view.place()) &&
            !replaced.contains(one->view.place())) {
            heads.push_back(one);
        }
    }
    return heads;
}

bool doDiffer(const std::vector<const Held::One*>& heads) {
    return std::any_of(heads.begin(), heads.end(), [&heads](const Held::One* one) {
        return !journal::isSameValue(one->view.value, heads.front()->view.value);
    });
}

merge::Rulebook rulebook() {
    merge::Rulebook book;
    for (const auto& [subject, entries] : held().subjects) {
        if (merge::shapesRulebook(journal::readSubject(subject))) {
            book.apply(subject, entries.front()->view.value, false);
        }
    }
    return book;
}

merge::Outcome outcomeOf(std::string_view subject, const merge::Rulebook& book) {
    std::vector<merge::Member> members;
    for (const Held::One* const one : held().subjects.at(subject)) {
        members.push_back({&one->view, &one->digest, true});
    }
    std::vector<merge::Member> heads;
    for (const std::size_t at : merge::workSubject(members).heads) {
        heads.push_back(members[at]);
    }
    return merge::settle(subject, heads, book);
}

// Samples or values of one descriptor in the third season at accessions of one wild species.
std::vector<double> notedOfWild(std::size_t species, std::string_view descriptor) {
    std::map<std::string, const Vine*> vines;
    for (const Vine& vine : station().orchard.vines) {
        vines[vine.position] = &vine;
    }
    std::vector<double> values;
    for (const Held::One& one : held().entries) {
        const auto subject = journal::readSubject(one.view.subject);
        const auto number = journal::numberOf(one.view.value);
        if (one.season != 3 || subject.descriptor != descriptor || !number) {
            continue;
        }
        const Vine& vine = *vines.at(std::string(subject.id));
        const Accession& accession = station().orchard.collection[vine.seasons[2].accession];
        if (accession.status == Status::Wild && accession.isOf(species)) {
            values.push_back(*number);
        }
    }
    return values;
}

double meanOf(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values) {
        sum += value;
    }
    REQUIRE_FALSE(values.empty());
    return sum / static_cast<double>(values.size());
}

const Journal& journalOf(std::string_view file) {
    const auto& all = station().journals;
    const auto found = std::find_if(
        all.begin(), all.end(), [file](const Journal& journal) { return journal.file == file; });
    REQUIRE(found != all.end());
    return *found;
}

} // namespace

TEST_CASE("the same seed makes the same station to the byte, another seed another one") {
    const DemoStation again = makeStation();
    const DemoStation other = makeStation(7);
    REQUIRE(again.journals.size() == station().journals.size());
    for (std::size_t i = 0; i < again.journals.size(); ++i) {
        CHECK(journalLines(again.journals[i].entries) ==
              journalLines(station().journals[i].entries));
        CHECK(other.journals[i].entries.back().encode() !=
              again.journals[i].entries.back().encode());
    }
    CHECK(truthDocument(again, kDefaultSeed) == truthDocument(station(), kDefaultSeed));
    // The bytes of the default seed, so that another compiler or machine shows itself. A change of
    // the generator changes them on purpose.
    std::string all = truthDocument(station(), kDefaultSeed);
    for (const Journal& journal : station().journals) {
        all += journalLines(journal.entries);
    }
    CHECK(sha256(all).hex().substr(0, 16) == "fe8840cbb070c469");
}

TEST_CASE("other seeds make whole stations as well") {
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
        CAPTURE(seed);
        const DemoStation made = makeStation(seed);
        std::map<std::string, int> kinds;
        for (const PlantedConflict& conflict : made.truth.conflicts) {
            ++kinds[conflict.kind];
        }
        CHECK(made.truth.conflicts.size() >= 40);
        CHECK(kinds.size() == 9);
        CHECK_FALSE(made.truth.slip.subject.empty());
        CHECK(made.truth.shiftedRows.size() == 2);
    }
}

TEST_CASE("four blocks have seven hundred places, some of them empty, and sixty accessions") {
    const Orchard& orchard = station().orchard;
    CHECK(orchard.blocks.size() == 4);
    CHECK(orchard.vines.size() == 700);
    const auto empty = std::count_if(orchard.vines.begin(),
                                     orchard.vines.end(),
                                     [](const Vine& vine) { return vine.plantings.empty(); });
    CHECK(empty > 15);
    CHECK(empty < 70);
    const auto replanted =
        std::count_if(orchard.vines.begin(), orchard.vines.end(), [](const Vine& vine) {
            return vine.plantings.size() > 1;
        });
    CHECK(replanted > 5);
    REQUIRE(orchard.collection.size() == 60);
    std::set<std::string> names;
    for (std::size_t i = 0; i < orchard.collection.size(); ++i) {
        const Accession& accession = orchard.collection[i];
        names.insert(accession.name);
        CHECK(accession.shares[0] + accession.shares[1] + accession.shares[2] == 1.0);
        if (accession.mother) {
            CHECK(*accession.mother < i);
            CHECK(*accession.father < i);
            CHECK_FALSE(orchard.collection[*accession.mother].isMale());
            CHECK(orchard.collection[*accession.father].flowerSex != 4);
        }
    }
    CHECK(names.size() == 60);
    CHECK(taxonOf(orchard.collection.front()) == "Vitis rotundifolia");
}

TEST_CASE("the wild species differ in their notes as the botanists say") {
    // Moore & Wen, Flora of North America 12:7: berries usually 2-8 to a cluster and 15-25 mm
    // across in V. rotundifolia, 12-30 and 8-12 mm in V. munsoniana; seeds 9 mm and more, and up to
    // 6 mm.
    CHECK(meanOf(notedOfWild(0, "berries-per-cluster")) > 2);
    CHECK(meanOf(notedOfWild(0, "berries-per-cluster")) < 8);
    CHECK(meanOf(notedOfWild(1, "berries-per-cluster")) > 12);
    CHECK(meanOf(notedOfWild(1, "berries-per-cluster")) < 30);
    CHECK(meanOf(notedOfWild(0, "berry-diameter")) > 15);
    CHECK(meanOf(notedOfWild(0, "berry-diameter")) < 25);
    CHECK(meanOf(notedOfWild(1, "berry-diameter")) > 8);
    CHECK(meanOf(notedOfWild(1, "berry-diameter")) < 12);
    CHECK(notedOfWild(2, "berry-diameter").size() > 10);
    CHECK(meanOf(notedOfWild(0, "seed-length")) >= 9);
    CHECK(meanOf(notedOfWild(1, "seed-length")) <= 6);
    // Leaf blades 5-9 cm and 3-8 cm; the skin is thick, and thin.
    CHECK(meanOf(notedOfWild(0, "leaf-width")) > 50);
    CHECK(meanOf(notedOfWild(0, "leaf-width")) < 90);
    CHECK(meanOf(notedOfWild(1, "leaf-width")) > 30);
    CHECK(meanOf(notedOfWild(1, "leaf-width")) < 80);
    CHECK(meanOf(notedOfWild(0, "skin-thickness")) > meanOf(notedOfWild(1, "skin-thickness")) + 2);
}

TEST_CASE("every value could have been entered, the slip among them") {
    std::size_t checked = 0;
    for (const Held::One& one : held().entries) {
        const auto subject = journal::readSubject(one.view.subject);
        const bool isNoted = one.view.kind == Kind::Observe || one.view.kind == Kind::Ruling;
        CHECK(subject.form != journal::SubjectForm::Unknown);
        const auto* const descriptor = descriptors::findBuiltIn(subject.descriptor);
        if (!isNoted || descriptor == nullptr) {
            continue;
        }
        CAPTURE(std::string(one.view.subject));
        CHECK(descriptors::checkValue(*descriptor, one.view.value).ok());
        ++checked;
    }
    CHECK(checked > 8000);
    const Slip& slip = station().truth.slip;
    CHECK(*journal::numberOf(slip.typed) ==
          doctest::Approx(*journal::numberOf(slip.right) * 10).epsilon(1e-12));
    CHECK(plainHeads(slip.subject).front()->view.value == slip.typed);
}

TEST_CASE("every entry has the right to count, and every group is whole") {
    std::map<std::pair<journal::Origin, std::uint64_t>, std::uint64_t> groups;
    for (const Held::One& one : held().entries) {
        CAPTURE(std::string(one.view.subject));
        CHECK(journal::standing(one.view) == journal::Standing::Counts);
        if (one.view.group) {
            CHECK(journal::isGroupPlausible(one.view));
            ++groups[{one.view.origin, one.view.group->first}];
        }
    }
    for (const Held::One& one : held().entries) {
        if (one.view.group) {
            CHECK(groups.at({one.view.origin, one.view.group->first}) == one.view.group->n);
        }
    }
    CHECK(groups.size() > 20);
}

TEST_CASE("what an entry replaces is of its subject and earlier") {
    std::size_t edges = 0;
    for (const auto& [subject, entries] : held().subjects) {
        for (const Held::One* const one : entries) {
            for (const journal::Place& place : one->view.edges()) {
                const auto found = std::find_if(
                    entries.begin(), entries.end(), [&place](const Held::One* candidate) {
                        return candidate->view.place() == place;
                    });
                REQUIRE(found != entries.end());
                CHECK((*found)->view.count < one->view.count);
                ++edges;
            }
        }
    }
    CHECK(edges > 60);
}

TEST_CASE("the conflicts are exactly those that were planted, more than forty, of every kind") {
    std::set<std::string> found;
    std::size_t ofThirdSeason = 0;
    for (const auto& [subject, entries] : held().subjects) {
        const auto heads = plainHeads(subject);
        if (heads.size() > 1 && doDiffer(heads)) {
            found.emplace(subject);
            ofThirdSeason += subject.find("/2025-") != std::string_view::npos ? 1U : 0U;
        }
    }
    CHECK(ofThirdSeason >= 40);
    std::set<std::string> planted;
    std::map<std::pair<std::string, std::string>, int> kinds;
    for (const PlantedConflict& conflict : station().truth.conflicts) {
        planted.insert(conflict.subject);
        ++kinds[{conflict.kind, conflict.within}];
    }
    CHECK(found == planted);
    for (const char* rule : {"advanced", "greatest", "least", "mean"}) {
        CAPTURE(rule);
        CHECK(kinds[{rule, "inside"}] >= 3);
        CHECK(kinds[{rule, "exceeded"}] >= 2);
    }
    for (const char* rule : {"ask", "later", "all", "retraction"}) {
        CAPTURE(rule);
        CHECK(kinds[{rule, ""}] >= 3);
    }
    CHECK(kinds[{"ruling", ""}] == 1);
}

TEST_CASE("the rules meet the planted conflicts as the truth says") {
    const merge::Rulebook book = rulebook();
    for (const PlantedConflict& conflict : station().truth.conflicts) {
        CAPTURE(conflict.subject);
        CAPTURE(conflict.kind);
        const merge::Outcome outcome = outcomeOf(conflict.subject, book);
        CHECK(outcome.state == (conflict.isOpen ? merge::State::Open : merge::State::Ruled));
        if (!conflict.isOpen) {
            REQUIRE(outcome.rule.has_value());
            CHECK(descriptors::ruleWord(*outcome.rule) == conflict.kind);
        }
    }
    for (const std::string& subject : station().truth.agreed) {
        CHECK(outcomeOf(subject, book).state == merge::State::Agreed);
    }
    CHECK(station().truth.agreed.size() > 100);
}

TEST_CASE("two people sampled the same vines, and no sample meets another") {
    std::map<std::string, std::set<std::string_view>> people;
    for (const Held::One& one : held().entries) {
        const auto subject = journal::readSubject(one.view.subject);
        if (!subject.sample.empty()) {
            CHECK(held().subjects.at(one.view.subject).size() == 1);
            people[std::string(subject.id) + std::string(subject.descriptor)].insert(
                one.view.author);
        }
    }
    const auto byTwo = std::count_if(
        people.begin(), people.end(), [](const auto& pair) { return pair.second.size() == 2; });
    CHECK(byTwo > 20);
}

TEST_CASE("one row stands one vine too far, and an older one was put right") {
    std::map<std::string, std::vector<const Vine*>> rows;
    for (const ShiftedRow& shifted : station().truth.shiftedRows) {
        const std::size_t season = shifted.date.starts_with("2024") ? 1 : 2;
        const auto vines = station().orchard.row(shifted.block, shifted.row);
        std::size_t compared = 0;
        for (std::size_t i = 1; i < vines.size(); ++i) {
            const std::string subject =
                "obs/" + vines[i]->position + "/" + shifted.date + "/" + shifted.descriptor;
            if (!held().subjects.contains(subject)) {
                continue;
            }
            // What was noted in the field, before the office moved it.
            const auto& entries = held().subjects.at(subject);
            const auto first =
                std::find_if(entries.begin(), entries.end(), [](const Held::One* one) {
                    return one->view.origin.letter == 't';
                });
            if (first == entries.end()) {
                continue;
            }
            const auto noted = journal::numberOf((*first)->view.value);
            REQUIRE(noted.has_value());
            CHECK(std::abs(*noted / vines[i - 1]->seasons[season].clusters - 1) < 0.08);
            const auto heads = plainHeads(subject);
            const auto now = journal::numberOf(heads.front()->view.value);
            if (shifted.isPutRight && now) {
                CHECK(std::abs(*now / vines[i]->seasons[season].clusters - 1) < 0.08);
            }
            ++compared;
        }
        CHECK(compared > 12);
    }
    CHECK(station().truth.shiftedRows.size() == 2);
}

TEST_CASE("the third tablet's clock is a year behind its dates, the others' are right") {
    for (const char* file : {"tablet-1.jsonl", "tablet-2.jsonl", "tablet-3.jsonl"}) {
        const bool isWrong = file == std::string_view("tablet-3.jsonl");
        for (const journal::Entry& entry : journalOf(file).entries) {
            const auto subject = journal::readSubject(entry.subject);
            REQUIRE(entry.wall.has_value());
            if (entry.subject.find("/2025-") == std::string::npos) {
                continue;
            }
            const std::string instant =
                writeInstant(entry.wall->ms, static_cast<int>(entry.wall->minutes));
            CHECK(instant.substr(0, 4) == (isWrong ? "2024" : "2025"));
            const auto date = readDate(instant.substr(0, 10));
            const int days = daysBetween(*readDate(subject.date), *date);
            CHECK(days >= (isWrong ? -365 : 0));
            CHECK(days <= (isWrong ? -363 : 2));
        }
    }
}

TEST_CASE("the second tablet's two journals part after the old copy, and only there") {
    const auto& before = journalOf("tablet-2-before.jsonl").entries;
    const auto& after = journalOf("tablet-2.jsonl").entries;
    const auto common = static_cast<std::size_t>(station().truth.restoredAfter);
    REQUIRE(common > 500);
    REQUIRE(before.size() > common + 50);
    REQUIRE(after.size() > common + 500);
    CHECK(before.front().origin == after.front().origin);
    for (std::size_t i = 0; i < common; ++i) {
        CHECK(before[i].encode() == after[i].encode());
    }
    CHECK(before[common].seq == after[common].seq);
    CHECK(before[common].encode() != after[common].encode());
}

TEST_CASE("the entries of the third season are many and small") {
    std::size_t entries = 0;
    std::size_t bytes = 0;
    std::size_t typed = 0;
    for (const Held::One& one : held().entries) {
        if (one.season == 3) {
            ++entries;
            bytes += one.bytes.size();
            typed += one.view.as ? 1U : 0U;
        }
    }
    CHECK(entries > 5000);
    // Less than what a whole sync may cost on the wire, which is 140.
    const double mean = static_cast<double>(bytes) / static_cast<double>(entries);
    MESSAGE("entries: ", entries, ", bytes each: ", mean);
    CHECK(mean < 125);
    CHECK(typed > 10);
}

TEST_CASE("a line has the names of the journal's fields, and leaves out what is absent") {
    journal::Entry entry;
    entry.origin = {'t', 1, 1};
    entry.seq = 2;
    entry.count = 9;
    entry.author = "im";
    entry.kind = "observe";
    entry.subject = "obs/B2-07-14/2025-05-12/berry-diameter";
    entry.value = journal::floatValue(17.3);
    entry.over = {{{'t', 1, 1}, 1}, {{'s', 2, 10}, 4}};
    const Digest digest = sha256("abc");
    CHECK(entryLine(entry, digest) ==
          "{\"origin\":\"t0000000000000001.1\",\"seq\":2,\"count\":9,\"author\":\"im\","
          "\"kind\":\"observe\",\"subject\":\"obs/B2-07-14/2025-05-12/berry-diameter\","
          "\"value\":17.3,\"over\":[[\"t0000000000000001.1\",1],[\"s0000000000000002.10\",4]],"
          "\"digest\":\"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad\"}\n");
    entry.wall = journal::Wall{-5, -300};
    entry.group = journal::Group{2, 1};
    entry.why = "a \"why\"";
    entry.as = "17,3 mm";
    const std::string line = entryLine(entry, digest);
    CHECK(line.find("\"wall\":[-5,-300]") != std::string::npos);
    CHECK(line.find("\"group\":[2,1],\"why\":\"a \\\"why\\\"\",\"as\":\"17,3 mm\"") !=
          std::string::npos);
}

} // namespace bullace::demo
