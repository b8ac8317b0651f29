// Onsets of a stage from a CSV: intervals as they are, or visits of which the stage is read.
#pragma once

#include "console/work.hpp"

#include "core/season/onset_interval.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bullace::console {

struct OnsetFileOptions {
    std::string path;
    double stage = 65; // BBCH code
    std::optional<double> percent;
};
struct OnsetRow {
    std::string accession;
    int year = 0;
    season::OnsetInterval onset;
};
using OnsetRows = std::vector<OnsetRow>;
struct OnsetFile {
    OnsetRows rows; // one for each vine and year
    Remarks remarks;
};

// Columns after and by (not yet at, reached at; empty: open on that side), or vine, day and stage
// or percent; accession and year where they are there. Everbearing vines are left out of visits and
// counted, as their two dates belong into no mean.
[[nodiscard]] Result<OnsetFile> readOnsets(const OnsetFileOptions& options, Terminal& terminal);

// FILE, --stage and --percent, with the columns and an example.
void addOnsetOptions(CLI::App& command, OnsetFileOptions& options);

} // namespace bullace::console
