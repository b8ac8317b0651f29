// How red the juice is and how long the colour holds: pigments by accession, and absorbance over
// days of storage.
#include "desk/study_views.hpp"

#include "core/fruit/colour_decay.hpp"
#include "core/fruit/juice_colour.hpp"
#include "core/journal/json_value.hpp"
#include "core/season/station_bench.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace bullace::desk {

using fruit::kPigments;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::string_view kAbsorbance = "absorbance";
constexpr std::array<std::string_view, kPigments> kPigmentCodes{"pigment-delphinidin",
                                                                "pigment-cyanidin",
                                                                "pigment-petunidin",
                                                                "pigment-peonidin",
                                                                "pigment-malvidin"};
constexpr std::size_t kMostLines = 6;
const QString kWave = QStringLiteral("wave");

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(ColourStudy)
};

// Samples of one vine or lot and day belong together.
using Samples = std::map<std::size_t, std::vector<fruit::PigmentSample>>;

Samples samplesIn(const season::StationNotes& notes) {
    using Place = std::pair<std::uint64_t, std::int32_t>; // vine or lot, and day
    std::map<std::size_t, std::map<Place, fruit::PigmentSample>> by;
    for (std::size_t i = 0; i < kPigments; ++i) {
        const season::DescriptorNotes& of = notes.notesOf(kPigmentCodes[i]);
        for (const season::NumberNote& note : of.numbers) {
            by[notes.vines[note.vine].accession][{note.vine, note.day}][i] = note.value;
        }
        for (const season::RecordNote& note : of.records) {
            const auto accession = season::accessionOf(notes, note);
            const auto value = journal::numberOf(note.value);
            if (accession && value) {
                const std::uint64_t place = (std::uint64_t{1} << 40U) + note.lot;
                by[*accession][{place, note.day}][i] = *value;
            }
        }
    }
    Samples samples;
    for (const auto& [accession, places] : by) {
        for (const auto& [place, sample] : places) {
            samples[accession].push_back(sample);
        }
    }
    return samples;
}

class ColourView : public StudyView {
public:
    QString key() const override { return QStringLiteral("colour"); }
    QString title() const override { return Tr::tr("Juice colour"); }
    QString help() const override {
        return Tr::tr("The share of malvidin and its ratio to delphinidin, and the half-life of "
                      "the absorbance in storage. Readings are only put together where dilution, "
                      "path, pH and temperature are the same. The picture shows absorbance over "
                      "days of storage, on the points the fitted decay over the days that were "
                      "measured. A half-life is told only where a decay could be shown.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        ChoiceGroup wave{kWave, Tr::tr("Wave length"), false, {}};
        wave.lines = {{QStringLiteral("520"), Tr::tr("520 nm, red")},
                      {QStringLiteral("420"), Tr::tr("420 nm, brown")}};
        settleChoice(chosen, wave);
        std::vector<std::string_view> codes(kPigmentCodes.begin(), kPigmentCodes.end());
        codes.push_back(kAbsorbance);
        const ChoiceGroup accessions = accessionChoice(ground, codes, true);
        settleChoice(chosen, accessions);
        return {wave, accessions};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const double nm = chosen.at(kWave).toDouble();
        const Samples samples = samplesIn(ground.notes);
        const auto decays = fruit::colourDecay(season::absorbanceIn(ground.notes));
        if (!decays) {
            study.words = Tr::tr("A reading of absorbance is impossible and has to be put right.");
            return study;
        }
        study.columns = {{Tr::tr("Accession"), 18, false, true},
                         {Tr::tr("Samples"), 7, true},
                         {Tr::tr("Malvidin, %"), 16, true},
                         {Tr::tr("Malvidin : delphinidin"), 18, true},
                         {Tr::tr("8 mg/100 g"), 10},
                         {Tr::tr("Readings"), 8, true},
                         {Tr::tr("Half-life, days"), 20, true}};
        addRows(ground, chosen, samples, *decays, nm, study);
        if (study.rows.empty()) {
            study.words = Tr::tr("No pigment and no absorbance has been noted yet.");
            return study;
        }
        study.words = Tr::tr("%n accession(s).", nullptr, static_cast<int>(study.rows.size()));
        addPlot(ground, chosen, *decays, nm, study);
        study.method = Tr::tr("Decay of the first order, least squares of the logarithm of "
                              "absorbance; half-life ln 2/k with the limits of k turned over; "
                              "differences by Welch's t with Holm's adjustment.");
        addDifferences(*decays, nm, study);
        study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                  "Guide value: malvidin-3,5-diglucoside of 8 mg "
                                                  "per 100 g fresh grapes or more gave good red "
                                                  "wine colour (Ballinger et al., 1970s, Am. J. "
                                                  "Enol. Vitic.; authors and year from memory)."),
                                 {}});
        study.cautions << Tr::tr("At the bench, acids and solvents: the laboratory's own safety "
                                 "rules.");
        countLeftOut(ground.notes.notesOf(kAbsorbance), 0, study);
        return study;
    }

