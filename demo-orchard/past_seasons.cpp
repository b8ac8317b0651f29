// The two seasons before: fewer rounds, one shifted row that was put right, one that was put right
// by mistake and undone, and vines that were found dead and replanted.
#include "demo/seasons.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace bullace::demo {

namespace {

using journal::Kind;
using journal::MapValue;
using journal::textValue;

void walkYear(Dice& dice, const Orchard& orchard, Pen& first, Pen& second, int year) {
    second.begin(kTobias, day(year, 3, 26), 8, 0, 11);
    for (const char* block : {"B1", "B2", "B3", "N1"}) {
        walkRows(dice, orchard, second, {block, 0, day(year, 3, 26), "stage"});
    }
    first.begin(kIda, day(year, 5, 21), 7, 30, 12);
    for (const char* block : {"B1", "B3"}) {
        walkRows(dice, orchard, first, {block, 0, day(year, 5, 21), "stage"});
    }
    second.begin(kTobias, day(year, 6, 12), 8, 0, 45);
    for (const char* block : {"B3", "N1"}) {
        walkRows(dice, orchard, second, {block, 0, day(year, 6, 12), "clusters"});
    }
    second.begin(kTobias, day(year, 8, 22), 8, 0, 9);
    walkSamples(dice, orchard, second, {"N1", 0, day(year, 8, 22), "berry-diameter"}, 2);
}

// The office moves every value of a row to the vine `back` places before: one group of entries,
// each over what stood at its place.
std::vector<Noted> moveRow(const Orchard& orchard,
                           Pen& office,
                           const Walk& walk,
                           const std::vector<Noted>& noted,
                           int back,
                           const char* why) {
    const auto find = [&noted](const Vine* vine) {
        const auto found = std::find_if(
            noted.begin(), noted.end(), [vine](const Noted& one) { return one.vine == vine; });
        return found == noted.end() ? nullptr : &*found;
    };
    const auto vines = orchard.row(walk.block, walk.row);
    std::vector<Noted> moved;
    office.beginGroup();
    for (std::size_t i = 0; i < vines.size(); ++i) {
        const auto source = i + static_cast<std::size_t>(back);
        const auto* const there = find(vines[i]);
        const auto* const from = source < vines.size() ? find(vines[source]) : nullptr;
        if (there == nullptr && from == nullptr) {
            continue;
        }
        Note note{observation(vines[i]->position, walk.date, walk.descriptor),
                  from == nullptr ? journal::nullValue() : from->value,
                  {},
                  {},
                  std::string(why)};
        if (there != nullptr) {
            note.over.push_back(there->place);
        }
        const Kind kind = from == nullptr ? Kind::Retract : Kind::Observe;
        moved.push_back({note.subject, note.value, vines[i], office.write(kind, note)});
    }
    office.endGroup();
    return moved;
}

void undoAll(Pen& office, const std::vector<Noted>& written, const char* why) {
    office.beginGroup();
    for (const Noted& one : written) {
        office.write(Kind::Undo,
                     {one.subject, journal::nullValue(), {one.place}, {}, std::string(why)});
    }
    office.endGroup();
}

void shiftedRows(Dice& dice, const Orchard& orchard, Pens& pens, Truth& truth) {
    const Walk wrong{"B2", 5, day(2024, 6, 13), "clusters", 1};
    const Walk right{"B2", 6, day(2024, 6, 13), "clusters"};
    pens.oldFirst.begin(kIda, wrong.date, 7, 45, 50);
    const auto shifted = walkRows(dice, orchard, pens.oldFirst, wrong);
    const auto sound = walkRows(dice, orchard, pens.oldFirst, right);
    pens.office.seen(pens.oldFirst.count());
    pens.office.begin(kHesper, day(2024, 6, 20), 10, 5, 0);
    moveRow(orchard, pens.office, wrong, shifted, 1, "walk began at the second vine");
    const auto mistaken =
        moveRow(orchard, pens.office, right, sound, 1, "thought to be shifted like row 5");
    undoAll(pens.office, mistaken, "row 6 was right as it stood");
    ShiftedRow& row = truth.shiftedRows.emplace_back();
    row = {wrong.block, wrong.row, writeDate(wrong.date), wrong.descriptor, 1, true, {}};
    for (const Noted& one : shifted) {
        row.subjects.push_back(one.subject);
    }
}

// Two people count the same rows of B1 in 2024 and come out a tenth apart.
Past countTwice(Dice& dice, const Orchard& orchard, Pens& pens) {
    const Walk walk{"B1", 2, day(2024, 6, 11), "clusters"};
    Past past;
    pens.oldFirst.begin(kIda, walk.date, 8, 10, 55);
    past.clusters = walkRows(dice, orchard, pens.oldFirst, walk);
    pens.oldSecondAgain.begin(kTobias, walk.date, 9, 0, 55);
    for (std::size_t i = 0; i < past.clusters.size() && i < 4; ++i) {
        Noted again = past.clusters[i];
        again.value = journal::integerValue(
            static_cast<std::int64_t>(*journal::numberOf(again.value) * 1.1) + 1);
        again.place = pens.oldSecondAgain.observe(again.subject, again.value);
        past.clustersAgain.push_back(again);
    }
    return past;
}

} // namespace

Past writePastSeasons(Dice& dice, const Orchard& orchard, Pens& pens, Truth& truth) {
    pens.meet();
    walkYear(dice, orchard, pens.oldFirst, pens.oldSecond, 2023);
    pens.meet();
    // The second tablet of those years began a new epoch in the winter.
    walkYear(dice, orchard, pens.oldFirst, pens.oldSecondAgain, 2024);
    pens.meet();
    updatePlantings(orchard, pens.office, 2024);
    Past past = countTwice(dice, orchard, pens);
    shiftedRows(dice, orchard, pens, truth);
    pens.meet();
    return past;
}

} // namespace bullace::demo
