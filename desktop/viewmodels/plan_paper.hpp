// A planting plan on paper: one line a place in walking order, then the block as it is to stand.
#pragma once

#include "office/planting_plan.hpp"
#include "paper/page.hpp"

#include <QByteArray>
#include <QString>
#include <QStringList>

namespace bullace::desk {

struct PlanWords {
    QString title;
    QStringList notes; // the design, its seed and what has to be told with it
    QString asOf;
};
// The plan has at least one vine.
[[nodiscard]] QByteArray
planPdf(const office::PlantingPlan& plan, const PlanWords& words, paper::PaperSize size);

} // namespace bullace::desk
