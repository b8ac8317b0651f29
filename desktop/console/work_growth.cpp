// `bullace work growth`: how tagged shoots grew, and when they stopped.
#include "console/work.hpp"

#include "core/hardiness/shoot_growth.hpp"

#include <CLI/CLI.hpp>
#include <map>
#include <memory>
#include <utility>

namespace bullace::console {

namespace {

struct GrowthChoice {
    std::string path;
    std::string firstFrost;
};

struct Shoot {
    std::vector<hardiness::ShootLength> lengths;
    std::vector<hardiness::TipRecord> tips;
};
using Shoots = std::map<std::pair<std::string, std::string>, Shoot>; // by accession and tag

struct Columns {
    std::size_t shoot = 0;
    std::size_t date = 0;
    std::optional<std::size_t> cm{};
    std::optional<std::size_t> tip{};
    std::optional<std::size_t> accession{};
};

Result<Columns> columnsOf(const WorkFile& file) {
    const auto shoot = file.column("shoot");
    const auto date = file.column("date");
    if (!shoot || !date) {
        return shoot ? date.error() : shoot.error();
    }
    const auto tip = file.columnIfThere("tip");
    const auto cm = file.columnIfThere("cm");
    if (!tip && !cm) {
        return file.column("cm").error();
    }
    return Columns{*shoot, *date, cm, tip, file.columnIfThere("accession")};
}

Result<hardiness::ShootTip> tipOf(const WorkFile& file, std::size_t row, std::size_t column) {
    const std::string& text = file.text(row, column);
    if (text == "growing") {
        return hardiness::ShootTip::Growing;
    }
    if (text == "slowing") {
        return hardiness::ShootTip::Slowing;
    }
    if (text == "stopped") {
        return hardiness::ShootTip::Stopped;
    }
    return file.wrong(row, column, "a shoot tip is growing, slowing or stopped");
}

Status addRow(const WorkFile& file, const Columns& columns, std::size_t row, Shoots& shoots) {
    const auto day = file.date(row, columns.date);
    if (!day) {
        return day.error();
    }
    Shoot& shoot = shoots[{columns.accession ? file.text(row, *columns.accession) : "",
                           file.text(row, columns.shoot)}];
    if (columns.cm) {
        const auto cm = file.numberIfThere(row, *columns.cm);
        if (!cm) {
            return cm.error();
        }
        if (*cm && **cm < 0) {
            return file.wrong(row, *columns.cm, "a shoot's length is not below 0");
        }
        if (*cm) {
            shoot.lengths.push_back({*day, **cm});
        }
    }
    if (columns.tip && !file.isMissing(row, *columns.tip)) {
        const auto tip = tipOf(file, row, *columns.tip);
        if (!tip) {
            return tip.error();
        }
        shoot.tips.push_back({*day, *tip});
    }
    return {};
}

void describe(const hardiness::ShootGrowth& growth, Document& into) {
    into.text("method", "logistic curve by least squares; growth ends at 95 % of the asymptote");
    into.count("lengths", growth.lengths);
    into.number("greatest measured, cm", growth.greatestCm);
    into.estimate("asymptote, cm", growth.asymptoteCm);
    into.estimate("midpoint, days from the first measured", growth.midpointDay);
    into.estimate("rate per day", growth.ratePerDay);
    into.estimate("fastest growth, cm per day", growth.greatestGrowthCmPerDay);
    into.estimate("end, days from the first measured", growth.endDay);
    into.date("end", growth.endDate);
    into.truth("end beyond what was measured", growth.isEndBeyondMeasured);
    into.number("residual standard deviation, cm", growth.residualSdCm);
    into.remarks(growth.remarks);
}

void describe(const hardiness::GrowthEnd& end, Document& into) {
    into.count("visits", end.visits);
    into.date("last growing", end.after).date("first stopped", end.onOrBefore);
    into.remarks(end.remarks);
}

Status describe(const Shoot& shoot, const std::optional<CivilDate>& frost, Document& into) {
    if (!shoot.lengths.empty()) {
        const auto growth = hardiness::fitShootGrowth(shoot.lengths);
        if (!growth) {
            return growth.error();
        }
        Document& curve = into.object("curve");
        describe(*growth, curve);
        if (frost) {
            curve.estimate("days before the first frost",
                           hardiness::daysBeforeFrost(*growth, *frost));
        }
    }
    if (!shoot.tips.empty()) {
        const hardiness::GrowthEnd end = hardiness::growthEnd(shoot.tips);
        Document& tips = into.object("tips");
        describe(end, tips);
        if (frost) {
            tips.interval("days before the first frost", hardiness::daysBeforeFrost(end, *frost));
        }
    }
    return {};
}

Result<Shoots> shootsOf(const WorkFile& file) {
    const auto columns = columnsOf(file);
    if (!columns) {
        return columns.error();
    }
    Shoots shoots;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        if (const Status added = addRow(file, *columns, row, shoots); !added) {
            return added.error();
        }
    }
    return shoots;
}

int growthOf(const GrowthChoice& choice, Terminal& terminal) {
    const auto frost = readDate(choice.firstFrost);
    if (!choice.firstFrost.empty() && !frost) {
        return tellFailure(terminal.err,
                           {ErrorCode::InvalidInput,
                            "The day of the first frost is written like 2026-11-02.",
                            {}});
    }
    const auto file = WorkFile::read(choice.path, terminal);
    const auto shoots = file ? shootsOf(*file) : file.error();
    if (!shoots) {
        return tellFailure(terminal.err, shoots.error());
    }
    Document document;
    document.text("computation", "growth");
    DocumentList& list = document.list("shoots");
    for (const auto& [name, shoot] : *shoots) {
        Document& of = list.add();
        of.text("accession", name.first).text("shoot", name.second);
        if (const Status described = describe(shoot, frost, of); !described) {
            return tellFailure(terminal.err, described.error());
        }
    }
    return tell(document, terminal);
}

} // namespace

void addGrowth(CLI::App& methods, Work& work) {
    auto choice = std::make_shared<GrowthChoice>();
    CLI::App* command = methods.add_subcommand(
        "growth", "Growth curves of tagged shoots and the day on which growth stops");
    command->add_option("FILE", choice->path, "CSV; - is standard input")->required();
    command->add_option(
        "--first-frost", choice->firstFrost, "Its day, to set the end of growth against");
    command->footer("Columns: shoot (its tag), date, cm; if there, accession, and tip (growing, "
                    "slowing or stopped). With tip, cm may be left out.\n"
                    "Example:\n  shoot,date,cm\n  12,2026-04-20,8\n  12,2026-05-04,31\n"
                    "  12,2026-05-18,90");
    command->callback([choice, &work] {
        work = [choice](Terminal& terminal) { return growthOf(*choice, terminal); };
    });
}

} // namespace bullace::console
