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

// Adds an accession's tests and curve; series of one `group` have one colour.
void addKillCurve(const std::string& id,
                  const std::vector<hardiness::FreezeRow>& rows,
                  const hardiness::KillCurve& curve,
                  std::size_t group,
                  report::Plot& plot);

} // namespace bullace::desk
