#include "core/season/station_notes.hpp"

#include <algorithm>
#include <limits>
#include <set>

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

std::vector<int> yearsOf(const StationNotes& notes, std::span<const std::string_view> descriptors) {
    std::set<int> years;
    std::int32_t last = std::numeric_limits<std::int32_t>::min();
    // Notes of one day come in runs.
    const auto add = [&years, &last](const auto& list) {
        for (const auto& note : list) {
            if (note.day != last) {
                last = note.day;
                years.insert(yearOfDay(last));
            }
        }
    };
    for (const std::string_view descriptor : descriptors) {
        const DescriptorNotes& of = notes.notesOf(descriptor);
        add(of.numbers);
        add(of.records);
        add(of.words);
    }
    return {years.rbegin(), years.rend()};
}

StationNotes byTaxon(const StationNotes& notes, const std::string& withoutTaxon) {
    StationNotes by;
    std::map<std::string, std::size_t> taxa;
    for (const NotedAccession& accession : notes.accessions) {
        const std::string& taxon = accession.taxon.empty() ? withoutTaxon : accession.taxon;
        const auto [found, isNew] = taxa.emplace(taxon, by.accessions.size());
        if (isNew) {
            by.accessions.push_back({taxon, taxon, taxon, false, {}});
        }
        by.vines.push_back({accession.id, found->second});
    }
    for (const auto& [descriptor, of] : notes.of) {
        std::vector<NumberNote>& numbers = by.of[descriptor].numbers;
        numbers = of.numbers;
        for (NumberNote& note : numbers) {
            note.vine = static_cast<std::uint32_t>(notes.vines[note.vine].accession);
        }
    }
    return by;
}

} // namespace bullace::season
