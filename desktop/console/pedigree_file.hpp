// A pedigree from CSV files, for the methods that need one.
#pragma once

#include "console/work.hpp"

#include "core/breeding/genetic_origin.hpp"

namespace bullace::console {

struct PedigreeFile {
    breeding::Pedigree pedigree;
    std::vector<breeding::FounderTaxa> taxa; // of the column taxon, if there
};

// Columns id, mother, father (or parent1, parent2 where the roles are not known), if there taxon.
// `clones`: columns id, genotype; no file where empty. Errors name file and line.
[[nodiscard]] Result<PedigreeFile>
readPedigree(const std::string& path, const std::string& clones, Terminal& terminal);

} // namespace bullace::console
