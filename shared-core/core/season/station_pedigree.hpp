// The station's accessions with their parents as a pedigree.
#pragma once

#include "core/breeding/pedigree.hpp"
#include "core/season/station_notes.hpp"

namespace bullace::season {

// Every accession is an individual, called by its id. A parent that is no accession of the station
// is a founder.
// Errors  InvalidInput where an accession is its own ancestor, by name.
[[nodiscard]] Result<breeding::Pedigree> pedigreeOf(const StationNotes& notes);

} // namespace bullace::season
