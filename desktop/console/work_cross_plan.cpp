// `bullace work cross-plan`: the best set of crosses among candidates, or her own list commented.
#include "console/pedigree_file.hpp"

#include "core/base/numbers.hpp"
#include "core/breeding/cross_plan.hpp"
#include "core/breeding/relationship.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <map>
#include <memory>

namespace bullace::console {

namespace {

using namespace breeding;

struct PlanChoice {
    std::string path;
    std::string pairs;
    std::string pedigree;
    std::string list;
    std::vector<std::string> species;
    std::size_t mostUses = 4;
    std::size_t curve = 0;
    PlanRules rules;
};

struct PlanFiles {
    std::vector<PlanCandidate> candidates;
    PairTable pairs;
    std::map<std::string, std::size_t, std::less<>> place;
};

// "NAME,0.3,0.6" or "NAME,0.3,0.6,each".
Result<SpeciesWish> wishOf(const std::string& text) {
    std::vector<std::string> parts(1);
    for (const char letter : text) {
        if (letter == ',') {
            parts.emplace_back();
        } else {
            parts.back() += letter;
        }
    }
    const bool isEach = parts.size() == 4 && parts[3] == "each";
    const auto fewest = parts.size() >= 3 ? readTypedNumber(parts[1]) : std::nullopt;
    const auto most = parts.size() >= 3 ? readTypedNumber(parts[2]) : std::nullopt;
    if (!fewest || !most || (parts.size() != 3 && !isEach)) {
        return Error{ErrorCode::InvalidInput,
                     text + " is not a species, its least and its greatest share, like "
                            "munsoniana,0.3,0.6 (and ,each).",
                     ""};
    }
    return SpeciesWish{parts[0], *fewest, *most, isEach};
}

// Whether the cell of a column that may be there was read into `into`.
template<typename Read, typename Into>
Status
readIfThere(const WorkFile& file, const char* name, std::size_t row, const Read& read, Into& into) {
    const auto column = file.columnIfThere(name);
    if (!column || file.isMissing(row, *column)) {
        return {};
    }
    const auto value = (file.*read)(row, *column);
    if (!value) {
        return value.error();
    }
    into = static_cast<Into>(*value);
    return {};
}

Status readNumberIfThere(const WorkFile& file,
                         const char* name,
                         std::size_t row,
                         std::optional<double>& into) {
    const auto column = file.columnIfThere(name);
    if (!column) {
        return {};
    }
    const auto value = file.numberIfThere(row, *column);
    if (!value) {
        return value.error();
    }
    into = *value;
    return {};
}

Status readSex(const WorkFile& file, std::size_t row, CrossParent& parent) {
    const auto column = file.columnIfThere("sex");
    if (!column || file.isMissing(row, *column)) {
        return {};
    }
    const std::string& text = file.text(row, *column);
    for (const FlowerSex sex : {FlowerSex::Male, FlowerSex::Perfect, FlowerSex::Female}) {
        if (text == nameOf(sex)) {
            parent.sex = sex;
        }
    }
    if (const auto code = readCount(text, 9); code && !parent.sex) {
        parent.sex = flowerSexOf(static_cast<int>(*code));
    }
    return parent.sex
               ? Status()
               : file.wrong(row, *column, "the sex is male, perfect, female or a code 1 to 4");
}

Result<PlanCandidate>
readCandidate(const WorkFile& file, std::size_t id, std::size_t row, const PlanChoice& choice) {
    PlanCandidate candidate;
    CrossParent& parent = candidate.parent;
    parent.id = file.text(row, id);
    candidate.mostUses = choice.mostUses;
    std::size_t chromosomes = 0;
    const Status read[] = {
        readSex(file, row, parent),
        readNumberIfThere(file, "merit", row, parent.merit),
        readNumberIfThere(file, "error variance", row, parent.meritErrorVariance),
        readNumberIfThere(file, "inbreeding", row, parent.inbreeding),
        readIfThere(file, "chromosomes", row, &WorkFile::count, chromosomes),
        readIfThere(file, "fewest uses", row, &WorkFile::count, candidate.fewestUses),
        readIfThere(file, "most uses", row, &WorkFile::count, candidate.mostUses)};
    for (const Status& status : read) {
        if (!status) {
            return status.error();
        }
    }
    if (chromosomes > 0) {
        parent.chromosomes = static_cast<int>(std::min<std::size_t>(chromosomes, 1000));
    }
    if (const auto colour = file.columnIfThere("colour"); colour) {
        parent.berryColour = file.text(row, *colour);
    }
    for (const SpeciesWish& wish : choice.rules.species) {
        const auto column = file.column(wish.species);
        const auto share = column ? file.numberIfThere(row, *column) : column.error();
        if (!share) {
            return share.error();
        }
        if (*share) {
            candidate.speciesShares.push_back(**share);
        }
    }
    if (candidate.speciesShares.size() != choice.rules.species.size()) {
        candidate.speciesShares.clear();
    }
    return candidate;
}

Status readCandidates(const PlanChoice& choice, Terminal& terminal, PlanFiles& files) {
    const auto file = WorkFile::read(choice.path, terminal);
    const auto id = file ? file->column("id") : file.error();
    if (!id) {
        return id.error();
    }
    for (std::size_t row = 0; row < file->rows(); ++row) {
        auto candidate = readCandidate(*file, *id, row, choice);
        if (!candidate) {
            return candidate.error();
        }
        files.place.emplace(candidate->parent.id, files.candidates.size());
        files.candidates.push_back(std::move(*candidate));
    }
    files.pairs.assign(files.candidates.size() * files.candidates.size(), {});
    return {};
}

// Kinships, and inbreeding where the candidates' file has none, of those that are in the pedigree.
Status readKinships(const PlanChoice& choice, Terminal& terminal, PlanFiles& files) {
    if (choice.pedigree.empty()) {
        return {};
    }
    const auto file = readPedigree(choice.pedigree, "", terminal);
    if (!file) {
        return file.error();
    }
    const auto inbreeding = breeding::inbreeding(file->pedigree);
    std::vector<std::int32_t> members;
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < files.candidates.size(); ++i) {
        CrossParent& parent = files.candidates[i].parent;
        if (const auto member = file->pedigree.find(parent.id)) {
            members.push_back(*member);
            places.push_back(i);
            parent.inbreeding =
                parent.inbreeding.value_or(inbreeding[static_cast<std::size_t>(*member)]);
        }
    }
    const auto matrix = kinshipMatrix(file->pedigree, inbreeding, members);
    for (std::size_t i = 0; i < places.size(); ++i) {
        for (std::size_t j = 0; j < places.size(); ++j) {
            files.pairs[places[i] * files.candidates.size() + places[j]].kinship =
                matrix[i * places.size() + j];
        }
    }
    return {};
}

// Columns mother, father; if there kinship, overlap, stored (yes or empty).
Status readPairs(const PlanChoice& choice, Terminal& terminal, PlanFiles& files) {
    if (choice.pairs.empty()) {
        return {};
    }
    const auto file = WorkFile::read(choice.pairs, terminal);
    const auto mother = file ? file->column("mother") : file.error();
    const auto father = mother ? file->column("father") : mother.error();
    if (!father) {
        return father.error();
    }
    const auto stored = file->columnIfThere("stored");
    for (std::size_t row = 0; row < file->rows(); ++row) {
        const auto one = files.place.find(file->text(row, *mother));
        const auto other = files.place.find(file->text(row, *father));
        if (one == files.place.end() || other == files.place.end()) {
            return file->wrongLine(row, "One of the two is not among the candidates.");
        }
        PairKnown& pair = files.pairs[one->second * files.candidates.size() + other->second];
        for (const Status& status : {readNumberIfThere(*file, "kinship", row, pair.kinship),
                                     readNumberIfThere(*file, "overlap", row, pair.bloomOverlap)}) {
            if (!status) {
                return status.error();
            }
        }
        pair.hasStoredPollen = stored && file->text(row, *stored) == "yes";
    }
    return {};
}

// Columns mother, father; several fathers are joined by +, none is open pollination.
Result<std::vector<OwnCross>> readList(const std::string& path, Terminal& terminal) {
    const auto file = WorkFile::read(path, terminal);
    const auto mother = file ? file->column("mother") : file.error();
    const auto father = mother ? file->column("father") : mother.error();
    if (!father) {
        return father.error();
    }
    std::vector<OwnCross> crosses;
    for (std::size_t row = 0; row < file->rows(); ++row) {
        OwnCross cross{file->text(row, *mother), {}, file->line(row)};
        std::string name;
        for (const char letter : file->text(row, *father) + "+") {
            if (letter != '+') {
                name += letter;
            } else if (!name.empty()) {
                cross.fathers.push_back(std::exchange(name, {}));
            }
        }
        crosses.push_back(std::move(cross));
    }
    return crosses;
}

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
    const auto list = readList(choice.list, terminal);
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
    PlanFiles files;
    for (const auto& read : {&readCandidates, &readKinships, &readPairs}) {
        if (const Status status = read(choice, terminal, files); !status) {
            return status;
        }
    }
    if (!choice.list.empty()) {
        return describeOwn(choice, files, terminal, document);
    }
    const auto plan = planCrosses(files.candidates, files.pairs, choice.rules);
    if (!plan) {
        return plan.error();
    }
    describe(*plan, files, document);
    return choice.curve > 0 ? describeCurve(choice, files, document) : Status();
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
