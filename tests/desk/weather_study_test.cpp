// The views of season and weather on a small station with six years, and weather taken in from a
// file through the window.
#include "quick/words.hpp"
#include "support/desk_conflicts.hpp"
#include "support/desk_glass.hpp"
#include "support/season_station.hpp"

#include <QFile>

#include <algorithm>
#include <string>

using namespace bullace;
using namespace bullace::test;

namespace {

constexpr std::int64_t kTenthOfMay = 1'746'900'000'000; // 2025-05-10 13:00 at the station

struct Season {
    TempFolder folder;
    std::string path = folder.file("season.db");
    FixedClock clock{kTenthOfMay};
    std::unique_ptr<DeskGlass> glass;

    explicit Season(const std::string& lines = SeasonStation().lines()) {
        makeStationFile(path, lines);
        glass = std::make_unique<DeskGlass>(path, clock);
        glass->sit("hl");
        glass->press(Qt::Key_Escape);
        glass->go(desk::DeskApp::Study);
    }
    desk::StudyViewModel& study() { return *glass->app().study(); }
    const desk::Study& choose(const char* view, const desk::Chosen& chosen = {}) {
        study().choose(QLatin1String(view), chosen);
        glass->rest();
        const desk::Study& made = study().study();
        INFO(view);
        if (made.plot) {
            const Status drawable = report::checkPlot(*made.plot);
            INFO((drawable ? std::string() : drawable.error().message));
            CHECK(drawable.ok());
        }
        return made;
    }
    // The row of that key, as text with a stroke between cells.
    std::string row(const QString& key) {
        const auto& rows = study().study().rows;
        const auto found = std::ranges::find(rows, key, &desk::GridRow::key);
        return found == rows.end() ? std::string()
                                   : quick::toText(found->cells.join(QStringLiteral(" | ")));
    }
    std::string remarks() {
        std::string all;
        for (const Remark& remark : study().study().remarks) {
            all += inEnglish(remark) + "\n";
        }
        return all;
    }
    void look(const std::string& name) {
        glass->look("years-" + name);
        glass->press("t");
        glass->look("years-" + name + "-table");
        glass->press("t");
    }
};

const auto kYear = [](int year) {
    return desk::Chosen{{QStringLiteral("season"), QString::number(year)}};
};

std::size_t seriesOf(const desk::Study& study, report::PlotSeries::Kind kind) {
    return static_cast<std::size_t>(
        std::ranges::count(study.plot->series, kind, [](const auto& s) { return s.kind; }));
}

} // namespace

TEST_CASE("stages of a season are steps between visits, each accession against the reference") {
    Season station;
    desk::Chosen chosen = kYear(2024);
    chosen[QStringLiteral("stage")] = QStringLiteral("bloom-full");
    const desk::Study& study = station.choose("season", chosen);
    REQUIRE(study.plot);
    CHECK(seriesOf(study, report::PlotSeries::Steps) == 4);
    CHECK(study.plot->rug.size() == 15); // a stroke for each day of visits
    CHECK(study.plot->x.kind == report::PlotAxis::Dates);
    REQUIRE(study.rows.size() == 6); // four accessions, and the everbearing vine's two dates
    // Made two days apart from one to the next.
    CHECK(station.row(QStringLiteral("A002")).find("2.0 (") != std::string::npos);
    CHECK(station.row(QStringLiteral("A003")).find("4.0 (") != std::string::npos);
    CHECK(study.rows[4].cells[0].contains(QStringLiteral("everbearing")));
    CHECK(study.rows[5].cells[0].contains(QStringLiteral("everbearing")));
    CHECK(station.remarks().find("Everbearing") != std::string::npos);
    station.look("season");
    chosen[QStringLiteral("by")] = QStringLiteral("heat");
    const desk::Study& heat = station.choose("season", chosen);
    REQUIRE(heat.plot);
    CHECK(heat.plot->x.kind == report::PlotAxis::Numbers);
    CHECK(heat.columns.size() == 8); // with the degree-days
    station.glass->look("years-season-heat");
}

TEST_CASE("a stage that no vine has reached yet is said, with no date made up") {
    Season station;
    desk::Chosen chosen = kYear(2025);
    chosen[QStringLiteral("stage")] = QStringLiteral("bloom-full");
    const desk::Study& study = station.choose("season", chosen);
    CHECK(study.openLeft == 1);
    CHECK(station.row(QStringLiteral("A003")).find("none was seen there") != std::string::npos);
    station.glass->look("years-season-begun");
}

TEST_CASE("bloom windows stand in their order with the flowers' sex, and pairs follow it") {
    Season station;
    const desk::Study& study = station.choose("bloom", kYear(2023));
    REQUIRE(study.plot);
    CHECK(study.plot->y.names ==
          std::vector<std::string>{"A001, female", "A002, perfect", "A003, male", "A004, female"});
    // Mothers are not male, fathers not female: A001, A002 and A004 with A002 and A003.
    CHECK(study.rows.size() == 5);
    station.look("bloom");
    const desk::Study& windows =
        station.choose("bloom", {{QStringLiteral("lines"), QStringLiteral("windows")}});
    CHECK(windows.rows.size() == 4);
    const desk::Study& all = station.choose("bloom",
                                            {{QStringLiteral("season"), QStringLiteral("all")},
                                             {QStringLiteral("lines"), QStringLiteral("windows")}});
    CHECK(all.rows.size() == 4);
    station.look("bloom-expected");
}

