// Augmented designs as linear models of blocks and entries.
#include "core/trials/augmented.hpp"

#include "core/statistics/distributions.hpp"
#include "core/trials/augmented_parts.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace bullace::trials {

namespace {

// What each record is, as two more columns.
void addKinds(const Factor& entry, AugmentedRecords& records) {
    std::vector<std::string> kinds;
    std::vector<std::string> names;
    for (const std::uint32_t level : entry.of) {
        kinds.emplace_back(records.isCheck[level] ? "check" : "selection");
        names.push_back(records.isCheck[level] ? "c:" + entry.levels[level] : "s");
    }
    records.table.factors.push_back(makeFactor(kKind, kinds));
    records.table.factors.push_back(makeFactor(kCheck, names));
}

} // namespace

Result<AugmentedRecords> takeAugmented(const TrialTable& table, const AugmentedPlan& plan) {
    for (const std::string& name : {plan.block, plan.entry}) {
        if (table.factor(name) == nullptr) {
            return Error{ErrorCode::InvalidInput,
                         "There is no column \"" + name + "\" that could be the blocks or entries.",
                         {}};
        }
    }
    const std::vector<Term> terms = {{plan.block}, {plan.entry}};
    const auto complete = completeRows(table, terms);
    if (!complete) {
        return complete.error();
    }
    AugmentedRecords records{rowsOf(table, *complete), {}, {}, table.rows() - complete->size()};
    const Factor& entry = *records.table.factor(plan.entry);
    std::size_t checks = 0;
    for (const std::string& level : entry.levels) {
        records.isCheck.push_back(std::ranges::find(plan.checks, level) != plan.checks.end());
        checks += records.isCheck.back() ? 1U : 0U;
    }
    if (checks == 0 || checks == entry.levels.size()) {
        return Error{ErrorCode::InvalidInput,
                     checks == 0 ? "No check is among the complete records: without checks in the "
                                   "blocks, selections of different blocks cannot be compared."
                                 : "All entries are checks: there is no selection among the "
                                   "complete records.",
                     {}};
    }
    for (const std::string& check : plan.checks) {
        if (std::ranges::find(entry.levels, check) == entry.levels.end()) {
            records.missing.push_back(check);
        }
    }
    addKinds(entry, records);
    return records;
}

namespace {

class PairSums {
public:
    void add(double error) {
        ++found_.pairs;
        found_.standardError += error;
        found_.least = found_.pairs == 1 ? error : std::min(found_.least, error);
        found_.greatest = std::max(found_.greatest, error);
    }
    [[nodiscard]] std::optional<PairError> told(double t) const {
        if (found_.pairs == 0) {
            return {};
        }
        PairError told = found_;
        told.standardError /= static_cast<double>(found_.pairs);
        told.leastSignificant = t * told.standardError;
        return told;
    }

private:
    PairError found_;
};

// The block of each entry that stands in one only.
std::vector<std::uint32_t> blocksOfEntries(const Factor& entry, const Factor& block) {
    std::vector<std::uint32_t> of(entry.levels.size(), kNoLevel);
    std::vector<char> isSeen(entry.levels.size(), 0);
    for (std::size_t row = 0; row < entry.of.size(); ++row) {
        const std::uint32_t level = entry.of[row];
        const bool isOther = isSeen[level] != 0 && of[level] != block.of[row];
        of[level] = isOther ? kNoLevel : block.of[row];
        isSeen[level] = 1;
    }
    return of;
}

void addPairErrors(const AugmentedRecords& records,
                   const AugmentedPlan& plan,
                   AugmentedAnalysis& into) {
    if (into.means.covariance.empty()) {
        if (into.errorVariance) {
            into.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                     "There are too many entries to tell the error "
                                                     "of each difference."),
                                    {}});
        }
        return;
    }
    const auto blocks =
        blocksOfEntries(*records.table.factor(plan.entry), *records.table.factor(plan.block));
    PairSums twoChecks;
    PairSums same;
    PairSums different;
    PairSums mixed;
    PairSums all;
    for (std::size_t i = 0; i < into.means.levels.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const auto error = into.means.differenceError(i, j);
            if (!error) {
                continue;
            }
            const bool areInOne = blocks[i] != kNoLevel && blocks[i] == blocks[j];
            PairSums& kind = records.isCheck[i] && records.isCheck[j]   ? twoChecks
                             : records.isCheck[i] != records.isCheck[j] ? mixed
                             : areInOne                                 ? same
                                                                        : different;
            kind.add(*error);
            all.add(*error);
        }
    }
    const double t = statistics::studentTQuantile(1 - plan.alpha / 2, into.means.degreesOfFreedom);
    into.twoChecks = twoChecks.told(t);
    into.sameBlock = same.told(t);
    into.differentBlock = different.told(t);
    into.withCheck = mixed.told(t);
    if (const auto told = all.told(t)) {
        into.meanError = told->standardError;
    }
}

