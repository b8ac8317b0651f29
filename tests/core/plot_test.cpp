// Plots as data: what their axes show, what is said of them, and what cannot be drawn.
#include "core/report/plot.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace bullace;
using namespace bullace::report;
using namespace std::chrono_literals;

namespace {

PlotPoint at(double x, double y) {
    PlotPoint point;
    point.x = x;
    point.y = y;
    return point;
}

PlotSeries line(std::vector<PlotPoint> points) {
    return {PlotSeries::Line, "early", std::move(points), false, false, {}};
}

Plot plotOf(std::vector<PlotSeries> series) {
    Plot plot;
    plot.x = {PlotAxis::Numbers, "Degree-days", "°C·day", {}, {}, {}, false, false, false};
    plot.y = {PlotAxis::Numbers, "Share in bloom", "", {}, {}, {}, true, false, false};
    plot.series = std::move(series);
    return plot;
}

} // namespace

TEST_CASE("a day on a date axis is that day again") {
    for (const CivilDate date : {1970y / 1 / 1, 2026y / 5 / 14, 2024y / 2 / 29, 1899y / 12 / 31}) {
        CHECK(dateOfPlotDay(plotDay(date)) == date);
    }
    CHECK(plotDay(1970y / 1 / 2) == 1);
    CHECK(dateOfPlotDay(0.4) == 1970y / 1 / 1);
    CHECK(dateOfPlotDay(1e12) == 9999y / 12 / 31);
}

TEST_CASE("an axis shows all points and their whiskers, and 0 where it begins there") {
    PlotPoint wide = at(500, 0.6);
    wide.yLow = 0.3;
    wide.yHigh = 0.9;
    wide.xLow = 400;
    wide.xHigh = 700;
    const Plot plot = plotOf({line({at(450, 0.5), wide})});
    const PlotLimits x = limitsOf(plot, PlotSide::X);
    CHECK(x.least == doctest::Approx(400 - 15));
    CHECK(x.greatest == doctest::Approx(700 + 15));
    const PlotLimits y = limitsOf(plot, PlotSide::Y);
    CHECK(y.least == 0);
    CHECK(y.greatest == doctest::Approx(0.9 * 1.05));
}

TEST_CASE("limits that are given win; a rug and marks are on the axis; bars stand on 0") {
    Plot plot = plotOf({line({at(1, 2)})});
    plot.rug = {10};
    plot.marks = {{-5, "bloom", false}, {7, "limit", true}};
    CHECK(limitsOf(plot, PlotSide::X).least < -5);
    CHECK(limitsOf(plot, PlotSide::X).greatest > 10);
    CHECK(limitsOf(plot, PlotSide::Y).greatest > 7);
    plot.y.least = 0.5;
    plot.y.greatest = 3;
    CHECK(limitsOf(plot, PlotSide::Y).least == 0.5);
    CHECK(limitsOf(plot, PlotSide::Y).greatest == 3);
    Plot bars = plotOf({{PlotSeries::Bars, "yield", {at(1, 5)}, false, false, {}}});
    bars.y.beginsAtZero = false;
    CHECK(limitsOf(bars, PlotSide::Y).least <= 0);
}

TEST_CASE("the first and the last bar have their room") {
    Plot plot = plotOf(
        {{PlotSeries::Bars, "yield", {at(2021, 5), at(2020, 3), at(2024, 4)}, false, false, {}}});
    CHECK(barGap(plot.series[0]) == 1);
    CHECK(limitsOf(plot, PlotSide::X).least < 2019.5);
    CHECK(limitsOf(plot, PlotSide::X).greatest > 2024.5);
    plot.series[0].points = {at(3, 1), at(3, 2)};
    CHECK(barGap(plot.series[0]) == 1);
}

TEST_CASE("along an axis of seasons no half season is written") {
    PlotAxis seasons;
    seasons.isWhole = true;
    for (const double last : {2021.2, 2022.0, 2025.5, 2300.0}) {
        const auto ticks = ticksOf(seasons, {2019.4, last}, 12);
        REQUIRE(!ticks.empty());
        CHECK(ticks.size() <= 13);
        for (const PlotTick& tick : ticks) {
            CHECK(tick.decimals == 0);
            CHECK(tick.at == std::floor(tick.at));
        }
    }
}

TEST_CASE("nothing, one point, equal points and noughts have limits with room between them") {
    for (const auto& points :
         {std::vector<PlotPoint>{}, {at(3, 4)}, {at(3, 4), at(3, 4)}, {at(0, 0)}}) {
        const Plot plot = plotOf({line(points)});
        for (const auto side : {PlotSide::X, PlotSide::Y}) {
            const PlotLimits limits = limitsOf(plot, side);
            CHECK(limits.least < limits.greatest);
        }
    }
}

