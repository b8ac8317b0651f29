// Who descends from whom: the relatives of one accession drawn, and what the pedigree says of each.
#include "desk/breeding_views.hpp"
#include "desk/pedigree_drawing.hpp"
#include "desk/study_remarks.hpp"

#include "core/breeding/relationship.hpp"
#include "core/season/station_pedigree.hpp"
#include "quick/trade_words.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <set>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(PedigreeStudy)
};

const QString kFocus = QStringLiteral("focus");
const QString kExtent = QStringLiteral("generations");
constexpr int kMostGenerations = 4;
constexpr std::size_t kFoundersTold = 12;

// What the pedigree says of every accession.
struct Descent {
    breeding::Pedigree pedigree;
    std::vector<double> inbreeding;
    std::vector<breeding::Generations> generations;
    breeding::SpeciesShares species;
};

Result<Descent> descentOf(const season::StationNotes& notes) {
    auto pedigree = season::pedigreeOf(notes);
    if (!pedigree) {
        return pedigree.error();
    }
    auto species = breeding::speciesShares(*pedigree, season::founderTaxa(notes, *pedigree));
    if (!species) {
        return species.error();
    }
    Descent descent{std::move(*pedigree), {}, {}, std::move(*species)};
    descent.inbreeding = breeding::inbreeding(descent.pedigree);
    descent.generations = breeding::generations(descent.pedigree);
    return descent;
}

QString percentText(double share) {
    return Tr::tr("%1 %", "a share").arg(numberText(100 * share, 0));
}

// "Vitis rotundifolia 75 %, not known 25 %".
QString taxaText(const breeding::SpeciesShares& species, std::size_t individual) {
    constexpr double kSeen = 0.0005;
    QStringList said;
    for (std::size_t t = 0; t < species.taxa.size(); ++t) {
        const double share = species.of(individual, t);
        if (share > kSeen) {
            said << QStringLiteral("%1 %2").arg(fromText(species.taxa[t]), percentText(share));
        }
    }
    if (species.unknown[individual] > kSeen && !said.isEmpty()) {
        said << Tr::tr("not known %1").arg(percentText(species.unknown[individual]));
    }
    return said.isEmpty() ? Tr::tr("not known") : said.join(QStringLiteral(", "));
}

