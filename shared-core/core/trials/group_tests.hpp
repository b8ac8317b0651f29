// Whether groups of records vary alike, and whether they differ when that, or a normal
// distribution, is not taken for granted.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace bullace::trials {

struct GroupTest {
    double statistic = 0;
    double degreesOfFreedom = 0;
    std::optional<double> denominator{}; // second degrees of freedom, of an F
    double p = 0;
};

// Each takes the records of every group; finite numbers. Nothing where fewer than two groups can be
// used, or a division by zero would follow. Groups of one record are left out of the tests of
// variances and of Welch's.

// Bartlett 1937, Proc. R. Soc. A 160:268-282: equal variances of normal groups; chi squared.
[[nodiscard]] std::optional<GroupTest> bartlett(std::span<const std::vector<double>> groups);
// Brown & Forsythe 1974, J. Am. Stat. Assoc. 69:364-367: analysis of variance of the distances from
// each group's median; F.
[[nodiscard]] std::optional<GroupTest> brownForsythe(std::span<const std::vector<double>> groups);
// Welch 1951, Biometrika 38:330-336: equal means where variances are not; F.
[[nodiscard]] std::optional<GroupTest> welch(std::span<const std::vector<double>> groups);
// Kruskal & Wallis 1952, J. Am. Stat. Assoc. 47:583-621: ranks, put right for ties; chi squared.
[[nodiscard]] std::optional<GroupTest> kruskalWallis(std::span<const std::vector<double>> groups);

} // namespace bullace::trials
