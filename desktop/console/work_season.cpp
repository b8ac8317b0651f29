// `bullace work forecast` and `bloom-overlap`: when a stage is to come, and whose pollen meets
// whose flowers.
#include "console/weather_file.hpp"
#include "console/work.hpp"

#include "core/season/stage_date.hpp"
#include "core/season/thermal_model.hpp"

#include <CLI/CLI.hpp>
#include <map>
#include <memory>

namespace bullace::console {

namespace {

using namespace season;

struct ForecastOptions {
    std::string path;
    WeatherOptions weather;
    std::string today;
};

// Past days of a stage by accession: dates, or numbers of the day of season with a year.
using Past = std::map<std::string, std::vector<StageYear>>;

Result<Past> pastOf(const WorkFile& file) {
    const auto day = file.column("day");
    const auto accession = file.columnIfThere("accession");
    const auto year = file.columnIfThere("year");
    if (!day) {
        return day.error();
    }
    Past past;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        StageYear one;
        if (const auto date = file.date(row, *day)) {
            one.year = static_cast<int>(date->year());
            one.day = dayOfSeason(*date, one.year);
        } else if (year) {
            const auto count = file.count(row, *year);
            const auto number = file.number(row, *day);
            if (!count || !number) {
                return count ? number.error() : count.error();
            }
            one = {static_cast<int>(std::min<std::size_t>(*count, 9999)), *number};
        } else {
            return date.error();
        }
        past[accession ? file.text(row, *accession) : ""].push_back(one);
    }
    return past;
}

void describeModel(const ThermalModel& model, Document& into) {
    into.number("base temperature, °C", model.baseC);
    const CivilDate start = std::chrono::year(2001) / model.start.month() / model.start.day();
    into.text("start, month and day", writeDate(start).substr(5));
    into.number("degree-days needed", model.needed);
    into.number("error by which they were chosen, days", model.chosenError);
    into.number("past error, days", model.pastError);
    into.number("past error of the mean date, days", model.calendarError);
    DocumentList& past = into.list("past forecasts");
    for (const PastForecast& one : model.past) {
        past.add().whole("year", one.year).number("day", one.day).number("forecast", one.predicted);
    }
}

int forecast(const ForecastOptions& options, Terminal& terminal) {
    const auto file = WorkFile::read(options.path, terminal);
    auto past = file ? pastOf(*file) : Result<Past>(file.error());
    const auto weather = readWeather(options.weather, terminal);
    const auto today = readDay(options.today, "--today");
    if (!past || !weather || !today) {
        return tellFailure(terminal.err,
                           !past      ? past.error()
                           : !weather ? weather.error()
                                      : today.error());
    }
    Document document;
    document.text("computation", "forecast");
    document.text("method",
                  "thermal time, single sine; base and start by leave-one-year-out error");
    document.text("caution",
                  "An estimate from the station's own notes; official forecasts come first.");
    document.remarks(weather->remarks);
    DocumentList& list = document.list("accessions");
    const auto& days = weather->record.days;
    for (auto& [accession, years] : *past) {
        // A season is not forecast from its own date, nor from later ones.
        if (*today) {
            std::erase_if(years, [&](const StageYear& one) {
                return one.year >= static_cast<int>((*today)->year());
            });
        }
        const auto fit = fitThermalModel(days, years);
        if (!fit) {
            return tellFailure(terminal.err, fit.error());
        }
        Document& into = list.add();
        into.text("accession", accession).count("years", fit->usedYears.size());
        if (fit->model) {
            describeModel(*fit->model, into);
        }
        Remarks remarks = fit->remarks;
        if (*today && fit->model) {
            const int year = static_cast<int>((*today)->year());
            const Forecast made = forecastStage(days, *fit, year, **today);
            into.estimate("day of season", made.day);
            into.date("date",
                      made.day ? std::optional(dateOfSeason(made.day->value, year)) : std::nullopt);
            into.number("degree-days so far", made.soFar);
            into.date("weather known until", made.knownUntil);
            into.truth("should have been reached", made.isPast);
            into.count("other years' weather", made.byWeather.size());
            remarks.insert(remarks.end(), made.remarks.begin(), made.remarks.end());
        }
        into.remarks(remarks);
    }
    return tell(document, terminal);
}

struct OverlapOptions {
    std::string path;
};

struct BloomRows {
    std::optional<FlowerSex> sex;
    std::vector<YearOnset> start;
    std::vector<YearOnset> end;
};
using Blooms = std::map<std::string, BloomRows>;

using KnownSex = std::optional<FlowerSex>; // nothing: not known

Result<KnownSex> sexOf(const WorkFile& file, std::size_t row, std::optional<std::size_t> column) {
    if (!column || file.isMissing(row, *column)) {
        return KnownSex();
    }
    const std::string& word = file.text(row, *column);
    for (const FlowerSex sex : {FlowerSex::Male, FlowerSex::Perfect, FlowerSex::Female}) {
        if (word == vineyard::nameOf(sex)) {
            return KnownSex(sex);
        }
    }
    return file.wrong(row, *column, "\"" + word + "\" is none of male, female and perfect");
}

Result<OnsetInterval>
intervalOf(const WorkFile& file, std::size_t row, std::size_t after, std::size_t by) {
    const auto low = file.numberIfThere(row, after);
    const auto high = file.numberIfThere(row, by);
    if (!low || !high) {
        return low ? high.error() : low.error();
    }
    const OnsetInterval onset{low->value_or(-statistics::kUnbounded),
                              high->value_or(statistics::kUnbounded)};
    return onset.after > onset.by ? Result<OnsetInterval>(file.wrong(
                                        row, by, "it would be reached before it was not yet"))
                                  : Result<OnsetInterval>(onset);
}

Result<Blooms> bloomsOf(const WorkFile& file) {
    std::vector<std::size_t> at;
    for (const char* name : {"accession", "start after", "start by", "end after", "end by"}) {
        const auto column = file.column(name);
        if (!column) {
            return column.error();
        }
        at.push_back(*column);
    }
    const auto year = file.columnIfThere("year");
    const auto sex = file.columnIfThere("sex");
    Blooms blooms;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const auto count = year ? file.count(row, *year) : Result<std::size_t>(0);
        const auto start = intervalOf(file, row, at[1], at[2]);
        const auto end = intervalOf(file, row, at[3], at[4]);
        const auto flowers = sexOf(file, row, sex);
        if (!count || !start || !end || !flowers) {
            return !count   ? count.error()
                   : !start ? start.error()
                   : !end   ? end.error()
                            : flowers.error();
        }
        BloomRows& bloom = blooms[file.text(row, at[0])];
        if (*flowers && bloom.sex && bloom.sex != *flowers) {
            return file.wrong(row, *sex, "the accession had another sex before");
        }
        bloom.sex = *flowers ? *flowers : bloom.sex;
        const int which = static_cast<int>(std::min<std::size_t>(*count, 9999));
        bloom.start.push_back({which, *start});
        bloom.end.push_back({which, *end});
    }
    return blooms;
}

