#include "desk/bench_records.hpp"

#include "core/journal/json_value.hpp"

#include <cmath>

namespace bullace::desk {

std::optional<double> numberIn(BytesView record, std::string_view part) {
    const auto member = journal::memberOf(record, part);
    return member ? journal::numberOf(*member) : std::nullopt;
}

std::optional<std::size_t> accessionOf(const season::StationNotes& notes,
                                       const season::RecordNote& note) {
    return note.vine != season::kNoVine ? std::optional(notes.vines[note.vine].accession)
                                        : notes.lots[note.lot].accession;
}

std::vector<FreezeTest> freezeTestsIn(const season::StationNotes& notes) {
    std::vector<FreezeTest> tests;
    for (const season::RecordNote& note : notes.notesOf("freeze-test").records) {
        const auto c = numberIn(note.value, "c");
        const auto dead = numberIn(note.value, "dead");
        const auto of = numberIn(note.value, "of");
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

std::vector<fruit::AbsorbanceReading> absorbanceIn(const season::StationNotes& notes) {
    std::vector<fruit::AbsorbanceReading> readings;
    for (const season::RecordNote& note : notes.notesOf("absorbance").records) {
        const auto accession = accessionOf(notes, note);
        const auto day = numberIn(note.value, "day");
        const auto a = numberIn(note.value, "a");
        const auto nm = numberIn(note.value, "nm");
        if (!accession || !day || !a || !nm) {
            continue;
        }
        fruit::AbsorbanceReading reading;
        reading.accession = notes.accessions[*accession].id;
        reading.conditions.nm = *nm;
        reading.conditions.dilution = numberIn(note.value, "dilution").value_or(1);
        reading.conditions.pathMm = numberIn(note.value, "path_mm").value_or(10);
        reading.conditions.ph = numberIn(note.value, "ph");
        reading.conditions.storageC = numberIn(note.value, "storage_c");
        reading.day = *day;
        reading.absorbance = *a;
        readings.push_back(std::move(reading));
    }
    return readings;
}

} // namespace bullace::desk