// Only where each block holds each check once.
void addCheckEffects(const AugmentedRecords& records,
                     const AugmentedPlan& plan,
                     AugmentedAnalysis& into) {
    const Factor& entry = *records.table.factor(plan.entry);
    const Factor& block = *records.table.factor(plan.block);
    std::map<std::pair<std::uint32_t, std::uint32_t>, std::size_t> seen;
    std::vector<double> sums(block.levels.size(), 0.0);
    double total = 0;
    bool isOnce = true;
    for (std::size_t row = 0; row < entry.of.size(); ++row) {
        if (records.isCheck[entry.of[row]]) {
            isOnce = ++seen[{block.of[row], entry.of[row]}] == 1 && isOnce;
            sums[block.of[row]] += records.table.response[row];
            total += records.table.response[row];
        }
    }
    const auto checks =
        static_cast<std::size_t>(std::count(records.isCheck.begin(), records.isCheck.end(), true));
    if (!isOnce || seen.size() != checks * block.levels.size()) {
        into.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "Not every block holds every check once, so the errors of "
                              "differences vary from pair to pair: their mean is given, and the "
                              "blocks are taken out by least squares."),
             {}});
        return;
    }
    for (std::size_t i = 0; i < sums.size(); ++i) {
        into.checkEffects.push_back(
            {block.levels[i],
             sums[i] / static_cast<double>(checks) - total / static_cast<double>(seen.size())});
    }
}

Result<std::vector<VarianceLine>> linesOf(const TrialTable& table, const std::vector<Term>& terms) {
    const auto model = LinearModel::fit(table, terms);
    if (!model) {
        return model.error();
    }
    return model->summary().typeOne;
}

void takeSummary(const ModelSummary& summary, AugmentedAnalysis& into) {
    into.n = summary.n;
    into.mean = summary.mean;
    into.degreesOfFreedom = summary.degreesOfFreedom;
    into.errorVariance = summary.residualVariance;
    into.cvPercent = summary.cvPercent;
    into.blocksFirst = summary.typeOne;
    into.remarks.insert(into.remarks.end(), summary.remarks.begin(), summary.remarks.end());
}

void remarkOnRecords(const AugmentedRecords& records, Remarks& remarks) {
    tellLeftOut(records.leftOut, remarks);
    for (const std::string& check : records.missing) {
        remarks.push_back(
            {BULLACE_SENTENCE("Remark", "The check %1 has no complete record."), {check}});
    }
}

} // namespace

Result<AugmentedAnalysis> analyseAugmented(const TrialTable& table, const AugmentedPlan& plan) {
    const auto records = takeAugmented(table, plan);
    if (!records) {
        return records.error();
    }
    AugmentedAnalysis result;
    result.method = "augmented blocks; blocks and entries fixed, least squares";
    result.leftOut = records->leftOut;
    remarkOnRecords(*records, result.remarks);
    const auto model =
        LinearModel::fit(records->table, std::vector<Term>{{plan.block}, {plan.entry}});
    const auto reversed = linesOf(records->table, {{plan.entry}, {plan.block}});
    const auto parted = linesOf(records->table, {{plan.block}, {kKind}, {kCheck}, {plan.entry}});
    if (!model || !reversed || !parted) {
        return !model ? model.error() : !reversed ? reversed.error() : parted.error();
    }
    takeSummary(model->summary(), result);
    result.entriesFirst = *reversed;
    result.parted = *parted;
    result.parted[1].term = "checks against selections";
    result.parted[2].term = "among checks";
    result.parted[3].term = "among selections";
    auto means = model->means({plan.entry});
    if (!means) {
        return means.error();
    }
    result.means = std::move(*means);
    result.selections = static_cast<std::size_t>(
        std::count(records->isCheck.begin(), records->isCheck.end(), false));
    result.remarks.insert(
        result.remarks.end(), result.means.remarks.begin(), result.means.remarks.end());
    addCheckEffects(*records, plan, result);
    addPairErrors(*records, plan, result);
    return result;
}

std::vector<std::string> repeatedEntries(const TrialTable& table, const std::string& entry) {
    const Factor* factor = table.factor(entry);
    std::vector<std::string> repeated;
    if (factor == nullptr) {
        return repeated;
    }
    std::vector<std::size_t> times(factor->levels.size(), 0);
    for (const std::uint32_t level : factor->of) {
        if (level != kNoLevel) {
            ++times[level];
        }
    }
    for (std::size_t level = 0; level < times.size(); ++level) {
        if (times[level] > 1) {
            repeated.push_back(factor->levels[level]);
        }
    }
    return repeated;
}

} // namespace bullace::trials
