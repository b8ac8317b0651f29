// `bullace work degree-days`, `chill` and `weather`: a record of daily weather, or of hours, and
// what it adds up to.
#include "console/weather_file.hpp"
#include "console/work.hpp"

#include "core/weather/frosts.hpp"
#include "core/weather/heat_band.hpp"
#include "core/weather/hourly.hpp"
#include "core/weather/winkler.hpp"

#include <CLI/CLI.hpp>
#include <array>
#include <memory>

namespace bullace::console {

namespace {

using weather::DegreeDayMethod;
using weather::Period;

struct Options {
    WeatherOptions weather;
    std::string from;
    std::string to;
    double lower = 10;
    std::optional<double> upper;
    std::vector<double> reach;
    bool isDaily = false;
    bool isHourly = false;
    double latitude = 34;
    double frost = 0;
};

struct Named {
    DegreeDayMethod method;
    const char* name;
};
constexpr std::array<Named, 6> kMethods{
    {{DegreeDayMethod::MeanClamped, "simple average of the day"},
     {DegreeDayMethod::LimitsClamped, "simple average, limits clamped"},
     {DegreeDayMethod::SingleTriangle, "single triangle"},
     {DegreeDayMethod::DoubleTriangle, "double triangle"},
     {DegreeDayMethod::SingleSine, "single sine"},
     {DegreeDayMethod::DoubleSine, "double sine"}}};

Result<Period> periodOf(const Options& options, const weather::DailyRecord& record) {
    const auto from = readDay(options.from, "--from");
    const auto to = readDay(options.to, "--to");
    if (!from || !to) {
        return from ? to.error() : from.error();
    }
    if (record.days.empty()) {
        return Error{ErrorCode::InvalidInput,
                     options.weather.path + " holds no value that can be used.",
                     {}};
    }
    const Period period{from->value_or(record.days.begin()->first),
                        to->value_or(record.days.rbegin()->first)};
    if (period.last < period.first) {
        return Error{ErrorCode::InvalidInput, "The period ends before it begins.", {}};
    }
    return period;
}

void describeGaps(const std::vector<weather::HeatGap>& gaps, Document& into) {
    DocumentList& list = into.list("gaps");
    for (const weather::HeatGap& gap : gaps) {
        list.add().date("first day", gap.first).date("last day", gap.last);
    }
}

void describeSum(const weather::HeatSum& sum,
                 const Options& options,
                 bool isFahrenheit,
                 Document& into) {
    const double factor = isFahrenheit ? 1.8 : 1;
    const bool isWhole = sum.gaps.empty() && !sum.days.empty();
    into.number("sum", isWhole ? std::optional(sum.days.back().sum * factor) : std::nullopt);
    into.number("sum until the first gap",
                sum.days.empty() ? std::nullopt : std::optional(sum.days.back().sum * factor));
    into.date("last day of the sum",
              sum.days.empty() ? std::nullopt : std::optional(sum.days.back().day));
    describeGaps(sum.gaps, into);
    DocumentList& reached = into.list("reached");
    for (const double wanted : options.reach) {
        const auto found = std::ranges::find_if(
            sum.days, [&](const auto& day) { return day.sum * factor >= wanted; });
        reached.add()
            .number("degree-days", wanted)
            .date("on", found == sum.days.end() ? std::nullopt : std::optional(found->day));
    }
    if (options.isDaily) {
        DocumentList& days = into.list("days");
        for (const weather::HeatDay& day : sum.days) {
            days.add()
                .date("day", day.day)
                .number("degree-days", day.ofDay * factor)
                .number("sum", day.sum * factor);
        }
    }
}

int degreeDays(const Options& options, Terminal& terminal) {
    const auto file = readWeather(options.weather, terminal);
    const auto period = file ? periodOf(options, file->record) : Result<Period>(file.error());
    if (!period) {
        return tellFailure(terminal.err, period.error());
    }
    const bool isFahrenheit = options.weather.unit == "F";
    const auto unit =
        isFahrenheit ? weather::TemperatureUnit::Fahrenheit : weather::TemperatureUnit::Celsius;
    weather::Thresholds thresholds{weather::toCelsius(options.lower, unit), {}};
    if (options.upper) {
        thresholds.upper = weather::toCelsius(*options.upper, unit);
    }
    const weather::PeriodDays days = weather::daysOf(file->record.days, *period);
    Document document;
    document.text("computation", "degree-days").text("file", file->form);
    document.text("unit", isFahrenheit ? "°F days" : "°C days");
    document.number("lower threshold", options.lower).number("upper threshold", options.upper);
    document.date("first day", period->first).date("last day", period->last);
    DocumentList& methods = document.list("methods");
    for (const Named& one : kMethods) {
        const auto sum = weather::heatSum(one.method, days.days, thresholds);
        if (!sum) {
            return tellFailure(terminal.err, sum.error());
        }
        Document& method = methods.add();
        method.text("method", one.name);
        describeSum(*sum, options, isFahrenheit, method);
    }
    Remarks remarks = file->remarks;
    remarks.insert(remarks.end(), days.remarks.begin(), days.remarks.end());
    document.remarks(remarks);
    return tell(document, terminal);
}

void describeChill(const weather::ChillSum& sum, Document& into) {
    into.whole("hours", sum.hours);
    into.whole("chill hours at or below 7.2 °C", sum.hoursBelow);
    into.whole("chill hours from 0 to 7.2 °C", sum.hoursBetween);
    into.number("Utah units", sum.utah).number("chill portions", sum.portions);
    into.number("growing degree hours", sum.growingDegreeHours);
    into.number("lowest temperature, °C", sum.lowest);
}

int chillOfHours(const Options& options, Terminal& terminal) {
    const auto file = WorkFile::read(options.weather.path, terminal);
    const auto column = file ? file->column("celsius") : Result<std::size_t>(file.error());
    if (!column) {
        return tellFailure(terminal.err, column.error());
    }
    std::vector<double> hours;
    for (std::size_t row = 0; row < file->rows(); ++row) {
        const auto value = file->number(row, *column);
        if (!value) {
            return tellFailure(terminal.err, value.error());
        }
        hours.push_back(*value);
    }
    Document document;
    document.text("computation", "chill").text("method", "hours as they were measured");
    describeChill(weather::chillOf(hours), document);
    document.remarks({});
    return tell(document, terminal);
}

int chill(const Options& options, Terminal& terminal) {
    if (options.isHourly) {
        return chillOfHours(options, terminal);
    }
    const auto file = readWeather(options.weather, terminal);
    const auto period = file ? periodOf(options, file->record) : Result<Period>(file.error());
    if (!period) {
        return tellFailure(terminal.err, period.error());
    }
    const auto made = weather::chillBetween(file->record.days, *period, options.latitude);
    if (!made) {
        return tellFailure(terminal.err, made.error());
    }
    Document document;
    document.text("computation", "chill").text("file", file->form);
    document.text("method", "hours from daily extremes (Linvill 1990)");
    document.date("first day", period->first).date("last day", period->last);
    if (made->sum) {
        describeChill(*made->sum, document);
    }
    describeGaps(made->days.gaps, document);
    Remarks remarks = file->remarks;
    remarks.insert(remarks.end(), made->remarks.begin(), made->remarks.end());
    document.remarks(remarks);
    return tell(document, terminal);
}

void describeYear(const WeatherFile& file, int year, const Options& options, Document& into) {
    const auto where =
        options.weather.isSouthern ? weather::Hemisphere::South : weather::Hemisphere::North;
    const auto season =
        weather::winklerOf(file.record.days, year, where, weather::TemperatureUnit::Celsius);
    into.whole("year", year);
    into.number("heat sum above 10 °C, °C days", season.sum);
    into.text("Winkler class",
              season.winklerClass ? weather::nameOf(*season.winklerClass) : "not known");
    const auto frosts = weather::frostsOf(file.record.days, year, where, options.frost);
    into.date("last frost of spring", frosts.lastOfSpring);
    into.truth("last frost of spring is certain", frosts.isSpringCertain);
    into.date("first frost of autumn", frosts.firstOfAutumn);
    into.truth("first frost of autumn is certain", frosts.isAutumnCertain);
    into.number("days without frost between them",
                frosts.daysBetweenThem ? std::optional<double>(*frosts.daysBetweenThem)
                                       : std::nullopt);
    DocumentList& freezes = into.list("freezes");
    const Period whole{std::chrono::year(year) / 1 / 1, std::chrono::year(year) / 12 / 31};
    for (const auto& freeze : weather::freezesOf(file.record.days, whole, options.frost)) {
        freezes.add()
            .date("first day", freeze.first)
            .date("last day", freeze.last)
            .number("lowest temperature, °C", freeze.lowest)
            .date("on", freeze.lowestOn)
            .truth("may have been longer", freeze.isBesideGap);
    }
    Remarks remarks = season.remarks;
    remarks.insert(remarks.end(), frosts.remarks.begin(), frosts.remarks.end());
    into.remarks(remarks);
}

int describeBand(const WeatherFile& file,
                 const Options& options,
                 Document& document,
                 Terminal& terminal) {
    const auto band =
        weather::heatBand(file.record.days,
                          {std::chrono::January / 1, 365},
                          {DegreeDayMethod::SingleSine, {options.lower, options.upper}});
    if (!band) {
        return tellFailure(terminal.err, band.error());
    }
    Document& into = document.object("band of complete years");
    into.text("method", "single sine, °C days").number("lower threshold", options.lower);
    into.count("years", band->curves.size());
    DocumentList& list = into.list("days");
    for (std::size_t i = 0; options.isDaily && i < band->days.size(); ++i) {
        const weather::BandDay& day = band->days[i];
        list.add()
            .whole("day of the year", day.day)
            .number("least", day.least)
            .number("lower quartile", day.lowerQuartile)
            .number("median", day.median)
            .number("upper quartile", day.upperQuartile)
            .number("greatest", day.greatest);
    }
    into.remarks(band->remarks);
    return 0;
}

int weatherOf(const Options& options, Terminal& terminal) {
    const auto file = readWeather(options.weather, terminal);
    if (!file) {
        return tellFailure(terminal.err, file.error());
    }
    Document document;
    document.text("computation", "weather").text("file", file->form);
    document.text("station", file->record.station);
    document.count("days", file->record.days.size());
    document.count("values left out by their quality flag", file->record.failedQuality);
    document.number("frost at or below, °C", options.frost);
    DocumentList& years = document.list("years");
    for (const int year : weather::yearsOf(file->record.days)) {
        describeYear(*file, year, options, years.add());
    }
    if (const int failed = describeBand(*file, options, document, terminal)) {
        return failed;
    }
    document.remarks(file->remarks);
    return tell(document, terminal);
}

constexpr const char* kForms =
    "FILE is daily weather: NOAA's fixed-width daily record, its CSV by station, its ordered "
    "table,\n"
    "or a CSV with the columns date, least, greatest.\n"
    "Example:\n  date,least,greatest\n  2026-04-01,5.4,18.3\n  2026-04-02,5.5,19.6";

using Run = int (*)(const Options&, Terminal&);

CLI::App* addMethod(CLI::App& methods,
                    Work& work,
                    const char* name,
                    const std::pair<const char*, Run>& what,
                    const std::shared_ptr<Options>& options) {
    CLI::App* command = methods.add_subcommand(name, what.first);
    command->add_option("FILE", options->weather.path, "- is standard input")->required();
    addWeatherOptions(*command, options->weather);
    command->footer(kForms);
    const Run run = what.second;
    command->callback([options, run, &work] {
        work = [options, run](Terminal& terminal) { return run(*options, terminal); };
    });
    return command;
}

void addPeriod(CLI::App& command, Options& options) {
    command.add_option("--from", options.from, "First day, YYYY-MM-DD");
    command.add_option("--to", options.to, "Last day, YYYY-MM-DD");
}

} // namespace

void addWeatherMethods(CLI::App& methods, Work& work) {
    const auto heat = std::make_shared<Options>();
    CLI::App* degrees = addMethod(
        methods, work, "degree-days", {"Degree-days of a period by six methods", degreeDays}, heat);
    addPeriod(*degrees, *heat);
    degrees->add_option("--lower", heat->lower, "Lower threshold, in the unit of --unit (°C)")
        ->capture_default_str();
    degrees->add_option("--upper", heat->upper, "Upper threshold (horizontal cutoff)");
    degrees->add_option("--reach", heat->reach, "Sums of which the first day is asked for");
    degrees->add_flag("--daily", heat->isDaily, "Every day with its sum");

    const auto cold = std::make_shared<Options>();
    CLI::App* chilling = addMethod(
        methods, work, "chill", {"Chill hours, Utah units and chill portions", chill}, cold);
    addPeriod(*chilling, *cold);
    chilling->add_option("--latitude", cold->latitude, "Degrees, north positive")
        ->capture_default_str();
    chilling->add_flag(
        "--hourly", cold->isHourly, "FILE is a CSV of hours with the column celsius");

    const auto years = std::make_shared<Options>();
    CLI::App* all = addMethod(methods,
                              work,
                              "weather",
                              {"Heat sums, frosts and freezes of every year", weatherOf},
                              years);
    all->add_option("--frost", years->frost, "A frost is at or below this, °C")
        ->capture_default_str();
    all->add_option("--lower", years->lower, "Lower threshold of the band, °C")
        ->capture_default_str();
    all->add_flag("--daily", years->isDaily, "Every day of the band");
}

} // namespace bullace::console
