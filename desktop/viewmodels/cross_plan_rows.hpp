// A plan of crosses in words: its rows, those of the pairs that are not in it, and of her own list.
#pragma once

#include "desk/study.hpp"

#include "core/season/station_cross_plan.hpp"

namespace bullace::desk {

// What the rows are worded from; all of it outlives them.
struct PlanWords {
    const season::StationNotes& notes;
    const season::StationPlan& ground;
    bool isLessBetter = false; // merits stand turned round in the plan
    int decimals = 2;          // of merits

    [[nodiscard]] QString accession(const std::string& id) const;
    [[nodiscard]] QString candidate(std::size_t candidate) const;
    [[nodiscard]] double merit(double worth) const { return isLessBetter ? -worth : worth; }
};

// `unit` is that of the merits, or empty.
void addPlanRows(const PlanWords& words,
                 const breeding::CrossPlan& plan,
                 const QString& unit,
                 Study& study);
void addRefusalRows(const PlanWords& words,
                    const breeding::CrossPlan& plan,
                    const QString& unit,
                    Study& study);
void addOwnRows(const PlanWords& words,
                const std::vector<breeding::CheckedCross>& own,
                const QString& unit,
                Study& study);

} // namespace bullace::desk
