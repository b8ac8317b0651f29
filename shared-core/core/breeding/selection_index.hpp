// Selection on several traits at once: indices from variances and economic weights, their expected
// response, and the index of candidates of which not everything was measured.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::breeding {

// Variances and covariances of t traits, row by row (t × t, symmetric), in products of the traits'
// units: of the phenotypes as they are compared (of entry means, say) and of the additive genetic
// values.
struct TraitVariances {
    std::vector<std::string> traits;
    std::vector<double> phenotypic;
    std::vector<double> genetic;
};

// What is done with a matrix that is no matrix of variances, as estimates by pairs of traits often
// give: refused, or its eigenvalues (of the correlations) below 1e-4 raised to that, which a remark
// says. Source of bending  Hayes & Hill 1981, Biometrics 37:483-493; by raising eigenvalues:
// Jorjani, Klei & Emanuelson 2003, J. Dairy Sci. 86:677-679.
enum class Bending { Refused, Allowed };

struct SelectionIndex {
    std::string method; // as it is cited
    std::vector<std::string> traits;
    std::vector<double> coefficients; // b: the index is the sum of b times the trait's deviation
    std::vector<double> weights;      // w of the objective; none of desired gains
    double variance = 0;              // of the index, b'Pb
    std::optional<double> objectiveVariance; // w'Gw; nothing without weights
    std::optional<double> accuracy;          // correlation of index and objective
    std::optional<double> heritability;      // b'Gb / b'Pb
    // Per unit of selection intensity: in the objective (nothing without weights), and in each
    // trait, in its unit. Zero where the index has no variance.
    std::optional<double> objectiveResponse;
    std::vector<double> traitResponse;
    TraitVariances variances; // as they were used, bent where they had to be
    Remarks remarks;
};

// b = P^-1 G w. Source  Smith 1936, Ann. Eugen. 7:240-250; Hazel 1943, Genetics 28:476-490.
// weights  one a trait: the worth of one unit of it, negative where less is better.
// Errors of this and the following functions  InvalidInput where sizes do not agree, a number is
// not
//         finite, a matrix is not symmetric, a variance is not above 0 (genetic: below 0), or a
//         matrix is not positive definite and may not be bent.
[[nodiscard]] Result<SelectionIndex> smithHazel(const TraitVariances& variances,
                                                std::span<const double> weights,
                                                Bending bending = Bending::Refused);

// b = w: weights put directly on the phenotypes. Source  Williams 1962, Biometrics 18:375-393.
[[nodiscard]] Result<SelectionIndex> baseIndex(const TraitVariances& variances,
                                               std::span<const double> weights,
                                               Bending bending = Bending::Refused);

// b = G^-1 d: gains in the proportions of d, in the traits' units. G must be positive definite.
// Source  Pesek & Baker 1969, Can. J. Plant Sci. 49:803-804.
[[nodiscard]] Result<SelectionIndex> desiredGains(const TraitVariances& variances,
                                                  std::span<const double> gains,
                                                  Bending bending = Bending::Refused);

// Smith and Hazel's index with no expected change in the traits `held` (their indices, each once,
// fewer than all). Source  Kempthorne & Nordskog 1959, Biometrics 15:10-19.
[[nodiscard]] Result<SelectionIndex> restrictedIndex(const TraitVariances& variances,
                                                     std::span<const double> weights,
                                                     std::span<const std::size_t> held,
                                                     Bending bending = Bending::Refused);

struct IndexCandidate {
    std::string id;
    std::vector<std::optional<double>> values; // one a trait
};

struct CandidateIndex {
    std::string id;
    std::optional<double> index;     // nothing where nothing was measured
    std::optional<double> accuracy;  // from the traits measured; nothing without weights
    std::size_t measured = 0;        // traits
    std::optional<std::size_t> rank; // from 1; equal indices share the better one
};

struct RankedCandidates {
    std::vector<CandidateIndex> candidates; // the best first, those without an index last, by name
    std::vector<double> means;              // what the traits were centred at
    Remarks remarks;
};

// The index of each candidate. A trait that was not measured enters as its expectation given those
// that were (phenotypic variances), so a candidate gains or loses nothing by it but accuracy: a
// Smith-Hazel index is then the one from the measured traits alone.
// means  of the traits, to centre at; empty: the mean of the candidates measured.
// Errors  InvalidInput where a candidate or the means have another number of values than the index
//         has traits, a value is not finite, or an id is there twice.
[[nodiscard]] Result<RankedCandidates> rankByIndex(const SelectionIndex& index,
                                                   std::span<const IndexCandidate> candidates,
                                                   std::span<const double> means = {});

// Selection intensity: the mean of the selected in standard deviations, for a normal distribution
// cut at the best `share` (above 0, below 1) of endlessly many. Falconer & Mackay 1996, ch. 11.
[[nodiscard]] double selectionIntensity(double share);

// The best `selected` of `candidates`: the mean of the normal order statistics, exactly, by
// quadrature. 0 where all are selected; selected from 1 to candidates. Source  Burrows 1972,
// Biometrics 28:1091-1100, approximates it.
[[nodiscard]] double selectionIntensity(std::size_t selected, std::size_t candidates);

} // namespace bullace::breeding
