// The mean killing dose without any curve: Spearman and Kärber's sum over the steps of kill,
// trimmed or not, after the shares have been made to rise.
#pragma once

#include "core/base/result.hpp"
#include "core/hardiness/dose_table.hpp"

#include <optional>
#include <span>
#include <vector>

namespace bullace::hardiness {

// One dose with its share killed. `counted` may be more than the row's own where a correction
// pooled rows.
struct KillShare {
    double x = 0;
    double counted = 0;
    double killed = 0; // 0 to 1
};

// Pools neighbours, weighted by what was counted, until the shares nowhere fall: the pool of
// adjacent violators (Ayer, Brunk, Ewing, Reid & Silverman 1955, Ann. Math. Stat. 26:641-647).
// `shares` ascending in x, each x once. Keeps the number of rows.
[[nodiscard]] std::vector<KillShare> risingShares(std::vector<KillShare> shares);

// Of pooled rows, made to rise.
[[nodiscard]] std::vector<KillShare> killShares(std::span<const DoseRow> pooled);

struct Control {
    std::int64_t counted = 0;
    std::int64_t dead = 0;
};
// The same, corrected for what dies without the treatment: the control is pooled with the mildest
// doses as though it were milder than all, then p' = (p - c)/(1 - c) (Abbott 1925, J. Econ.
// Entomol. 18:265-267; US EPA 2002, EPA-821-R-02-013, Appendix J). Errors: InvalidInput where the
// control has more dead than counted, none counted, or nothing but dead.
[[nodiscard]] Result<std::vector<KillShare>> killSharesAgainst(std::span<const DoseRow> pooled,
                                                               const Control& control);

struct SpearmanKarber {
    double mean = 0; // dose
    // Of the mean, by the delta method with the risen shares taken as independent: p(1 - p)/n for
    // each dose (Hamilton, Russo & Thurston 1977, Environ. Sci. Technol. 11:714-719 and 12:417),
    // and p(1 - p)/(n - 1) as the hand calculation of US EPA 2002, Appendix J, has it. The second
    // is absent where a dose that counts had only one.
    double variance = 0;
    std::optional<double> varianceByLess{};
    // As the program of the method's authors (US EPA) has it. It is the first but where a trim
    // leaves one row between the ends: there one term is added to the row's weight that the delta
    // method takes off, so its limits are wider.
    double varianceAsPrinted = 0;
    double trim = 0;
};

// `trim` of the shares is left away on either side, 0 <= trim < 0.5, and the mean is that of the
// rest: the integral of the dose over the shares trim to 1 - trim, straight between the rows.
// Nothing where the shares do not reach from trim to 1 - trim. `rising` from the functions above.
// Source  Hamilton, Russo & Thurston 1977, with the correction of 1978.
[[nodiscard]] std::optional<SpearmanKarber> spearmanKarber(std::span<const KillShare> rising,
                                                           double trim);

// The least trim at which there is a mean: the greater of the first share and 1 minus the last.
// Nothing where that is 0.5 or more: the shares do not pass 50 %.
[[nodiscard]] std::optional<double> leastTrim(std::span<const KillShare> rising);

} // namespace bullace::hardiness
