// From what was chosen on the page to a plan of crosses, with all that is told beside it.
#pragma once

#include "desk/study.hpp"

#include "core/season/station_cross_plan.hpp"

#include <vector>

namespace bullace::desk::planning {

inline constexpr double kPlanSeconds = 3;  // that a plan may take
inline constexpr double kCurveSeconds = 1; // and each point of the curve

inline constexpr std::size_t kCurvePoints = 4;
// With more of them a set under a limit on kinship is rarely found in that time.
inline constexpr std::size_t kMostCandidates = 80;

// The groups of choices by their keys, and lines that stand for "no limit".
inline const QString kTable = QStringLiteral("list");
inline const QString kBy = QStringLiteral("by");
inline const QString kBetter = QStringLiteral("better");
inline const QString kCrosses = QStringLiteral("crosses");
inline const QString kUses = QStringLiteral("uses");
inline const QString kKinship = QStringLiteral("kinship");
inline const QString kGroup = QStringLiteral("group");
inline const QString kPollen = QStringLiteral("pollen");
inline const QString kTaxon = QStringLiteral("taxon");
inline const QString kStatuses = QStringLiteral("statuses");
inline const QString kNone = QStringLiteral("none");

// All that is computed for the page.
struct Planned {
    season::StationMerits merits;
    season::StationPlan ground;
    breeding::PlanRules rules;
    breeding::CrossPlan plan; // or her own list
    std::vector<breeding::TradeOffPoint> curve;
    std::vector<breeding::CheckedCross> own;
};
// Errors  those of the predictions, the pedigree and the plan.
[[nodiscard]] Result<Planned> planned(const StudyGround& ground, const Chosen& chosen);

} // namespace bullace::desk::planning
