#include "office/vine_finder.hpp"

#include <limits>

namespace bullace::office {

using season::kNoVine;

std::uint32_t VineFinder::at(std::string_view position, std::int32_t day) {
    key_.assign(position);
    std::vector<Stand>& stands = stands_[key_];
    for (const Stand& stand : stands) {
        if (stand.from <= day && day <= stand.until) {
            return stand.vine;
        }
    }
    stands.push_back(standOn(position, day));
    return stands.back().vine;
}

VineFinder::Stand VineFinder::standOn(std::string_view position, std::int32_t day) {
    Stand stand{day, day, kNoVine};
    const vineyard::Plantings& plantings = catalogue_.plantings();
    const vineyard::Planting* planting = plantings.at(position, season::dateOfDay(day));
    if (planting == nullptr) {
        return stand;
    }
    const auto [found, isNew] =
        plantings_.emplace(planting, static_cast<std::uint32_t>(notes_.vines.size()));
    if (isNew) {
        notes_.vines.push_back({planting->position, accession(planting->accession)});
    }
    stand.vine = found->second;
    // A place keeps its name until it is renumbered; where none ever was, the answer holds for all
    // days of the planting.
    if (plantings.renumberings().isEmpty()) {
        const auto last = plantings.lastDay(*planting);
        stand.from = season::dayOfDate(planting->from);
        stand.until = last ? season::dayOfDate(*last) : std::numeric_limits<std::int32_t>::max();
    }
    return stand;
}

std::size_t VineFinder::accession(const std::string& id) {
    const auto [found, isNew] = accessions_.emplace(id, notes_.accessions.size());
    if (isNew) {
        season::NotedAccession accession{id, catalogue_.accessionWords(id), {}, false, {}};
        const auto known = catalogue_.accessions().find(id);
        if (known != catalogue_.accessions().end()) {
            accession.flowerSex = known->second.flowerSex;
        }
        notes_.accessions.push_back(std::move(accession));
    }
    return found->second;
}

} // namespace bullace::office
