// What the vines of a block bore in a season, and what they are going to bear: vines by clusters by
// berries by weight.
#include "desk/study_remarks.hpp"
#include "desk/study_views.hpp"

#include "core/season/station_crop.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using statistics::Estimate;

namespace {

constexpr std::array<std::string_view, 2> kNoted{"yield", "clusters"};

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(CropStudy)
};

class CropView : public StudyView {
public:
    QString key() const override { return QStringLiteral("crop"); }
    QString title() const override { return Tr::tr("Yield and crop"); }
    QString help() const override {
        return Tr::tr(
            "Each accession in one season: what its vines bore, picks added up, with the "
            "vines of which a pick was missed; and the crop of a vine as clusters by "
            "berries by weight, with the interval that the three bring together. Berries "
            "weighed in the lag phase are taken as heavy as such berries were at the last "
            "weighing of earlier seasons, if the station has vines that were weighed "
            "twice.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        const ChoiceGroup seasons = seasonChoice(season::yearsOf(ground.notes, kNoted));
        settleChoice(chosen, seasons);
        const ChoiceGroup accessions = accessionChoice(ground, kNoted, true);
        settleChoice(chosen, accessions);
        return {seasons, accessions};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const int season = chosen.at(QStringLiteral("season")).toInt();
        const auto bearing = season::bearingIn(ground.notes, season);
        study.columns = {{Tr::tr("Accession"), 18, false, true},
                         {Tr::tr("Vines picked"), 7, true},
                         {Tr::tr("kg a vine (95 %)"), 18, true},
                         {Tr::tr("Picks missed"), 7, true},
                         {Tr::tr("Clusters a vine"), 8, true},
                         {Tr::tr("Crop to come, kg a vine"), 18, true},
                         {Tr::tr("Lost vines"), 6, true}};
        const season::LagPhase lag = season::lagPhaseBefore(ground.notes, season);
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        report::Plot plot;
        for (const auto& [accession, of] : bearing) {
            const season::NotedAccession& noted = ground.notes.accessions[accession];
            if ((!of.picks.empty() || !of.clusters.empty()) &&
                isChosen(chosen, group, fromText(noted.id))) {
                addRow(noted, of, lag, plot, study);
            }
        }
        if (study.rows.empty()) {
            study.words = Tr::tr("Nothing has been picked and no clusters counted yet.");
            return study;
        }
        study.title = Tr::tr("Yield and crop, %1").arg(season);
        study.words = Tr::tr("%n accession(s).", nullptr, static_cast<int>(study.rows.size()));
        study.remarks.insert(
            study.remarks.end(), lag.factor.remarks.begin(), lag.factor.remarks.end());
        for (const std::string_view code : season::kCropDescriptors) {
            countLeftOut(ground.notes.notesOf(code), season, study);
        }
        finish(std::move(plot), study);
        study.method = Tr::tr("Yield: the mean of vines' sums of picks, Student's t. Crop: the "
                              "product of the means, relative errors added as squares.");
        return study;
    }

private:
    static void addRow(const season::NotedAccession& noted,
                       const season::Bearing& of,
                       const season::LagPhase& lag,
                       report::Plot& plot,
                       Study& study) {
        std::vector<double> sums;
        std::size_t missed = 0;
        for (const auto& [vine, picks] : of.picks) {
            const fruit::SeasonYield yield = fruit::seasonYield(picks);
            missed += yield.isComplete ? 0U : 1U;
            if (yield.isComplete) {
                sums.push_back(yield.kg);
            }
        }
        const auto yield = fruit::summaryOf(sums);
        const std::optional<Estimate> crop = cropOf(of, lag, study);
        double clusters = 0;
        for (const auto& [vine, counts] : of.clusters) {
            clusters += counts.back() / static_cast<double>(of.clusters.size());
        }
        GridRow row;
        row.key = fromText(noted.id);
        row.cells << fromText(noted.words) << QString::number(sums.size())
                  << (yield ? estimateText({yield->mean, {}, yield->interval}, 1) : QString())
                  << (missed > 0 ? QString::number(missed) : QString())
                  << (of.clusters.empty() ? QString() : numberText(clusters, 0))
                  << (crop ? estimateText(*crop, 1) : QString())
                  << (of.lost.empty() ? QString() : QString::number(of.lost.size()));
        study.rows.push_back(std::move(row));
        if (yield) {
            addPoint(noted.id, {yield->mean, {}, yield->interval}, 0, plot);
        }
        if (crop) {
            addPoint(noted.id, *crop, 1, plot);
        }
        plot.notes.count = plot.notes.count.value_or(0) + sums.size() + of.clusters.size();
    }

    static std::optional<Estimate>
    cropOf(const season::Bearing& of, const season::LagPhase& lag, Study& study) {
        const auto crop = season::cropOfVine(of, lag);
        if (!crop) {
            return std::nullopt;
        }
        addRemarks(crop->remarks, study.remarks);
        return crop->kg;
    }

    static void
    addPoint(const std::string& id, const Estimate& kg, std::size_t series, report::Plot& plot) {
        if (plot.series.empty()) {
            plot.series.resize(2);
            plot.series[0].name = toText(Tr::tr("Picked"));
            plot.series[1].name = toText(Tr::tr("To come"));
        }
        if (plot.x.names.empty() || plot.x.names.back() != id) {
            plot.x.names.push_back(id);
        }
        report::PlotPoint point;
        point.x = static_cast<double>(plot.x.names.size() - 1);
        point.y = kg.value;
        if (kg.interval) {
            point.yLow = std::max(0.0, kg.interval->low);
            point.yHigh = kg.interval->high;
        }
        point.label = id;
        plot.series[series].points.push_back(std::move(point));
    }

    static void finish(report::Plot plot, Study& study) {
        std::erase_if(plot.series,
                      [](const report::PlotSeries& series) { return series.points.empty(); });
        if (plot.series.empty()) {
            return;
        }
        plot.title = toText(study.title);
        plot.x.kind = report::PlotAxis::Names;
        plot.x.title = toText(Tr::tr("Accession"));
        plot.y.title = toText(Tr::tr("Yield of a vine"));
        plot.y.unit = std::string("kg");
        plot.y.beginsAtZero = true;
        plot.notes.missing =
            toText(Tr::tr("Vines of which a pick was missed are left out of what was picked."));
        study.plot = std::move(plot);
    }
};

} // namespace

std::unique_ptr<StudyView> makeCropView() {
    return std::make_unique<CropView>();
}

} // namespace bullace::desk
