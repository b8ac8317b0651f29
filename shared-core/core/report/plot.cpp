#include "core/report/plot.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <initializer_list>

namespace bullace::report {

namespace {

constexpr double kFreeShare = 0.05;     // of the range, at both sides
constexpr double kMostDays = 2'932'896; // 9999-12-31

bool isWhole(const std::optional<double>& number) {
    return !number || std::isfinite(*number);
}

bool isInterval(const std::optional<double>& low, const std::optional<double>& high) {
    return low.has_value() == high.has_value() && (!low || *low <= *high);
}

bool hasName(const PlotAxis& axis, double at) {
    return axis.kind != PlotAxis::Names ||
           (at >= 0 && at < static_cast<double>(axis.names.size()) && at == std::floor(at));
}

// The fault of one point; empty where there is none.
std::string faultOf(const Plot& plot, const PlotSeries& series, const PlotPoint& point) {
    const bool isFinite = std::isfinite(point.x) && std::isfinite(point.y) && isWhole(point.xLow) &&
                          isWhole(point.xHigh) && isWhole(point.yLow) && isWhole(point.yHigh) &&
                          isWhole(point.boxLow) && isWhole(point.boxHigh) && isWhole(point.weight);
    if (!isFinite) {
        return "has a value that is no number";
    }
    if (!isInterval(point.xLow, point.xHigh) || !isInterval(point.yLow, point.yHigh) ||
        !isInterval(point.boxLow, point.boxHigh)) {
        return "has an interval without two ends in their order";
    }
    if (!hasName(plot.x, point.x) || !hasName(plot.y, point.y)) {
        return "has a point at a name that its axis does not have";
    }
    const bool lacks = (series.kind == PlotSeries::Spans && !point.xLow) ||
                       (series.kind == PlotSeries::Band && !point.yLow) ||
                       (series.kind == PlotSeries::Boxes && !(point.boxLow && point.yLow));
    return lacks ? "lacks an interval that its kind is drawn from" : "";
}

bool runsForwards(const PlotSeries& series) {
    const bool isLine = series.kind == PlotSeries::Line || series.kind == PlotSeries::Steps ||
                        series.kind == PlotSeries::Band;
    return !isLine || std::is_sorted(series.points.begin(),
                                     series.points.end(),
                                     [](const PlotPoint& one, const PlotPoint& other) {
                                         return one.x < other.x;
                                     });
}

// The range of what has been seen so far.
struct Seen {
    bool isAny = false;
    double least = 0;
    double greatest = 0;

