// Which vine stood at a position on a day, asked a million times while a station is read.
#pragma once

#include "core/season/station_notes.hpp"
#include "core/vineyard/catalogue.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace bullace::office {

// Takes vines and accessions up into `notes` as they are met; both must outlive it.
class VineFinder {
public:
    VineFinder(const vineyard::Catalogue& catalogue, season::StationNotes& notes)
        : catalogue_(catalogue),
          notes_(notes) {}

    // Its index in the notes; kNoVine where the place was empty.
    [[nodiscard]] std::uint32_t at(std::string_view position, std::int32_t day);
    // The accession's index in the notes.
    std::size_t accession(const std::string& id);

private:
    // A vine at a position during some days, both included.
    struct Stand {
        std::int32_t from = 0;
        std::int32_t until = 0;
        std::uint32_t vine = season::kNoVine;
    };
    [[nodiscard]] Stand standOn(std::string_view position, std::int32_t day);

    const vineyard::Catalogue& catalogue_;
    season::StationNotes& notes_;
    std::unordered_map<std::string, std::size_t> accessions_;
    std::unordered_map<std::string, std::vector<Stand>> stands_;
    std::unordered_map<const vineyard::Planting*, std::uint32_t> plantings_;
    std::string key_;
};

} // namespace bullace::office
