#include "console/onset_file.hpp"

#include "core/season/vine_seasons.hpp"

#include <CLI/CLI.hpp>

namespace bullace::console {

namespace {

using season::OnsetInterval;

std::optional<std::size_t>
firstOf(const WorkFile& file, std::string_view one, std::string_view other) {
    const auto found = file.columnIfThere(one);
    return found ? found : file.columnIfThere(other);
}

// Accession and year of a row; without such columns one group of the year 0.
struct Group {
    std::optional<std::size_t> accession;
    std::optional<std::size_t> year;
};

Result<int> yearOf(const WorkFile& file, std::size_t row, const Group& group) {
    if (!group.year) {
        return 0;
    }
    const auto year = file.count(row, *group.year);
    if (!year) {
        return year.error();
    }
    return *year < 10000 ? Result<int>(static_cast<int>(*year))
                         : Result<int>(file.wrong(row, *group.year, "that is no year"));
}

Result<OnsetFile>
readIntervals(const WorkFile& file, std::size_t after, std::size_t by, const Group& group) {
    OnsetFile made;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const auto low = file.numberIfThere(row, after);
        const auto high = file.numberIfThere(row, by);
        const auto year = yearOf(file, row, group);
        if (!low || !high || !year) {
            return !low ? low.error() : !high ? high.error() : year.error();
        }
        const OnsetInterval onset{low->value_or(-statistics::kUnbounded),
                                  high->value_or(statistics::kUnbounded)};
        if (onset.after > onset.by) {
            return file.wrong(row, by, "the stage would be reached before it was not yet");
        }
        made.rows.push_back(
            {group.accession ? file.text(row, *group.accession) : "", *year, onset});
    }
    return made;
}

Status addReading(const WorkFile& file,
                  std::size_t row,
                  std::optional<std::size_t> column,
                  season::StageReading reading,
                  std::vector<season::StageReading>& into) {
    const auto value = column ? file.numberIfThere(row, *column) : std::optional<double>();
    if (!value) {
        return value.error();
    }
    if (*value) {
        reading.value = **value;
        into.push_back(reading);
    }
    return {};
}

Result<OnsetFile>
readVisits(const WorkFile& file, const OnsetFileOptions& options, const Group& group) {
    using Kind = season::StageReading::Kind;
    const auto vine = file.column("vine");
    const auto day = file.column("day");
    if (!vine || !day) {
        return vine ? day.error() : vine.error();
    }
    std::vector<season::VineReadings> vines;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const auto date = file.date(row, *day);
        if (!date) {
            return date.error();
        }
        const auto year =
            group.year ? yearOf(file, row, group) : Result<int>(static_cast<int>(date->year()));
        if (!year) {
            return year.error();
        }
        season::VineReadings readings{group.accession ? file.text(row, *group.accession) : "",
                                      file.text(row, *vine),
                                      *year,
                                      {}};
        const season::StageReading most{*date, Kind::Stage, 0, season::Organs::MostAdvanced};
        const season::StageReading least{*date, Kind::Stage, 0, season::Organs::LeastAdvanced};
        const season::StageReading percent{*date, Kind::Percent, 0, season::Organs::MostAdvanced};
        for (const auto& [name, reading] :
             {std::pair("stage", most), {"stage-least", least}, {"percent", percent}}) {
            const Status added =
                addReading(file, row, file.columnIfThere(name), reading, readings.readings);
            if (!added) {
                return added.error();
            }
        }
        vines.push_back(std::move(readings));
    }
    OnsetFile made;
    for (const auto& one : season::seasonsOf(vines, {options.stage, options.percent})) {
        for (const OnsetInterval& onset : one.onsets) {
            made.rows.push_back({one.accession, one.year, onset});
        }
        made.remarks.insert(made.remarks.end(), one.remarks.begin(), one.remarks.end());
    }
    return made;
}

} // namespace

Result<OnsetFile> readOnsets(const OnsetFileOptions& options, Terminal& terminal) {
    const auto file = WorkFile::read(options.path, terminal);
    if (!file) {
        return file.error();
    }
    const Group group{file->columnIfThere("accession"), file->columnIfThere("year")};
    const auto after = firstOf(*file, "after", "L");
    const auto by = firstOf(*file, "by", "R");
    if (after && by) {
        return readIntervals(*file, *after, *by, group);
    }
    if (!file->columnIfThere("day")) {
        const auto missing = file->column("after");
        return missing ? file->column("by").error() : missing.error();
    }
    return readVisits(*file, options, group);
}

void addOnsetOptions(CLI::App& command, OnsetFileOptions& options) {
    command.add_option("FILE", options.path, "CSV; - is standard input")->required();
    command.add_option("--stage", options.stage, "BBCH code that counts as reached, for visits")
        ->capture_default_str();
    command
        .add_option("--percent",
                    options.percent,
                    "Percent that means the same (of caps off, ripe …), for visits")
        ->check(CLI::Range(0.0, 100.0));
    command.footer(
        "Columns: after and by, as numbers (not yet at, reached at; empty where open), or\n"
        "vine, day and stage, stage-least or percent; if there, accession and year.\n"
        "Example:\n  accession,year,vine,after,by\n  A1,2026,B1-01-01,147,151\n"
        "  A1,2026,B1-01-02,,147\n"
        "or:\n  accession,vine,day,stage\n  A1,B1-01-01,2026-05-27,61\n"
        "  A1,B1-01-01,2026-05-31,65");
}

} // namespace bullace::console
