// The decisions of a selection meeting: what was decided of each vine, by whom and why, and the act
// that records a decision at all vines of a selection.
#pragma once

#include "office/act.hpp"

#include "core/season/station_notes.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::office {

struct VerdictNote {
    std::size_t accession = 0; // in the notes
    std::string position;
    CivilDate date{};
    std::string word;   // pull, look-again or take-on; empty where it is open
    std::string author; // of its first head
    std::optional<std::string> why{};
    bool isOpen = false; // two people decided otherwise, and nobody has settled it
};

// All of them, the newest first. Errors: those of reading.
[[nodiscard]] Result<std::vector<VerdictNote>> readVerdicts(store::Database& database,
                                                            const season::StationNotes& notes);

// The verdict at each of the positions on a day, as one act; what was noted there on that day is
// replaced. A reason has to be given.
// Errors: InvalidInput for no position, an unknown word or an empty reason; those of reading.
[[nodiscard]] Result<Act> verdictAct(store::Database& database,
                                     std::span<const std::string> positions,
                                     CivilDate date,
                                     std::string_view word,
                                     const std::string& author,
                                     const std::string& why);

} // namespace bullace::office