TEST_CASE("full bloom is forecast from five seasons, near where it was made") {
    Season station;
    const desk::Study& study =
        station.choose("forecast", {{QStringLiteral("stage"), QStringLiteral("bloom-full")}});
    REQUIRE(study.plot);
    CHECK(study.rows.size() == 4);
    CHECK(study.cautions.size() == 1);
    for (const report::PlotSeries& series : study.plot->series) {
        for (const report::PlotPoint& point : series.points) {
            if (series.name == "Forecast") {
                REQUIRE(point.xLow);
                const auto accession = static_cast<std::size_t>(point.label.back() - '1');
                const double made = report::plotDay(
                    addDays(std::chrono::year(2025) / 1 / 1,
                            static_cast<int>(SeasonStation::bloomOf(accession, 2025)) - 1));
                CHECK(*point.xLow <= made);
                CHECK(made <= *point.xHigh);
            }
        }
    }
    station.look("forecast");
    const desk::Study& ripe =
        station.choose("forecast", {{QStringLiteral("stage"), QStringLiteral("ripe")}});
    CHECK_FALSE(ripe.plot);
    REQUIRE_FALSE(ripe.rows.empty());
    CHECK(station.remarks().find("A001, A002, A003, A004: ") != std::string::npos); // why
    station.glass->look("years-forecast-none");
}

TEST_CASE("weather stands against other years, and a gap is named and never summed over") {
    Season station;
    const desk::Study& study = station.choose("weather");
    REQUIRE(study.plot);
    CHECK(study.rows.size() == 6);
    CHECK(study.words.contains(QStringLiteral("4 other year")));
    station.look("weather");
    const desk::Study& broken = station.choose("weather", kYear(2022));
    CHECK(station.remarks().find("2022-08-01") != std::string::npos);
    const auto line = std::ranges::find(broken.plot->series, "2022", &report::PlotSeries::name);
    REQUIRE(line != broken.plot->series.end());
    CHECK(line->points.size() == 212);                                  // up to 31 July
    CHECK(station.row(QStringLiteral("2022")).find("2022 |  | ") == 0); // no sum, no class
    station.glass->look("years-weather-gap");
    const desk::Study& freezes =
        station.choose("weather",
                       {{QStringLiteral("season"), QStringLiteral("2024")},
                        {QStringLiteral("picture"), QStringLiteral("freezes")}});
    REQUIRE(freezes.plot);
    CHECK(freezes.rows.size() == freezes.plot->series.front().points.size());
    station.look("weather-freezes");
}

TEST_CASE("a conflict about a stage says how warm the season had been") {
    Season station;
    station.glass->go(desk::DeskApp::Conflicts);
    REQUIRE(conflictsOf(*station.glass).file());
    REQUIRE(conflictsOf(*station.glass).file()->heat);
    const desk::GridModel& facts = *conflictsOf(*station.glass).facts();
    QString heat;
    for (int row = 0; row < facts.count(); ++row) {
        if (facts.textAt(row, 0) == QStringLiteral("Degree-days to that day")) {
            heat = facts.textAt(row, 1);
        }
    }
    CHECK(heat.endsWith(QStringLiteral("(base 10 °C)")));
    station.glass->look("conflict-degree-days");
}

TEST_CASE("a file of weather is shown before it is taken in, and stands on the view afterwards") {
    Season station("");
    station.choose("weather");
    CHECK(station.study().study().words.contains(QStringLiteral("No weather")));
    const std::string file = station.folder.file("ordered.csv");
    std::string text = "DATE,TMAX,TMIN\n";
    for (CivilDate day = std::chrono::year(2024) / 1 / 1; day <= std::chrono::year(2024) / 12 / 31;
         day = addDays(day, 1)) {
        const double mean = SeasonStation::meanOf(day) * 1.8 + 32;
        if (day != std::chrono::year(2024) / 2 / 10) {
            text += writeDate(day) + "," + fixedText(mean + 10, 0) + "," + fixedText(mean - 10, 0) +
                    "\n";
        }
    }
    QFile out(QString::fromStdString(file));
    REQUIRE(out.open(QIODevice::WriteOnly));
    out.write(text.data(), static_cast<qint64>(text.size()));
    out.close();
    station.glass->press("i");
    station.glass->look("weather-files");
    station.glass->press("f");
    station.glass->answer(QString::fromStdString(file));
    CHECK(station.glass->page().isAsking());
    station.glass->answer(QStringLiteral("K"));
    CHECK_FALSE(station.glass->page().refusal().isEmpty());
    station.glass->look("weather-unit");
    station.glass->press(Qt::Key_Backspace);
    station.glass->answer(QStringLiteral("F"));
    REQUIRE(station.glass->page().isAsking());
    station.glass->answer(QStringLiteral("north field"));
    const auto& plan = station.glass->app().weatherIntake().plan();
    REQUIRE(plan);
    CHECK(plan->fresh == 730);
    station.glass->look("weather-intake");
    CHECK(station.glass->at("weather/north field/2024-07-01/TMAX").empty()); // nothing yet
    station.glass->press("t");
    CHECK(station.glass->at("weather/north field/2024-07-01/TMAX").find("settled ") == 0);
    CHECK(station.glass->app().page() == desk::DeskApp::Study);
    CHECK(station.study().study().rows.size() == 1);
    station.glass->look("years-weather-taken");
}
