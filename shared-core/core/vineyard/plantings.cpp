#include "core/vineyard/plantings.hpp"

#include "core/vineyard/block.hpp"
#include "core/vineyard/position.hpp"

#include <algorithm>
#include <utility>

namespace bullace::vineyard {

namespace {

bool isEarlier(const Planting& a, const Planting& b) {
    return a.from < b.from;
}

// A place with its position, read once: all of a station's are put in order.
struct Standing {
    std::string_view name;
    std::optional<Position> position;
    const Planting* planting = nullptr;
};

// Misspelt positions stand last, so that they are seen rather than lost.
bool isBefore(const Standing& a, const Standing& b) {
    if (!a.position || !b.position) {
        return a.position.has_value() != b.position.has_value() ? a.position.has_value()
                                                                : a.name < b.name;
    }
    return compareAlongRows(*a.position, *b.position) < 0;
}

} // namespace

Plantings::Plantings(std::vector<Planting> plantings, Renumberings renumberings)
    : renumberings_(std::move(renumberings)) {
    std::stable_sort(plantings.begin(), plantings.end(), isEarlier);
    for (Planting& planting : plantings) {
        auto& place = places_[renumberings_.newest(planting.position, planting.from)];
        if (!place.empty() && place.back().from == planting.from) {
            place.back() = std::move(planting);
        } else {
            place.push_back(std::move(planting));
        }
    }
}

const Planting* Plantings::inPlace(const std::vector<Planting>& place, CivilDate date) const {
    const auto after = std::upper_bound(
        place.begin(), place.end(), date, [](CivilDate day, const Planting& planting) {
            return day < planting.from;
        });
    if (after == place.begin()) {
        return nullptr;
    }
    const Planting& last = *std::prev(after);
    return last.until && *last.until < date ? nullptr : &last;
}

const Planting* Plantings::at(std::string_view position, CivilDate date) const {
    return at(position, date, date);
}

const Planting* Plantings::at(std::string_view position, CivilDate written, CivilDate date) const {
    const auto place = places_.find(renumberings_.newest(position, written));
    return place == places_.end() ? nullptr : inPlace(place->second, date);
}

std::optional<CivilDate> Plantings::lastDay(const Planting& planting) const {
    const auto all = history(planting.position, planting.from);
    const auto next = std::upper_bound(all.begin(), all.end(), planting, isEarlier);
    if (next == all.end()) {
        return planting.until;
    }
    const CivilDate dayBefore = addDays(next->from, -1);
    return planting.until ? std::min(*planting.until, dayBefore) : dayBefore;
}

std::span<const Planting> Plantings::history(std::string_view position, CivilDate written) const {
    const auto place = places_.find(renumberings_.newest(position, written));
    return place == places_.end() ? std::span<const Planting>{} : std::span(place->second);
}

std::vector<const Planting*> Plantings::of(std::string_view accession) const {
    std::vector<const Planting*> found;
    for (const auto& [name, place] : places_) {
        for (const Planting& planting : place) {
            if (planting.accession == accession) {
                found.push_back(&planting);
            }
        }
    }
    return found;
}

std::map<std::string, CivilDate, std::less<>> Plantings::firstDays() const {
    std::map<std::string, CivilDate, std::less<>> first;
    for (const auto& [name, place] : places_) {
        for (const Planting& planting : place) {
            const auto [at, isNew] = first.emplace(planting.accession, planting.from);
            at->second = std::min(at->second, planting.from);
        }
    }
    return first;
}

std::vector<const Planting*> Plantings::standing(CivilDate date) const {
    std::vector<Standing> found;
    for (const auto& [position, place] : places_) {
        if (const Planting* planting = inPlace(place, date)) {
            found.push_back({position, readPosition(position), planting});
        }
    }
    std::sort(found.begin(), found.end(), isBefore);
    std::vector<const Planting*> plantings;
    plantings.reserve(found.size());
    for (const Standing& one : found) {
        plantings.push_back(one.planting);
    }
    return plantings;
}

} // namespace bullace::vineyard
