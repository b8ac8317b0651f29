// A linear model of a trial's plan, and what a breeder reads of it.
#include "core/trials/trial_analysis.hpp"

#include "core/statistics/distributions.hpp"
#include "core/statistics/normality.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace bullace::trials {

namespace {

constexpr std::size_t kMostTreatments = 6; // factors of a factorial

Error invalid(const std::string& message) {
    return {ErrorCode::InvalidInput, message, {}};
}

// Main effects, then interactions of two, of three …
std::vector<Term> factorialTerms(const std::vector<std::string>& treatments) {
    std::vector<Term> terms;
    for (std::size_t size = 1; size <= treatments.size(); ++size) {
        std::vector<char> chosen(treatments.size(), 0);
        std::fill_n(chosen.begin(), size, char{1});
        do {
            Term term;
            for (std::size_t i = 0; i < treatments.size(); ++i) {
                if (chosen[i] != 0) {
                    term.push_back(treatments[i]);
                }
            }
            terms.push_back(std::move(term));
        } while (std::ranges::prev_permutation(chosen).found);
    }
    return terms;
}

Result<void> checkPlan(const TrialTable& table, const TrialPlan& plan) {
    if (plan.treatments.empty()) {
        return invalid("No treatment is named: which column holds what is compared?");
    }
    if (plan.treatments.size() > kMostTreatments) {
        return invalid("A factorial of more than 6 factors is not analysed with all interactions.");
    }
    std::set<std::string> names;
    const auto isNew = [&names](const std::string& name) { return names.insert(name).second; };
    for (const auto* list : {&plan.treatments, &plan.blocks, &plan.covariates}) {
        for (const std::string& name : *list) {
            const bool isCovariate = list == &plan.covariates;
            const bool isThere =
                isCovariate ? table.covariate(name) != nullptr : table.factor(name) != nullptr;
            if (!isThere) {
                return invalid("There is no column \"" + name + "\" that could be a " +
                               (isCovariate ? "covariate." : "treatment or block."));
            }
            if (!isNew(name)) {
                return invalid("The column \"" + name + "\" is named twice in the plan.");
            }
        }
    }
    return {};
}

std::string methodOf(const TrialPlan& plan) {
    std::string method = plan.treatments.size() > 1 ? "factorial" : "one treatment factor";
    method += plan.blocks.empty()       ? ", no blocks"
              : plan.blocks.size() == 1 ? ", blocks"
                                        : ", several kinds of blocks (rows and columns)";
    method += plan.covariates.empty() ? "" : ", covariates";
    return method + "; fixed terms, least squares";
}

// Levels of a factor among the rows that were taken.
std::size_t levelsSeen(const Factor& factor, const std::vector<FittedRow>& rows) {
    std::set<std::uint32_t> seen;
    for (const FittedRow& row : rows) {
        seen.insert(factor.of[row.row]);
    }
    return seen.size();
}

Result<void> checkLevels(const TrialTable& table,
                         const TrialPlan& plan,
                         const std::vector<FittedRow>& rows,
                         Remarks& remarks) {
    for (const std::string& name : plan.treatments) {
        if (levelsSeen(*table.factor(name), rows) < 2) {
            return invalid("There is only one " + name +
                           " among the complete records: there is nothing to compare it with.");
        }
    }
    for (const std::string& name : plan.blocks) {
        if (levelsSeen(*table.factor(name), rows) < 2) {
            remarks.push_back({BULLACE_SENTENCE("Remark",
                                                "All complete records stand in one %1, so nothing "
                                                "can be taken out for it."),
                               {name}});
        }
    }
    return {};
}

void addEfficiencies(const TrialPlan& plan, TrialAnalysis& into) {
    const auto& error = into.model.residualVariance;
    if (!error || !(*error > 0)) {
        return;
    }
    for (const VarianceLine& line : into.model.typeTwo) {
        const bool isBlock = std::ranges::find(plan.blocks, line.term) != plan.blocks.end();
        if (!isBlock || !line.meanSquare) {
            continue;
        }
        const double all = static_cast<double>(into.model.n) - 1;
        const double df = static_cast<double>(line.degreesOfFreedom);
        into.efficiencies.push_back(
            {line.term, (df * *line.meanSquare + (all - df) * *error) / (all * *error)});
    }
}

// The records, or their residuals, of each level of the treatments together.
std::vector<std::vector<double>> grouped(const TrialTable& table,
                                         const TrialPlan& plan,
                                         const std::vector<FittedRow>& rows,
                                         bool areResiduals) {
    std::vector<const Factor*> factors;
    for (const std::string& name : plan.treatments) {
        factors.push_back(table.factor(name));
    }
    const Factor cells = combined(factors);
    std::vector<std::vector<double>> groups(cells.levels.size());
    for (const FittedRow& row : rows) {
        groups[cells.of[row.row]].push_back(areResiduals ? row.residual : table.response[row.row]);
    }
    return groups;
}

std::optional<GroupTest> nonAdditivity(const TrialTable& table,
                                       const std::vector<Term>& terms,
                                       const TrialAnalysis& analysis) {
    const auto none = std::numeric_limits<double>::quiet_NaN();
    const std::string name = "squares of the fitted values";
    Covariate squares{name, std::vector<double>(table.rows(), none)};
    for (const FittedRow& row : analysis.rows) {
        const double apart = row.fitted - analysis.model.mean;
        squares.values[row.row] = apart * apart;
    }
    TrialTable with = table;
    with.covariates.push_back(std::move(squares));
    std::vector<Term> more = terms;
    more.push_back({name});
    const auto fitted = LinearModel::fit(with, more);
    if (!fitted) {
        return {};
    }
    const VarianceLine& line = fitted->summary().typeOne[terms.size()];
    if (line.degreesOfFreedom != 1 || !line.f || !line.p) {
        return {};
    }
    return GroupTest{*line.f, 1, static_cast<double>(fitted->summary().degreesOfFreedom), *line.p};
}

void findOutliers(double alpha, TrialAnalysis& into) {
    const double n = static_cast<double>(into.model.n);
    const double df = static_cast<double>(into.model.degreesOfFreedom) - 1;
    for (const FittedRow& row : into.rows) {
        if (!row.studentised || df < 1) {
            continue;
        }
        const double p = std::min(1.0, n * statistics::studentTBothTails(*row.studentised, df));
        if (p < alpha) {
            into.checks.outliers.push_back({row.row, row.residual, *row.studentised, p});
        }
    }
    std::ranges::stable_sort(into.checks.outliers, std::greater<>(), [](const Outlier& outlier) {
        return std::abs(outlier.studentised);
    });
    if (!into.checks.outliers.empty()) {
        into.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Records that lie far from what the model expects: %1. They were "
                              "kept; look at them before you believe the rest."),
             {static_cast<std::int64_t>(into.checks.outliers.size())}});
    }
}

