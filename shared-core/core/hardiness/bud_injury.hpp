// Buds cut after a freeze: the share dead with its limits, how many more buds to leave at pruning,
// what single winters did, and injury of whole vines.
#pragma once

#include "core/base/remark.hpp"
#include "core/base/result.hpp"
#include "core/statistics/estimate.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace bullace::hardiness {

struct DeadOf {
    std::int64_t dead = 0;
    std::int64_t counted = 0;
};
// In percent; both are 95 %.
struct DeadShare {
    DeadOf of;
    double percent = 0;
    // Exact, never covers less than it says: Clopper & Pearson 1934, Biometrika 26:404-413.
    statistics::Interval clopperPearson{};
    // Shorter, right on the average: Wilson 1927, J. Am. Stat. Assoc. 22:209-212.
    statistics::Interval wilson{};
};
// Nothing where none were counted. Errors: InvalidInput where there are more dead than counted, or
// less than none.
[[nodiscard]] Result<std::optional<DeadShare>> deadShare(const DeadOf& buds);

enum class Bud { Primary, Secondary, Tertiary };
struct BudInjury {
    std::array<std::optional<DeadShare>, 3> ofBud{}; // by Bud
    // How many more buds to leave than without injury, in percent of them, from dead primary buds.
    struct Pruning {
        // Less than 20 % dead: none; 20 to 80 %: as many percent more as are dead; above 80 %: the
        // least pruning that there is (nothing here). Cornell University 2014, extension bulletin
        // on assessing winter injury; its last clause is from memory.
        std::optional<double> ruleOfThumbPercent{};
        bool isLeastPruning = false;
        // That restores the number of living buds: 100·(1/(1 - injury) - 1), with the limits of
        // Wilson's interval turned over. Nothing where all are dead.
        std::optional<statistics::Estimate> restoringPercent{};
    };
    std::optional<Pruning> pruning{};
    Remarks remarks;
};
[[nodiscard]] Result<BudInjury>
budInjury(const DeadOf& primary, const DeadOf& secondary, const DeadOf& tertiary);

// What winters did: injury beside the lowest temperature of each.
struct WinterInjury {
    std::string winter; // "2024/25"
    double lowestC = 0;
    DeadOf injured;
};
struct InjuryByWinter {
    struct Row {
        std::string winter;
        double lowestC = 0;
        DeadShare injured;
    };
    std::vector<Row> rows;   // coldest first
    std::size_t leftOut = 0; // nothing counted
    // Kendall's τ-b of frost and share injured (Kendall 1945, Biometrika 33:239-251): 1 where each
    // colder winter injured more. From three winters on, and where both differ.
    std::optional<double> rankAgreement{};
    Remarks remarks;
};
// Errors: InvalidInput naming the winter with more injured than counted, or no temperature.
[[nodiscard]] Result<InjuryByWinter> injuryByWinter(std::span<const WinterInjury> winters);

// Whole vines, apart from buds: what one was seen to have.
struct VineInjury {
    std::optional<double> deadSpursPercent{};
    std::optional<double> deadCordonPercent{};
    std::optional<int> trunk{}; // 0 sound, 1 cracked, 2 dead above ground and sprouting, 3 dead
};
struct VineInjurySummary {
    std::size_t vines = 0;
    std::size_t spursScored = 0;
    std::optional<statistics::Estimate> deadSpursPercent{}; // mean, limits of t
    std::size_t cordonsScored = 0;
    std::optional<statistics::Estimate> deadCordonPercent{};
    std::array<std::size_t, 4> trunks{};       // how many of each score
    std::optional<DeadShare> killedToGround{}; // trunk 2 or 3, of those scored
    Remarks remarks;
};
// Errors: InvalidInput naming the vine, from 1, with a percent outside 0 to 100 or another score.
[[nodiscard]] Result<VineInjurySummary> vineInjury(std::span<const VineInjury> vines);

// Horsfall & Barratt 1945, Phytopathology 35:655: the middle percent of grades 0 to 11. (Other
// numberings, 1 to 12 with 87 for 88, are met with; keep percents rather than grades.) Nothing for
// another grade.
[[nodiscard]] std::optional<double> horsfallBarrattMidpoint(int grade);

// 100·Σ score/(n·greatest), the disease severity index. Nothing without scores, or with one outside
// 0 to `greatest`, which is above 0.
[[nodiscard]] std::optional<double> severityIndex(std::span<const int> scores, int greatest);

} // namespace bullace::hardiness
