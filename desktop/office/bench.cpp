#include "office/bench.hpp"

#include "office/settling.hpp"

#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace bullace::office {

namespace {

constexpr std::string_view kLot = "lot:";

Error refused(std::string words) {
    return {ErrorCode::InvalidInput, std::move(words), {}};
}

BenchCell cellOf(const store::StateRow& row) {
    BenchCell cell;
    cell.subject = row.subject;
    cell.state = row.state;
    cell.heads = row.heads;
    if (Result<Bytes> value = store::readJson(row.valueJson); value && !row.valueJson.empty()) {
        cell.value = std::move(*value);
    }
    return cell;
}

// Of one place and day: the observation, or its samples, by descriptor.
using DayCells = std::map<std::string, std::vector<BenchCell>, std::less<>>;

Result<DayCells> readDay(store::Database& database, const std::string& place, CivilDate day) {
    DayCells cells;
    const Status read =
        database.eachState("obs/" + place + "/" + writeDate(day), [&cells](const auto& row) {
            const journal::Subject subject = journal::readSubject(row.subject);
            const bool isGone = row.state == merge::State::Retracted && !subject.sample.empty();
            if (!isGone) {
                // The observation itself stands before its samples.
                cells[std::string(subject.descriptor)].push_back(cellOf(row));
            }
            return true;
        });
    return read ? Result<DayCells>(std::move(cells)) : Result<DayCells>(read.error());
}

// The samples; an observation of a sampled descriptor (of an older year, say) is one, too, unless
// it was ruled to be nothing.
std::vector<BenchCell> samplesIn(const std::vector<BenchCell>& cells) {
    std::vector<BenchCell> samples;
    std::copy_if(cells.begin(), cells.end(), std::back_inserter(samples), [](const auto& cell) {
        return !journal::readSubject(cell.subject).sample.empty() ||
               cell.state != merge::State::Retracted;
    });
    return samples;
}

std::size_t mostSamples(const std::vector<DayCells>& days, const std::string& descriptor) {
    std::size_t most = 0;
    for (const DayCells& day : days) {
        const auto found = day.find(descriptor);
        most = std::max(most, found == day.end() ? 0 : samplesIn(found->second).size());
    }
    return most;
}

BenchCell
emptyCell(const std::string& place, CivilDate day, const std::string& descriptor, bool isSampled) {
    BenchCell cell;
    if (!isSampled) {
        cell.subject = "obs/" + place + "/" + writeDate(day) + "/" + descriptor;
    }
    return cell;
}

} // namespace

Result<BenchGrid>
readBench(store::Database& database, const vineyard::Catalogue& catalogue, const BenchPlan& plan) {
    std::vector<DayCells> days;
    for (const std::string& place : plan.places) {
        Result<DayCells> day = readDay(database, place, plan.day);
        if (!day) {
            return day.error();
        }
        days.push_back(std::move(*day));
    }
    BenchGrid grid;
    grid.rows.resize(days.size());
    for (const std::string& descriptor : plan.descriptors) {
        const vineyard::Asked* asked = catalogue.descriptor(descriptor);
        const bool isSampled = asked != nullptr && asked->known.isSampled;
        const std::size_t columns =
            isSampled ? std::max<std::size_t>({plan.samples, mostSamples(days, descriptor), 1}) : 1;
        for (std::size_t column = 0; column < columns; ++column) {
            grid.columns.push_back(
                {descriptor, isSampled ? static_cast<unsigned>(column + 1) : 0U});
        }
        for (std::size_t row = 0; row < days.size(); ++row) {
            const auto found = days[row].find(descriptor);
            const std::vector<BenchCell> none;
            const std::vector<BenchCell>& noted = found == days[row].end() ? none : found->second;
            const std::vector<BenchCell> there = isSampled ? samplesIn(noted) : noted;
            for (std::size_t column = 0; column < columns; ++column) {
                grid.rows[row].push_back(
                    column < there.size()
                        ? there[column]
                        : emptyCell(plan.places[row], plan.day, descriptor, isSampled));
            }
        }
    }
    return grid;
}

