#include "core/season/station_crop.hpp"

#include <algorithm>

namespace bullace::season {

using statistics::Estimate;

namespace {

constexpr std::int32_t kLagDays = 21;

int dayOfYear(std::int32_t day) {
    return day - dayOfDate(std::chrono::year(yearOfDay(day)) / 1 / 1) + 1;
}

double meanOf(const std::vector<double>& values) {
    double mean = 0;
    for (const double value : values) {
        mean += value / static_cast<double>(values.size());
    }
    return mean;
}

using ByAccession = std::map<std::size_t, Bearing>;

void addSamples(const StationNotes& notes, int year, ByAccession& bearing) {
    const auto each = [&](std::string_view descriptor, auto add) {
        for (const NumberNote& note : notes.notesOf(descriptor).numbers) {
            if (yearOfDay(note.day) == year) {
                add(bearing[notes.vines[note.vine].accession], note);
            }
        }
    };
    each("clusters",
         [](Bearing& of, const NumberNote& note) { of.clusters[note.vine].push_back(note.value); });
    each("berries-per-cluster",
         [](Bearing& of, const NumberNote& note) { of.berries[note.vine].push_back(note.value); });
    each("berry-weight", [](Bearing& of, const NumberNote& note) {
        of.weights[note.day][note.vine].push_back(note.value);
    });
}

void addPicks(const StationNotes& notes, int year, ByAccession& bearing) {
    const DescriptorNotes& yield = notes.notesOf("yield");
    std::map<std::pair<std::uint32_t, std::int32_t>, double> picked;
    for (const NumberNote& note : yield.numbers) {
        if (yearOfDay(note.day) == year) {
            picked[{note.vine, note.day}] += note.value;
        }
    }
    for (const auto& [at, kg] : picked) {
        bearing[notes.vines[at.first].accession].picks[at.first].push_back(
            {dateOfDay(at.second), kg, {}});
    }
    for (const MissNote& note : yield.missed) {
        if (yearOfDay(note.day) == year && !picked.contains({note.vine, note.day})) {
            bearing[notes.vines[note.vine].accession].picks[note.vine].push_back(
                {dateOfDay(note.day), {}, notes.words[note.word]});
        }
    }
}

std::optional<Estimate> meanOfVines(const std::map<std::uint32_t, fruit::VineSamples>& vines) {
    fruit::AccessionVines samples;
    for (const auto& [vine, values] : vines) {
        samples.push_back(values);
    }
    const auto summary = fruit::summaryOfVines(samples);
    return summary
               ? std::optional(Estimate{summary->mean, summary->standardError, summary->interval})
               : std::nullopt;
}

} // namespace

std::map<std::size_t, Bearing> bearingIn(const StationNotes& notes, int year) {
    ByAccession bearing;
    addSamples(notes, year, bearing);
    addPicks(notes, year, bearing);
    for (const WordNote& note : notes.notesOf("vine").words) {
        const std::string& word = notes.words[note.word];
        if (yearOfDay(note.day) == year && (word == "dead" || word == "missing")) {
            bearing[notes.vines[note.vine].accession].lost.insert(note.vine);
        }
    }
    return bearing;
}

LagPhase lagPhaseBefore(const StationNotes& notes, int year) {
    std::map<std::pair<std::uint32_t, int>, std::map<std::int32_t, std::vector<double>>> weighed;
    for (const NumberNote& note : notes.notesOf("berry-weight").numbers) {
        const int of = yearOfDay(note.day);
        if (of < year) {
            weighed[{note.vine, of}][note.day].push_back(note.value);
        }
    }
    LagPhase lag;
    std::vector<fruit::LagPhaseRecord> records;
    for (const auto& [vine, days] : weighed) {
        const auto& [first, early] = *days.begin();
        const auto& [last, late] = *days.rbegin();
        if (last - first >= kLagDays) {
            records.push_back({meanOf(early), meanOf(late)});
            lag.lastDayOfYear = std::max(lag.lastDayOfYear, dayOfYear(first));
        }
    }
    lag.factor = fruit::lagPhaseFactor(records);
    return lag;
}

std::optional<fruit::CropEstimate> cropOfVine(const Bearing& bearing, const LagPhase& lag) {
    if (bearing.weights.empty()) {
        return std::nullopt;
    }
    const std::int32_t last = bearing.weights.rbegin()->first;
    std::map<std::uint32_t, fruit::VineSamples> latest;
    for (const auto& [day, vines] : bearing.weights) {
        for (const auto& [vine, samples] : vines) {
            if (last - day < kLagDays) {
                latest[vine].insert(latest[vine].end(), samples.begin(), samples.end());
            }
        }
    }
    const auto clusters = meanOfVines(bearing.clusters);
    const auto berries = meanOfVines(bearing.berries);
    const auto weight = meanOfVines(latest);
    if (!clusters || !berries || !weight) {
        return std::nullopt;
    }
    const bool isInLagPhase = dayOfYear(last) <= lag.lastDayOfYear;
    return fruit::cropEstimate({{1, {}, {}},
                                *clusters,
                                *berries,
                                *weight,
                                isInLagPhase ? lag.factor.factor : std::nullopt});
}

} // namespace bullace::season