TEST_CASE("ticks are round numbers, dates of the calendar or the names, within the limits") {
    const PlotAxis numbers;
    const auto round = ticksOf(numbers, {0.3, 9.7}, 6);
    REQUIRE(round.size() >= 3);
    for (const PlotTick& tick : round) {
        CHECK(tick.at >= 0.3);
        CHECK(tick.at <= 9.7);
        CHECK(std::get<double>(tick.says) == tick.at);
    }
    PlotAxis dates;
    dates.kind = PlotAxis::Dates;
    const auto days = ticksOf(dates, {plotDay(2026y / 4 / 2) - 0.5, plotDay(2026y / 6 / 20)}, 8);
    REQUIRE(days.size() >= 2);
    CHECK(days.size() <= 8);
    for (const PlotTick& tick : days) {
        CHECK(plotDay(std::get<CivilDate>(tick.says)) == tick.at);
        CHECK(tick.at >= plotDay(2026y / 4 / 2));
    }
    PlotAxis names;
    names.kind = PlotAxis::Names;
    names.names = {"A1", "A2"};
    const auto both = ticksOf(names, {-0.5, 1.5}, 1);
    REQUIRE(both.size() == 2);
    CHECK(std::get<std::string>(both[1].says) == "A2");
}

TEST_CASE("what cannot be drawn is refused, and the series is named") {
    const auto refused = [](const Plot& plot) {
        const Status status = checkPlot(plot);
        return !status && status.error().code == ErrorCode::InvalidInput;
    };
    CHECK(checkPlot(plotOf({line({at(1, 1), at(1, 2), at(2, 2)})})));
    CHECK(refused(plotOf({line({at(2, 1), at(1, 1)})})));
    CHECK(refused(plotOf({line({at(1, std::numeric_limits<double>::quiet_NaN())})})));
    CHECK(refused(plotOf({line({at(std::numeric_limits<double>::infinity(), 1)})})));
    PlotPoint oneEnd = at(1, 1);
    oneEnd.yLow = 0;
    CHECK(refused(plotOf({line({oneEnd})})));
    oneEnd.yHigh = -1;
    CHECK(refused(plotOf({line({oneEnd})})));
    oneEnd.yHigh = 2;
    CHECK(checkPlot(plotOf({line({oneEnd})})));
    CHECK(refused(plotOf({{PlotSeries::Band, "band", {at(1, 1)}, false, false, {}}})));
    CHECK(refused(plotOf({{PlotSeries::Boxes, "box", {at(1, 1)}, false, false, {}}})));
    CHECK(refused(plotOf({{PlotSeries::Spans, "span", {at(1, 1)}, false, false, {}}})));
    Plot named = plotOf({line({at(2, 1)})});
    named.x.kind = PlotAxis::Names;
    named.x.names = {"A1", "A2"};
    CHECK(refused(named));
    CHECK(checkPlot(named).error().message.find("early") != std::string::npos);
    Plot rug = plotOf({});
    rug.rug = {std::nan("")};
    CHECK(refused(rug));
}

TEST_CASE("of a series its first, last, least and greatest point are told") {
    const auto facts = factsOf(line({at(1, 5), at(2, 2), at(3, 9), at(4, 2)}));
    REQUIRE(facts);
    CHECK(facts->points == 4);
    CHECK(facts->first.x == 1);
    CHECK(facts->last.x == 4);
    CHECK(facts->least.x == 2);
    CHECK(facts->greatest.x == 3);
    CHECK_FALSE(factsOf(line({})));
}

TEST_CASE("the table has a line for every point, and only the columns that are needed") {
    Plot plot =
        plotOf({line({at(plotDay(2026y / 5 / 14), 0.5)}), line({at(plotDay(2026y / 5 / 21), 1)})});
    plot.x.kind = PlotAxis::Dates;
    plot.series[1].points[0].yLow = 0.8;
    plot.series[1].points[0].yHigh = 1;
    const PlotTable table = tableOf(plot);
    using Columns = std::vector<PlotTable::Column>;
    CHECK(
        table.columns ==
        Columns{PlotTable::Series, PlotTable::X, PlotTable::Y, PlotTable::YLow, PlotTable::YHigh});
    REQUIRE(table.rows.size() == 2);
    CHECK(std::get<std::string>(table.rows[0][0]) == "early");
    CHECK(std::get<CivilDate>(table.rows[0][1]) == 2026y / 5 / 14);
    CHECK(std::get<double>(table.rows[0][2]) == 0.5);
    CHECK(std::holds_alternative<std::monostate>(table.rows[0][3]));
    CHECK(std::get<double>(table.rows[1][3]) == 0.8);
    CHECK(tableOf(plotOf({})).rows.empty());
}