Result<Act> noteAtBench(store::Database& database,
                        const std::string& place,
                        CivilDate day,
                        const BenchColumn& column,
                        const BenchCell& seen,
                        const Typed& typed,
                        const std::string& author,
                        const std::string& why) {
    if (seen.state == merge::State::Open) {
        return refused("Two values stand against each other there. Settle them among the "
                       "conflicts.");
    }
    if (!seen.value.empty() && why.empty()) {
        return refused("A reason is needed to put a value right; a word is enough.");
    }
    store::Draft draft;
    draft.author = author;
    draft.subject = seen.subject;
    if (draft.subject.empty()) {
        Result<std::string> sample =
            nextSample(database, "obs/" + place + "/" + writeDate(day) + "/" + column.descriptor);
        if (!sample) {
            return sample.error();
        }
        draft.subject = std::move(*sample);
    }
    draft.value = typed.value;
    draft.over = seen.heads;
    draft.as = typed.as;
    if (!why.empty()) {
        draft.why = why;
    }
    Act act;
    act.seen.push_back({draft.subject, seen.heads});
    act.drafts.push_back(std::move(draft));
    return act;
}

namespace {

std::vector<std::string> rowMeant(const vineyard::Catalogue& catalogue, std::string_view text) {
    const auto first = vineyard::readPosition(std::string(text) + "-01");
    const vineyard::Block* block = first ? catalogue.block(first->block) : nullptr;
    for (const vineyard::Row& row : block == nullptr ? std::vector<vineyard::Row>{} : block->rows) {
        if (row.number == first->row) {
            return catalogue.placesOf(block->code, row);
        }
    }
    return {};
}

// A vine of the plan, or one that was planted between two of it.
bool isVine(const vineyard::Catalogue& catalogue, std::string_view text) {
    const auto position = vineyard::readPosition(text);
    const vineyard::Block* block = position ? catalogue.block(position->block) : nullptr;
    return block != nullptr && vineyard::isOnPlan(*block, *position);
}

std::vector<std::string>
vinesOf(const vineyard::Catalogue& catalogue, std::string_view accession, CivilDate today) {
    std::vector<std::string> places;
    for (const vineyard::Planting* planting : catalogue.plantings().standing(today)) {
        if (planting->accession == accession) {
            places.push_back(catalogue.plantings().renumberings().follow(
                planting->position, planting->from, today));
        }
    }
    return places;
}

std::vector<std::string> lotsMeant(const vineyard::Catalogue& catalogue, std::string_view text) {
    std::vector<std::string> places;
    if (text.starts_with(kLot)) {
        text.remove_prefix(kLot.size());
    }
    for (const vineyard::Lot& lot : catalogue.lots()) {
        if (lot.kind == text || lot.id == text || (!lot.label.empty() && lot.label == text) ||
            (!lot.number.empty() && lot.number == text)) {
            places.push_back(std::string(kLot) + lot.id);
        }
    }
    return places;
}

} // namespace

Result<std::vector<std::string>>
placesMeant(const vineyard::Catalogue& catalogue, std::string_view text, CivilDate today) {
    const std::size_t space = text.find(' ');
    if (space != std::string_view::npos) {
        auto run = runOf(std::string(text.substr(0, space)), std::string(text.substr(space + 1)));
        if (run && !std::all_of(run->begin(), run->end(), [&catalogue](const std::string& place) {
                return isVine(catalogue, place);
            })) {
            return refused("Not all of that run is on the station's plan: " + std::string(text) +
                           ".");
        }
        return run;
    }
    if (isVine(catalogue, text)) {
        return std::vector<std::string>{std::string(text)};
    }
    if (const auto labelled = catalogue.labelled(text)) {
        return std::vector<std::string>{*labelled};
    }
    std::vector<std::string> places = rowMeant(catalogue, text);
    places = places.empty() ? lotsMeant(catalogue, text) : std::move(places);
    places = places.empty() ? vinesOf(catalogue, text, today) : std::move(places);
    if (places.empty()) {
        return refused("\"" + std::string(text) +
                       "\" is not known here. Type a row like B2-07, a run like B2-07-01 "
                       "B2-07-30, a kind of lots like juice, a lot, an accession, or a label.");
    }
    return places;
}

std::vector<std::string> usualDescriptors(std::string_view lotKind) {
    static const std::map<std::string, std::vector<std::string>, std::less<>> kUsual{
        {"", {"clusters", "pruning-weight"}},
        {"berries", {"berry-weight", "berry-diameter", "seeds-per-berry", "soluble-solids"}},
        {"juice", {"soluble-solids", "titratable-acidity", "ph", "absorbance"}},
        {"buds", {"primary-buds", "secondary-buds", "tertiary-buds", "freeze-test"}},
        {"pollen", {"note"}},
        {"seed", {"seed-length", "note"}}};
    const auto found = kUsual.find(lotKind);
    return found == kUsual.end() ? std::vector<std::string>{"note"} : found->second;
}

