// `bullace work onset`: when vines reached a stage, by accession and year, from intervals between
// visits or from the visits themselves.
#include "console/onset_file.hpp"
#include "console/weather_file.hpp"
#include "console/work.hpp"

#include "core/season/onset_comparison.hpp"
#include "core/weather/heat_band.hpp"

#include <CLI/CLI.hpp>
#include <map>
#include <memory>
#include <set>

namespace bullace::console {

namespace {

using namespace season;

struct Options {
    OnsetFileOptions file;
    std::string reference;
    WeatherOptions weather;
    double base = 10;
};

void describeCounts(const OnsetCounts& counts, Document& into) {
    into.count("vines", counts.telling());
    into.count("reached before the first visit", counts.left);
    into.count("not yet at the last visit", counts.right);
    into.count("between two visits", counts.within);
    into.count("on a known day", counts.exact);
    into.count("left out, nothing is known", counts.unseen);
}

void describeSteps(const StepCurve& curve, Document& into) {
    into.number("log-likelihood", curve.logLikelihood);
    into.number("greatest excess of the Kuhn-Tucker conditions", curve.excess);
    into.count("candidate intervals", curve.candidates);
    DocumentList& steps = into.list("steps");
    for (const StepMass& step : curve.steps) {
        steps.add()
            .number("after", step.after)
            .number("by", step.by)
            .number("share", step.mass)
            .number("share until then", step.cumulated);
    }
}

Status describeSummary(const std::vector<OnsetInterval>& onsets, Document& into) {
    const auto summary = summariseOnset(onsets);
    if (!summary) {
        return summary.error();
    }
    describeCounts(summary->counts, into);
    describeSteps(summary->steps, into.object("without a law (Turnbull)"));
    DocumentList& laws = into.list("laws");
    for (const LawEstimate& law : summary->laws) {
        laws.add()
            .text("law", nameOf(law.law))
            .estimate("middle", law.middle)
            .number("spread", law.spread)
            .number("log-likelihood", law.logLikelihood);
    }
    into.interval("95 % limits of the mean", summary->limits);
    into.remarks(summary->remarks);
    return {};
}

// Treatment coding: the first accession and year, by their bytes, are in the intercept.
struct Coding {
    std::vector<std::string> names{"intercept"};
    std::vector<double> covariates;
};

Coding codingOf(const OnsetRows& rows, bool byAccession, bool byYear) {
    std::set<std::string> accessions;
    std::set<int> years;
    for (const OnsetRow& row : rows) {
        accessions.insert(row.accession);
        years.insert(row.year);
    }
    Coding coding;
    const auto fill = [&](const OnsetRow& row, bool isNaming) {
        coding.covariates.push_back(1);
        const auto add = [&](bool is, const std::string& name) {
            coding.covariates.push_back(is ? 1 : 0);
            if (isNaming) {
                coding.names.push_back(name);
            }
        };
        for (const std::string& accession : byAccession ? accessions : std::set<std::string>{}) {
            if (accession != *accessions.begin()) {
                add(row.accession == accession, "accession " + accession);
            }
        }
        for (const int year : byYear ? years : std::set<int>{}) {
            if (year != *years.begin()) {
                add(row.year == year, "year " + std::to_string(year));
            }
        }
    };
    for (const OnsetRow& row : rows) {
        fill(row, &row == &rows.front());
    }
    return coding;
}

Status
describeFit(const OnsetRows& rows, OnsetLaw law, std::pair<bool, bool> by, DocumentList& list) {
    const Coding coding = codingOf(rows, by.first, by.second);
    std::vector<OnsetInterval> onsets;
    for (const OnsetRow& row : rows) {
        onsets.push_back(row.onset);
    }
    const auto fitting = fitOnset(law, {onsets, coding.covariates, coding.names.size()});
    if (!fitting) {
        return fitting.error();
    }
    Document& into = list.add();
    into.text("law", nameOf(law));
    into.text("by", by.first ? (by.second ? "accession and year" : "accession") : "all together");
    if (fitting->fit) {
        DocumentList& coefficients = into.list("coefficients");
        for (std::size_t i = 0; i < coding.names.size(); ++i) {
            coefficients.add()
                .text("of", coding.names[i])
                .estimate("estimate", fitting->fit->coefficient(i));
        }
        into.number("scale", fitting->fit->scale);
        into.number("standard error of log scale", fitting->fit->logScaleError);
        into.number("log-likelihood", fitting->fit->logLikelihood);
    }
    into.remarks(fitting->remarks);
    return {};
}

bool areAbove0(const OnsetRows& rows) {
    return std::ranges::all_of(rows, [](const OnsetRow& row) { return row.onset.by > 0; });
}

Status describeFits(const OnsetRows& rows, DocumentList& list) {
    std::set<std::string> accessions;
    std::set<int> years;
    for (const OnsetRow& row : rows) {
        accessions.insert(row.accession);
        years.insert(row.year);
    }
    for (const OnsetLaw law : {OnsetLaw::Normal,
                               OnsetLaw::Logistic,
                               OnsetLaw::LogNormal,
                               OnsetLaw::LogLogistic,
                               OnsetLaw::Weibull,
                               OnsetLaw::Exponential}) {
        if (isOfLogarithm(law) && !areAbove0(rows)) {
            continue;
        }
        for (const auto& by : {std::pair(false, false), {true, false}, {true, true}}) {
            const bool isAsked =
                (!by.first || accessions.size() > 1) && (!by.second || years.size() > 1);
            if (!isAsked) {
                continue;
            }
            if (Status made = describeFit(rows, law, by, list); !made) {
                return made;
            }
        }
    }
    return {};
}

using ByAccession = std::map<std::string, std::vector<YearOnset>>;

Status describeOverYears(const ByAccession& accessions, DocumentList& list) {
    for (const auto& [accession, onsets] : accessions) {
        const auto over = overYears(onsets);
        if (!over) {
            return over.error();
        }
        Document& into = list.add();
        into.text("accession", accession).count("years", over->years.size());
        describeCounts(over->counts, into);
        into.text("method", "normal law with an effect of each year");
        into.estimate("mean over years", over->mean);
        into.number("spread between vines", over->spread);
        into.number("spread between years", over->betweenYears);
        DocumentList& yearly = into.list("yearly means");
        for (const auto& [year, mean] : over->yearly) {
            yearly.add().whole("year", year).estimate("mean", mean);
        }
        into.remarks(over->remarks);
    }
    return {};
}

Status describeDifferences(const ByAccession& accessions,
                           const std::string& reference,
                           OnsetUnit unit,
                           DocumentList& list) {
    for (const auto& [accession, onsets] : accessions) {
        if (accession == reference) {
            continue;
        }
        const auto made = differenceTo(onsets, accessions.at(reference));
        if (!made) {
            return made.error();
        }
        Document& into = list.add();
        into.text("accession", accession).text("reference", reference);
        into.text("unit", unit == OnsetUnit::Days ? "days" : "degree-days");
        into.count("vines", made->counts.telling());
        into.count("vines of the reference", made->referenceCounts.telling());
        into.count("years", made->years.size());
        into.estimate("difference", made->difference);
        into.text("in words", made->difference ? inEnglish(inWords(*made->difference, unit)) : "");
        into.interval("bounds where it cannot be estimated", made->bounds);
        into.number("p that it is the same every year", made->sameEveryYearP);
        into.remarks(made->remarks);
    }
    return {};
}

Result<std::vector<HeatCurve>>
curvesOf(const Options& options, const ByAccession& accessions, Terminal& terminal) {
    const auto file = readWeather(options.weather, terminal);
    if (!file) {
        return file.error();
    }
    std::set<int> years;
    for (const auto& [accession, onsets] : accessions) {
        for (const YearOnset& one : onsets) {
            years.insert(one.year);
        }
    }
    std::vector<HeatCurve> curves;
    for (const int year : years) {
        auto curve = weather::heatCurve(file->record.days,
                                        {std::chrono::January / 1, 365},
                                        {weather::DegreeDayMethod::SingleSine, {options.base, {}}},
                                        year);
        if (!curve) {
            return curve.error();
        }
        curves.push_back({year, std::move(curve->days)});
    }
    return curves;
}

Status describeOnHeat(const Options& options,
                      const ByAccession& accessions,
                      Document& document,
                      Terminal& terminal) {
    if (options.weather.path.empty()) {
        return {};
    }
    const auto curves = curvesOf(options, accessions, terminal);
    if (!curves) {
        return curves.error();
    }
    ByAccession onDegrees;
    Document& into = document.object("in degree-days");
    into.text("method", "single sine from 1 January, °C days").number("base, °C", options.base);
    Remarks remarks;
    for (const auto& [accession, onsets] : accessions) {
        OnHeat heat = onHeat(onsets, *curves);
        onDegrees[accession] = std::move(heat.onsets);
        remarks.insert(remarks.end(), heat.remarks.begin(), heat.remarks.end());
    }
    into.remarks(remarks);
    if (Status made = describeOverYears(onDegrees, into.list("over years")); !made) {
        return made;
    }
    return options.reference.empty()
               ? Status()
               : describeDifferences(
                     onDegrees, options.reference, OnsetUnit::DegreeDays, into.list("differences"));
}

Status
describeAll(const Options& options, const OnsetFile& file, Document& document, Terminal& terminal) {
    std::map<std::pair<std::string, int>, std::vector<OnsetInterval>> groups;
    ByAccession accessions;
    for (const OnsetRow& row : file.rows) {
        groups[{row.accession, row.year}].push_back(row.onset);
        accessions[row.accession].push_back({row.year, row.onset});
    }
    if (!options.reference.empty() && !accessions.contains(options.reference)) {
        return Error{ErrorCode::InvalidInput,
                     "There is no accession " + options.reference + " in the file.",
                     {}};
    }
    DocumentList& list = document.list("accessions and years");
    for (const auto& [group, onsets] : groups) {
        Document& into = list.add();
        into.text("accession", group.first).whole("year", group.second);
        if (Status made = describeSummary(onsets, into); !made) {
            return made;
        }
    }
    DocumentList& pooled = document.list("accessions, years together");
    for (const auto& [accession, onsets] : accessions) {
        std::vector<OnsetInterval> all;
        for (const YearOnset& one : onsets) {
            all.push_back(one.onset);
        }
        Document& into = pooled.add();
        into.text("accession", accession);
        if (Status made = describeSummary(all, into); !made) {
            return made;
        }
    }
    if (Status made = describeFits(file.rows, document.list("fits")); !made) {
        return made;
    }
    if (Status made = describeOverYears(accessions, document.list("over years")); !made) {
        return made;
    }
    if (!options.reference.empty()) {
        if (Status made = describeDifferences(
                accessions, options.reference, OnsetUnit::Days, document.list("differences"));
            !made) {
            return made;
        }
    }
    return describeOnHeat(options, accessions, document, terminal);
}

int onset(const Options& options, Terminal& terminal) {
    const auto file = readOnsets(options.file, terminal);
    if (!file) {
        return tellFailure(terminal.err, file.error());
    }
    Document document;
    document.text("computation", "onset");
    document.remarks(file->remarks);
    if (Status made = describeAll(options, *file, document, terminal); !made) {
        return tellFailure(terminal.err, made.error());
    }
    return tell(document, terminal);
}

} // namespace

void addOnset(CLI::App& methods, Work& work) {
    auto options = std::make_shared<Options>();
    CLI::App* command = methods.add_subcommand("onset", "When vines reached a stage, from visits");
    addOnsetOptions(*command, options->file);
    command->add_option("--reference", options->reference, "Accession to compare the others with");
    command->add_option(
        "--weather", options->weather.path, "Daily weather, for the same in degree-days");
    command->add_option("--base", options->base, "Lower threshold of degree-days, °C")
        ->capture_default_str();
    addWeatherOptions(*command, options->weather);
    command->callback([options, &work] {
        work = [options](Terminal& terminal) { return onset(*options, terminal); };
    });
}

} // namespace bullace::console
