// What a selection meeting looks at: each candidate's predictions of the descriptors that count,
// what they come to together, and how sure it is that it is among the best.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/season/station_notes.hpp"
#include "core/trials/mixed_model.hpp"
#include "core/vineyard/block.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::season {

// What a descriptor counts for: above 0 where more of it is better. A weight is for one genetic
// standard deviation of the descriptor, so that units do not matter.
struct WishedDescriptor {
    std::string descriptor;
    double weight = 1;
};

// "yield 2, soluble-solids 1, rot -1": names with numbers, commas between; a name alone counts 1.
// Errors  InvalidInput for a part that is no such pair, a name twice, or nothing at all.
[[nodiscard]] Result<std::vector<WishedDescriptor>> readWishes(const std::string& text);

// One descriptor of one candidate.
struct Evidence {
    bool isKnown = false; // predicted; else nothing of the candidate was noted
    double value = 0;     // what it would be like over all seasons and places
    double standardError = 0;
    std::optional<double> reliability{};
    std::size_t rank = 0; // among the candidates, 1 is the best; 0 where it is not known
    std::size_t records = 0;
};

struct Candidate {
    std::size_t accession = 0;      // in the notes
    std::vector<Evidence> evidence; // in the order of the wishes
    // The weighted sum of predictions over genetic standard deviations; nothing where nothing of
    // the candidate was noted.
    std::optional<double> merit{};
    double meritError = 0;
    std::size_t rank = 0;
    double amongBest = 0; // the probability that it truly is among the best
};

// How one descriptor was predicted.
struct WishedResult {
    std::string descriptor;
    double weight = 0;
    std::size_t records = 0;
    double geneticVariance = 0; // 0: it tells nothing apart and counts for nothing
    std::size_t open = 0;       // conflicts left out
    Remarks remarks;
};

struct SelectionList {
    std::vector<Candidate> candidates; // the best first, those without a merit last
    std::vector<WishedResult> wishes;
    std::size_t best = 0; // of how many amongBest speaks
    Remarks remarks;
};

// The predictions come from all accessions of the station that were noted, by mixed models, one for
// each descriptor; only `candidates` (indices of accessions) are listed. Errors of a merit are
// those of its predictions as if these were independent of one another. related  Through the
// pedigree, or null. Errors   InvalidInput where there is no wish; those of the models are remarks,
// not errors. Source   Hazel 1943, Genetics 28:476-490: predictions, each weighted by what it is
// worth.
[[nodiscard]] Result<SelectionList> selectionList(const StationNotes& notes,
                                                  std::span<const vineyard::Block> blocks,
                                                  std::span<const std::size_t> candidates,
                                                  std::span<const WishedDescriptor> wishes,
                                                  std::size_t best,
                                                  std::shared_ptr<const trials::Related> related);

} // namespace bullace::season
