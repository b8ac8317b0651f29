// Passes up the pedigree for founders, down it for species and generations.
#include "core/breeding/genetic_origin.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <map>

namespace bullace::breeding {

namespace {

constexpr double kRounding = 1e-9; // of shares that were typed with a few decimals

std::size_t at(std::int32_t i) {
    return static_cast<std::size_t>(i);
}

std::array<std::int32_t, 2> parentsOf(const Pedigree& pedigree, std::size_t i) {
    return {pedigree.mother[i], pedigree.father[i]};
}

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), ""};
}

Status check(const FounderTaxa& founder) {
    double sum = 0;
    for (const TaxonShare& of : founder.taxa) {
        // Written so that NaN is refused too.
        if (!(of.share >= 0 && of.share <= 1 + kRounding)) {
            return wrong("The share of " + of.taxon + " in " + founder.id +
                         " is not between 0 and 1.");
        }
        sum += of.share;
    }
    return sum <= 1 + kRounding
               ? Status()
               : wrong("The shares of the taxa in " + founder.id + " add up to more than 1.");
}

using Given = std::map<std::int32_t, const FounderTaxa*>;

Result<Given> givenTaxa(const Pedigree& pedigree, std::span<const FounderTaxa> founders) {
    Given given;
    for (const FounderTaxa& founder : founders) {
        const auto i = pedigree.find(founder.id);
        if (!i) {
            return wrong(founder.id + " has a taxon, but is not in the pedigree.");
        }
        if (const Status sound = check(founder); !sound) {
            return sound.error();
        }
        if (!given.emplace(*i, &founder).second) {
            return wrong("The taxon of " + founder.id + " is given twice.");
        }
    }
    return given;
}

} // namespace

FounderShares founderShares(const Pedigree& pedigree, std::span<const std::int32_t> group) {
    assert(!group.empty());
    std::vector<double> share(pedigree.size(), 0);
    for (const std::int32_t i : group) {
        share[at(i)] += 1 / static_cast<double>(group.size());
    }
    FounderShares result;
    double squares = 0;
    for (std::size_t i = pedigree.size(); i-- > 0;) {
        if (share[i] == 0) {
            continue;
        }
        if (pedigree.isFounder(i)) {
            result.founders.push_back({static_cast<std::int32_t>(i), share[i]});
            squares += share[i] * share[i];
            continue;
        }
        for (const std::int32_t parent : parentsOf(pedigree, i)) {
            (parent == kUnknown ? result.unknownShare : share[at(parent)]) += share[i] / 2;
        }
    }
    std::ranges::sort(result.founders, [](const FounderShare& a, const FounderShare& b) {
        return a.share != b.share ? a.share > b.share : a.founder < b.founder;
    });
    result.effectiveFounders = 1 / (squares + result.unknownShare * result.unknownShare);
    return result;
}

std::vector<Generations> generations(const Pedigree& pedigree) {
    std::vector<Generations> all(pedigree.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto parents = parentsOf(pedigree, i);
        std::int32_t complete = -1;
        for (const std::int32_t parent : parents) {
            const Generations of = parent == kUnknown ? Generations{-1, -1, -1} : all[at(parent)];
            all[i].most = std::max(all[i].most, of.most + 1);
            all[i].equivalent += (of.equivalent + 1) / 2;
            complete = complete == -1 ? of.complete + 1 : std::min(complete, of.complete + 1);
        }
        all[i].complete = complete;
    }
    return all;
}

Result<SpeciesShares> speciesShares(const Pedigree& pedigree,
                                    std::span<const FounderTaxa> founders) {
    const auto given = givenTaxa(pedigree, founders);
    if (!given) {
        return given.error();
    }
    SpeciesShares result;
    std::map<std::string, std::size_t> place;
    for (const FounderTaxa& founder : founders) {
        for (const TaxonShare& of : founder.taxa) {
            place.emplace(of.taxon, 0);
        }
    }
    for (auto& [taxon, t] : place) {
        t = result.taxa.size();
        result.taxa.push_back(taxon);
    }
    const std::size_t width = result.taxa.size();
    result.shares.assign(pedigree.size() * width, 0);
    result.unknown.assign(pedigree.size(), 1);
    std::int64_t withoutTaxon = 0;
    for (std::size_t i = 0; i < pedigree.size(); ++i) {
        const auto own = given->find(static_cast<std::int32_t>(i));
        if (!pedigree.isFounder(i)) {
            if (own != given->end()) {
                result.remarks.push_back(
                    {BULLACE_SENTENCE("Remark",
                                      "The taxon given for %1 was not made use of: the shares of "
                                      "its parents decide."),
                     {pedigree.names[i]}});
            }
            result.unknown[i] = 0;
            for (const std::int32_t parent : parentsOf(pedigree, i)) {
                result.unknown[i] += parent == kUnknown ? 0.5 : result.unknown[at(parent)] / 2;
                for (std::size_t t = 0; parent != kUnknown && t < width; ++t) {
                    result.shares[i * width + t] += result.of(at(parent), t) / 2;
                }
            }
        } else if (own != given->end()) {
            for (const TaxonShare& of : own->second->taxa) {
                result.shares[i * width + place[of.taxon]] += of.share;
                result.unknown[i] -= of.share;
            }
            result.unknown[i] = std::max(result.unknown[i], 0.0);
        } else {
            ++withoutTaxon;
        }
    }
    if (withoutTaxon > 0) {
        result.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                   "Founders without a taxon: %1. What comes from "
                                                   "them is counted as of unknown species."),
                                  {withoutTaxon}});
    }
    return result;
}

} // namespace bullace::breeding
