#include "core/hardiness/bud_injury.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::hardiness {

using statistics::Interval;

namespace {

Interval clopperPearson(double dead, double counted) {
    const double living = counted - dead;
    return {dead > 0 ? 100 * statistics::betaQuantile(0.025, dead, living + 1) : 0,
            living > 0 ? 100 * statistics::betaQuantile(0.975, dead + 1, living) : 100};
}

Interval wilson(double dead, double counted) {
    const double share = dead / counted;
    const double square = statistics::kNormal95 * statistics::kNormal95;
    const double middle = (share + square / (2 * counted)) / (1 + square / counted);
    const double half =
        statistics::kNormal95 *
        std::sqrt(share * (1 - share) / counted + square / (4 * counted * counted)) /
        (1 + square / counted);
    // At the ends the formula's limit is the end itself but for rounding.
    return {dead > 0 ? 100 * std::max(0.0, middle - half) : 0,
            dead < counted ? 100 * std::min(1.0, middle + half) : 100};
}

double moreToRestore(double deadPercent) {
    return 100 * (100 / (100 - deadPercent) - 1);
}

BudInjury::Pruning pruningFor(const DeadShare& primary) {
    BudInjury::Pruning pruning;
    if (primary.percent < 20) {
        pruning.ruleOfThumbPercent = 0;
    } else if (primary.percent <= 80) {
        pruning.ruleOfThumbPercent = primary.percent;
    } else {
        pruning.isLeastPruning = true;
    }
    if (primary.percent < 100) {
        const double high =
            primary.wilson.high < 100 ? moreToRestore(primary.wilson.high) : statistics::kUnbounded;
        pruning.restoringPercent = statistics::Estimate{
            moreToRestore(primary.percent), {}, Interval{moreToRestore(primary.wilson.low), high}};
    }
    return pruning;
}

double kendall(const std::vector<InjuryByWinter::Row>& rows, double& untied) {
    double agreement = 0;
    double frostPairs = 0;
    double injuryPairs = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        for (std::size_t j = i + 1; j < rows.size(); ++j) {
            const double frost = rows[j].lowestC - rows[i].lowestC;
            const double injury = rows[i].injured.percent - rows[j].injured.percent;
            frostPairs += frost != 0 ? 1 : 0;
            injuryPairs += injury != 0 ? 1 : 0;
            agreement += frost * injury > 0 ? 1 : 0;
            agreement -= frost * injury < 0 ? 1 : 0;
        }
    }
    untied = std::sqrt(frostPairs * injuryPairs);
    return agreement;
}

} // namespace

Result<std::optional<DeadShare>> deadShare(const DeadOf& buds) {
    if (buds.dead < 0 || buds.counted < 0 || buds.dead > buds.counted) {
        return Error{ErrorCode::InvalidInput,
                     "There are more dead (" + std::to_string(buds.dead) + ") than counted (" +
                         std::to_string(buds.counted) + "), or less than none.",
                     {}};
    }
    if (buds.counted == 0) {
        return std::optional<DeadShare>();
    }
    const auto dead = static_cast<double>(buds.dead);
    const auto counted = static_cast<double>(buds.counted);
    return std::optional(DeadShare{
        buds, 100 * dead / counted, clopperPearson(dead, counted), wilson(dead, counted)});
}

Result<BudInjury>
budInjury(const DeadOf& primary, const DeadOf& secondary, const DeadOf& tertiary) {
    BudInjury injury;
    const DeadOf* const kinds[] = {&primary, &secondary, &tertiary};
    for (std::size_t i = 0; i < 3; ++i) {
        const auto share = deadShare(*kinds[i]);
        if (!share) {
            return share.error();
        }
        injury.ofBud[i] = *share;
    }
    if (injury.ofBud[0]) {
        injury.pruning = pruningFor(*injury.ofBud[0]);
    } else {
        injury.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "No primary buds were counted: pruning cannot be corrected for "
                              "injury."),
             {}});
    }
    if (injury.ofBud[0] && injury.ofBud[0]->of.counted < 50) {
        injury.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "%1 primary buds were cut; 50 to 100 of a lot are usual, and the "
                              "limits are wide."),
             {injury.ofBud[0]->of.counted}});
    }
    injury.remarks.push_back(
        {BULLACE_SENTENCE("Remark",
                          "How many buds to leave is an estimate; local extension advice comes "
                          "first."),
         {}});
    return injury;
}

Result<InjuryByWinter> injuryByWinter(std::span<const WinterInjury> winters) {
    InjuryByWinter table;
    for (const WinterInjury& winter : winters) {
        const auto share = deadShare(winter.injured);
        if (!share || !(std::abs(winter.lowestC) < 150)) {
            const std::string what = share ? "the lowest temperature cannot be one."
                                           : "more are injured than were counted.";
            return Error{ErrorCode::InvalidInput, "Winter " + winter.winter + ": " + what, {}};
        }
        if (*share) {
            table.rows.push_back({winter.winter, winter.lowestC, **share});
        } else {
            ++table.leftOut;
        }
    }
    std::ranges::stable_sort(table.rows, {}, &InjuryByWinter::Row::lowestC);
    double untied = 0;
    const double agreement = kendall(table.rows, untied);
    if (table.rows.size() >= 3 && untied > 0) {
        table.rankAgreement = agreement / untied;
    } else {
        table.remarks.push_back(
            {BULLACE_SENTENCE(
                 "Remark",
                 "Whether colder winters injured more cannot be told of %1 winters, or "
                 "of winters that do not differ."),
             {static_cast<std::int64_t>(table.rows.size())}});
    }
    if (table.leftOut > 0) {
        table.remarks.push_back(
            {BULLACE_SENTENCE("Remark", "Winters in which nothing was counted, left out: %1."),
             {static_cast<std::int64_t>(table.leftOut)}});
    }
    table.remarks.push_back(
        {BULLACE_SENTENCE("Remark",
                          "Winters differ in how far vines had hardened before the cold: these are "
                          "no killing temperatures."),
         {}});
    return table;
}

std::optional<double> horsfallBarrattMidpoint(int grade) {
    constexpr std::array<double, 12> kMiddles{
        0, 1.5, 4.5, 9, 18.5, 37.5, 62.5, 81.5, 91, 95.5, 98.5, 100};
    return grade >= 0 && grade < 12 ? std::optional(kMiddles[static_cast<std::size_t>(grade)])
                                    : std::nullopt;
}

std::optional<double> severityIndex(std::span<const int> scores, int greatest) {
    const bool areAllOnScale = std::ranges::all_of(
        scores, [greatest](int score) { return score >= 0 && score <= greatest; });
    if (scores.empty() || greatest <= 0 || !areAllOnScale) {
        return std::nullopt;
    }
    double sum = 0;
    for (const int score : scores) {
        sum += score;
    }
    return 100 * sum / (static_cast<double>(scores.size()) * greatest);
}

} // namespace bullace::hardiness
