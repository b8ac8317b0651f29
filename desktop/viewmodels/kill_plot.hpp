// Curves of kill as a plot: shares of dead buds with their limits, the curve over what was tested,
// and the temperature that kills half.
#pragma once

#include "core/hardiness/kill_curve.hpp"
#include "core/report/plot.hpp"

#include <QString>

#include <cstddef>
#include <string>
#include <vector>

namespace bullace::desk {

// Without any curve yet; colder is to the right.
[[nodiscard]] report::Plot emptyKillPlot(const QString& title);

struct KillDrawing {
    std::size_t group = 0; // series of one group have one colour
    bool hasBand = true;   // of the curve's 95 %
};
// Adds an accession's tests and curve.
void addKillCurve(const std::string& id,
                  const std::vector<hardiness::FreezeRow>& rows,
                  const hardiness::KillCurve& curve,
                  const KillDrawing& drawing,
                  report::Plot& plot);

} // namespace bullace::desk
