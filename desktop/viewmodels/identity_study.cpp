// What the wild vines are: clusters and berries of each accession beside what is known of the taxa.
#include "desk/study_views.hpp"

#include "core/fruit/identity.hpp"
#include "core/fruit/variation.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace bullace::desk {

using fruit::Verdict;
using quick::fromText;
using quick::toText;

namespace {

constexpr std::array<std::string_view, 2> kFruit{fruit::kBerriesPerCluster, fruit::kBerryDiameter};

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(IdentityStudy)
};

// By vine, each with its values by character.
using VinesValues = std::map<std::uint32_t, fruit::VineValues>;

VinesValues valuesOf(const season::StationNotes& notes) {
    VinesValues values;
    for (const std::string_view character : {fruit::kBerriesPerCluster,
                                             fruit::kBerryDiameter,
                                             fruit::kSeedsPerBerry,
                                             fruit::kSeedLength,
                                             fruit::kSkin,
                                             fruit::kLenticels,
                                             fruit::kChromosomes}) {
        for (const season::NumberNote& note : notes.notesOf(character).numbers) {
            values[note.vine][std::string(character)].push_back(note.value);
        }
    }
    return values;
}

// A taxon of one species; a cross has two epithets with "×" between.
bool isSpecies(const std::string& taxon) {
    return !taxon.empty() && taxon.find("×") == std::string::npos;
}

QString verdictWords(Verdict verdict) {
    switch (verdict) {
    case Verdict::NothingToGoBy:
        return Tr::tr("nothing to go by");
    case Verdict::Undecided:
        return Tr::tr("undecided");
    case Verdict::Decided:
        return Tr::tr("decided");
    case Verdict::Contradictory:
        return Tr::tr("contradictory");
    case Verdict::Hybrid:
        return Tr::tr("hybrid with subgenus Vitis");
    }
    return {};
}

bool isWild(const StudyGround& ground, std::size_t accession) {
    const auto& known = ground.catalogue->accessions();
    const auto found = known.find(ground.notes.accessions[accession].id);
    return found != known.end() && found->second.status == "wild accession";
}

// What the taxa are like. Wild accessions are told by verified wild ones alone: cultivars have been
// bred for large berries, and a wild vine looks unlike them.
struct Profiles {
    std::vector<fruit::TaxonProfile> ofWild;
    std::vector<fruit::TaxonProfile> ofAll;
};

// An accession's fruit, over all of its vines.
struct Accession {
    std::size_t index = 0;
    fruit::VineValues values; // pooled: the vines of an accession are one genotype
    fruit::AccessionVines berries;
    fruit::AccessionVines diameters;
};

