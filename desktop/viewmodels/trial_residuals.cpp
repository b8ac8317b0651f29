// The residuals of a trial over the block that it stands in: did the trial work?
#include "desk/trial_shown.hpp"

#include "core/vineyard/position.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(TrialResiduals)
};

// What the model leaves of one vine.
struct VineResidual {
    std::uint32_t vine = 0;
    std::string accession;
    double value = 0;
    double fitted = 0;
    [[nodiscard]] double residual() const { return value - fitted; }
};

std::vector<VineResidual> residualsOf(const ShownTrial& trial) {
    const trials::TrialTable& table = trial.vines.table;
    const auto scaled = trials::ScaledResponse::of(table.response, trial.scaled.scale());
    if (!scaled) {
        return {};
    }
    std::map<std::size_t, double> fitted;
    for (const trials::FittedRow& row : trial.analysis.rows) {
        fitted[row.row] = row.fitted;
    }
    const trials::Factor& accession = *table.factor(season::kAccessionFactor);
    std::vector<VineResidual> residuals;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const auto found = fitted.find(trial.plots.plotOf[row]);
        if (found != fitted.end()) {
            residuals.push_back({trial.vines.vines[row],
                                 accession.levels[accession.of[row]],
                                 scaled->values()[row],
                                 found->second});
        }
    }
    return residuals;
}

double deviationOf(const std::vector<VineResidual>& residuals) {
    double squares = 0;
    for (const VineResidual& each : residuals) {
        squares += each.residual() * each.residual();
    }
    return std::sqrt(squares / std::max<double>(1, static_cast<double>(residuals.size()) - 1));
}

// How far off, in standard deviations: far below, below, near, above, far above.
constexpr std::size_t kSteps = 5;
constexpr std::size_t kNear = 2;
std::size_t stepOf(double deviations) {
    constexpr double kFar = 2;
    constexpr double kOff = 1;
    return deviations < -kFar   ? 0
           : deviations < -kOff ? 1
           : deviations <= kOff ? kNear
           : deviations <= kFar ? 3
                                : 4;
}
QString stepWords(std::size_t step) {
    switch (step) {
    case 0:
        return Tr::tr("more than 2 SD below");
    case 1:
        return Tr::tr("1 to 2 SD below");
    case kNear:
        return Tr::tr("within 1 SD");
    case 3:
        return Tr::tr("1 to 2 SD above");
    default:
        return Tr::tr("more than 2 SD above");
    }
}

// The block with the most vines: one picture is one block.
std::string fullestBlock(const ShownTrial& trial) {
    const trials::Factor& blocks = *trial.vines.table.factor(season::kBlockFactor);
    std::vector<std::size_t> count(blocks.levels.size(), 0);
    for (const std::uint32_t level : blocks.of) {
        ++count[level];
    }
    return count.empty() ? std::string()
                         : blocks.levels[static_cast<std::size_t>(std::ranges::max_element(count) -
                                                                  count.begin())];
}

void addResidualRow(const ShownTrial& trial, const VineResidual& each, double sd, Study& study) {
    const int decimals = trial.tried.decimals + 1;
    GridRow row;
    const std::string& position = trial.ground.notes.vines[each.vine].position;
    row.key = QStringLiteral("vine ") + fromText(position) + QLatin1Char(' ') +
              QString::number(each.vine);
    row.cells << fromText(position) << accessionWords(trial.ground, each.accession)
              << numberText(each.value, decimals) << numberText(each.fitted, decimals)
              << numberText(each.residual(), decimals)
              << (sd > 0 ? numberText(each.residual() / sd, 1) : QString());
    study.rows.push_back(std::move(row));
}

void addPicture(const ShownTrial& trial,
                const std::vector<VineResidual>& residuals,
                double sd,
                Study& study) {
    const std::string block = fullestBlock(trial);
    std::array<report::PlotSeries, kSteps> steps;
    std::size_t count = 0;
    for (const VineResidual& each : residuals) {
        const auto at = vineyard::readPosition(trial.ground.notes.vines[each.vine].position);
        if (!at || at->block != block) {
            continue;
        }
        report::PlotPoint point;
        point.x = at->vine;
        point.y = at->row;
        point.label = trial.ground.notes.vines[each.vine].position;
        steps[stepOf(each.residual() / sd)].points.push_back(std::move(point));
        ++count;
    }
    report::Plot plot;
    plot.title = toText(Tr::tr("%1: residuals in block %2").arg(study.title, fromText(block)));
    plot.x.title = toText(Tr::tr("Vine in the row"));
    plot.x.isWhole = true;
    plot.y.title = toText(Tr::tr("Row"));
    plot.y.isWhole = true;
    plot.y.isReversed = true;
    for (std::size_t step = 0; step < kSteps; ++step) {
        if (!steps[step].points.empty()) {
            steps[step].name = toText(stepWords(step));
            steps[step].isFaint = step == kNear;
            plot.series.push_back(std::move(steps[step]));
        }
    }
    plot.notes.count = count;
    plot.notes.missing =
        toText(Tr::tr("Where nothing is drawn, no vine was noted or none stands."));
    study.plot = std::move(plot);
    if (count < residuals.size()) {
        study.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The picture has block %1; for another, choose it among the blocks "
                              "of the vineyard. The table has all."),
             {block}});
    }
}

} // namespace

void showResiduals(const ShownTrial& trial, Study& study) {
    std::vector<VineResidual> residuals = residualsOf(trial);
    const double sd = deviationOf(residuals);
    study.columns = {{Tr::tr("Position"), 12},
                     {Tr::tr("Accession"), 20, false, true},
                     {Tr::tr("Value"), 9, true},
                     {Tr::tr("Fitted"), 9, true},
                     {Tr::tr("Residual"), 9, true},
                     {Tr::tr("In SD"), 7, true}};
    if (sd > 0) {
        addPicture(trial, residuals, sd, study);
    }
    std::ranges::stable_sort(residuals, std::ranges::greater(), [](const VineResidual& each) {
        return std::abs(each.residual());
    });
    for (const VineResidual& each : residuals) {
        addResidualRow(trial, each, sd, study);
    }
}

} // namespace bullace::desk