private:
    static QString guideText(const std::optional<fruit::AgainstGuide>& guide) {
        if (!guide) {
            return {};
        }
        switch (*guide) {
        case fruit::AgainstGuide::Reaches:
            return Tr::tr("reached");
        case fruit::AgainstGuide::Below:
            return Tr::tr("below");
        case fruit::AgainstGuide::Undecided:
            return Tr::tr("undecided");
        }
        return {};
    }

    static void addRows(const StudyGround& ground,
                        const Chosen& chosen,
                        const Samples& samples,
                        const fruit::ColourComparison& decays,
                        double nm,
                        Study& study) {
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        for (std::size_t i = 0; i < ground.notes.accessions.size(); ++i) {
            const season::NotedAccession& accession = ground.notes.accessions[i];
            if (!isChosen(chosen, group, fromText(accession.id))) {
                continue;
            }
            const auto found = samples.find(i);
            GridRow row;
            row.key = fromText(accession.id);
            row.cells << fromText(accession.words);
            const bool hasPigments = found != samples.end() && addPigments(found->second, row);
            if (!hasPigments) {
                row.cells << QString() << QString() << QString() << QString();
            }
            const bool hasDecay = addDecay(accession.id, decays, nm, row, study);
            if (hasPigments || hasDecay) {
                study.rows.push_back(std::move(row));
            }
        }
    }

    static bool addPigments(const std::vector<fruit::PigmentSample>& samples, GridRow& row) {
        const auto profile = fruit::pigmentProfile(samples);
        if (!profile) {
            return false;
        }
        const auto& share =
            profile->sharePercent[static_cast<std::size_t>(fruit::Pigment::Malvidin)];
        row.cells << QString::number(profile->samples)
                  << (share ? estimateText(*share, 0) : QString())
                  << (profile->malvidinToDelphinidin
                          ? estimateText(*profile->malvidinToDelphinidin, 2)
                          : QString())
                  << guideText(profile->guide);
        return true;
    }

    // The decay with the most readings; the others are in a remark of the comparison.
    static bool addDecay(const std::string& accession,
                         const fruit::ColourComparison& decays,
                         double nm,
                         GridRow& row,
                         Study& study) {
        const fruit::ColourDecay* best = nullptr;
        for (const fruit::ColourDecay& decay : decays.decays) {
            if (decay.accession == accession && decay.conditions.nm == nm &&
                (best == nullptr || decay.readings > best->readings)) {
                best = &decay;
            }
        }
        if (best == nullptr) {
            row.cells << QString() << QString();
            return false;
        }
        row.cells << QString::number(best->readings)
                  << (best->halfLifeDays ? estimateText(*best->halfLifeDays, 0)
                                         : Tr::tr("no decay shown"));
        for (const Remark& remark : best->remarks) {
            tellOf(row.key, remark, study);
        }
        return true;
    }

    static void addPlot(const StudyGround& ground,
                        const Chosen& chosen,
                        const fruit::ColourComparison& decays,
                        double nm,
                        Study& study) {
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        report::Plot plot;
        plot.title = toText(Tr::tr("Absorbance at %1 nm in storage").arg(nm));
        plot.x.title = toText(Tr::tr("Day of storage"));
        plot.x.beginsAtZero = true;
        plot.y.title = toText(Tr::tr("Absorbance"));
        plot.y.beginsAtZero = true;
        const auto readings = season::absorbanceIn(ground.notes);
        std::size_t count = 0;
        std::map<std::string, std::vector<const fruit::ColourDecay*>> drawn;
        for (const fruit::ColourDecay& decay : decays.decays) {
            if (decay.conditions.nm == nm && isChosen(chosen, group, fromText(decay.accession))) {
                drawn[decay.accession].push_back(&decay);
            }
        }
        std::size_t lines = 0;
        for (const auto& [accession, of] : drawn) {
            for (std::size_t i = 0; i < of.size() && lines < kMostLines; ++i) {
                const QString name =
                    of.size() == 1
                        ? fromText(accession)
                        : Tr::tr("%1, dilution %2")
                              .arg(fromText(accession), numberText(of[i]->conditions.dilution, 0));
                count += addDecayPlot(*of[i], readings, {toText(name), lines}, plot);
            }
            ++lines;
        }
        if (plot.series.empty()) {
            return;
        }
        if (drawn.size() > kMostLines) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "The picture has the first %1 accessions; "
                                                      "the table has all."),
                                     {static_cast<std::int64_t>(kMostLines)}});
        }
        plot.notes.count = count;
        plot.notes.missing =
            toText(Tr::tr("Readings of 0 or below have no logarithm and are left out."));
        study.plot = std::move(plot);
    }

    // What differs beyond doubt, and what readings could not be put together.
    static void addDifferences(const fruit::ColourComparison& decays, double nm, Study& study) {
        std::int64_t all = 0;
        std::int64_t certain = 0;
        for (const fruit::DecayDifference& difference : decays.differences) {
            if (difference.conditions.nm == nm) {
                ++all;
                certain += difference.pHolm < 0.05 ? 1 : 0;
            }
        }
        if (all > 0) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "Of %1 differences in the rate of decay "
                                                      "between two accessions, %2 are beyond doubt "
                                                      "when all are looked at together (Welch, "
                                                      "Holm)."),
                                     {all, certain}});
        }
        study.remarks.insert(study.remarks.end(), decays.remarks.begin(), decays.remarks.end());
    }

    struct Drawn {
        std::string name;
        std::size_t group = 0;
    };
    static std::size_t addDecayPlot(const fruit::ColourDecay& decay,
                                    const std::vector<fruit::AbsorbanceReading>& readings,
                                    const Drawn& as,
                                    report::Plot& plot) {
        report::PlotSeries points{report::PlotSeries::Points, as.name, {}, false, false, as.group};
        for (const fruit::AbsorbanceReading& reading : readings) {
            if (reading.accession == decay.accession && reading.conditions == decay.conditions &&
                reading.absorbance > 0) {
                report::PlotPoint point;
                point.x = reading.day;
                point.y = reading.absorbance;
                point.label = decay.accession;
                points.points.push_back(std::move(point));
            }
        }
        const std::size_t count = points.points.size();
        if (decay.start && decay.perDay && decay.lastDay > decay.firstDay) {
            report::PlotSeries line{report::PlotSeries::Line, as.name, {}, false, false, as.group};
            for (int i = 0; i <= 40; ++i) {
                report::PlotPoint point;
                point.x = decay.firstDay + (decay.lastDay - decay.firstDay) * i / 40;
                point.y = decay.start->value * std::exp(-decay.perDay->value * point.x);
                point.label = decay.accession;
                line.points.push_back(std::move(point));
            }
            plot.series.push_back(std::move(line));
        }
        plot.series.push_back(std::move(points));
        return count;
    }
};

} // namespace

std::unique_ptr<StudyView> makeColourView() {
    return std::make_unique<ColourView>();
}

} // namespace bullace::desk
