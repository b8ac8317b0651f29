#include "desk/kill_plot.hpp"

#include "core/hardiness/bud_injury.hpp"
#include "core/statistics/distributions.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace bullace::desk {

using hardiness::KillCurve;
using quick::fromText;
using quick::toText;

namespace {

constexpr int kCurvePoints = 60;

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(KillPlot)
};

void addLine(const std::string& id,
             const KillCurve& curve,
             const KillDrawing& drawing,
             report::Plot& plot) {
    report::PlotSeries line{report::PlotSeries::Line, id, {}, false, false, drawing.group};
    report::PlotSeries band{report::PlotSeries::Band, id, {}, false, false, drawing.group};
    const hardiness::DoseFit& fit = *curve.fit;
    for (int i = 0; i <= kCurvePoints; ++i) {
        const double c = curve.coldestC + (curve.warmestC - curve.coldestC) * i / kCurvePoints;
        const double z = (-c - fit.centre) / fit.scale;
        const double eta = fit.line.a + fit.line.b * z;
        const double variance =
            fit.line.varianceA + 2 * z * fit.line.covariance + z * z * fit.line.varianceB;
        const double half = statistics::kNormal95 * std::sqrt(std::max(0.0, variance));
        report::PlotPoint point;
        point.x = c;
        point.y = 100 * hardiness::killedAt(fit.link, eta);
        point.label = id;
        line.points.push_back(point);
        point.yLow = 100 * hardiness::killedAt(fit.link, eta - half);
        point.yHigh = 100 * hardiness::killedAt(fit.link, eta + half);
        band.points.push_back(std::move(point));
    }
    if (drawing.hasBand) {
        plot.series.push_back(std::move(band));
    }
    plot.series.push_back(std::move(line));
}

void addHalf(const std::string& id,
             const hardiness::KillPoint& half,
             std::size_t group,
             report::Plot& plot) {
    const auto& interval = half.temperatureC.interval;
    report::PlotPoint point;
    point.x = half.temperatureC.value;
    point.y = 50;
    point.label = id;
    if (interval && std::isfinite(interval->low) && std::isfinite(interval->high)) {
        point.xLow = interval->low;
        point.xHigh = interval->high;
    }
    // One name for all, so that the key has it once; the label says whose it is.
    report::PlotSeries series{report::PlotSeries::Points,
                              toText(Tr::tr("half dead, with 95 %")),
                              {std::move(point)},
                              false,
                              false,
                              group};
    plot.series.push_back(std::move(series));
}

report::Plot withAxes(const QString& title) {
    report::Plot plot;
    plot.title = toText(title);
    plot.x.title = toText(Tr::tr("Temperature, colder to the right"));
    plot.x.unit = "°C";
    plot.x.isReversed = true;
    plot.y.title = toText(Tr::tr("Buds dead"));
    plot.y.unit = "%";
    plot.y.least = 0;
    plot.y.greatest = 100;
    return plot;
}

} // namespace

report::Plot emptyKillPlot(const QString& title) {
    return withAxes(title);
}

void addKillCurve(const std::string& id,
                  const std::vector<hardiness::FreezeRow>& rows,
                  const KillCurve& curve,
                  const KillDrawing& drawing,
                  report::Plot& plot) {
    report::PlotSeries points{report::PlotSeries::Points, id, {}, false, false, drawing.group};
    for (const hardiness::FreezeRow& row : rows) {
        const auto share = hardiness::deadShare({row.dead, row.counted});
        if (!share || !*share) {
            continue;
        }
        report::PlotPoint point;
        point.x = row.temperatureC;
        point.y = (*share)->percent;
        point.yLow = (*share)->clopperPearson.low;
        point.yHigh = (*share)->clopperPearson.high;
        point.weight = static_cast<double>(row.counted);
        point.label = id;
        points.points.push_back(std::move(point));
    }
    if (curve.fit) {
        addLine(id, curve, drawing, plot);
    }
    plot.series.push_back(std::move(points));
    for (const hardiness::KillPoint& point : curve.points) {
        if (point.part == 0.5 && !point.isBeyondTested) {
            addHalf(id, point, drawing.group, plot);
        }
    }
}

} // namespace bullace::desk
