#include "desk/conflict_plot.hpp"

#include "desk/desk_words.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace bullace::desk {

using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(ConflictPlot)
};

std::optional<double> shownNumber(const vineyard::Asked& asked, BytesView value, const Unit& unit) {
    const auto number = value.empty() ? std::nullopt : vineyard::comparableNumber(asked, value);
    return number ? std::optional(*number / unit.factor + unit.zero) : std::nullopt;
}

} // namespace

std::optional<report::Plot>
conflictPlot(const office::CaseFile& file, const vineyard::Asked& asked, const UnitWishes& wishes) {
    const Unit unit = unitFor(asked.known.unit, wishes);
    const auto day = readDate(file.date);
    report::Plot plot;
    plot.title = toText(quick::titleWords(asked));
    plot.x.kind = report::PlotAxis::Dates;
    plot.x.title = toText(Tr::tr("Day"));
    plot.y.title = plot.title;
    plot.y.unit = std::string(unit.shown);
    report::PlotSeries season;
    season.kind = report::PlotSeries::Line;
    season.name = toText(Tr::tr("This vine"));
    for (const office::Dated& dated : file.season) {
        const auto on = readDate(dated.date);
        const auto number = shownNumber(asked, dated.value, unit);
        if (on && number && dated.date != file.date) {
            report::PlotPoint point;
            point.x = report::plotDay(*on);
            point.y = *number;
            season.points.push_back(std::move(point));
        }
    }
    std::sort(season.points.begin(), season.points.end(), [](const auto& a, const auto& b) {
        return a.x < b.x;
    });
    const std::size_t others = season.points.size();
    if (others == 0 || !day) {
        return std::nullopt;
    }
    plot.series.push_back(std::move(season));
    for (std::size_t i = 0; i < file.sides.size(); ++i) {
        if (const auto number = shownNumber(asked, file.sides[i].value, unit)) {
            report::PlotSeries side;
            side.kind = report::PlotSeries::Points;
            side.name = std::to_string(i + 1);
            report::PlotPoint point;
            point.x = report::plotDay(*day);
            point.y = *number;
            side.points.push_back(std::move(point));
            plot.series.push_back(std::move(side));
        }
    }
    plot.notes.count = others;
    plot.notes.missing = toText(Tr::tr("What is open or was not observed is left out."));
    return plot.series.size() > 1 ? std::optional(std::move(plot)) : std::nullopt;
}

} // namespace bullace::desk
