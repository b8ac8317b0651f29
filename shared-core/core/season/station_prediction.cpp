#include "core/season/station_prediction.hpp"

#include <algorithm>
#include <string_view>

namespace bullace::season {

using trials::Factor;
using trials::kNoLevel;
using trials::Term;
using trials::TrialTable;

namespace {

// Whether the level of one follows from that of the other in every row.
bool isToldBy(const Factor& one, const Factor& other) {
    std::vector<std::uint32_t> told(other.levels.size(), kNoLevel);
    for (std::size_t row = 0; row < one.of.size(); ++row) {
        if (one.of[row] == kNoLevel || other.of[row] == kNoLevel) {
            continue;
        }
        std::uint32_t& level = told[other.of[row]];
        if (level != kNoLevel && level != one.of[row]) {
            return false;
        }
        level = one.of[row];
    }
    return true;
}

// Random terms that are in the model so far, and what they divide the records into.
class Terms {
public:
    explicit Terms(PredictionModel& model) : model_(model) {
        const Factor* seasons = model.table.factor(kSeasonFactor);
        if (seasons != nullptr && seasons->levels.size() > 1) {
            model.spec.fixed.push_back({kSeasonFactor});
            seasons_ = seasons;
        }
    }
    [[nodiscard]] bool hasSeasons() const { return seasons_ != nullptr; }

    void add(const Term& term, std::string_view whyNot, const char* name = "") {
        std::vector<const Factor*> factors;
        for (const std::string& factor : term) {
            factors.push_back(model_.table.factor(factor));
        }
        Factor levels = trials::combined(factors);
        if (canBeTold(levels)) {
            model_.spec.random.push_back({term, {}, true, {}, name});
            taken_.push_back(std::move(levels));
        } else {
            model_.remarks.push_back({whyNot, {}});
        }
    }
    // The accessions, whatever they are like: they are what is asked for.
    void addAccessions(std::shared_ptr<const trials::Related> related) {
        trials::RandomTerm term{{kAccessionFactor}};
        term.related = std::move(related);
        model_.spec.random.push_back(std::move(term));
        taken_.push_back(*model_.table.factor(kAccessionFactor));
    }

private:
    [[nodiscard]] bool canBeTold(const Factor& levels) const {
        const bool isForEachRow = levels.levels.size() >= model_.table.rows();
        const bool isSeason = seasons_ != nullptr && isToldBy(levels, *seasons_);
        return levels.levels.size() > 1 && !isForEachRow && !isSeason &&
               std::ranges::none_of(taken_, [&levels](const Factor& other) {
                   return isToldBy(levels, other) && isToldBy(other, levels);
               });
    }

    PredictionModel& model_;
    const Factor* seasons_ = nullptr;
    std::vector<Factor> taken_;
};

const char* factorOf(PlaceTerm place) {
    return place == PlaceTerm::Rows         ? kRowFactor
           : place == PlaceTerm::Replicates ? kReplicateFactor
                                            : kBlockFactor;
}

void addPlaces(Terms& terms, PlaceTerm place) {
    const std::string factor = factorOf(place);
    terms.add({factor},
              BULLACE_SENTENCE("Remark",
                               "What the places do by themselves cannot be told here: left out of "
                               "the model."));
    if (terms.hasSeasons()) {
        terms.add({kSeasonFactor, factor},
                  BULLACE_SENTENCE("Remark",
                                   "What the places do in each season cannot be told here: left "
                                   "out of the model."));
    }
}

} // namespace

Result<PredictionModel> predictionModel(const StationTrial& trial, const PredictionWish& wish) {
    PredictionModel model;
    model.table = trial.table;
    Terms terms(model);
    terms.addAccessions(wish.related);
    if (terms.hasSeasons()) {
        terms.add({kAccessionFactor, kSeasonFactor},
                  BULLACE_SENTENCE("Remark",
                                   "What a season does to one accession more than to others cannot "
                                   "be told here: left out of the model."));
        terms.add({kAccessionFactor, kVineFactor}, // a vine is of one accession
                  BULLACE_SENTENCE("Remark",
                                   "What a vine keeps through its seasons cannot be told here: "
                                   "left out of the model."),
                  kVineFactor);
    }
    if (wish.place != PlaceTerm::Surface) {
        addPlaces(terms, wish.place);
        return model;
    }
    auto surface = trials::surfaceOf(trial.table.covariate(kRowNumber)->values,
                                     trial.table.covariate(kPlaceInRow)->values);
    if (!surface) {
        return surface.error();
    }
    trials::addSurface(*surface, model.table, model.spec);
    model.surface = std::move(*surface);
    return model;
}

} // namespace bullace::season
