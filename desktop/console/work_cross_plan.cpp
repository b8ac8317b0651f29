// `bullace work cross-plan`: the best set of crosses among candidates, or her own list commented.
#include "console/cross_plan_file.hpp"

#include <CLI/CLI.hpp>
#include <memory>

namespace bullace::console {

namespace {

using namespace breeding;

std::string_view nameOf(ProgrammeStatus status) {
    switch (status) {
    case ProgrammeStatus::Optimal:
        return "proven the best";
    case ProgrammeStatus::TimeIsUp:
        return "found, not proven the best";
    case ProgrammeStatus::Infeasible:
        return "no plan keeps all rules";
    case ProgrammeStatus::NotSolved:
        return "not found in time";
    }
    return "";
}

std::string_view nameOf(WhyNot why) {
    switch (why) {
    case WhyNot::NoSeed:
        return "gives no seed";
    case WhyNot::NotWanted:
        return "not wanted";
    case WhyNot::BloomApart:
        return "bloom apart";
    case WhyNot::TooRelated:
        return "too related";
    case WhyNot::OtherSpecies:
        return "other species";
    case WhyNot::UsesUp:
        return "parent used up";
    case WhyNot::Outbid:
        return "outbid";
    }
    return "";
}

void describe(const ExpectedMerit& merit, Document& into) {
    into.number("expected mean", merit.mean);
    into.number("error variance of the mean", merit.meanErrorVariance);
    into.number("variance within the family", merit.withinVariance);
    into.number("inbreeding of the seedlings", merit.inbreeding);
}

void describe(const PlannedCross& cross, const PlanFiles& files, Document& into) {
    into.text("mother", files.candidates[cross.mother].parent.id);
    into.text("father", files.candidates[cross.father].parent.id);
    describe(cross.merit, into);
    into.number("overlap of bloom", cross.bloomOverlap);
    into.truth("stored pollen", cross.usesStoredPollen);
    if (cross.needsEmasculation) {
        into.truth("mother to be emasculated", *cross.needsEmasculation);
    }
    into.number("chromosomes",
                cross.chromosomes.number ? std::optional<double>(*cross.chromosomes.number)
                                         : std::nullopt);
    DocumentList& sexes = into.list("possible sexes");
    for (const SexShares& shares : cross.sexes.possible) {
        Document& of = sexes.add();
        of.number("male", shares.male).number("perfect", shares.perfect);
        of.number("female", shares.female);
    }
    if (const auto& colours = cross.colours.shares) {
        Document& of = into.object("colours");
        of.number("black", colours->black).number("red", colours->red);
        of.number("bronze", colours->bronze);
    }
}

void describe(const CrossPlan& plan, const PlanFiles& files, Document& document) {
    document.text("method", plan.method).text("plan", nameOf(plan.status));
    document.count("candidates", files.candidates.size()).count("allowed pairs", plan.pairs);
    document.number("sum of worths", plan.worth).number("bound of the sum", plan.bound);
    document.number("group kinship", plan.groupKinship);
    DocumentList& crosses = document.list("crosses");
    for (const PlannedCross& cross : plan.crosses) {
        Document& of = crosses.add();
        of.number("worth", cross.worth);
        describe(cross, files, of);
        of.remarks(cross.warnings);
    }
    DocumentList& refused = document.list("not in the plan");
    for (const Refusal& refusal : plan.refusals) {
        Document& of = refused.add();
        of.text("mother", files.candidates[refusal.mother].parent.id);
        of.text("father", files.candidates[refusal.father].parent.id);
        of.number("worth", refusal.worth).text("why", nameOf(refusal.why));
        of.text("reason", inEnglish(refusal.reason));
        of.number("least loss if forced in", refusal.leastLoss);
    }
    document.remarks(plan.remarks);
}

Status describeCurve(const PlanChoice& choice, const PlanFiles& files, Document& document) {
    const auto curve = tradeOff(files.candidates, files.pairs, choice.rules, choice.curve);
    if (!curve) {
        return curve.error();
    }
    DocumentList& points = document.list("merit against kinship");
    for (const TradeOffPoint& point : *curve) {
        Document& of = points.add();
        of.number("limit", point.mostGroupKinship).text("plan", nameOf(point.status));
        of.number("sum of worths", point.worth).number("bound of the sum", point.bound);
        of.number("group kinship", point.groupKinship);
    }
    return {};
}

Status describeOwn(const PlanChoice& choice,
                   const PlanFiles& files,
                   Terminal& terminal,
                   Document& document) {
    const auto list = readOwnCrosses(choice.list, terminal);
    const auto checked =
        list ? checkOwnCrosses(*list, files.candidates, files.pairs, choice.rules) : list.error();
    if (!checked) {
        return checked.error();
    }
    DocumentList& crosses = document.list("crosses");
    for (const CheckedCross& cross : *checked) {
        Document& of = crosses.add();
        of.text("mother", cross.cross.mother);
        DocumentList& fathers = of.list("fathers");
        for (const std::string& father : cross.cross.fathers) {
            fathers.add(father);
        }
        if (cross.merit) {
            describe(*cross.merit, of);
        }
        DocumentList& parts = of.list("families");
        for (const PlannedCross& part : cross.parts) {
            describe(part, files, parts.add());
        }
        of.remarks(cross.warnings);
    }
    return {};
}

Status planInto(const PlanChoice& choice, Terminal& terminal, Document& document) {
    const auto files = readPlanFiles(choice, terminal);
    if (!files) {
        return files.error();
    }
    if (!choice.list.empty()) {
        return describeOwn(choice, *files, terminal, document);
    }
    const auto plan = planCrosses(files->candidates, files->pairs, choice.rules);
    if (!plan) {
        return plan.error();
    }
    describe(*plan, *files, document);
    return choice.curve > 0 ? describeCurve(choice, *files, document) : Status();
}

int crossPlanOf(PlanChoice choice, Terminal& terminal) {
    for (const std::string& text : choice.species) {
        const auto wish = wishOf(text);
        if (!wish) {
            return tellFailure(terminal.err, wish.error());
        }
        choice.rules.species.push_back(*wish);
    }
    Document document;
    document.text("computation", "cross-plan");
    if (const Status planned = planInto(choice, terminal, document); !planned) {
        return tellFailure(terminal.err, planned.error());
    }
    return tell(document, terminal);
}

} // namespace

void addCrossPlan(CLI::App& methods, Work& work) {
    auto choice = std::make_shared<PlanChoice>();
    PlanRules& rules = choice->rules;
    CLI::App* command =
        methods.add_subcommand("cross-plan", "The best set of crosses among candidates");
    command->add_option("FILE", choice->path, "CSV of candidates; - is standard input")->required();
    command->add_option("--crosses", rules.crosses, "How many")->capture_default_str();
    command->add_option("--pedigree", choice->pedigree, "CSV: id, mother, father; for kinships");
    command->add_option(
        "--pairs", choice->pairs, "CSV: mother, father; if there kinship, overlap, stored");
    command->add_option(
        "--list", choice->list, "CSV of her own crosses to comment: mother, father (A+B is mixed)");
    command->add_option("--most-uses", choice->mostUses, "Of each candidate")
        ->capture_default_str();
    command->add_option("--most-kinship", rules.mostKinship, "Of the two parents");
    command->add_option("--most-group-kinship", rules.mostGroupKinship, "Of all parents");
    command->add_option("--least-overlap", rules.leastOverlap, "Of bloom, a probability");
    command->add_option("--species",
                        choice->species,
                        "NAME,LEAST,MOST of the seedlings' shares; ,each for each cross");
    command->add_option("--additive-variance", rules.additiveVariance, "Of the base population");
    command->add_option("--spread", rules.spreadIntensity, "Standard deviations within the family");
    command->add_flag("--selfings", rules.hasSelfings, "Selfings may be in the plan");
    command->add_option("--seconds", rules.seconds, "The longest that may be searched")
        ->capture_default_str();
    command->add_option("--curve", choice->curve, "Points of merit against kinship")
        ->check(CLI::Range(2, 50));
    command->footer("Columns: id; if there sex (male, perfect, female), merit, error variance, "
                    "inbreeding,\nchromosomes, colour, fewest uses, most uses, and one for each "
                    "species wished.");
    command->callback([choice, &work] {
        work = [choice](Terminal& terminal) { return crossPlanOf(*choice, terminal); };
    });
}

} // namespace bullace::console
