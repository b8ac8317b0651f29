#include "desk/stage_plot.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <utility>

namespace bullace::desk {

using quick::toText;
using season::StepMass;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(StagePlot)
};

constexpr double kPercent = 100;

report::PlotPoint pointAt(const std::string& name, double x, double share) {
    report::PlotPoint point;
    point.x = x;
    point.y = kPercent * share;
    point.label = name;
    return point;
}

report::PlotPoint bandAt(const std::string& name, double x, double low, double high) {
    report::PlotPoint point = pointAt(name, x, low);
    point.yLow = kPercent * low;
    point.yHigh = kPercent * high;
    return point;
}

// Vines whose stage no visit bounds on one side, each accession's in one series of that side.
void addCensored(const QString& words,
                 report::PlotPoint point,
                 std::size_t vines,
                 report::Plot& plot) {
    if (vines == 0) {
        return;
    }
    point.weight = static_cast<double>(vines);
    const std::string name = toText(words);
    const auto same = std::ranges::find(plot.series, name, &report::PlotSeries::name);
    if (same != plot.series.end()) {
        same->points.push_back(std::move(point));
        return;
    }
    plot.series.push_back({report::PlotSeries::Points, name, {std::move(point)}, false, false, {}});
}

// What was reached by the first visit, in no step that begins at one.
double reachedBefore(const season::StepCurve& curve) {
    double share = 0;
    for (const StepMass& step : curve.steps) {
        share += std::isfinite(step.after) ? 0 : step.mass;
    }
    return share;
}

} // namespace

void addStageSteps(const std::string& name,
                   const season::StepCurve& curve,
                   const StageAxis& axis,
                   bool isFaint,
                   report::Plot& plot) {
    if (curve.steps.empty()) {
        return;
    }
    const std::size_t group = plot.series.size();
    // All that stand back are one entry of the key; their points know whose they are.
    const std::string known = isFaint ? toText(Tr::tr("Other accessions")) : name;
    report::PlotSeries line{report::PlotSeries::Steps, known, {}, isFaint, false, group};
    report::PlotSeries band{report::PlotSeries::Band, {}, {}, isFaint, false, group};
    double before = 0;
    double end = axis.at(axis.first);
    line.points.push_back(pointAt(name, end, 0));
    for (const StepMass& step : curve.steps) {
        if (!std::isfinite(step.by)) {
            continue; // not seen to reach it
        }
        const double by = std::max(end, axis.at(step.by));
        const double after = std::isfinite(step.after) ? std::max(end, axis.at(step.after)) : by;
        band.points.push_back(bandAt(name, after, before, before));
        band.points.push_back(bandAt(name, after, before, step.cumulated));
        band.points.push_back(bandAt(name, by, before, step.cumulated));
        band.points.push_back(bandAt(name, by, step.cumulated, step.cumulated));
        line.points.push_back(pointAt(name, by, step.cumulated));
        before = step.cumulated;
        end = by;
    }
    const double last = std::max(end, axis.at(axis.last));
    line.points.push_back(pointAt(name, last, before));
    if (!isFaint && !band.points.empty()) {
        plot.series.push_back(std::move(band));
    }
    plot.series.push_back(std::move(line));
    if (!isFaint) {
        addCensored(Tr::tr("There before the first visit"),
                    pointAt(name, axis.at(axis.first), reachedBefore(curve)),
                    curve.counts.left,
                    plot);
        addCensored(Tr::tr("Not yet there at the last visit"),
                    pointAt(name, last, before),
                    curve.counts.right,
                    plot);
    }
}

} // namespace bullace::desk