void checkResiduals(const TrialTable& table,
                    const TrialPlan& plan,
                    const std::vector<Term>& terms,
                    TrialAnalysis& into) {
    if (!into.model.residualVariance || !(*into.model.residualVariance > 0)) {
        return;
    }
    std::vector<double> residuals;
    for (const FittedRow& row : into.rows) {
        residuals.push_back(row.residual);
    }
    if (const auto shapiro = statistics::shapiroWilk(residuals)) {
        into.checks.shapiroW = shapiro->w;
        into.checks.shapiroP = shapiro->p;
    }
    const auto groups = grouped(table, plan, into.rows, true);
    into.checks.bartlett = bartlett(groups);
    into.checks.brownForsythe = brownForsythe(groups);
    if (plan.treatments.size() == 1 && !plan.blocks.empty()) {
        into.checks.nonAdditivity = nonAdditivity(table, terms, into);
    }
    findOutliers(plan.alpha, into);
    const bool isSkewed = into.checks.shapiroP && *into.checks.shapiroP < 0.01;
    const bool isUneven = into.checks.brownForsythe && into.checks.brownForsythe->p < 0.01;
    if (isSkewed || isUneven) {
        into.remarks.push_back(
            {isUneven ? BULLACE_SENTENCE("Remark",
                                         "The treatments do not vary alike, so one error for all "
                                         "is too small for some and too large for others. Another "
                                         "scale may help.")
                      : BULLACE_SENTENCE("Remark",
                                         "The residuals are not those of a normal distribution. "
                                         "Another scale may help."),
             {}});
    }
}

