// What a pedigree says about likeness by descent: inbreeding, relationships and the inverse of
// their matrix. Unknown parents are taken as unrelated and not inbred, each time others; a pedigree
// that does not know them says so by its complete generations (genetic_origin.hpp).
#pragma once

#include "core/breeding/pedigree.hpp"
#include "core/statistics/sparse_symmetric.hpp"

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

namespace bullace::breeding {

// Coefficients of inbreeding F, 0 to 1, one for each individual; a selfed one's is (1 + F of its
// parent)/2. Parents before offspring, as makePedigree() gives them.
// Source  by columns of the relationship matrix among parents only: Sargolzaei, Iwaisaki & Colleau
//         2005, J. Anim. Breed. Genet. 122:325-331; full sibs share theirs.
[[nodiscard]] std::vector<double> inbreeding(const Pedigree& pedigree);

// The variance of Mendelian sampling of each individual in units of the additive variance:
// 1/2 - (F of mother + F of father)/4 with -1 for an unknown parent, so 1 of a founder.
// `inbreeding` is of the same pedigree. It is never below kLeastMendelian, so that a line selfed
// for forty generations still has an inverse. Source  Henderson 1976, Biometrics 32:69-83; Quaas
// 1976, Biometrics 32:949-953.
[[nodiscard]] std::vector<double> mendelianVariances(const Pedigree& pedigree,
                                                     std::span<const double> inbreeding);
inline constexpr double kLeastMendelian = 0x1p-40;

// A-inverse and the natural logarithm of the determinant of A (not of the inverse), A being the
// relationship matrix with 1 + F on its diagonal and twice the kinship beside it; indices are the
// pedigree's. At most nine elements an individual, zeros are not stored.
// Source  Henderson 1976; Quaas 1976; the two -1/2 of a selfed individual add up to -1.
struct InverseRelationship {
    statistics::SparseSymmetric inverse;
    double logDeterminant = 0;
};
[[nodiscard]] InverseRelationship inverseRelationship(const Pedigree& pedigree,
                                                      std::span<const double> inbreeding);

// Kinship of pairs, which is half their relationship: of an individual with itself (1 + F)/2, and
// of two the inbreeding of their offspring. Any pairs, also one twice; in their order.
using Pair = std::pair<std::int32_t, std::int32_t>;
[[nodiscard]] std::vector<double>
kinships(const Pedigree& pedigree, std::span<const double> inbreeding, std::span<const Pair> pairs);

// The kinships among some individuals: element (i, j) is at i * members.size() + j. Members as
// often as wanted; meant for up to a few thousand.
[[nodiscard]] std::vector<double> kinshipMatrix(const Pedigree& pedigree,
                                                std::span<const double> inbreeding,
                                                std::span<const std::int32_t> members);

// The mean kinship over all ordered pairs of members, each with itself too: two genes drawn from
// the group are alike by descent with this probability, and 1 less it is the group's expected
// heterozygosity in units of the founders' (Lacy 1995, Zoo Biol. 14:565-578). By one pass up and
// one down whatever the number of members, at least one.
[[nodiscard]] double meanKinship(const Pedigree& pedigree,
                                 std::span<const double> inbreeding,
                                 std::span<const std::int32_t> members);

} // namespace bullace::breeding
