// What the vines of a block bore in a season, and what they are going to bear: vines by clusters by
// berries by weight.
#include "desk/study_views.hpp"

#include "core/fruit/crop.hpp"
#include "core/fruit/variation.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <map>
#include <set>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using statistics::Estimate;

namespace {

constexpr std::string_view kYield = "yield";
constexpr std::string_view kClusters = "clusters";
constexpr std::string_view kBerries = "berries-per-cluster";
constexpr std::string_view kWeight = "berry-weight";
constexpr std::int32_t kLagDays = 21; // at least so far apart are a lag-phase and a final weighing

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(CropStudy)
};

// One accession's vines in one season.
struct Bearing {
    std::map<std::uint32_t, std::vector<fruit::Pick>> picks;
    std::map<std::uint32_t, fruit::VineSamples> clusters;
    std::map<std::uint32_t, fruit::VineSamples> berries;
    std::map<std::uint32_t, fruit::VineSamples> weights;
    std::set<std::uint32_t> lost; // dead or missing
};

bool isIn(std::int32_t day, int season) {
    return static_cast<int>(season::dateOfDay(day).year()) == season;
}

std::map<std::size_t, Bearing> bearingIn(const season::StationNotes& notes, int season) {
    std::map<std::size_t, Bearing> bearing;
    const auto addSamples = [&](std::string_view code, auto member) {
        for (const season::NumberNote& note : notes.notesOf(code).numbers) {
            if (isIn(note.day, season)) {
                (bearing[notes.vines[note.vine].accession].*member)[note.vine].push_back(
                    note.value);
            }
        }
    };
    addSamples(kClusters, &Bearing::clusters);
    addSamples(kBerries, &Bearing::berries);
    addSamples(kWeight, &Bearing::weights);
    // Buckets of one day are one pick.
    std::map<std::pair<std::uint32_t, std::int32_t>, double> picked;
    for (const season::NumberNote& note : notes.notesOf(kYield).numbers) {
        if (isIn(note.day, season)) {
            picked[{note.vine, note.day}] += note.value;
        }
    }
    for (const auto& [at, kg] : picked) {
        bearing[notes.vines[at.first].accession].picks[at.first].push_back(
            {season::dateOfDay(at.second), kg, {}});
    }
    for (const season::MissNote& note : notes.notesOf(kYield).missed) {
        if (isIn(note.day, season) && !picked.contains({note.vine, note.day})) {
            bearing[notes.vines[note.vine].accession].picks[note.vine].push_back(
                {season::dateOfDay(note.day), {}, notes.words[note.word]});
        }
    }
    for (const season::WordNote& note : notes.notesOf("vine").words) {
        const std::string& word = notes.words[note.word];
        if (isIn(note.day, season) && (word == "dead" || word == "missing")) {
            bearing[notes.vines[note.vine].accession].lost.insert(note.vine);
        }
    }
    return bearing;
}

// Vines that were weighed twice in a season, weeks apart: berries grow on in between.
std::vector<fruit::LagPhaseRecord> lagRecords(const season::StationNotes& notes, int before) {
    std::map<std::pair<std::uint32_t, int>, std::map<std::int32_t, std::vector<double>>> days;
    for (const season::NumberNote& note : notes.notesOf(kWeight).numbers) {
        const int year = static_cast<int>(season::dateOfDay(note.day).year());
        if (year < before) {
            days[{note.vine, year}][note.day].push_back(note.value);
        }
    }
    const auto meanOf = [](const std::vector<double>& values) {
        double sum = 0;
        for (const double value : values) {
            sum += value;
        }
        return sum / static_cast<double>(values.size());
    };
    std::vector<fruit::LagPhaseRecord> records;
    for (const auto& [vine, weighed] : days) {
        if (weighed.rbegin()->first - weighed.begin()->first >= kLagDays) {
            records.push_back({meanOf(weighed.begin()->second), meanOf(weighed.rbegin()->second)});
        }
    }
    return records;
}

std::optional<Estimate> meanOf(const std::map<std::uint32_t, fruit::VineSamples>& vines) {
    fruit::AccessionVines samples;
    for (const auto& [vine, values] : vines) {
        samples.push_back(values);
    }
    const auto summary = fruit::summaryOfVines(samples);
    return summary
               ? std::optional(Estimate{summary->mean, summary->standardError, summary->interval})
               : std::nullopt;
}

