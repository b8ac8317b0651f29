#include "desk/cross_plan_rows.hpp"

#include "desk/desk_words.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <cmath>
#include <map>
#include <set>

namespace bullace::desk {

using breeding::PlannedCross;
using quick::fromText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(CrossPlanRows)
};

QString percentOf(const QString& what, double share) {
    return Tr::tr("%1 %2 %", "perfect 50 %").arg(what, numberText(100 * share, 0));
}

QString sexText(const breeding::ExpectedSexes& sexes) {
    if (sexes.possible.empty()) {
        return Tr::tr("not known");
    }
    const breeding::SexShares& likeliest = sexes.possible.front();
    QStringList said;
    const auto add = [&said](const QString& what, double share) {
        if (share > 0) {
            said << percentOf(what, share);
        }
    };
    add(flowerWords(vineyard::FlowerSex::Male), likeliest.male);
    add(flowerWords(vineyard::FlowerSex::Perfect), likeliest.perfect);
    add(flowerWords(vineyard::FlowerSex::Female), likeliest.female);
    return said.join(QStringLiteral(", "));
}

QString colourText(const breeding::ExpectedColours& colours) {
    if (!colours.shares) {
        return Tr::tr("not known");
    }
    return QStringList{percentOf(Tr::tr("black", "berries"), colours.shares->black),
                       percentOf(Tr::tr("red", "berries"), colours.shares->red),
                       percentOf(Tr::tr("bronze", "berries"), colours.shares->bronze)}
        .join(QStringLiteral(", "));
}

QString rootText(const std::optional<double>& variance, int decimals) {
    return variance && *variance >= 0 ? numberText(std::sqrt(*variance), decimals) : QString();
}

QString emasculationText(const PlannedCross& cross) {
    return !cross.needsEmasculation   ? Tr::tr("not known")
           : *cross.needsEmasculation ? Tr::tr("yes", "emasculate")
                                      : Tr::tr("no, bag only", "emasculate");
}

QString pollenText(const PlanWords& words, const PlannedCross& cross) {
    const std::size_t n = words.ground.candidates.size();
    const auto days = words.ground.overlapDays[cross.mother * n + cross.father];
    const QString together = days ? numberText(*days, 1) : Tr::tr("not known");
    return cross.usesStoredPollen ? Tr::tr("%1, stored pollen", "days together").arg(together)
                                  : together;
}

QString meritTitle(const QString& unit) {
    return unit.isEmpty() ? Tr::tr("Mean of the family")
                          : Tr::tr("Mean of the family, %1").arg(unit);
}

std::vector<GridColumn> crossColumns(const QString& unit) {
    return {{Tr::tr("Mother"), 18, false, true},
            {Tr::tr("Father"), 18},
            {meritTitle(unit), 8, true},
            {Tr::tr("Error of the mean"), 6, true},
            {Tr::tr("Deviation within"), 6, true},
            {Tr::tr("Inbreeding"), 8, true},
            {Tr::tr("Days together in bloom"), 12, true},
            {Tr::tr("Emasculate"), 10},
            {Tr::tr("2n"), 4, true},
            {Tr::tr("Flowers of the seedlings"), 24},
            {Tr::tr("Berries of the seedlings"), 26}};
}

// The cells behind mother and father.
QStringList familyCells(const PlanWords& words, const PlannedCross& cross) {
    const breeding::ExpectedMerit& merit = cross.merit;
    return {merit.mean ? numberText(words.merit(*merit.mean), words.decimals) : QString(),
            rootText(merit.meanErrorVariance, words.decimals),
            rootText(merit.withinVariance, words.decimals),
            merit.inbreeding ? numberText(*merit.inbreeding, 3) : QString(),
            pollenText(words, cross),
            emasculationText(cross),
            cross.chromosomes.number ? QString::number(*cross.chromosomes.number) : QString(),
            sexText(cross.sexes),
            colourText(cross.colours)};
}

QString pairName(const std::string& mother, const std::string& father) {
    return QStringLiteral("%1 × %2").arg(fromText(mother), fromText(father));
}

QString lossText(const PlanWords& words, const breeding::Refusal& refusal) {
    return refusal.leastLoss ? numberText(*refusal.leastLoss, words.decimals) : QString();
}

