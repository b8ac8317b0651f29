// The station's observations read into plain tables for the sciences, in one pass.
#pragma once

#include "office/desk.hpp"

#include "core/season/station_notes.hpp"
#include "core/vineyard/catalogue.hpp"

namespace bullace::office {

// Numbers of stages and percentages that people noted differently, and that no person has settled,
// keep the least and the greatest of them, also where they are open; of other descriptors what is
// open is listed and left out. Errors: those of reading; Cancelled.
[[nodiscard]] Result<season::StationNotes> readStationNotes(store::Database& database,
                                                            const vineyard::Catalogue& catalogue,
                                                            const Token& token);

} // namespace bullace::office