class CropView : public StudyView {
public:
    QString key() const override { return QStringLiteral("crop"); }
    QString title() const override { return Tr::tr("Yield and crop"); }
    QString help() const override {
        return Tr::tr("Each accession in one season: what its vines bore, picks added up, with the "
                      "vines of which a pick was missed; and the crop of a vine as clusters by "
                      "berries by weight, with the interval that the three bring together. Where "
                      "vines were weighed twice in earlier seasons, their growth from the first "
                      "weighing to the last is counted in.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        std::set<int, std::greater<>> years;
        for (const std::string_view code : {kYield, kClusters}) {
            for (const int year : seasonsOf(ground.notes.notesOf(code))) {
                years.insert(year);
            }
        }
        const ChoiceGroup seasons = seasonChoice({years.begin(), years.end()});
        settleChoice(chosen, seasons);
        const ChoiceGroup accessions =
            accessionChoice(ground, {std::string(kYield), std::string(kClusters)}, true);
        settleChoice(chosen, accessions);
        return {seasons, accessions};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const int season = chosen.at(QStringLiteral("season")).toInt();
        const auto bearing = bearingIn(ground.notes, season);
        study.columns = {{Tr::tr("Accession"), 18, false, true},
                         {Tr::tr("Vines picked"), 7, true},
                         {Tr::tr("kg a vine (95 %)"), 18, true},
                         {Tr::tr("Picks missed"), 7, true},
                         {Tr::tr("Clusters a vine"), 8, true},
                         {Tr::tr("Crop to come, kg a vine"), 18, true},
                         {Tr::tr("Lost vines"), 6, true}};
        const auto lag = fruit::lagPhaseFactor(lagRecords(ground.notes, season));
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        report::Plot plot;
        for (const auto& [accession, of] : bearing) {
            const season::NotedAccession& noted = ground.notes.accessions[accession];
            if ((!of.picks.empty() || !of.clusters.empty()) &&
                isChosen(chosen, group, fromText(noted.id))) {
                addRow(noted, of, lag.factor, plot, study);
            }
        }
        if (study.rows.empty()) {
            study.words = Tr::tr("Nothing has been picked and no clusters counted yet.");
            return study;
        }
        study.title = Tr::tr("Yield and crop, %1").arg(season);
        study.words = Tr::tr("%n accession(s).", nullptr, static_cast<int>(study.rows.size()));
        study.remarks.insert(study.remarks.end(), lag.remarks.begin(), lag.remarks.end());
        for (const std::string_view code : {kYield, kClusters, kBerries, kWeight}) {
            countLeftOut(ground.notes.notesOf(code), season, study);
        }
        finish(std::move(plot), study);
        study.method = Tr::tr("Yield: the mean of vines' sums of picks, Student's t. Crop: the "
                              "product of the means, relative errors added as squares.");
        return study;
    }

private:
    static void addRow(const season::NotedAccession& noted,
                       const Bearing& of,
                       const std::optional<Estimate>& lag,
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
        const auto clusters = meanOf(of.clusters);
        const std::optional<Estimate> crop = cropOf(of, clusters, lag, study);
        GridRow row;
        row.key = fromText(noted.id);
        row.cells << fromText(noted.words) << QString::number(sums.size())
                  << (yield ? estimateText({yield->mean, {}, yield->interval}, 1) : QString())
                  << (missed > 0 ? QString::number(missed) : QString())
                  << (clusters ? numberText(clusters->value, 0) : QString())
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

    static std::optional<Estimate> cropOf(const Bearing& of,
                                          const std::optional<Estimate>& clusters,
                                          const std::optional<Estimate>& lag,
                                          Study& study) {
        const auto berries = meanOf(of.berries);
        const auto weight = meanOf(of.weights);
        if (!clusters || !berries || !weight) {
            return std::nullopt;
        }
        const auto crop = fruit::cropEstimate({{1, {}, {}}, *clusters, *berries, *weight, lag});
        for (const Remark& remark : crop.remarks) {
            if (std::ranges::find(study.remarks, remark) == study.remarks.end()) {
                study.remarks.push_back(remark);
            }
        }
        return crop.kg;
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
