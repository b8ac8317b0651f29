// How far the vines of each accession were on which day: step curves as a plot.
#pragma once

#include "core/report/plot.hpp"
#include "core/season/turnbull.hpp"

#include <QString>

#include <functional>
#include <optional>
#include <string>

namespace bullace::desk {

// The x axis of a plot of steps, and where the visits were.
struct StageAxis {
    std::function<double(double)> at; // a day of season, or degree-days, as its place on the axis
    double first = 0;                 // of all visits, on the onsets' own scale
    double last = 0;
};

// Adds an accession's curve: a whole line that rises where the last vines of a step are known to
// have reached the stage, and a band from where they can have been. Vines that were there before
// the first visit, or not yet at the last, are points at its ends. A faint one is the line alone.
void addStageSteps(const std::string& name,
                   const season::StepCurve& curve,
                   const StageAxis& axis,
                   bool isFaint,
                   report::Plot& plot);

} // namespace bullace::desk
