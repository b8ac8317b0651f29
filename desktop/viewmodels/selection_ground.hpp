// What a selection meeting is about, read from the station on a thread of its own: the candidates
// with their evidence, what was decided of them, and where they come from.
#pragma once

#include "office/desk.hpp"
#include "office/verdicts.hpp"

#include "core/breeding/pedigree.hpp"
#include "core/season/station_selection.hpp"
#include "core/vineyard/catalogue.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace bullace::desk {

enum class CandidateGroup { Selections, Seedlings, Everything };

struct MeetingWish {
    std::string counts; // "yield 2, soluble-solids 1"
    CandidateGroup group = CandidateGroup::Selections;
    std::size_t best = 10;
    bool isThroughPedigree = true;
};

struct MeetingGround {
    season::StationNotes notes;
    season::SelectionList list;
    std::vector<office::VerdictNote> verdicts; // the newest first
    std::vector<double> inbreeding;            // of each accession of the notes; empty where the
                                               // pedigree goes round in a circle
    std::vector<std::vector<std::string>> standing; // positions of each accession's vines today
    Remarks remarks;

    // Of one accession, the newest first.
    [[nodiscard]] std::vector<const office::VerdictNote*> verdictsOf(std::size_t accession) const;
};

// Errors: those of reading; InvalidInput for wishes that are none.
[[nodiscard]] Result<MeetingGround> readMeeting(store::Database& database,
                                                const vineyard::Catalogue& catalogue,
                                                const MeetingWish& wish,
                                                CivilDate today,
                                                const office::Token& token);

} // namespace bullace::desk
