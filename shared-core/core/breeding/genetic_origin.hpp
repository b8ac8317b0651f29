// Where the genes of an accession come from by its pedigree: founders, species, and how many
// generations are known. All are expectations over Mendelian sampling.
#pragma once

#include "core/base/remark.hpp"
#include "core/breeding/pedigree.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::breeding {

struct FounderShare {
    std::int32_t founder = kUnknown;
    double share = 0; // above 0
};

// Shares of the genes of a group, each member counted alike; they and `unknownShare` add up to 1.
struct FounderShares {
    std::vector<FounderShare> founders; // the greatest first, then by index
    double unknownShare = 0;            // from unknown parents of individuals with one known
    // 1 / (sum of squared shares): as many founders contributing alike would keep as much (Lacy
    // 1989, Zoo Biol. 8:111-123). Unknown parents count together as one founder, so it is too low
    // where they are several.
    double effectiveFounders = 0;
};

// By one pass up the pedigree, whatever the group's size. `group` has at least one member; one that
// is named twice counts twice.
[[nodiscard]] FounderShares founderShares(const Pedigree& pedigree,
                                          std::span<const std::int32_t> group);

struct Generations {
    std::int32_t complete = 0; // generations of which all ancestors are known
    std::int32_t most = 0;     // the longest path to a founder
    // Sum over known ancestors of (1/2)^generations: Maignel, Boichard & Verrier 1996, Interbull
    // Bull. 14:49-54.
    double equivalent = 0;
};

// One for each individual.
[[nodiscard]] std::vector<Generations> generations(const Pedigree& pedigree);

// The taxon of a founder, or its shares if it is a hybrid itself; shares from 0, together at most
// 1, the rest is unknown.
struct TaxonShare {
    std::string taxon;
    double share = 1;
};
struct FounderTaxa {
    std::string id;
    std::vector<TaxonShare> taxa;
};

struct SpeciesShares {
    std::vector<std::string> taxa; // each once, in the order of their bytes
    std::vector<double> shares;    // of individual i and taxon t at i * taxa.size() + t
    std::vector<double> unknown;   // of each individual: 1 less its shares
    Remarks remarks;               // founders without a taxon, taxa not made use of

    [[nodiscard]] double of(std::size_t individual, std::size_t taxon) const {
        return shares[individual * taxa.size() + taxon];
    }
};

// The share of each species in every accession: that of founders as given, of all others the mean
// of their parents'. What comes from unknown parents and founders without a taxon is unknown, and
// not taken for anything. A taxon given for somebody whose parents are known is not made use of:
// parents decide, and a remark says so. Errors  InvalidInput where an id is not in the pedigree, is
// given twice, or shares are below 0 or
//         add up to more than 1.
[[nodiscard]] Result<SpeciesShares> speciesShares(const Pedigree& pedigree,
                                                  std::span<const FounderTaxa> founders);

} // namespace bullace::breeding
