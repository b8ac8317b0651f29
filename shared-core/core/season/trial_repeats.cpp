// What repeats an accession in a trial: seasons put right, vines brought together to plots.
#include "core/season/station_trial.hpp"
#include "core/trials/linear_model.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>

namespace bullace::season {

using trials::Factor;
using trials::kNoLevel;
using trials::TrialTable;

namespace {

// What each season adds, their mean taken off; nothing where the seasons are not joined by levels
// of the factor that were noted in several.
std::optional<std::vector<double>> seasonEffects(const TrialTable& table, const char* joinedBy) {
    const std::vector<trials::Term> terms{{joinedBy}, {kSeasonFactor}};
    const auto model = trials::LinearModel::fit(table, terms);
    if (!model) {
        return {};
    }
    const auto means = model->means({kSeasonFactor});
    if (!means) {
        return {};
    }
    std::vector<double> effects;
    double sum = 0;
    for (const trials::AdjustedMean& level : means->levels) {
        if (!level.mean) {
            return {};
        }
        effects.push_back(level.mean->value);
        sum += level.mean->value;
    }
    for (double& effect : effects) {
        effect -= sum / static_cast<double>(effects.size());
    }
    return effects;
}

// How many of the accessions stand in more than one level of the factor, as a share.
double shareRepeatedOver(const TrialTable& table, const Factor& over) {
    const Factor& accession = *table.factor(kAccessionFactor);
    std::vector<std::uint32_t> first(accession.levels.size(), kNoLevel);
    std::vector<bool> isRepeated(accession.levels.size(), false);
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const std::uint32_t level = over.of[row];
        std::uint32_t& seen = first[accession.of[row]];
        if (level == kNoLevel || seen == level) {
            continue;
        }
        isRepeated[accession.of[row]] = isRepeated[accession.of[row]] || seen != kNoLevel;
        seen = level;
    }
    const auto repeated = std::ranges::count(isRepeated, true);
    return isRepeated.empty()
               ? 0
               : static_cast<double>(repeated) / static_cast<double>(isRepeated.size());
}

// Whether every accession can be compared with every other: through levels that both stand in, or
// others between them.
bool joinsAll(const TrialTable& table, const Factor& over) {
    const Factor& accession = *table.factor(kAccessionFactor);
    const std::size_t accessions = accession.levels.size();
    std::vector<std::size_t> above(accessions + over.levels.size());
    std::iota(above.begin(), above.end(), std::size_t{0});
    const auto root = [&above](std::size_t of) {
        while (above[of] != of) {
            of = above[of] = above[above[of]];
        }
        return of;
    };
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (over.of[row] != kNoLevel) {
            above[root(accession.of[row])] = root(accessions + over.of[row]);
        }
    }
    for (std::size_t i = 1; i < accessions; ++i) {
        if (root(i) != root(0)) {
            return false;
        }
    }
    return true;
}

// Rows grouped by one of their numbers, in the order of the groups' first rows.
struct Groups {
    std::vector<std::size_t> of;
    std::vector<std::size_t> first;
    std::vector<double> count;
};

std::vector<double> meansOf(const std::vector<double>& values, const Groups& groups) {
    std::vector<double> means(groups.first.size(), 0.0);
    for (std::size_t row = 0; row < values.size(); ++row) {
        if (groups.of[row] != kNoPlot) {
            means[groups.of[row]] += values[row] / groups.count[groups.of[row]];
        }
    }
    return means;
}

} // namespace

const char* factorOf(TrialRepeat repeat) {
    switch (repeat) {
    case TrialRepeat::Vines:
        return nullptr;
    case TrialRepeat::Blocks:
        return kBlockFactor;
    case TrialRepeat::Rows:
        return kRowFactor;
    case TrialRepeat::Replicates:
        return kReplicateFactor;
    }
    return nullptr;
}

TrialRepeat likelyRepeat(const StationTrial& trial) {
    constexpr double kMost = 0.5;
    if (trial.table.rows() == 0) {
        return TrialRepeat::Vines;
    }
    const auto outside = std::ranges::count(trial.table.factor(kReplicateFactor)->of, kNoLevel);
    if (static_cast<double>(outside) < kMost * static_cast<double>(trial.table.rows())) {
        return TrialRepeat::Replicates;
    }
    for (const TrialRepeat repeat : {TrialRepeat::Blocks, TrialRepeat::Rows}) {
        const Factor& over = *trial.table.factor(factorOf(repeat));
        if (shareRepeatedOver(trial.table, over) >= kMost && joinsAll(trial.table, over)) {
            return repeat;
        }
    }
    return TrialRepeat::Vines;
}