    void take(double value) {
        least = isAny ? std::min(least, value) : value;
        greatest = isAny ? std::max(greatest, value) : value;
        isAny = true;
    }
    void take(const std::optional<double>& value) { value ? take(*value) : void(); }
};

void takePoint(Seen& seen, const PlotSeries& series, const PlotPoint& point, PlotSide side) {
    if (side == PlotSide::X) {
        seen.take(point.x);
        seen.take(point.xLow);
        seen.take(point.xHigh);
        return;
    }
    if (series.kind != PlotSeries::Band) {
        seen.take(point.y);
    }
    seen.take(point.yLow);
    seen.take(point.yHigh);
}

// Bars are as wide as the least gap between two of them allows.
void takeBars(Seen& seen, const PlotSeries& series) {
    const double half = barGap(series) / 2;
    for (const PlotPoint& point : series.points) {
        seen.take(point.x - half);
        seen.take(point.x + half);
    }
}

Seen seenOn(const Plot& plot, PlotSide side) {
    Seen seen;
    for (const PlotSeries& series : plot.series) {
        series.kind == PlotSeries::Bars&& side == PlotSide::X ? takeBars(seen, series) : void();
        for (const PlotPoint& point : series.points) {
            takePoint(seen, series, point, side);
        }
        if (series.kind == PlotSeries::Bars && side == PlotSide::Y) {
            seen.take(0.0);
        }
    }
    for (const double visit : plot.rug) {
        side == PlotSide::X ? seen.take(visit) : void();
    }
    for (const PlotMark& mark : plot.marks) {
        mark.isOnY == (side == PlotSide::Y) ? seen.take(mark.at) : void();
    }
    return seen;
}

std::vector<PlotTick> nameTicks(const PlotAxis& axis) {
    std::vector<PlotTick> ticks;
    for (std::size_t i = 0; i < axis.names.size(); ++i) {
        ticks.push_back({static_cast<double>(i), axis.names[i], 0, false});
    }
    return ticks;
}

PlotTable::Cell cellOf(const PlotAxis& axis, double value) {
    if (axis.kind == PlotAxis::Dates) {
        return dateOfPlotDay(value);
    }
    if (axis.kind == PlotAxis::Names && hasName(axis, value)) {
        return axis.names[static_cast<std::size_t>(value)];
    }
    return value;
}

PlotTable::Cell cellOf(const PlotAxis& axis, const std::optional<double>& value) {
    return value ? cellOf(axis, *value) : PlotTable::Cell{};
}

PlotTable::Cell cellAt(const Plot& plot,
                       const PlotSeries& series,
                       const PlotPoint& point,
                       PlotTable::Column column) {
    switch (column) {
    case PlotTable::Series:
        return series.name;
    case PlotTable::Label:
        return point.label;
    case PlotTable::X:
        return cellOf(plot.x, point.x);
    case PlotTable::XLow:
        return cellOf(plot.x, point.xLow);
    case PlotTable::XHigh:
        return cellOf(plot.x, point.xHigh);
    case PlotTable::Y:
        return series.kind == PlotSeries::Band ? PlotTable::Cell{} : cellOf(plot.y, point.y);
    case PlotTable::YLow:
        return cellOf(plot.y, point.yLow);
    case PlotTable::YHigh:
        return cellOf(plot.y, point.yHigh);
    case PlotTable::BoxLow:
        return cellOf(plot.y, point.boxLow);
    case PlotTable::BoxHigh:
        return cellOf(plot.y, point.boxHigh);
    case PlotTable::Weight:
        return point.weight ? PlotTable::Cell(*point.weight) : PlotTable::Cell{};
    }
    return {};
}

bool isEmpty(const PlotTable::Cell& cell) {
    const auto* text = std::get_if<std::string>(&cell);
    return std::holds_alternative<std::monostate>(cell) || (text != nullptr && text->empty());
}

} // namespace

double plotDay(CivilDate date) {
    return static_cast<double>(std::chrono::sys_days(date).time_since_epoch().count());
}

CivilDate dateOfPlotDay(double day) {
    const double inside = std::clamp(std::round(day), -719'528.0, kMostDays);
    return CivilDate(std::chrono::sys_days(std::chrono::days(static_cast<int>(inside))));
}

double barGap(const PlotSeries& series) {
    std::vector<double> places;
    for (const PlotPoint& point : series.points) {
        places.push_back(point.x);
    }
    std::sort(places.begin(), places.end());
    double gap = 0;
    for (std::size_t i = 1; i < places.size(); ++i) {
        const double here = places[i] - places[i - 1];
        gap = here > 0 && (gap == 0 || here < gap) ? here : gap;
    }
    return gap > 0 ? gap : 1;
}

Status checkPlot(const Plot& plot) {
    for (const PlotSeries& series : plot.series) {
        std::string fault = runsForwards(series) ? "" : "runs backwards";
        for (std::size_t i = 0; fault.empty() && i < series.points.size(); ++i) {
            fault = faultOf(plot, series, series.points[i]);
        }
        if (!fault.empty()) {
            return Error{ErrorCode::InvalidInput,
                         "The series \"" + series.name + "\" " + fault + ", and cannot be drawn.",
                         {}};
        }
    }
    const bool isFinite =
        std::all_of(
            plot.rug.begin(), plot.rug.end(), [](double at) { return std::isfinite(at); }) &&
        std::all_of(plot.marks.begin(), plot.marks.end(), [](const PlotMark& mark) {
            return std::isfinite(mark.at);
        });
    return isFinite ? Status{}
                    : Error{ErrorCode::InvalidInput,
                            "A mark on the axis is no number, and cannot be drawn.",
                            {}};
}

PlotLimits limitsOf(const Plot& plot, PlotSide side) {
    const PlotAxis& axis = side == PlotSide::X ? plot.x : plot.y;
    if (axis.kind == PlotAxis::Names) {
        return {-0.5, std::max(0.5, static_cast<double>(axis.names.size()) - 0.5)};
    }
    Seen seen = seenOn(plot, side);
    const bool isFromZero = axis.beginsAtZero && seen.isAny;
    isFromZero ? seen.take(0.0) : void();
    if (!seen.isAny) {
        return {axis.least.value_or(0), axis.greatest.value_or(axis.least.value_or(0) + 1)};
    }
    const double range = seen.greatest - seen.least;
    const double free = range > 0 ? range * kFreeShare : std::max(1.0, std::abs(seen.least) * 0.1);
    PlotLimits limits{isFromZero && seen.least == 0 ? 0 : seen.least - free,
                      isFromZero && seen.greatest == 0 ? 0 : seen.greatest + free};
    if (limits.least == limits.greatest) {
        limits.greatest = limits.least + 1; // all values are 0
    }
    return {axis.least.value_or(limits.least), axis.greatest.value_or(limits.greatest)};
}

std::vector<PlotTick> ticksOf(const PlotAxis& axis, const PlotLimits& limits, int most) {
    if (axis.kind == PlotAxis::Names) {
        return nameTicks(axis);
    }
    std::vector<PlotTick> ticks;
    if (axis.kind == PlotAxis::Dates) {
        const auto first = dateOfPlotDay(std::ceil(limits.least));
        const auto last = dateOfPlotDay(std::floor(limits.greatest));
        for (const DateTick& tick : dateTicks(first, last, most)) {
            ticks.push_back({plotDay(tick.date), tick.date, 0, tick.isMonth});
        }
        return ticks;
    }
    Ticks numbers = ticksWithin(limits.least, limits.greatest, most);
    for (int fewer = most; axis.isWhole && numbers.decimals > 0 && fewer > 1;) {
        numbers = ticksWithin(limits.least, limits.greatest, --fewer);
    }
    for (const double at : numbers.at) {
        ticks.push_back({at, at, numbers.decimals, false});
    }
    return ticks;
}

std::optional<SeriesFacts> factsOf(const PlotSeries& series) {
    if (series.points.empty()) {
        return std::nullopt;
    }
    const auto lower = [](const PlotPoint& one, const PlotPoint& other) { return one.y < other.y; };
    const auto& points = series.points;
    return SeriesFacts{points.size(),
                       points.front(),
                       points.back(),
                       *std::min_element(points.begin(), points.end(), lower),
                       *std::max_element(points.begin(), points.end(), lower)};
}

PlotTable tableOf(const Plot& plot) {
    PlotTable table;
    for (const auto column : {PlotTable::Series,
                              PlotTable::Label,
                              PlotTable::X,
                              PlotTable::XLow,
                              PlotTable::XHigh,
                              PlotTable::Y,
                              PlotTable::YLow,
                              PlotTable::YHigh,
                              PlotTable::BoxLow,
                              PlotTable::BoxHigh,
                              PlotTable::Weight}) {
        const bool isNeeded =
            std::any_of(plot.series.begin(), plot.series.end(), [&](const PlotSeries& series) {
                return std::any_of(
                    series.points.begin(), series.points.end(), [&](const PlotPoint& point) {
                        return !isEmpty(cellAt(plot, series, point, column));
                    });
            });
        if (isNeeded) {
            table.columns.push_back(column);
        }
    }
    for (const PlotSeries& series : plot.series) {
        for (const PlotPoint& point : series.points) {
            auto& row = table.rows.emplace_back();
            for (const PlotTable::Column column : table.columns) {
                row.push_back(cellAt(plot, series, point, column));
            }
        }
    }
    return table;
}

} // namespace bullace::report
