// The station's accessions with their parents as a pedigree, and what is known of its founders.
#pragma once

#include "core/breeding/genetic_origin.hpp"
#include "core/breeding/pedigree.hpp"
#include "core/season/station_notes.hpp"

namespace bullace::season {

// Every accession is an individual, called by its id. A parent that is no accession of the station
// is a founder.
// Errors  InvalidInput where an accession is its own ancestor, by name.
[[nodiscard]] Result<breeding::Pedigree> pedigreeOf(const StationNotes& notes);

// The taxon of each founder of the pedigree that the office has one of. Hybrids ("×" in the name)
// are left out: nobody said which share of them is of which species.
[[nodiscard]] std::vector<breeding::FounderTaxa> founderTaxa(const StationNotes& notes,
                                                             const breeding::Pedigree& pedigree);

// Those that have a known parent or are a parent, as places in the notes, in their order; and of
// how many parents and offspring each is one.
struct Related {
    std::size_t accession = 0;
    std::size_t kin = 0; // known parents and offspring
};
[[nodiscard]] std::vector<Related> relatedOf(const StationNotes& notes,
                                             const breeding::Pedigree& pedigree);

} // namespace bullace::season
