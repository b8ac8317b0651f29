#include "console/weather_file.hpp"

#include "core/weather/weather_tables.hpp"

#include <CLI/CLI.hpp>

namespace bullace::console {

namespace {

using weather::TemperatureUnit;

Error named(const std::string& path, const Error& error) {
    return {error.code, path + ": " + error.message, error.detail};
}

Result<TemperatureUnit> unitOf(const WeatherOptions& options) {
    if (options.unit.empty()) {
        return Error{ErrorCode::InvalidInput,
                     options.path + " does not say its unit: give --unit C or --unit F.",
                     {}};
    }
    return options.unit == "F" ? TemperatureUnit::Fahrenheit : TemperatureUnit::Celsius;
}

weather::Hemisphere hemisphereOf(const WeatherOptions& options) {
    return options.isSouthern ? weather::Hemisphere::South : weather::Hemisphere::North;
}

struct PlainColumns {
    std::size_t date = 0;
    std::size_t least = 0;
    std::size_t greatest = 0;
};

Result<std::size_t>
columnOf(const WorkFile& file, std::string_view name, std::string_view otherName) {
    const auto other = file.columnIfThere(otherName);
    return other ? Result<std::size_t>(*other) : file.column(name);
}

Result<PlainColumns> plainColumns(const WorkFile& file) {
    const auto date = columnOf(file, "date", "day");
    const auto least = columnOf(file, "least", "tmin");
    const auto greatest = columnOf(file, "greatest", "tmax");
    for (const auto* column : {&date, &least, &greatest}) {
        if (!*column) {
            return column->error();
        }
    }
    return PlainColumns{*date, *least, *greatest};
}

Result<WeatherFile> readPlain(const WorkFile& file, const WeatherOptions& options) {
    const auto columns = plainColumns(file);
    const auto unit = unitOf(options);
    if (!columns || !unit) {
        return columns ? unit.error() : columns.error();
    }
    WeatherFile made{"plain table", {}, {}};
    std::vector<weather::DayTemperatures> asTheyStand;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const auto date = file.date(row, columns->date);
        const auto least = file.numberIfThere(row, columns->least);
        const auto greatest = file.numberIfThere(row, columns->greatest);
        if (!date || !least || !greatest) {
            return !date ? date.error() : !least ? least.error() : greatest.error();
        }
        const auto isMissing = [](const std::optional<double>& value) {
            return !value || *value == -9999;
        };
        weather::DailyWeather day;
        if (!isMissing(*least)) {
            day.least = weather::toCelsius(**least, *unit);
        }
        if (!isMissing(*greatest)) {
            day.greatest = weather::toCelsius(**greatest, *unit);
        }
        if (!made.record.days.emplace(*date, day).second) {
            return file.wrong(row, columns->date, "this day stands twice");
        }
        asTheyStand.push_back({*date, *least, *greatest});
    }
    if (auto doubt = weather::doubtUnit(asTheyStand, *unit, hemisphereOf(options))) {
        made.remarks.push_back(std::move(*doubt));
    }
    return made;
}

const char* wordsOf(weather::DailyForm form) {
    switch (form) {
    case weather::DailyForm::FixedWidth:
        return "fixed width";
    case weather::DailyForm::ByStation:
        return "by station";
    case weather::DailyForm::Ordered:
        return "ordered table";
    }
    return "";
}

Result<WeatherFile>
readDailyForm(const std::string& text, weather::DailyForm form, const WeatherOptions& options) {
    TemperatureUnit unit = TemperatureUnit::Celsius;
    if (form == weather::DailyForm::Ordered) {
        const auto said = unitOf(options);
        if (!said) {
            return said.error();
        }
        unit = *said;
    }
    auto table = weather::readDaily(text, form, unit, hemisphereOf(options));
    if (!table) {
        return named(options.path, table.error());
    }
    return WeatherFile{wordsOf(form), std::move(table->record), std::move(table->remarks)};
}

} // namespace

Result<WeatherFile> readWeather(const WeatherOptions& options, Terminal& terminal) {
    const auto text = readWhole(options.path, terminal);
    if (!text) {
        return text.error();
    }
    if (const auto form = weather::dailyFormOf(*text)) {
        return readDailyForm(*text, *form, options);
    }
    const auto file = WorkFile::of(options.path, *text);
    return file ? readPlain(*file, options) : Result<WeatherFile>(file.error());
}

void addWeatherOptions(CLI::App& command, WeatherOptions& options) {
    command
        .add_option("--unit", options.unit, "Unit of the temperatures, where the file does not say")
        ->check(CLI::IsMember({"C", "F"}));
    command.add_flag("--south", options.isSouthern, "The station is in the southern hemisphere");
}

Result<std::optional<CivilDate>> readDay(const std::string& text, const char* option) {
    if (text.empty()) {
        return std::optional<CivilDate>();
    }
    const auto day = readDate(text);
    if (!day) {
        return Error{ErrorCode::InvalidInput,
                     std::string(option) + ": \"" + text + "\" is no date like 2026-05-14.",
                     {}};
    }
    return std::optional(*day);
}

} // namespace bullace::console