void addOneWay(const TrialTable& table, const TrialPlan& plan, TrialAnalysis& into) {
    const auto groups = grouped(table, plan, into.rows, false);
    into.welch = welch(groups);
    into.kruskalWallis = kruskalWallis(groups);
    double squares = 0;
    for (const auto& group : groups) {
        squares += static_cast<double>(group.size()) * static_cast<double>(group.size());
    }
    const VarianceLine& between = into.model.typeOne.front();
    const double n = static_cast<double>(into.model.n);
    if (!into.model.residualVariance || !between.meanSquare) {
        return;
    }
    const double records = (n - squares / n) / static_cast<double>(between.degreesOfFreedom);
    const double within = *into.model.residualVariance;
    into.components = OneWayComponents{within, (*between.meanSquare - within) / records, records};
    if (into.components->between < 0) {
        into.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The variance between treatments is estimated below 0: read it as "
                              "none that could be seen."),
             {}});
    }
}

void addMeans(const LinearModel& model, const TrialPlan& plan, TrialAnalysis& into) {
    for (const Term& term : factorialTerms(plan.treatments)) {
        auto means = model.means(term);
        if (!means) {
            continue; // a term of the plan is a term of the model
        }
        ComparisonOptions options{plan.alpha, {}};
        if (term == Term{plan.treatments.front()}) {
            options.reference = plan.reference;
        }
        Comparisons comparisons = compareMeans(*means, options);
        into.treatments.push_back({std::move(*means), std::move(comparisons)});
    }
    for (const std::string& block : plan.blocks) {
        if (auto means = model.means({block})) {
            into.blocks.push_back(std::move(*means));
        }
    }
}

void gatherRemarks(TrialAnalysis& into) {
    Remarks all = into.model.remarks;
    const auto add = [&all](const Remarks& more) {
        for (const Remark& remark : more) {
            if (std::ranges::find(all, remark) == all.end()) {
                all.push_back(remark);
            }
        }
    };
    add(into.remarks);
    for (const TreatmentMeans& each : into.treatments) {
        add(each.means.remarks);
        add(each.comparisons.remarks);
    }
    into.remarks = std::move(all);
}

} // namespace

Result<TrialAnalysis> analyseTrial(const TrialTable& table, const TrialPlan& plan) {
    if (const auto checked = checkPlan(table, plan); !checked) {
        return checked.error();
    }
    std::vector<Term> terms;
    for (const auto* list : {&plan.blocks, &plan.covariates}) {
        for (const std::string& name : *list) {
            terms.push_back({name});
        }
    }
    const std::vector<Term> treatments = factorialTerms(plan.treatments);
    terms.insert(terms.end(), treatments.begin(), treatments.end());
    const auto model = LinearModel::fit(table, terms);
    if (!model) {
        return model.error();
    }
    TrialAnalysis analysis;
    analysis.method = methodOf(plan);
    analysis.model = model->summary();
    analysis.rows = model->rows();
    if (const auto checked = checkLevels(table, plan, analysis.rows, analysis.remarks); !checked) {
        return checked.error();
    }
    addMeans(*model, plan, analysis);
    addEfficiencies(plan, analysis);
    checkResiduals(table, plan, terms, analysis);
    if (plan.treatments.size() == 1 && terms.size() == 1) {
        addOneWay(table, plan, analysis);
    }
    gatherRemarks(analysis);
    return analysis;
}

} // namespace bullace::trials
