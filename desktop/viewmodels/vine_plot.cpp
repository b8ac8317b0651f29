#include "desk/vine_plot.hpp"

#include "desk/desk_words.hpp"
#include "paper/page.hpp"
#include "paper/pdf.hpp"
#include "plots/drawing_files.hpp"
#include "plots/plot_files.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <functional>
#include <map>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(VinePlot)
};

constexpr std::size_t kDaysForLines = 3;
constexpr int kLeapYear = 2024; // has every day of any year

struct Noted {
    CivilDate day;
    double number = 0;
    std::string position;
};

std::vector<Noted>
notedIn(const office::VineFile& file, const vineyard::Asked& asked, const Unit& unit) {
    std::vector<Noted> noted;
    for (const office::VineValue& value : file.values) {
        const auto day = readDate(value.date);
        const auto number = value.descriptor == asked.known.code && !value.value.empty()
                                ? vineyard::comparableNumber(asked, value.value)
                                : std::nullopt;
        if (day && number) {
            noted.push_back({*day, *number / unit.factor + unit.zero, value.position});
        }
    }
    std::sort(
        noted.begin(), noted.end(), [](const Noted& a, const Noted& b) { return a.day < b.day; });
    return noted;
}

using Seasons = std::map<int, std::vector<Noted>>;

// One line for each season, all on the days of one year.
void addLines(const Seasons& seasons, report::Plot& plot) {
    plot.x.kind = report::PlotAxis::Dates;
    plot.x.title = toText(Tr::tr("Day of the year"));
    for (const auto& [season, values] : seasons) {
        report::PlotSeries series;
        series.kind = report::PlotSeries::Line;
        series.name = std::to_string(season);
        std::map<CivilDate, std::vector<const Noted*>> days;
        for (const Noted& one : values) {
            days[one.day].push_back(&one);
        }
        for (const auto& [day, there] : days) {
            double sum = 0;
            for (const Noted* one : there) {
                sum += one->number;
            }
            report::PlotPoint point;
            point.x = report::plotDay({std::chrono::year(kLeapYear), day.month(), day.day()});
            point.y = sum / static_cast<double>(there.size());
            point.label = there.front()->position;
            series.points.push_back(std::move(point));
        }
        plot.series.push_back(std::move(series));
    }
}

void addPoints(const Seasons& seasons, report::Plot& plot) {
    plot.x.title = toText(Tr::tr("Season"));
    plot.x.isWhole = true;
    report::PlotSeries series;
    for (const auto& [season, values] : seasons) {
        for (const Noted& one : values) {
            report::PlotPoint point;
            point.x = season;
            point.y = one.number;
            point.label = one.position;
            series.points.push_back(std::move(point));
        }
    }
    plot.series.push_back(std::move(series));
}

} // namespace

std::optional<report::Plot>
vinePlot(const office::VineFile& file, const vineyard::Asked& asked, const UnitWishes& wishes) {
    const Unit unit = unitFor(asked.known.unit, wishes);
    const std::vector<Noted> noted = notedIn(file, asked, unit);
    if (noted.size() < 2) {
        return std::nullopt;
    }
    Seasons seasons;
    bool hasLines = false;
    for (const Noted& one : noted) {
        auto& season = seasons[static_cast<int>(one.day.year())];
        const bool isNewDay = season.empty() || season.back().day != one.day;
        season.push_back(one);
        const auto days = static_cast<std::size_t>(
            std::count_if(season.begin(), season.end(), [&season](const Noted& other) {
                return &other == &season.front() || other.day != (&other - 1)->day;
            }));
        hasLines = hasLines || (isNewDay && days >= kDaysForLines);
    }
    report::Plot plot;
    plot.title = toText(quick::titleWords(asked));
    plot.y.title = plot.title;
    plot.y.unit = std::string(unit.shown);
    hasLines ? addLines(seasons, plot) : addPoints(seasons, plot);
    plot.notes.count = noted.size();
    plot.notes.from = noted.front().day;
    plot.notes.to = noted.back().day;
    plot.notes.missing = toText(Tr::tr("What is open or was not observed is left out."));
    return plot;
}

namespace {

QPageSize::PageSizeId paperSize(bool isA4) {
    return isA4 ? QPageSize::A4 : QPageSize::Letter;
}

// What a picture becomes as each kind of file.
struct PictureFile {
    std::function<Status(const QString& path)> pdf;
    std::function<Result<QByteArray>()> svg;
    std::function<QByteArray()> csv;
};

Status writePicture(const QString& path, const PictureFile& picture) {
    if (path.endsWith(QStringLiteral(".pdf"), Qt::CaseInsensitive)) {
        return picture.pdf(path);
    }
    if (path.endsWith(QStringLiteral(".csv"), Qt::CaseInsensitive)) {
        return paper::writeFile(path, picture.csv());
    }
    if (path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive)) {
        const auto drawn = picture.svg();
        return drawn ? paper::writeFile(path, *drawn) : Status(drawn.error());
    }
    return Error{
        ErrorCode::InvalidInput, toText(Tr::tr("The file's name ends in .pdf, .svg or .csv.")), {}};
}

} // namespace

Status writePlotFile(const QString& path, const report::Plot& plot, bool isA4) {
    constexpr QSizeF kSvgMm(180, 120);
    const QString family = paper::printFace();
    return writePicture(
        path,
        {[&](const QString& to) { return plots::writePlotPdf(to, plot, family, paperSize(isA4)); },
         [&] { return plots::plotSvg(plot, family, kSvgMm); },
         [&] { return plots::plotCsv(plot); }});
}

Status writeDrawingFile(const QString& path, const report::Drawing& drawing, bool isA4) {
    const QString family = paper::printFace();
    return writePicture(path,
                        {[&](const QString& to) {
                             return plots::writeDrawingPdf(to, drawing, family, paperSize(isA4));
                         },
                         [&] { return plots::drawingSvg(drawing, family); },
                         [&] { return plots::drawingCsv(drawing); }});
}

} // namespace bullace::desk
