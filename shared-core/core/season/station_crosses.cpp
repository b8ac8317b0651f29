#include "core/season/station_crosses.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <utility>

namespace bullace::season {

using breeding::BookEvent;
using breeding::BookStep;

namespace {

constexpr std::array<std::pair<std::string_view, BookStep>, 6> kWork{
    {{"bagged", BookStep::Bagged},
     {"emasculated", BookStep::Emasculated},
     {"pollinated", BookStep::Pollinated},
     {"re-pollinated", BookStep::Pollinated},
     {"set", BookStep::Set},
     {"harvested", BookStep::Harvested}}};
constexpr std::string_view kAgain = "re-pollinated";

std::optional<std::int64_t> countOf(std::optional<std::int64_t> count) {
    return count && *count >= 0 ? count : std::nullopt;
}

// Empty where there is none.
std::string textIn(const Bytes& record, std::string_view name) {
    const auto member = journal::memberOf(record, name);
    if (!member) {
        return {};
    }
    const auto text = journal::textOf(*member);
    return text ? std::string(*text) : std::string();
}

class Book {
public:
    explicit Book(const StationNotes& notes) : notes_(notes) {
        for (const NotedCross& cross : notes.crosses) {
            places_.emplace(cross.id, made_.heads.size());
            made_.heads.push_back({cross.id, cross.mother, cross.father, 0});
        }
    }

    StationCrosses read() {
        readWork();
        for (const NotedLot& lot : notes_.lots) {
            if (!lot.cross.empty() && isKnown(lot.cross)) {
                readLot(lot);
            }
        }
        readSeedlings();
        for (const BookEvent& event : made_.events) {
            int& year = made_.heads[places_.at(event.cross)].year;
            const int of = static_cast<int>(event.date.year());
            year = year == 0 ? of : std::min(year, of);
        }
        tellUnknown();
        return std::move(made_);
    }

private:
    bool isKnown(const std::string& cross) {
        if (places_.contains(cross)) {
            return true;
        }
        unknown_.insert(cross);
        return false;
    }

    void add(const std::string& cross,
             BookStep step,
             std::int32_t day,
             std::optional<std::int64_t> count) {
        made_.events.push_back({cross, step, dateOfDay(day), countOf(count), {}});
    }

    void readWork() {
        const DescriptorNotes& work = notes_.notesOf("cross-work");
        made_.open = work.open.size();
        for (const RecordNote& note : work.records) {
            const std::string id = textIn(note.value, "cross");
            const std::string step = textIn(note.value, "step");
            const auto known =
                std::ranges::find(kWork, step, &std::pair<std::string_view, BookStep>::first);
            if (id.empty() || known == kWork.end() || !isKnown(id)) {
                continue; // pollen collected, bags off: no step of the book
            }
            const auto number = journal::memberOf(note.value, "count");
            const auto count = number ? journal::wholeNumberOf(*number) : std::nullopt;
            add(id, known->second, note.day, step == kAgain ? std::nullopt : count);
        }
    }

    void readLot(const NotedLot& lot) {
        const bool isCounted = lot.seeds || lot.sinkers;
        if (isCounted && !lot.day) {
            made_.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "The lot %1 has seeds but no date: type the day on which they "
                                  "were taken out of the fruit."),
                 {lot.id}});
        } else {
            lot.seeds ? add(lot.cross, BookStep::Seeds, *lot.day, lot.seeds) : void();
            lot.sinkers ? add(lot.cross, BookStep::Sinkers, *lot.day, lot.sinkers) : void();
        }
        if (lot.stratified) {
            const auto cold = lot.sinkers ? lot.sinkers : lot.seeds;
            add(lot.cross, BookStep::Stratified, *lot.stratified, cold);
        }
        const auto germinatedOn = lot.germinatedOn ? lot.germinatedOn : lot.sown;
        if (lot.germinated && germinatedOn) {
            add(lot.cross, BookStep::Germinated, *germinatedOn, lot.germinated);
        } else if (lot.germinated) {
            made_.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "The lot %1 says how many seeds germinated, but neither when "
                                  "nor when they were sown; they are left out."),
                 {lot.id}});
        }
    }

    void readSeedlings() {
        std::vector<std::string> crossOf(notes_.accessions.size());
        for (std::size_t i = 0; i < notes_.accessions.size(); ++i) {
            const NotedAccession& accession = notes_.accessions[i];
            if (!accession.earlier.empty()) {
                made_.names.push_back({accession.earlier, accession.id, false});
            }
            if (accession.cross.empty() || !isKnown(accession.cross)) {
                continue;
            }
            crossOf[i] = accession.cross;
            made_.names.push_back({accession.cross, accession.id, true});
            if (accession.planted) {
                add(accession.cross, BookStep::Planted, *accession.planted, 1);
            }
        }
        readFlowers(crossOf);
        readVerdicts(crossOf);
    }

    void readFlowers(const std::vector<std::string>& crossOf) {
        std::map<std::size_t, NumberNote> first;
        for (const NumberNote& note : notes_.notesOf("flower-sex").numbers) {
            const std::size_t accession = notes_.vines[note.vine].accession;
            const auto [at, isNew] = first.emplace(accession, note);
            if (!isNew && note.day < at->second.day) {
                at->second = note;
            }
        }
        for (const auto& [accession, note] : first) {
            if (!crossOf[accession].empty()) {
                add(crossOf[accession], BookStep::FirstFlower, note.day, 1);
                made_.events.back().sex = vineyard::flowerSexOf(static_cast<int>(note.value));
            }
        }
    }

    void readVerdicts(const std::vector<std::string>& crossOf) {
        std::map<std::size_t, std::int32_t> first;
        for (const WordNote& note : notes_.notesOf("verdict").words) {
            if (notes_.words[note.word] == "take-on") {
                const auto [at, isNew] = first.emplace(notes_.vines[note.vine].accession, note.day);
                at->second = std::min(at->second, note.day);
            }
        }
        for (const auto& [accession, day] : first) {
            if (!crossOf[accession].empty()) {
                add(crossOf[accession], BookStep::Selected, day, 1);
            }
        }
    }

    void tellUnknown() {
        for (const std::string& cross : unknown_) {
            made_.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "%1 is named as a cross, but no cross of that number is in the "
                                  "collection; what was noted of it is left out."),
                 {cross}});
        }
    }

    const StationNotes& notes_;
    StationCrosses made_;
    std::map<std::string, std::size_t, std::less<>> places_;
    std::set<std::string> unknown_;
};

} // namespace

StationCrosses crossesOf(const StationNotes& notes) {
    return Book(notes).read();
}

} // namespace bullace::season
