#include "core/season/station_bench.hpp"

#include "core/journal/json_value.hpp"

#include <cmath>

namespace bullace::season {

std::optional<std::size_t> accessionOf(const StationNotes& notes, const RecordNote& note) {
    return note.vine != kNoVine ? std::optional(notes.vines[note.vine].accession)
                                : notes.lots[note.lot].accession;
}

std::vector<FreezeTest> freezeTestsIn(const StationNotes& notes) {
    std::vector<FreezeTest> tests;
    for (const RecordNote& note : notes.notesOf("freeze-test").records) {
        const auto c = journal::numberIn(note.value, "c");
        const auto dead = journal::numberIn(note.value, "dead");
        const auto of = journal::numberIn(note.value, "of");
        const auto bud = journal::memberOf(note.value, "bud");
        const auto word = bud ? journal::textOf(*bud) : std::nullopt;
        const auto accession = accessionOf(notes, note);
        if (c && dead && of && accession) {
            tests.push_back({*accession,
                             note.day,
                             word ? std::string(*word) : std::string("primary"),
                             {*c, std::llround(*of), std::llround(*dead)}});
        }
    }
    return tests;
}

std::vector<fruit::AbsorbanceReading> absorbanceIn(const StationNotes& notes) {
    std::vector<fruit::AbsorbanceReading> readings;
    for (const RecordNote& note : notes.notesOf("absorbance").records) {
        const auto accession = accessionOf(notes, note);
        const auto day = journal::numberIn(note.value, "day");
        const auto a = journal::numberIn(note.value, "a");
        const auto nm = journal::numberIn(note.value, "nm");
        if (!accession || !day || !a || !nm) {
            continue;
        }
        fruit::AbsorbanceReading reading;
        reading.accession = notes.accessions[*accession].id;
        reading.conditions.nm = *nm;
        reading.conditions.dilution = journal::numberIn(note.value, "dilution").value_or(1);
        reading.conditions.pathMm = journal::numberIn(note.value, "path_mm").value_or(10);
        reading.conditions.ph = journal::numberIn(note.value, "ph");
        reading.conditions.storageC = journal::numberIn(note.value, "storage_c");
        reading.day = *day;
        reading.absorbance = *a;
        readings.push_back(std::move(reading));
    }
    return readings;
}

} // namespace bullace::season