class IdentityView : public StudyView {
public:
    QString key() const override { return QStringLiteral("identity"); }
    QString title() const override { return Tr::tr("What is this vine?"); }
    QString help() const override {
        return Tr::tr("Each accession by berries per cluster and berry diameter, with 95 % of its "
                      "means. The station's own verified accessions tell what a taxon is like "
                      "where there are enough of them, published ranges otherwise; wild "
                      "accessions are told by verified wild ones alone, since cultivars have been "
                      "bred for large berries. An accession is decided once its values are so much "
                      "likelier of one taxon than of any "
                      "other that at most one decision in twenty is wrong. The taxon of the office "
                      "is not looked at, but for verified accessions.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        ChoiceGroup accessions = accessionChoice(ground, kFruit, true);
        settleChoice(chosen, accessions);
        return {accessions};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        const std::vector<Accession> accessions = accessionsOf(ground);
        const Profiles profiles{fruit::profilesWith(verifiedOf(ground, true)),
                                fruit::profilesWith(verifiedOf(ground, false))};
        study.tableName = study.title;
        study.columns = {{Tr::tr("Accession"), 16, false, true},
                         {Tr::tr("Berries a cluster"), 18, true},
                         {Tr::tr("Diameter, mm"), 18, true},
                         {Tr::tr("Likeliest"), 14},
                         {Tr::tr("Evidence"), 12},
                         {Tr::tr("Times likelier"), 8, true},
                         {Tr::tr("Published ranges"), 14}};
        const ChoiceGroup group{QStringLiteral("accessions"), {}, true, {}};
        std::vector<const Accession*> shown;
        for (const Accession& accession : accessions) {
            if (isChosen(chosen, group, fromText(ground.notes.accessions[accession.index].id))) {
                shown.push_back(&accession);
                const bool isOfWild = isWild(ground, accession.index);
                addRow(ground, accession, isOfWild ? profiles.ofWild : profiles.ofAll, study);
            }
        }
        study.words = shown.empty()
                          ? Tr::tr("No clusters have been counted and no berries measured yet.")
                          : Tr::tr("%n accession(s) with counted clusters or measured berries.",
                                   nullptr,
                                   static_cast<int>(shown.size()));
        addPlot(ground, shown, study);
        study.method = Tr::tr("Sequential test by likelihood ratios (Wald 1945), vines' own means "
                              "integrated out; published ranges of Flora of North America 12:7.");
        study.cautions << Tr::tr("This assumes a muscadine; wild vines have poisonous look-alikes. "
                                 "Never taste to identify; taste only known, unsprayed fruit.");
        for (const auto code : {fruit::kBerriesPerCluster, fruit::kBerryDiameter}) {
            countLeftOut(ground.notes.notesOf(code), 0, study);
        }
        return study;
    }

private:
    static std::vector<Accession> accessionsOf(const StudyGround& ground) {
        std::map<std::size_t, Accession> by;
        for (const auto& [vine, values] : valuesOf(ground.notes)) {
            const std::size_t index = ground.notes.vines[vine].accession;
            Accession& accession = by[index];
            accession.index = index;
            for (const auto& [character, of] : values) {
                auto& all = accession.values[character];
                all.insert(all.end(), of.begin(), of.end());
            }
            const auto add = [&values](std::string_view character, fruit::AccessionVines& into) {
                const auto found = values.find(character);
                if (found != values.end()) {
                    into.push_back(found->second);
                }
            };
            add(fruit::kBerriesPerCluster, accession.berries);
            add(fruit::kBerryDiameter, accession.diameters);
        }
        std::vector<Accession> all;
        for (auto& [index, accession] : by) {
            if (!accession.berries.empty() || !accession.diameters.empty()) {
                all.push_back(std::move(accession));
            }
        }
        return all;
    }

    static std::vector<fruit::VerifiedAccession> verifiedOf(const StudyGround& ground,
                                                            bool isOfWildAlone) {
        std::map<std::size_t, fruit::VerifiedAccession> by;
        for (const auto& [vine, values] : valuesOf(ground.notes)) {
            const std::size_t index = ground.notes.vines[vine].accession;
            const season::NotedAccession& accession = ground.notes.accessions[index];
            const bool isLeftOut = isOfWildAlone && !isWild(ground, index);
            if (!accession.isVerified || !isSpecies(accession.taxon) || isLeftOut) {
                continue;
            }
            fruit::VerifiedAccession& verified = by[index];
            verified.taxon = accession.taxon;
            for (const auto& [character, of] : values) {
                verified.vines[character].push_back(of);
            }
        }
        std::vector<fruit::VerifiedAccession> all;
        for (auto& [index, verified] : by) {
            all.push_back(std::move(verified));
        }
        return all;
    }

    static QString summaryText(const fruit::AccessionVines& vines, int decimals) {
        const auto summary = fruit::summaryOfVines(vines);
        return summary ? estimateText({summary->mean, {}, summary->interval}, decimals) : QString();
    }

    static void addRow(const StudyGround& ground,
                       const Accession& accession,
                       const std::vector<fruit::TaxonProfile>& profiles,
                       Study& study) {
        const fruit::Identity identity = fruit::identify(profiles, accession.values);
        const season::NotedAccession& noted = ground.notes.accessions[accession.index];
        GridRow row;
        row.key = fromText(noted.id);
        row.isStrong =
            identity.verdict == Verdict::Contradictory || identity.verdict == Verdict::Hybrid;
        row.cells << fromText(noted.words) << summaryText(accession.berries, 1)
                  << summaryText(accession.diameters, 1)
                  << (identity.leading ? shortTaxon(profiles[*identity.leading].taxon) : QString())
                  << verdictWords(identity.verdict)
                  << (identity.lead ? timesText(*identity.lead) : QString())
                  << shortTaxon(identity.byPublishedRanges.value_or(std::string()));
        study.rows.push_back(std::move(row));
    }

    // "V. rotundifolia".
    static QString shortTaxon(const std::string& taxon) {
        QString words = fromText(taxon);
        return words.startsWith(QStringLiteral("Vitis ")) ? words.replace(1, 4, QStringLiteral("."))
                                                          : words;
    }

    // A ratio, given as its logarithm; beyond a million it is only said to be so.
    static QString timesText(double log10) {
        return log10 >= 6 ? Tr::tr("over %1").arg(numberText(1e6, 0))
                          : numberText(std::pow(10, log10), log10 < 1 ? 1 : 0);
    }

    static void
    addPlot(const StudyGround& ground, const std::vector<const Accession*>& shown, Study& study) {
        report::Plot plot;
        plot.title = toText(study.title);
        plot.x.title = toText(Tr::tr("Berry diameter"));
        plot.x.unit = "mm";
        plot.y.title = toText(Tr::tr("Berries per cluster"));
        plot.y.beginsAtZero = true;
        std::map<std::string, report::PlotSeries> series;
        std::size_t count = 0;
        for (const Accession* accession : shown) {
            const auto diameter = fruit::summaryOfVines(accession->diameters);
            const auto berries = fruit::summaryOfVines(accession->berries);
            if (!diameter || !berries) {
                continue;
            }
            const season::NotedAccession& noted = ground.notes.accessions[accession->index];
            report::PlotPoint point;
            point.x = diameter->mean;
            point.y = berries->mean;
            if (diameter->interval && berries->interval) {
                point.xLow = diameter->interval->low;
                point.xHigh = diameter->interval->high;
                point.yLow = berries->interval->low;
                point.yHigh = berries->interval->high;
            }
            point.label = noted.id;
            count += diameter->n + berries->n;
            const bool isOfSpecies = isSpecies(noted.taxon);
            report::PlotSeries& of = series[isOfSpecies ? noted.taxon : std::string()];
            of.name = isOfSpecies ? noted.taxon : toText(Tr::tr("Others"));
            of.points.push_back(std::move(point));
        }
        for (auto& [taxon, of] : series) {
            plot.series.push_back(std::move(of));
        }
        if (plot.series.empty()) {
            return;
        }
        plot.marks = {{12, toText(Tr::tr("12 mm")), false},
                      {12, toText(Tr::tr("12 berries")), true}};
        plot.notes.count = count;
        plot.notes.missing =
            toText(Tr::tr("Accessions without both counts and diameters are not drawn."));
        study.plot = std::move(plot);
    }
};

} // namespace

std::unique_ptr<StudyView> makeIdentityView() {
    return std::make_unique<IdentityView>();
}

} // namespace bullace::desk
