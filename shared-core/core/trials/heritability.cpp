#include "core/trials/heritability.hpp"

#include <algorithm>
#include <set>

namespace bullace::trials {

namespace {

const RandomTerm* termOf(const MixedSpec& spec, std::string_view name) {
    const auto found = std::ranges::find_if(
        spec.random, [name](const RandomTerm& term) { return term.called() == name; });
    return found == spec.random.end() ? nullptr : &*found;
}

// The rows that the model has, with the term's levels combined to one factor.
struct Entries {
    TrialTable table;
    Factor entry;
};

Entries entriesOf(const TrialTable& table, const MixedSpec& spec, const RandomTerm& term) {
    std::vector<Term> terms = spec.fixed;
    for (const RandomTerm& random : spec.random) {
        terms.push_back(random.factors);
    }
    Entries entries;
    entries.table = rowsOf(table, completeRows(table, terms).value());
    std::vector<const Factor*> factors;
    for (const std::string& name : term.factors) {
        factors.push_back(entries.table.factor(name));
    }
    entries.entry = combined(factors);
    return entries;
}

// The harmonic mean, over entries, of how many different numbers each has.
double harmonicMean(const Factor& entry, const std::vector<std::uint32_t>& of) {
    std::vector<std::set<std::uint32_t>> seen(entry.levels.size());
    for (std::size_t row = 0; row < of.size(); ++row) {
        seen[entry.of[row]].insert(of[row]);
    }
    double sum = 0;
    for (const auto& each : seen) {
        sum += 1 / static_cast<double>(each.size());
    }
    return static_cast<double>(seen.size()) / sum;
}

// Over how much of it the mean of an entry's records averages; nothing where the term is no
// interaction with the entry, and falls out of differences.
std::optional<double>
divisorOf(const Entries& entries, const RandomTerm& entry, const RandomTerm& other) {
    std::vector<const Factor*> rest;
    std::size_t shared = 0;
    for (const std::string& name : other.factors) {
        if (std::ranges::find(entry.factors, name) != entry.factors.end()) {
            ++shared;
        } else {
            rest.push_back(entries.table.factor(name));
        }
    }
    if (shared < entry.factors.size() || rest.empty()) {
        return {};
    }
    return harmonicMean(entries.entry, combined(rest).of);
}

void addEntryMean(const TrialTable& table,
                  const MixedSpec& spec,
                  const RandomTerm& entry,
                  const MixedFit& fit,
                  Heritability& result) {
    const Entries entries = entriesOf(table, spec, entry);
    double ofMean = 0;
    double ofOne = 0;
    const auto add = [&](const std::string& name, double divisor) {
        const double variance = fit.variance(name)->value;
        result.divisors.push_back({name, divisor});
        ofMean += variance / divisor;
        ofOne += variance;
    };
    for (const RandomTerm& other : spec.random) {
        const bool isItself = other.called() == entry.called();
        const auto divisor = isItself ? std::nullopt : divisorOf(entries, entry, other);
        if (divisor) {
            add(other.called(), *divisor);
        }
    }
    std::vector<std::uint32_t> own(entries.entry.of.size());
    for (std::uint32_t row = 0; row < own.size(); ++row) {
        own[row] = row;
    }
    add("residual", harmonicMean(entries.entry, own));
    result.entryMean = result.variance / (result.variance + ofMean);
    result.singlePlot = result.variance / (result.variance + ofOne);
}

Status addPiepho(const TrialTable& table,
                 const MixedSpec& spec,
                 const RandomTerm& entry,
                 Heritability& result) {
    MixedSpec fixed = spec;
    std::erase_if(fixed.random,
                  [&](const RandomTerm& term) { return term.called() == entry.called(); });
    fixed.fixed.push_back(entry.factors);
    const auto fit = fitMixed(table, fixed, {{}, false, false, false});
    if (!fit) {
        return fit.error();
    }
    if (fit->fixedMeans.empty() || fit->fixedMeans.back().term != termName(entry.factors)) {
        return {};
    }
    result.meanVarianceOfMeans = fit->fixedMeans.back().meanVarianceOfDifference;
    result.piepho = result.variance / (result.variance + *result.meanVarianceOfMeans / 2);
    return {};
}

void addReliability(const RandomPredictions& predictions, Heritability& result) {
    double sum = 0;
    for (const Prediction& each : predictions.levels) {
        sum += each.reliability.value_or(0);
    }
    result.meanReliability = sum / static_cast<double>(predictions.levels.size());
    result.meanVarianceOfPredictions = predictions.meanVarianceOfDifference;
    if (result.meanVarianceOfPredictions) {
        result.cullis = 1 - *result.meanVarianceOfPredictions / (2 * result.variance);
    }
}

} // namespace

Result<Heritability> heritability(const TrialTable& table,
                                  const MixedSpec& spec,
                                  const MixedFit& fit,
                                  std::string_view term) {
    const RandomTerm* entry = termOf(spec, term);
    const RandomPredictions* predictions = fit.predictionsOf(term);
    if (entry == nullptr || predictions == nullptr || !entry->slopes.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "The model has no random term \"" + std::string(term) + "\" without slopes.",
                     {}};
    }
    Heritability result;
    result.term = term;
    result.variance = fit.variance(term)->value;
    if (result.variance <= 0) {
        result.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                   "%1: no variance was found, and nothing that is "
                                                   "inherited can be told."),
                                  {std::string(term)}});
        return result;
    }
    addReliability(*predictions, result);
    if (entry->related) {
        result.cullis.reset();
        result.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                   "%1 is related through a pedigree: of each, the "
                                                   "reliability tells how much is known."),
                                  {std::string(term)}});
        return result;
    }
    addEntryMean(table, spec, *entry, fit, result);
    if (const auto added = addPiepho(table, spec, *entry, result); !added) {
        return added.error();
    }
    return result;
}

} // namespace bullace::trials