StationTrial eachVineOnce(const StationTrial& trial) {
    const Factor* seasons = trial.table.factor(kSeasonFactor);
    if (seasons == nullptr || seasons->levels.size() < 2) {
        return trial;
    }
    auto effects = seasonEffects(trial.table, kVineFactor);
    effects = effects ? effects : seasonEffects(trial.table, kAccessionFactor);
    StationTrial once = trial;
    Groups groups{{}, {}, std::vector<double>(trial.table.factor(kVineFactor)->levels.size(), 0.0)};
    std::vector<double> right;
    std::map<std::uint32_t, std::size_t> rowOfVine;
    for (std::size_t row = 0; row < trial.table.rows(); ++row) {
        const auto [at, isNew] = rowOfVine.emplace(trial.vines[row], groups.first.size());
        if (isNew) {
            groups.first.push_back(row);
        }
        groups.of.push_back(at->second);
        groups.count[at->second] += 1;
        right.push_back(trial.table.response[row] - (effects ? (*effects)[seasons->of[row]] : 0));
    }
    once.table = trials::rowsOf(trial.table, groups.first);
    once.table.response = meansOf(right, groups);
    std::erase_if(once.table.factors,
                  [](const Factor& factor) { return factor.name == kSeasonFactor; });
    once.vines.clear();
    once.seasons.clear();
    for (const std::size_t row : groups.first) {
        once.vines.push_back(trial.vines[row]);
    }
    once.remarks.push_back(
        effects ? Remark{BULLACE_SENTENCE("Remark",
                                          "Each vine counts once: the mean of its seasons, each "
                                          "put right for what the season was like."),
                         {}}
                : Remark{BULLACE_SENTENCE("Remark",
                                          "No vine and no accession joins the seasons: they cannot "
                                          "be put right for one another, and what differs between "
                                          "accessions may be the season."),
                         {}});
    return once;
}

TrialPlots plotsOf(const StationTrial& trial, TrialRepeat repeat) {
    TrialPlots plots;
    const TrialTable& table = trial.table;
    const char* name = factorOf(repeat);
    if (name == nullptr) {
        plots.table = table;
        plots.mostVines = table.rows() > 0 ? 1 : 0;
        for (std::size_t row = 0; row < table.rows(); ++row) {
            plots.plotOf.push_back(row);
        }
        return plots;
    }
    const Factor& accession = *table.factor(kAccessionFactor);
    const Factor& over = *table.factor(name);
    std::map<std::pair<std::uint32_t, std::uint32_t>, std::size_t> plotAt;
    Groups groups;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (over.of[row] == kNoLevel) {
            groups.of.push_back(kNoPlot);
            continue;
        }
        const auto [at, isNew] =
            plotAt.emplace(std::pair(accession.of[row], over.of[row]), groups.first.size());
        if (isNew) {
            groups.first.push_back(row);
            groups.count.push_back(0);
        }
        groups.of.push_back(at->second);
        groups.count[at->second] += 1;
    }
    plots.table = trials::rowsOf(table, groups.first);
    plots.table.response = meansOf(table.response, groups);
    for (trials::Covariate& covariate : plots.table.covariates) {
        covariate.values = meansOf(table.covariate(covariate.name)->values, groups);
    }
    std::erase_if(plots.table.factors, [name](const Factor& factor) {
        return factor.name != kAccessionFactor && factor.name != name;
    });
    for (const double count : groups.count) {
        plots.mostVines = std::max(plots.mostVines, static_cast<std::size_t>(count));
    }
    plots.plotOf = std::move(groups.of);
    return plots;
}

std::vector<std::vector<double>> groupsOf(const TrialTable& table, std::string_view factor) {
    const Factor& of = *table.factor(factor);
    std::vector<std::vector<double>> groups(of.levels.size());
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (of.of[row] != kNoLevel && std::isfinite(table.response[row])) {
            groups[of.of[row]].push_back(table.response[row]);
        }
    }
    return groups;
}

} // namespace bullace::season