// What speaks against crosses: what holds of one parent is told once with all such parents, all
// else with its crosses.
class Warnings {
public:
    void add(const QString& cross, const Remarks& warnings, Study& study) {
        for (const Remark& warning : warnings) {
            const auto* parent = warning.parts.size() == 1
                                     ? std::get_if<std::string>(&warning.parts.front())
                                     : nullptr;
            if (parent == nullptr) {
                tellOf(cross, warning, study);
            } else {
                ofParents_[warning.sentence].insert(*parent);
            }
        }
    }
    void tell(Study& study) const {
        for (const auto& [sentence, parents] : ofParents_) {
            std::string all;
            for (const std::string& parent : parents) {
                all.append(all.empty() ? "" : ", ").append(parent);
            }
            study.remarks.push_back({sentence, {all}});
        }
    }

private:
    std::map<std::string_view, std::set<std::string>> ofParents_; // by their literals
};

QString fathersText(const PlanWords& words, const breeding::OwnCross& cross) {
    QStringList fathers;
    for (const std::string& father : cross.fathers) {
        fathers << words.accession(father);
    }
    return fathers.isEmpty() ? Tr::tr("open pollination") : fathers.join(QStringLiteral(" + "));
}

} // namespace

QString PlanWords::accession(const std::string& id) const {
    const auto at = notes.accession(id);
    return fromText(at ? notes.accessions[*at].words : id);
}

QString PlanWords::candidate(std::size_t candidate) const {
    return accession(ground.candidates[candidate].parent.id);
}

void addPlanRows(const PlanWords& words,
                 const breeding::CrossPlan& plan,
                 const QString& unit,
                 Study& study) {
    study.columns = crossColumns(unit);
    Warnings warnings;
    for (const PlannedCross& cross : plan.crosses) {
        const std::string& mother = words.ground.candidates[cross.mother].parent.id;
        const std::string& father = words.ground.candidates[cross.father].parent.id;
        GridRow row;
        row.key = fromText(mother);
        row.cells << words.candidate(cross.mother) << words.candidate(cross.father)
                  << familyCells(words, cross);
        study.rows.push_back(std::move(row));
        warnings.add(pairName(mother, father), cross.warnings, study);
    }
    warnings.tell(study);
}

void addRefusalRows(const PlanWords& words,
                    const breeding::CrossPlan& plan,
                    const QString& unit,
                    Study& study) {
    study.columns = {{Tr::tr("Mother"), 18},
                     {Tr::tr("Father"), 18},
                     {meritTitle(unit), 8, true},
                     {Tr::tr("The plan would lose"), 8, true},
                     {Tr::tr("Why it is not in the plan"), 40, false, true}};
    for (const breeding::Refusal& refusal : plan.refusals) {
        GridRow row;
        row.key = fromText(words.ground.candidates[refusal.mother].parent.id);
        row.cells << words.candidate(refusal.mother) << words.candidate(refusal.father)
                  << numberText(words.merit(refusal.worth), words.decimals)
                  << lossText(words, refusal) << remarkWords(refusal.reason);
        study.rows.push_back(std::move(row));
    }
}

void addOwnRows(const PlanWords& words,
                const std::vector<breeding::CheckedCross>& own,
                const QString& unit,
                Study& study) {
    study.columns = crossColumns(unit);
    Warnings warnings;
    for (const breeding::CheckedCross& checked : own) {
        GridRow row;
        row.key = fromText(checked.cross.mother);
        row.cells << words.accession(checked.cross.mother) << fathersText(words, checked.cross);
        if (checked.parts.size() == 1) {
            row.cells << familyCells(words, checked.parts.front());
        } else if (checked.merit && checked.merit->mean) {
            row.cells << numberText(words.merit(*checked.merit->mean), words.decimals);
        }
        study.rows.push_back(std::move(row));
        const std::string father =
            checked.cross.fathers.empty() ? std::string() : checked.cross.fathers.front();
        warnings.add(father.empty() ? fromText(checked.cross.mother)
                                    : pairName(checked.cross.mother, father),
                     checked.warnings,
                     study);
    }
    warnings.tell(study);
}

} // namespace bullace::desk