namespace {

// The number after the greatest of those given: its last digits go on. Empty where there is none.
std::string numberAfter(const std::vector<std::string>& numbers) {
    std::string greatest;
    for (const std::string& number : numbers) {
        const bool isGreater =
            number.size() != greatest.size() ? number.size() > greatest.size() : number > greatest;
        const bool endsInDigit = !number.empty() && number.back() >= '0' && number.back() <= '9';
        greatest = endsInDigit && isGreater ? number : greatest;
    }
    std::size_t at = greatest.size();
    while (at > 0 && greatest[at - 1] == '9') {
        greatest[--at] = '0';
    }
    if (at == 0) {
        return greatest.empty() ? greatest : "1" + greatest;
    }
    const bool isDigit = greatest[at - 1] >= '0' && greatest[at - 1] < '9';
    if (isDigit) {
        ++greatest[at - 1];
    } else {
        greatest.insert(at, "1");
    }
    return greatest;
}

struct Numbered {
    std::string id;
    std::string number;
    std::string words;
};

std::vector<Numbered> numberedOf(const vineyard::Catalogue& catalogue, CardKind kind) {
    std::vector<Numbered> all;
    if (kind == CardKind::Cross) {
        for (const vineyard::Cross& cross : catalogue.crosses()) {
            all.push_back({cross.id,
                           cross.number,
                           catalogue.accessionWords(cross.mother) + " × " +
                               catalogue.accessionWords(cross.father)});
        }
    } else if (kind == CardKind::Lot) {
        for (const vineyard::Lot& lot : catalogue.lots()) {
            all.push_back({lot.id, lot.number, lot.kind + " " + lot.from});
        }
    } else if (kind == CardKind::Accession) {
        for (const auto& [id, accession] : catalogue.accessions()) {
            all.push_back({id, accession.number, accession.name});
        }
    } else if (kind == CardKind::Person) {
        for (const vineyard::Person& person : catalogue.people()) {
            all.push_back({person.code, person.number, person.name});
        }
    }
    return all;
}

// The numbers that the office has given: of those opened in the field their number, of the others
// their ID where they have no number besides.
std::vector<std::string> givenNumbers(const vineyard::Catalogue& catalogue, CardKind kind) {
    std::vector<std::string> given;
    for (const Numbered& one : numberedOf(catalogue, kind)) {
        if (!one.number.empty()) {
            given.push_back(one.number);
        } else if (!isFromField(one.id)) {
            given.push_back(one.id);
        }
    }
    return given;
}

} // namespace

std::vector<FieldOpened> openedInField(const vineyard::Catalogue& catalogue) {
    std::vector<FieldOpened> opened;
    for (const CardKind kind :
         {CardKind::Cross, CardKind::Lot, CardKind::Accession, CardKind::Person}) {
        const std::string suggested =
            kind == CardKind::Person ? std::string{} : numberAfter(givenNumbers(catalogue, kind));
        for (const Numbered& one : numberedOf(catalogue, kind)) {
            if (isFromField(one.id) && one.number.empty()) {
                opened.push_back({kind, one.id, one.words, suggested});
            }
        }
    }
    return opened;
}

Result<Act> confirmWith(store::Database& database,
                        const vineyard::Catalogue& catalogue,
                        const FieldOpened& opened,
                        const std::string& number,
                        const std::string& author) {
    if (number.empty()) {
        return refused("A number is needed; the office's own, like X26-014.");
    }
    const std::vector<std::string> given = givenNumbers(catalogue, opened.kind);
    if (std::find(given.begin(), given.end(), number) != given.end()) {
        return refused("The number " + number + " is another's already.");
    }
    const auto heads =
        headsOf(database, std::string(cardWord(opened.kind)) + "/" + opened.id + "/number");
    if (!heads) {
        return heads.error();
    }
    return setField(opened.kind,
                    opened.id,
                    "number",
                    journal::textValue(number),
                    *heads,
                    author,
                    "confirmed at the office");
}

} // namespace bullace::office
