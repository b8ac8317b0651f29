#include "core/season/station_notes.hpp"

#include <algorithm>

namespace bullace::season {

const DescriptorNotes& StationNotes::notesOf(std::string_view descriptor) const {
    static const DescriptorNotes none;
    const auto found = of.find(descriptor);
    return found == of.end() ? none : found->second;
}

std::optional<std::size_t> StationNotes::accession(std::string_view id) const {
    const auto found = std::ranges::find(accessions, id, &NotedAccession::id);
    return found == accessions.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(found - accessions.begin()));
}

std::vector<std::vector<std::uint32_t>> StationNotes::vinesByAccession() const {
    std::vector<std::vector<std::uint32_t>> by(accessions.size());
    for (std::size_t vine = 0; vine < vines.size(); ++vine) {
        by[vines[vine].accession].push_back(static_cast<std::uint32_t>(vine));
    }
    return by;
}

} // namespace bullace::season