Result<std::vector<BloomWindow>> windowsOf(const Blooms& blooms, DocumentList& list) {
    std::vector<BloomWindow> windows;
    for (const auto& [accession, bloom] : blooms) {
        const auto startDate = stageDate(bloom.start);
        const auto endDate = stageDate(bloom.end);
        if (!startDate || !endDate) {
            return startDate ? endDate.error() : startDate.error();
        }
        const std::optional<StageDate>& start = startDate->date;
        const std::optional<StageDate>& end = endDate->date;
        Remarks remarks = startDate->remarks;
        remarks.insert(remarks.end(), endDate->remarks.begin(), endDate->remarks.end());
        Document& into = list.add();
        into.text("accession", accession)
            .text("sex", bloom.sex ? vineyard::nameOf(*bloom.sex) : "not known");
        into.count("vines", bloom.start.size());
        into.number("mean start", start ? std::optional(start->mean) : std::nullopt);
        into.number("mean end", end ? std::optional(end->mean) : std::nullopt);
        const bool isUsable = start && end && start->mean <= end->mean;
        into.truth("in the pairs", isUsable);
        into.remarks(remarks);
        if (isUsable) {
            windows.push_back({accession, bloom.sex, *start, *end});
        }
    }
    return windows;
}

int bloomOverlap(const OverlapOptions& options, Terminal& terminal) {
    const auto file = WorkFile::read(options.path, terminal);
    const auto blooms = file ? bloomsOf(*file) : Result<Blooms>(file.error());
    if (!blooms) {
        return tellFailure(terminal.err, blooms.error());
    }
    Document document;
    document.text("computation", "bloom-overlap");
    document.text("method", "normal laws of start and end, with year effects");
    const auto windows = windowsOf(*blooms, document.list("windows"));
    const auto made = windows ? bloomOverlaps(*windows) : Result<BloomOverlaps>(windows.error());
    if (!made) {
        return tellFailure(terminal.err, made.error());
    }
    DocumentList& pairs = document.list("pairs");
    for (const BloomOverlap& pair : made->pairs) {
        Document& into = pairs.add();
        into.text("mother", (*windows)[pair.mother].accession);
        into.text("father", (*windows)[pair.father].accession);
        into.estimate("shared days", pair.days).number("probability of a day", pair.probability);
        into.number("days to store pollen",
                    pair.stored ? std::optional(pair.stored->days) : std::nullopt);
        into.truth("pollen of the year before", pair.stored && pair.stored->isFromYearBefore);
    }
    document.remarks(made->remarks);
    return tell(document, terminal);
}

} // namespace

void addForecast(CLI::App& methods, Work& work) {
    auto options = std::make_shared<ForecastOptions>();
    CLI::App* command =
        methods.add_subcommand("forecast", "When a stage is to come, by degree-days");
    command->add_option("FILE", options->path, "CSV of past days of the stage")->required();
    command->add_option("--weather", options->weather.path, "Daily weather")->required();
    command->add_option("--today", options->today, "Forecast from this day on, YYYY-MM-DD");
    addWeatherOptions(*command, options->weather);
    command->footer("Columns: day (a date; or with a column year the number of the day from 1 "
                    "January); if there, accession.\n"
                    "Example:\n  accession,day\n  A1,2023-05-27\n  A1,2024-05-19");
    command->callback([options, &work] {
        work = [options](Terminal& terminal) { return forecast(*options, terminal); };
    });
}

void addBloomOverlap(CLI::App& methods, Work& work) {
    auto options = std::make_shared<OverlapOptions>();
    CLI::App* command =
        methods.add_subcommand("bloom-overlap", "Whose pollen meets whose flowers, and how long");
    command->add_option("FILE", options->path, "CSV, one vine a line; - is standard input")
        ->required();
    command->footer("Columns: accession, start after, start by, end after, end by (days of the "
                    "season; empty where open); if there, year and sex (male, female, perfect).\n"
                    "Example:\n  accession,sex,start after,start by,end after,end by\n"
                    "  A1,female,147,151,158,161\n  A2,perfect,144,147,151,154");
    command->callback([options, &work] {
        work = [options](Terminal& terminal) { return bloomOverlap(*options, terminal); };
    });
}

} // namespace bullace::console
