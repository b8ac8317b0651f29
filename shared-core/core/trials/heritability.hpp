// How much of what is seen among accessions is theirs: heritability in the forms that an unbalanced
// trial allows.
#pragma once

#include "core/trials/mixed_model.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::trials {

struct Heritability {
    std::string term;
    // 1 - mean variance of a difference of two predictions / (2 · variance).
    // Source  Cullis, Smith & Coombes 2006, J. Agric. Biol. Environ. Stat. 11:381-393.
    std::optional<double> cullis;
    // variance / (variance + mean variance of a difference of two adjusted means / 2), the term
    // fitted as fixed for the means. Source  Piepho & Möhring 2007, Genetics 177:1881-1888.
    std::optional<double> piepho;
    // variance / (variance + each other share of the mean of an accession's records): interactions
    // with the term over how many of their levels an accession has, the residual over its records;
    // harmonic means where accessions differ in these. Source  Hanson 1963 in Hanson & Robinson,
    // Statistical Genetics and Plant Breeding, NAS-NRC 982: 125-140 (cited from memory).
    std::optional<double> entryMean;
    std::optional<double> singlePlot; // the same with one record
    struct Divisor {
        std::string of;
        double value = 1;
    };
    std::vector<Divisor> divisors; // of entryMean
    double variance = 0;
    std::optional<double> meanVarianceOfPredictions;
    std::optional<double> meanVarianceOfMeans;
    std::optional<double> meanReliability;
    Remarks remarks;
};

// Of one random term of the model, which stands by itself there and is not related.
// fit     what fitMixed() gave for the same table and model, with errors of predictions.
// Errors  InvalidInput where the model has no such term, or those of fitMixed() with it as fixed.
[[nodiscard]] Result<Heritability> heritability(const TrialTable& table,
                                                const MixedSpec& spec,
                                                const MixedFit& fit,
                                                std::string_view term);

} // namespace bullace::trials