class PedigreeView : public StudyView {
public:
    QString key() const override { return QStringLiteral("pedigree"); }
    QString title() const override { return Tr::tr("Pedigree"); }
    QString help() const override {
        return Tr::tr(
            "The relatives of one accession: a box for each, a dot for each cross, parents "
            "above and offspring below; the mother's line is whole, the father's dashed, a "
            "selfing's double. The table has what the pedigree says of each of them: inbreeding, "
            "kinship with the accession chosen (twice it is the share of their genes that is "
            "alike by descent, where neither is inbred), how many generations are known, and "
            "which share of its genes comes from each taxon.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        ChoiceGroup extent{kExtent, Tr::tr("Generations up and down"), false, {}};
        for (int i = 1; i <= kMostGenerations; ++i) {
            extent.lines.push_back({QString::number(i), QString::number(i)});
        }
        if (chosen[kExtent].isEmpty()) {
            chosen[kExtent] = QStringLiteral("2");
        }
        settleChoice(chosen, extent);
        const ChoiceGroup focus = focusChoice(ground.notes, chosen);
        settleChoice(chosen, focus);
        return {extent, focus};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const auto descent = descentOf(ground.notes);
        const std::string id = toText(chosen.at(kFocus));
        tellOpen(ground.notes, study);
        if (!descent) {
            study.words = quick::errorWords(descent.error());
            return study;
        }
        const auto focus = descent->pedigree.find(id);
        if (id.empty() || !focus) {
            study.words = Tr::tr("No accession has a known parent yet: type mother and father "
                                 "into its card in the collection.");
            return study;
        }
        study.title = Tr::tr("Pedigree of %1").arg(wordsOf(ground.notes, id));
        study.tableName = study.title;
        const auto extent = static_cast<std::size_t>(chosen.at(kExtent).toInt());
        const std::vector<std::int32_t> around{*focus};
        const auto layout = breeding::layoutPedigree(descent->pedigree, around, {extent, extent});
        if (!layout) {
            study.words = quick::errorWords(layout.error());
            return study;
        }
        study.drawing = pedigreeDrawing(ground.notes, descent->pedigree, *layout, study.title);
        addRows(ground.notes, *descent, *layout, *focus, study);
        tellFounders(*descent, *focus, study);
        addRemarks(descent->species.remarks, study.remarks);
        study.words = wordsAbout(*descent, *focus, study.rows.size());
        study.method = Tr::tr(
            "Inbreeding and kinship from the relationships of parents (Sargolzaei, Iwaisaki and "
            "Colleau 2005); unknown parents are taken as unrelated and not inbred. Shares of "
            "founders and taxa are expectations over all seedlings of a cross. The share of genes "
            "in which an accession is expected to have two different founders' is 1 less its "
            "inbreeding.");
        return study;
    }

private:
    static ChoiceGroup focusChoice(const season::StationNotes& notes, Chosen& chosen) {
        ChoiceGroup focus{kFocus, Tr::tr("Accession"), false, {}};
        const auto pedigree = season::pedigreeOf(notes);
        if (!pedigree) {
            return focus;
        }
        const auto related = season::relatedOf(notes, *pedigree);
        for (const season::Related& one : related) {
            const season::NotedAccession& accession = notes.accessions[one.accession];
            focus.lines.push_back({fromText(accession.id), fromText(accession.words)});
        }
        const auto most = std::ranges::max_element(related, {}, &season::Related::kin);
        if (chosen[kFocus].isEmpty() && most != related.end()) {
            chosen[kFocus] = fromText(notes.accessions[most->accession].id);
        }
        std::ranges::sort(focus.lines, {}, &ChoiceLine::key);
        return focus;
    }

    static QString wordsOf(const season::StationNotes& notes, const std::string& id) {
        const auto at = notes.accession(id);
        return fromText(at ? notes.accessions[*at].words : id);
    }

    static void tellOpen(const season::StationNotes& notes, Study& study) {
        const auto open =
            std::ranges::count(notes.accessions, true, &season::NotedAccession::hasOpenParents);
        if (open > 0) {
            study.openLeft += static_cast<std::size_t>(open);
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "People disagree about a parent of some "
                                                      "accessions (accessions: %1); it is not "
                                                      "known until somebody settles it."),
                                     {static_cast<std::int64_t>(open)}});
        }
    }

    static void addRows(const season::StationNotes& notes,
                        const Descent& descent,
                        const breeding::PedigreeLayout& layout,
                        std::int32_t focus,
                        Study& study) {
        study.columns = {{Tr::tr("Accession"), 18, false, true},
                         {Tr::tr("Status"), 12},
                         {Tr::tr("Mother"), 8},
                         {Tr::tr("Father"), 8},
                         {Tr::tr("Inbreeding"), 8, true},
                         {Tr::tr("Two different founders' genes, %"), 10, true},
                         {Tr::tr("Kinship with it"), 8, true},
                         {Tr::tr("Generations known"), 8, true},
                         {Tr::tr("Taxa"), 30}};
        std::set<std::int32_t> shown; // parents before offspring
        for (const breeding::LayoutNode& node : layout.nodes) {
            if (node.kind == breeding::LayoutKind::Individual) {
                shown.insert(node.individual);
            }
        }
        std::vector<breeding::Pair> pairs;
        for (const std::int32_t one : shown) {
            pairs.emplace_back(one, focus);
        }
        const auto kinship = breeding::kinships(descent.pedigree, descent.inbreeding, pairs);
        std::size_t at = 0;
        for (const std::int32_t one : shown) {
            study.rows.push_back(rowOf(notes, descent, one, kinship[at++]));
            study.rows.back().isStrong = one == focus;
        }
    }

    static GridRow rowOf(const season::StationNotes& notes,
                         const Descent& descent,
                         std::int32_t individual,
                         double kinship) {
        const auto i = static_cast<std::size_t>(individual);
        const breeding::Pedigree& pedigree = descent.pedigree;
        const auto parent = [&pedigree](std::int32_t of) {
            return of == breeding::kUnknown
                       ? QString()
                       : fromText(pedigree.names[static_cast<std::size_t>(of)]);
        };
        const auto noted = notes.accession(pedigree.names[i]);
        GridRow row;
        row.key = fromText(pedigree.names[i]);
        row.cells << wordsOf(notes, pedigree.names[i])
                  << (noted ? quick::tradeWord(notes.accessions[*noted].status) : QString())
                  << parent(pedigree.mother[i]) << parent(pedigree.father[i])
                  << numberText(descent.inbreeding[i], 3)
                  << numberText(100 * (1 - descent.inbreeding[i]), 1) << numberText(kinship, 3)
                  << numberText(descent.generations[i].equivalent, 2)
                  << taxaText(descent.species, i);
        return row;
    }

    static void tellFounders(const Descent& descent, std::int32_t focus, Study& study) {
        const std::vector<std::int32_t> group{focus};
        const breeding::FounderShares shares = breeding::founderShares(descent.pedigree, group);
        const auto i = static_cast<std::size_t>(focus);
        if (descent.pedigree.isFounder(i)) {
            return;
        }
        QStringList said;
        for (const breeding::FounderShare& one : shares.founders) {
            if (static_cast<std::size_t>(said.size()) < kFoundersTold) {
                said << QStringLiteral("%1 %2").arg(
                    fromText(descent.pedigree.names[static_cast<std::size_t>(one.founder)]),
                    percentText(one.share));
            }
        }
        study.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Founders of %1: %2, with the expected shares of its genes: %3."),
             {descent.pedigree.names[i],
              static_cast<std::int64_t>(shares.founders.size()),
              toText(said.join(QStringLiteral(", ")))}});
        if (shares.unknownShare > 0) {
            study.remarks.push_back(
                {BULLACE_SENTENCE("Remark", "From parents that nobody noted: %1 % of its genes."),
                 {Remark::Number{100 * shares.unknownShare, 0}}});
        }
    }

    static QString wordsAbout(const Descent& descent, std::int32_t focus, std::size_t shown) {
        const auto i = static_cast<std::size_t>(focus);
        const QString drawn = Tr::tr("%n accession(s) drawn.", nullptr, static_cast<int>(shown));
        if (descent.pedigree.isFounder(i)) {
            return Tr::tr("A founder: neither parent is known. %1").arg(drawn);
        }
        return Tr::tr("Inbreeding %1, %2 generations of ancestors known. %3")
            .arg(numberText(descent.inbreeding[i], 3),
                 numberText(descent.generations[i].equivalent, 1),
                 drawn);
    }
};

} // namespace

std::unique_ptr<StudyView> makePedigreeView() {
    return std::make_unique<PedigreeView>();
}

} // namespace bullace::desk
