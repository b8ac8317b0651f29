#include "core/season/station_pedigree.hpp"

namespace bullace::season {

Result<breeding::Pedigree> pedigreeOf(const StationNotes& notes) {
    std::vector<breeding::PedigreeLine> lines;
    for (const NotedAccession& accession : notes.accessions) {
        lines.push_back({accession.id, accession.mother, accession.father, lines.size() + 1});
    }
    return breeding::makePedigree(lines);
}

} // namespace bullace::season
