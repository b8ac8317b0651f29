// Plots as a breeder asks for them, with invented values.
#pragma once

#include "core/report/plot.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace bullace::test {

inline report::PlotPoint pointAt(double x, double y) {
    report::PlotPoint point;
    point.x = x;
    point.y = y;
    return point;
}

inline report::PlotPoint pointAt(double x, double y, double yLow, double yHigh) {
    report::PlotPoint point = pointAt(x, y);
    point.yLow = yLow;
    point.yHigh = yHigh;
    return point;
}

inline report::PlotSeries series(report::PlotSeries::Kind kind, std::string name) {
    report::PlotSeries made;
    made.kind = kind;
    made.name = std::move(name);
    return made;
}

// Share of vines at or past bloom, by visit, of some accessions.
inline report::Plot bloomSteps(int accessions) {
    using namespace std::chrono_literals;
    report::Plot plot;
    plot.title = "Vines in bloom or past it";
    plot.x = {report::PlotAxis::Dates, "Date", "", {}, {}, {}, false, false, false};
    plot.y = {report::PlotAxis::Numbers,
              "Share of the vines",
              "percent",
              {},
              {},
              100,
              true,
              false,
              false};
    const double first = report::plotDay(2026y / 4 / 20);
    for (int i = 0; i < accessions; ++i) {
        auto steps = series(report::PlotSeries::Steps, "A0" + std::to_string(11 + 3 * i));
        for (int visit = 0; visit < 9; ++visit) {
            const double share = 100 / (1 + std::exp(-(visit - 2.5 - 0.6 * i) * 1.4));
            steps.points.push_back(pointAt(first + 6 * visit, std::round(share)));
        }
        plot.series.push_back(std::move(steps));
    }
    for (int visit = 0; visit < 9; ++visit) {
        plot.rug.push_back(first + 6 * visit);
    }
    plot.marks = {{50, "half of the vines", true}};
    plot.notes = {
        412, 2026y / 4 / 20, 2026y / 6 / 7, "Vines that were not observed are left out.", {}};
    return plot;
}

// Buds killed by test temperature, with a fitted curve and its band; guessed beyond what was
// tested.
inline report::Plot killedBuds() {
    using namespace std::chrono_literals;
    report::Plot plot;
    plot.title = "Primary buds killed, by test temperature";
    plot.x = {report::PlotAxis::Numbers, "Test temperature", "°C", {}, {}, {}, false, true, false};
    plot.y = {report::PlotAxis::Numbers, "Killed", "share", {}, 0, 1, true, false, false};
    auto observed = series(report::PlotSeries::Points, "observed, larger for more buds");
    auto curve = series(report::PlotSeries::Line, "fitted");
    auto band = series(report::PlotSeries::Band, "95 percent interval");
    auto beyond = series(report::PlotSeries::Line, "beyond what was tested");
    const auto killed = [](double c) { return 1 / (1 + std::exp((c + 17) * 0.8)); };
    for (int i = 0; i < 7; ++i) {
        const double c = -11 - 2 * i;
        const double share = std::clamp(killed(c) + (i % 2 == 0 ? 0.04 : -0.05), 0.0, 1.0);
        observed.points.push_back(
            pointAt(c, share, std::max(0.0, share - 0.14), std::min(1.0, share + 0.13)));
        observed.points.back().weight = 10 + 12 * (i % 4);
    }
    for (double c = -23; c <= -11; c += 0.25) {
        curve.points.push_back(pointAt(c, killed(c)));
        const double wide = 0.4 * killed(c) * (1 - killed(c)) + 0.02;
        band.points.push_back(pointAt(
            c, killed(c), std::max(0.0, killed(c) - wide), std::min(1.0, killed(c) + wide)));
    }
    for (double c = -11; c <= -7; c += 0.25) {
        beyond.points.push_back(pointAt(c, killed(c)));
    }
    observed.group = curve.group = band.group = beyond.group = 1;
    beyond.isGuessed = true;
    plot.series = {band, curve, beyond, observed};
    plot.marks = {{-17, "half killed at −17.0 °C (−17.6 to −16.4)", false}};
    plot.notes = {196,
                  2026y / 1 / 12,
                  2026y / 1 / 14,
                  "Buds that were dry before the test are left out.",
                  {"An estimate from the station's own tests: official forecasts come first."}};
    return plot;
}

inline report::Plot overlaps() {
    using namespace std::chrono_literals;
    report::Plot plot;
    plot.title = "Bloom of possible parents: first flower, half, last";
    plot.x = {report::PlotAxis::Dates, "Date", "", {}, {}, {}, false, false, false};
    plot.y = {report::PlotAxis::Names,
              "",
              "",
              {"A014 Brindlecap", "A022", "A031 Sallowmere", "M-103", "M-117"},
              {},
              {},
              false,
              true};
    auto perfect = series(report::PlotSeries::Spans, "perfect flowers");
    auto staminate = series(report::PlotSeries::Spans, "staminate");
    for (int i = 0; i < 5; ++i) {
        const double half = report::plotDay(2026y / 5 / 16) + 4 * ((i * 3) % 5);
        auto bloom = pointAt(half, i);
        bloom.xLow = half - 5 - i % 2;
        bloom.xHigh = half + 8;
        (i > 2 ? staminate : perfect).points.push_back(bloom);
    }
    plot.series = {perfect, staminate};
    plot.notes = {55, {}, {}, "Half is between two visits, 3 to 6 days apart.", {}};
    return plot;
}

inline report::Plot boxes() {
    report::Plot plot;
    plot.title = "Berry diameter by accession";
    plot.x = {report::PlotAxis::Names, "Accession", "", {}, {}, {}, false, false, false};
    plot.y = {report::PlotAxis::Numbers, "Berry diameter", "mm", {}, {}, {}, false, false, false};
    auto box = series(report::PlotSeries::Boxes, "quartiles and range");
    auto single = series(report::PlotSeries::Points, "one berry");
    for (int i = 0; i < 7; ++i) {
        plot.x.names.push_back("A0" + std::to_string(14 + i));
        auto one = pointAt(i, 17 + i, 14.0 + i, 21.5 + 0.8 * i);
        one.boxLow = 15.6 + i;
        one.boxHigh = 18.7 + 0.9 * i;
        box.points.push_back(one);
        for (int berry = 0; berry < 6; ++berry) {
            single.points.push_back(pointAt(i, 14.5 + i + ((berry * 7 + i) % 6)));
        }
    }
    plot.series = {box, single};
    plot.notes = {42, {}, {}, "Berries with a split skin are left out.", {}};
    return plot;
}

inline report::Plot bars() {
    report::Plot plot;
    plot.title = "Yield by season";
    plot.x = {report::PlotAxis::Numbers, "Season", "", {}, {}, {}, false, false, true};
    plot.y = {report::PlotAxis::Numbers, "Yield", "kg a vine", {}, {}, {}, true, false, false};
    auto yield = series(report::PlotSeries::Bars, "mean of the vines, with its interval");
    for (int i = 0; i < 6; ++i) {
        const double kg = 4.2 + 1.7 * ((i * 5) % 4);
        yield.points.push_back(pointAt(2020 + i, kg, kg - 0.9, kg + 1.1));
    }
    plot.series = {yield};
    plot.notes = {180, {}, {}, "Vines without a picking are left out, not counted as 0.", {}};
    return plot;
}

} // namespace bullace::test
