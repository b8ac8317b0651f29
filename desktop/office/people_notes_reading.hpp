// What people noted by themselves of the same vine on the same day, read beside the settled values.
#pragma once

#include "office/desk.hpp"
#include "office/vine_finder.hpp"

#include <string>
#include <vector>

namespace bullace::office {

// Fills DescriptorNotes::people, and widens stages and percentages that people noted differently to
// what they noted, unless a person settled it. `repeated` are observations that have blind repeats
// as samples. An observation is somebody's own where its author had no other on the screen. Errors:
// those of reading.
[[nodiscard]] Status readPeople(store::Database& database,
                                const vineyard::Catalogue& catalogue,
                                const Token& token,
                                const std::vector<std::string>& repeated,
                                VineFinder& finder,
                                season::StationNotes& notes);

} // namespace bullace::office
