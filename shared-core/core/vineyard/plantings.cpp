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

// Misspelt positions stand last, so that they are seen rather than lost.
bool isBefore(const std::string& a, const std::string& b) {
    const auto first = readPosition(a);
    const auto second = readPosition(b);
    if (!first || !second) {
        return first.has_value() != second.has_value() ? first.has_value() : a < b;
    }
    return compareAlongRows(*first, *second) < 0;
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

std::vector<const Planting*> Plantings::standing(CivilDate date) const {
    std::vector<std::pair<const std::string*, const Planting*>> found;
    for (const auto& [position, place] : places_) {
        if (const Planting* planting = inPlace(place, date)) {
            found.emplace_back(&position, planting);
        }
    }
    std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
        return isBefore(*a.first, *b.first);
    });
    std::vector<const Planting*> plantings;
    plantings.reserve(found.size());
    for (const auto& [position, planting] : found) {
        plantings.push_back(planting);
    }
    return plantings;
}

} // namespace bullace::vineyard
