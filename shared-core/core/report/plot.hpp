// A plot as data: what is drawn, in which units, and what has to be told with it. Nothing here
// draws; a plot that cannot be shown can be read as facts and as a table from the same data.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/result.hpp"
#include "core/report/ticks.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace bullace::report {

struct PlotAxis {
    enum Kind {
        Numbers,
        Dates, // days since 1970-01-01: plotDay()
        Names  // 0, 1, 2 … stand for `names`
    };
    Kind kind = Numbers;
    std::string title; // what is measured, in the reader's language
    std::string unit;  // empty where there is none
    std::vector<std::string> names;
    std::optional<double> least; // limits that are not taken from the data
    std::optional<double> greatest;
    bool beginsAtZero = false; // counts and shares: 0 is always on the axis
    bool isReversed = false;   // the greatest at the left or at the foot
    bool isWhole = false;      // counts and seasons: only whole numbers are written along it
};

// One point, with what is known around it. Low and high are the two ends of an interval, in the
// axis's unit; either both are there or none.
struct PlotPoint {
    double x = 0;
    double y = 0;
    std::optional<double> xLow;
    std::optional<double> xHigh;
    std::optional<double> yLow;
    std::optional<double> yHigh;
    std::optional<double> boxLow; // of Boxes: the quartiles
    std::optional<double> boxHigh;
    std::optional<double> weight; // of how many it is made: a greater one is drawn larger
    std::string label;            // which vine, which accession; for the table
};

struct PlotSeries {
    enum Kind {
        Points, // with whiskers where they have intervals
        Line,   // by ascending x
        Steps,  // by ascending x; y holds from its x to the next
        Bars,   // from 0 to y
        Spans,  // lying bars from xLow to xHigh at y, with a stroke at x
        Band,   // between yLow and yHigh, by ascending x
        Boxes   // at x: whiskers yLow to yHigh, box from boxLow to boxHigh, a stroke at y
    };
    Kind kind = Points;
    std::string name;
    std::vector<PlotPoint> points;
    bool isFaint = false;   // stands back behind the others, in grey
    bool isGuessed = false; // beyond what was observed: never drawn as a whole line
    // Series of one group have one colour: a band and its line. Nothing: a group of its own.
    std::optional<std::size_t> group;
};

// A line across the whole plot at one value, with its words.
struct PlotMark {
    double at = 0;
    std::string words;
    bool isOnY = false; // at a y (a lying line); else at an x
};

// What every plot says below itself.
struct PlotNotes {
    std::optional<std::size_t> count; // of how many observations it is made
    std::optional<CivilDate> from;
    std::optional<CivilDate> to;
    std::string missing;               // how what is missing was treated: one sentence
    std::vector<std::string> cautions; // further sentences
};

struct Plot {
    std::string title;
    PlotAxis x;
    PlotAxis y;
    std::vector<PlotSeries> series;
    std::vector<double> rug; // the days of the visits: short strokes along the x axis
    std::vector<PlotMark> marks;
    PlotNotes notes;
};

// A day on a date axis, and back; `date` must be a day of the calendar.
[[nodiscard]] double plotDay(CivilDate date);
[[nodiscard]] CivilDate dateOfPlotDay(double day); // rounded to the day; years 0000 to 9999

// Whether it can be drawn. Errors: InvalidInput; the message names the series: a number that is not
// finite, an interval with one end or whose low end is above its high end, lines that run
// backwards, a name that the axis does not have, boxes without quartiles, spans and bands without
// intervals.
[[nodiscard]] Status checkPlot(const Plot& plot);

// The least distance between two bars of a series that do not stand at one place; 1 where there are
// no two.
[[nodiscard]] double barGap(const PlotSeries& series);

struct PlotLimits {
    double least = 0;
    double greatest = 1;
};
enum class PlotSide { X, Y };
// What the axis has to show: all points with their intervals, whole bars, rug and marks, 0 where it
// begins there, and the axis's own limits, which win. A twentieth of the range is left free at both
// sides (not at a limit of its own and not at 0 where it begins there); without any point 0 to 1.
[[nodiscard]] PlotLimits limitsOf(const Plot& plot, PlotSide side);

// A place on an axis that gets a word: a number with so many decimals, a date or a name.
struct PlotTick {
    double at = 0;
    std::variant<double, CivilDate, std::string> says;
    int decimals = 0;     // of a number
    bool isMonth = false; // of a date: said with its month
};
[[nodiscard]] std::vector<PlotTick>
ticksOf(const PlotAxis& axis, const PlotLimits& limits, int most);

// What is to be said of a series to who does not see it.
struct SeriesFacts {
    std::size_t points = 0;
    PlotPoint first; // by the order of the points
    PlotPoint last;
    PlotPoint least; // by y; the first of equals
    PlotPoint greatest;
};
// Nothing for a series without points.
[[nodiscard]] std::optional<SeriesFacts> factsOf(const PlotSeries& series);

// The same data as a table: a line for each point of each series, in their order, with the columns
// that any point needs.
struct PlotTable {
    enum Column { Series, Label, X, XLow, XHigh, Y, YLow, YHigh, BoxLow, BoxHigh, Weight };
    using Cell = std::variant<std::monostate, double, CivilDate, std::string>;
    std::vector<Column> columns;
    std::vector<std::vector<Cell>> rows; // each as long as `columns`
};
[[nodiscard]] PlotTable tableOf(const Plot& plot);

} // namespace bullace::report
