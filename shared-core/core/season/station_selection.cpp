#include "core/season/station_selection.hpp"

#include "core/base/numbers.hpp"
#include "core/breeding/selection.hpp"
#include "core/season/station_merit.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace bullace::season {

namespace {

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), {}};
}

std::string trimmed(const std::string& text) {
    const std::size_t from = text.find_first_not_of(' ');
    const std::size_t to = text.find_last_not_of(' ');
    return from == std::string::npos ? std::string() : text.substr(from, to - from + 1);
}

Result<WishedDescriptor> readWish(const std::string& part) {
    const std::size_t space = part.rfind(' ');
    const auto number =
        space == std::string::npos ? std::nullopt : readTypedNumber(part.substr(space + 1));
    WishedDescriptor wish{number ? trimmed(part.substr(0, space)) : part, number.value_or(1)};
    if (wish.descriptor.empty() || wish.descriptor.find(' ') != std::string::npos ||
        !std::isfinite(wish.weight)) {
        return wrong("\"" + part +
                     "\" is not a descriptor's code with what it counts for, like \"yield 2\".");
    }
    return wish;
}

// What counts, and how it was predicted.
struct Wished {
    WishedResult told;
    PredictedDescriptor predicted;
};

Wished predict(const StationNotes& notes,
               std::span<const vineyard::Block> blocks,
               const WishedDescriptor& wish,
               const std::shared_ptr<const trials::Related>& related) {
    Wished wished;
    wished.told.descriptor = wish.descriptor;
    wished.told.weight = wish.weight;
    auto predicted =
        predictDescriptor(notes, blocks, wish.descriptor, {PlaceTerm::Blocks, related});
    if (!predicted) {
        wished.told.remarks.push_back({BULLACE_SENTENCE("Remark", "%1 is not predicted. %2"),
                                       {wish.descriptor, predicted.error().message}});
        return wished;
    }
    wished.told.open = predicted->open;
    wished.told.records = predicted->rows;
    wished.told.remarks = std::move(predicted->remarks);
    wished.told.geneticVariance = predicted->variance;
    wished.predicted = std::move(*predicted);
    return wished;
}

Evidence evidenceOf(const PredictedDescriptor& predicted, const std::string& id) {
    Evidence evidence;
    const auto found = predicted.of.find(id);
    const auto records = predicted.records.find(id);
    evidence.records = records == predicted.records.end() ? 0 : records->second;
    if (found == predicted.of.end()) {
        return evidence;
    }
    evidence.isKnown = true;
    evidence.value = found->second.total;
    evidence.standardError = found->second.totalStandardError;
    evidence.reliability = found->second.reliability;
    return evidence;
}

// What the predictions come to together.
void weigh(const std::vector<Wished>& wished, const std::string& id, Candidate& candidate) {
    double merit = 0;
    double variance = 0;
    bool isKnown = false;
    for (const Wished& each : wished) {
        const double genetic = each.told.geneticVariance;
        const auto found = each.predicted.of.find(id);
        if (!(genetic > 0)) {
            continue;
        }
        const double weight = each.told.weight / std::sqrt(genetic);
        if (found ==
            each.predicted.of.end()) { // nothing is known: it is expected to be like the mean
            variance += weight * weight * genetic;
            continue;
        }
        isKnown = true;
        merit += weight * found->second.value;
        variance += weight * weight * found->second.predictionErrorVariance;
    }
    if (isKnown) {
        candidate.merit = merit;
        candidate.meritError = std::sqrt(variance);
    }
}

// Rank 1 has the greatest value, or the least where less is better.
void rankEvidence(std::size_t wish, double weight, std::vector<Candidate>& candidates) {
    std::vector<Candidate*> known;
    for (Candidate& candidate : candidates) {
        if (candidate.evidence[wish].isKnown) {
            known.push_back(&candidate);
        }
    }
    std::ranges::stable_sort(known, [&](const Candidate* one, const Candidate* other) {
        return weight * one->evidence[wish].value > weight * other->evidence[wish].value;
    });
    for (std::size_t i = 0; i < known.size(); ++i) {
        known[i]->evidence[wish].rank = i + 1;
    }
}

void rankMerits(std::size_t best, SelectionList& list) {
    std::ranges::stable_sort(list.candidates, [](const Candidate& one, const Candidate& other) {
        return one.merit.value_or(-1e300) > other.merit.value_or(-1e300);
    });
    std::vector<double> merits;
    std::vector<double> variances;
    for (Candidate& candidate : list.candidates) {
        if (candidate.merit) {
            merits.push_back(*candidate.merit);
            variances.push_back(candidate.meritError * candidate.meritError);
            candidate.rank = merits.size();
        }
    }
    list.best = std::min(best, merits.size());
    if (list.best == 0) {
        return;
    }
    const auto among = breeding::amongBest(merits, variances, list.best);
    for (std::size_t i = 0; among && i < merits.size(); ++i) {
        list.candidates[i].amongBest = (*among)[i].probability;
    }
}

} // namespace

Result<std::vector<WishedDescriptor>> readWishes(const std::string& text) {
    std::vector<WishedDescriptor> wishes;
    std::set<std::string> seen;
    std::size_t from = 0;
    for (std::size_t to = 0; to != std::string::npos; from = to + 1) {
        to = text.find(',', from);
        const std::string part = trimmed(text.substr(from, to - from));
        if (part.empty()) {
            continue;
        }
        auto wish = readWish(part);
        if (!wish) {
            return wish.error();
        }
        if (!seen.insert(wish->descriptor).second) {
            return wrong("\"" + wish->descriptor + "\" is named twice.");
        }
        wishes.push_back(std::move(*wish));
    }
    if (wishes.empty()) {
        return wrong("Name at least one descriptor that counts, like \"yield 2, rot -1\".");
    }
    return wishes;
}

Result<SelectionList> selectionList(const StationNotes& notes,
                                    std::span<const vineyard::Block> blocks,
                                    std::span<const std::size_t> candidates,
                                    std::span<const WishedDescriptor> wishes,
                                    std::size_t best,
                                    std::shared_ptr<const trials::Related> related) {
    if (wishes.empty()) {
        return wrong("Name at least one descriptor that counts, like \"yield 2, rot -1\".");
    }
    std::vector<Wished> wished;
    SelectionList list;
    for (const WishedDescriptor& wish : wishes) {
        wished.push_back(predict(notes, blocks, wish, related));
        list.wishes.push_back(wished.back().told);
    }
    for (const std::size_t accession : candidates) {
        Candidate candidate;
        candidate.accession = accession;
        for (const Wished& each : wished) {
            candidate.evidence.push_back(
                evidenceOf(each.predicted, notes.accessions[accession].id));
        }
        weigh(wished, notes.accessions[accession].id, candidate);
        list.candidates.push_back(std::move(candidate));
    }
    for (std::size_t wish = 0; wish < wishes.size(); ++wish) {
        rankEvidence(wish, wishes[wish].weight, list.candidates);
    }
    rankMerits(best, list);
    list.remarks.push_back({BULLACE_SENTENCE("Remark",
                                             "Errors of several descriptors are taken as "
                                             "independent of one another."),
                            {}});
    return list;
}

} // namespace bullace::season
