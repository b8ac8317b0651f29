#include "core/season/station_pedigree.hpp"

namespace bullace::season {

Result<breeding::Pedigree> pedigreeOf(const StationNotes& notes) {
    std::vector<breeding::PedigreeLine> lines;
    for (const NotedAccession& accession : notes.accessions) {
        lines.push_back({accession.id, accession.mother, accession.father, lines.size() + 1});
    }
    return breeding::makePedigree(lines);
}

std::vector<breeding::FounderTaxa> founderTaxa(const StationNotes& notes,
                                               const breeding::Pedigree& pedigree) {
    std::vector<breeding::FounderTaxa> taxa;
    for (const NotedAccession& accession : notes.accessions) {
        const auto at = pedigree.find(accession.id);
        const bool isHybrid = accession.taxon.find("×") != std::string::npos;
        if (at && pedigree.isFounder(static_cast<std::size_t>(*at)) && !accession.taxon.empty() &&
            !isHybrid) {
            taxa.push_back({accession.id, {{accession.taxon, 1}}});
        }
    }
    return taxa;
}

std::vector<Related> relatedOf(const StationNotes& notes, const breeding::Pedigree& pedigree) {
    std::vector<std::size_t> kin(pedigree.size(), 0);
    for (std::size_t i = 0; i < pedigree.size(); ++i) {
        for (const std::int32_t parent : {pedigree.mother[i], pedigree.father[i]}) {
            if (parent != breeding::kUnknown) {
                ++kin[i];
                ++kin[static_cast<std::size_t>(parent)];
            }
        }
    }
    std::vector<Related> related;
    for (std::size_t i = 0; i < notes.accessions.size(); ++i) {
        const auto at = pedigree.find(notes.accessions[i].id);
        if (at && kin[static_cast<std::size_t>(*at)] > 0) {
            related.push_back({i, kin[static_cast<std::size_t>(*at)]});
        }
    }
    return related;
}

} // namespace bullace::season
