// Subjects: the paths that say what an entry is about (obs/B2-07-14/2026-05-12/stage).
#pragma once

#include "core/journal/origin.hpp"
#include "core/vineyard/position.hpp"

#include <cstdint>
#include <optional>
#include <string_view>
#include <variant>

namespace bullace::journal {

enum class SubjectForm {
    Observation, // obs/PLACE/DATE/DESCRIPTOR and obs/PLACE/DATE/DESCRIPTOR/SAMPLE
    Planting,    // planting/POSITION/DATE
    Accession,   // accession/ID/FIELD, and so on
    Lot,
    Cross,
    Person,
    Round,
    Block, // block/CODE/FIELD, renumber-DATE among them
    Descriptor,
    Rulebook, // rulebook/N
    Weather,  // weather/SITE/DATE/ELEMENT
    Unknown,  // fits no line: kept, merged as no observation, and a finding
};

// A subject taken apart. The views point into the text that was read.
struct Subject {
    SubjectForm form = SubjectForm::Unknown;
    std::string_view id;         // PLACE as written, the ID or CODE, SITE, or N
    std::string_view field;      // FIELD or ELEMENT
    std::string_view date;       // valid, where the form has one
    std::string_view descriptor; // observations
    std::string_view sample;     // observations of samples: "origin,n"
    std::optional<vineyard::Position>
        position; // of plantings, and of observations that are not on a lot

    [[nodiscard]] bool isLot() const { return form == SubjectForm::Observation && !position; }
};

[[nodiscard]] Subject readSubject(std::string_view text);

// True for everything below obs/, also where it fits no line: rights go by this.
[[nodiscard]] inline bool isBelowObs(std::string_view subject) {
    return subject.starts_with("obs/");
}

} // namespace bullace::journal
