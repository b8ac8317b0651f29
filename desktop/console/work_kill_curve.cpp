// `bullace work kill-curve`: the temperatures that kill buds, for each accession and compared.
#include "console/work.hpp"

#include "core/hardiness/kill_curve.hpp"

#include <CLI/CLI.hpp>
#include <cmath>
#include <map>
#include <memory>

namespace bullace::console {

namespace {

using hardiness::KillCurve;
using hardiness::KillPoint;
using hardiness::Link;

struct KillCurveChoice {
    std::string path;
    std::string link = "logit";
};

struct Lot {
    std::vector<hardiness::FreezeRow> rows;
    std::optional<hardiness::Control> control{};
};
using Lots = std::map<std::string, Lot>;

struct Columns {
    std::size_t temperature = 0;
    std::size_t counted = 0;
    std::size_t dead = 0;
    std::optional<std::size_t> accession{};
};

Result<Columns> columnsOf(const WorkFile& file) {
    const auto temperature = file.column("temperature");
    const auto counted = file.column("counted");
    const auto dead = file.column("dead");
    for (const auto* column : {&temperature, &counted, &dead}) {
        if (!*column) {
            return column->error();
        }
    }
    return Columns{*temperature, *counted, *dead, file.columnIfThere("accession")};
}

// One row into its lot; "control" stands where buds were not frozen.
Status addRow(const WorkFile& file, const Columns& columns, std::size_t row, Lots& lots) {
    const auto counted = file.count(row, columns.counted);
    const auto dead = file.count(row, columns.dead);
    if (!counted || !dead) {
        return counted ? dead.error() : counted.error();
    }
    if (*dead > *counted) {
        return file.wrong(row, columns.dead, "more dead than counted");
    }
    if (*counted > static_cast<std::size_t>(hardiness::kMostCounted)) {
        return file.wrong(row, columns.counted, "no one can have counted so many");
    }
    Lot& lot = lots[columns.accession ? file.text(row, *columns.accession) : ""];
    const auto n = static_cast<std::int64_t>(*counted);
    const auto k = static_cast<std::int64_t>(*dead);
    if (file.text(row, columns.temperature) == "control") {
        const hardiness::Control before = lot.control.value_or(hardiness::Control{});
        lot.control = hardiness::Control{before.counted + n, before.dead + k};
        return {};
    }
    const auto temperature = file.number(row, columns.temperature);
    if (!temperature) {
        return temperature.error();
    }
    if (std::abs(*temperature) > hardiness::kGreatestDose) {
        return file.wrong(row, columns.temperature, "that is no temperature");
    }
    lot.rows.push_back({*temperature, n, k});
    return {};
}

Result<Lots> lotsOf(const WorkFile& file) {
    const auto columns = columnsOf(file);
    if (!columns) {
        return columns.error();
    }
    Lots lots;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        if (const Status added = addRow(file, *columns, row, lots); !added) {
            return added.error();
        }
    }
    return lots;
}

void describe(const hardiness::GoodnessOfFit& goodness, Document& into) {
    into.number("deviance", goodness.deviance).number("Pearson chi squared", goodness.pearson);
    into.whole("degrees of freedom", goodness.degreesOfFreedom);
    into.number("deviance p", goodness.devianceP).number("Pearson p", goodness.pearsonP);
    into.number("heterogeneity", goodness.heterogeneity);
}

std::string_view nameOf(hardiness::LimitsBy by) {
    switch (by) {
    case hardiness::LimitsBy::Profile:
        return "profile likelihood";
    case hardiness::LimitsBy::ScaledFieller:
        return "Fieller, widened for heterogeneity";
    case hardiness::LimitsBy::ScaledDelta:
        return "delta method, widened for heterogeneity";
    }
    return "";
}

void describe(const KillPoint& point, Document& into) {
    into.number("percent killed", point.part * 100);
    into.estimate("temperature", point.temperatureC);
    into.text("limits by", nameOf(point.limitsBy));
    into.truth("beyond what was tested", point.isBeyondTested);
    into.interval("delta limits", point.delta).interval("Fieller limits", point.fieller);
    into.interval("profile limits", point.profile);
    if (point.scaled) {
        Document& scaled = into.object("scaled by heterogeneity");
        scaled.number("standard error", point.scaled->standardError);
        scaled.interval("delta limits", point.scaled->delta);
        scaled.interval("Fieller limits", point.scaled->fieller);
    }
}

void describeCurve(const KillCurve& curve, Document& into) {
    if (curve.fit) {
        Document& fit = into.object("curve over degrees of frost");
        fit.number("intercept", curve.fit->intercept).number("slope", curve.fit->slope);
        fit.number("standard error of the intercept", curve.fit->interceptError);
        fit.number("standard error of the slope", curve.fit->slopeError);
        fit.number("covariance", curve.fit->covariance);
        fit.number("log-likelihood", curve.fit->logLikelihood);
        describe(curve.fit->goodness, fit);
        DocumentList& fitted = fit.list("fitted");
        for (const double share : curve.fit->fitted) {
            fitted.add(share);
        }
    }
    if (curve.natural) {
        Document& fit = into.object("curve with dead buds of the control");
        fit.number("intercept", curve.natural->intercept).number("slope", curve.natural->slope);
        fit.number("standard error of the intercept", curve.natural->interceptError);
        fit.number("standard error of the slope", curve.natural->slopeError);
        fit.estimate("dead without frost",
                     statistics::Estimate{curve.natural->natural,
                                          curve.natural->naturalError,
                                          curve.natural->naturalLimits});
        fit.number("log-likelihood", curve.natural->logLikelihood);
        describe(curve.natural->goodness, fit);
    }
}

void describe(const KillCurve& curve, Link link, Document& into) {
    into.count("rows", curve.rowsUsed).count("rows without buds", curve.rowsEmpty);
    into.whole("counted", curve.counted).whole("dead", curve.dead);
    into.text("method", "maximum likelihood").text("link", hardiness::nameOf(link));
    describeCurve(curve, into);
    DocumentList& points = into.list("points");
    for (const KillPoint& point : curve.points) {
        describe(point, points.add());
    }
    into.estimate("mean killing temperature (Spearman and Kärber)",
                  curve.meanKill ? std::optional(curve.meanKill->temperatureC) : std::nullopt);
    into.number("trim", curve.meanKill ? std::optional(curve.meanKill->trim) : std::nullopt);
    if (curve.bracket) {
        Document& bracket = into.object("half died between");
        bracket.number("warmer", curve.bracket->warmerC).number("colder", curve.bracket->colderC);
    }
    into.remarks(curve.remarks);
}

void describe(const hardiness::KillComparison& comparison, Document& into) {
    if (comparison.fit) {
        into.number("common slope", comparison.fit->slope);
        into.number("standard error of the slope", comparison.fit->slopeError);
        into.number("log-likelihood", comparison.fit->logLikelihood);
        describe(comparison.fit->goodness, into);
        if (const auto& test = comparison.fit->parallelism) {
            Document& parallelism = into.object("slopes of their own");
            parallelism.number("likelihood ratio", test->statistic);
            parallelism.whole("degrees of freedom", test->degreesOfFreedom);
            parallelism.number("p", test->p);
        }
    }
    DocumentList& accessions = into.list("accessions");
    for (const auto& accession : comparison.accessions) {
        Document& of = accessions.add();
        of.text("accession", accession.accession);
        of.estimate("LT50", accession.lt50C);
        of.truth("beyond what was tested", accession.isBeyondTested);
    }
    DocumentList& differences = into.list("differences");
    for (const auto& difference : comparison.differences) {
        Document& of = differences.add();
        of.text("of", difference.one).text("minus", difference.other);
        of.estimate("LT50", difference.lt50C);
        of.number("z", difference.z).number("p", difference.p);
        of.number("p after Holm", difference.pHolm);
    }
    into.remarks(comparison.remarks);
}

Link linkOf(const std::string& name) {
    return name == "probit"    ? Link::Probit
           : name == "cloglog" ? Link::ComplementaryLogLog
                               : Link::Logit;
}

Status compare(const Lots& lots, Link link, Document& document) {
    std::vector<hardiness::FreezeGroup> groups;
    for (const auto& [accession, lot] : lots) {
        groups.push_back({accession, lot.rows});
    }
    const auto compared = hardiness::compareKill(groups, link);
    if (!compared) {
        return compared.error();
    }
    describe(*compared, document.object("compared by one slope"));
    return {};
}

int killCurveOf(const KillCurveChoice& choice, Terminal& terminal) {
    const auto file = WorkFile::read(choice.path, terminal);
    const auto lots = file ? lotsOf(*file) : file.error();
    if (!lots) {
        return tellFailure(terminal.err, lots.error());
    }
    const Link link = linkOf(choice.link);
    Document document;
    document.text("computation", "kill-curve");
    DocumentList& list = document.list("accessions");
    for (const auto& [accession, lot] : *lots) {
        hardiness::KillCurveOptions options;
        options.link = link;
        options.control = lot.control;
        const auto curve = hardiness::killCurve(lot.rows, options);
        if (!curve) {
            return tellFailure(terminal.err, curve.error());
        }
        Document& of = list.add();
        of.text("accession", accession);
        describe(*curve, link, of);
    }
    if (lots->size() > 1) {
        if (const Status compared = compare(*lots, link, document); !compared) {
            return tellFailure(terminal.err, compared.error());
        }
    }
    return tell(document, terminal);
}

} // namespace

void addKillCurve(CLI::App& methods, Work& work) {
    auto choice = std::make_shared<KillCurveChoice>();
    CLI::App* command = methods.add_subcommand(
        "kill-curve", "The temperatures that kill 10, 50 and 90 % of the buds in freezing tests");
    command->add_option("FILE", choice->path, "CSV; - is standard input")->required();
    command->add_option("--link", choice->link, "The curve's shape")
        ->check(CLI::IsMember({"logit", "probit", "cloglog"}))
        ->capture_default_str();
    command->footer("Columns: temperature (°C, or the word control for buds that were not frozen), "
                    "counted, dead; if there, accession.\n"
                    "Example:\n  accession,temperature,counted,dead\n  A017,-12,30,2\n"
                    "  A017,-16,30,17\n  A017,-20,30,29");
    command->callback([choice, &work] {
        work = [choice](Terminal& terminal) { return killCurveOf(*choice, terminal); };
    });
}

} // namespace bullace::console
