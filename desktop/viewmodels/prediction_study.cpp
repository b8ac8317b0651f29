// Predictions of accessions from all seasons by a mixed model: what each is worth, how sure that
// is, what varies, and whether one descriptor goes with another.
#include "desk/breeding_views.hpp"
#include "desk/prediction_shown.hpp"
#include "desk/study_remarks.hpp"
#include "desk/trial_choices.hpp"

#include "core/breeding/related.hpp"
#include "core/season/station_pedigree.hpp"
#include "core/season/station_prediction.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using season::PlaceTerm;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(PredictionStudy)
};

const QString kWhat = QStringLiteral("what");
const QString kShown = QStringLiteral("shown");
const QString kPlace = QStringLiteral("place");
const QString kKin = QStringLiteral("kin");
const QString kOther = QStringLiteral("other");
const QString kNone = QStringLiteral("-");
const QString kPredictions = QStringLiteral("predictions");
const QString kVariances = QStringLiteral("variances");
const QString kCorrelations = QStringLiteral("correlations");
const QString kPedigree = QStringLiteral("pedigree");

// Beyond these, terms are not tested, which needs another fit for each, and heritability, which
// needs every accession as a fixed effect, is not computed: both would take minutes.
constexpr std::size_t kMostTested = 20'000;
constexpr std::size_t kMostHeritable = 1'000;

PlaceTerm placeOf(const QString& key) {
    return key == QStringLiteral("rows")         ? PlaceTerm::Rows
           : key == QStringLiteral("replicates") ? PlaceTerm::Replicates
           : key == QStringLiteral("surface")    ? PlaceTerm::Surface
                                                 : PlaceTerm::Blocks;
}

// A surface only where one block is looked at.
ChoiceGroup placeChoice(const season::StationTrial& trial) {
    ChoiceGroup group{kPlace, Tr::tr("What takes out the place"), false, {}};
    group.lines = {{QStringLiteral("blocks"), Tr::tr("blocks")},
                   {QStringLiteral("rows"), Tr::tr("rows")}};
    if (!trial.table.factor(season::kReplicateFactor)->levels.empty()) {
        group.lines.push_back({QStringLiteral("replicates"), Tr::tr("replicates")});
    }
    if (trial.table.factor(season::kBlockFactor)->levels.size() == 1) {
        group.lines.push_back({QStringLiteral("surface"), Tr::tr("a smooth surface")});
    }
    return group;
}

ChoiceGroup shownChoice() {
    return {kShown,
            Tr::tr("Shown"),
            false,
            {{kPredictions, Tr::tr("predictions")},
             {kVariances, Tr::tr("what varies")},
             {kCorrelations, Tr::tr("correlations")}}};
}

class PredictionView : public StudyView {
public:
    QString key() const override { return QStringLiteral("predictions"); }
    QString title() const override { return Tr::tr("Predictions"); }
    QString help() const override {
        return Tr::tr(
            "What each accession is worth in one descriptor, from all seasons and places together. "
            "A prediction lies nearer to the general mean than the accession's own mean, the more "
            "so the fewer its records: reliability says how much of it is the accession's own. "
            "Through the pedigree relatives lend each other information, and accessions without "
            "records are predicted from their parents. Choose one block, and a smooth surface can "
            "take out its trends.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        std::vector<ChoiceGroup> groups{shownChoice()};
        settleChoice(chosen, groups.front());
        const std::vector<ChoiceGroup> common = trialChoices(ground, chosen);
        groups.insert(groups.end(), common.begin(), common.end());
        groups.push_back(placeChoice(chosenTrial(ground, chosen)));
        settleChoice(chosen, groups.back());
        groups.push_back(
            {kKin,
             Tr::tr("Accessions"),
             false,
             {{kNone, Tr::tr("each by itself")}, {kPedigree, Tr::tr("through the pedigree")}}});
        settleChoice(chosen, groups.back());
        if (chosen[kShown] == kCorrelations) {
            ChoiceGroup other{kOther, Tr::tr("Correlated with"), false, common.front().lines};
            std::erase_if(other.lines,
                          [&chosen](const ChoiceLine& line) { return line.key == chosen[kWhat]; });
            settleChoice(chosen, other);
            groups.push_back(std::move(other));
        }
        return groups;
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const auto tried = triedOf(ground, chosen.at(kWhat));
        const season::StationTrial trial = chosenTrial(ground, chosen);
        if (!tried || trial.table.rows() == 0) {
            study.words = Tr::tr("Nothing has been counted or measured yet.");
            tellTrial(trial, study);
            return study;
        }
        study.title = (chosen.at(kShown) == kVariances
                           ? Tr::tr("%1, what varies, %2", "a descriptor and its seasons")
                           : Tr::tr("%1, predictions from %2", "a descriptor and its seasons"))
                          .arg(tried->title, seasonWords(trial));
        study.tableName = study.title;
        const auto wish = wishOf(ground, chosen);
        if (!wish) {
            study.words = quick::errorWords(wish.error());
            return study;
        }
        if (chosen.at(kShown) == kCorrelations) {
            correlate(ground, chosen, *wish, study);
        } else {
            predict({ground, *tried, trial}, *wish, chosen.at(kShown) == kVariances, study);
        }
        tellTrial(trial, study);
        return study;
    }

private:
    static Result<season::PredictionWish> wishOf(const StudyGround& ground, const Chosen& chosen) {
        season::PredictionWish wish{placeOf(chosen.at(kPlace)), {}};
        if (chosen.at(kKin) == kPedigree) {
            const auto pedigree = season::pedigreeOf(ground.notes);
            if (!pedigree) {
                return pedigree.error();
            }
            wish.related = breeding::relatedThrough(*pedigree);
        }
        return wish;
    }

    static void predict(ShownPrediction shown,
                        const season::PredictionWish& wish,
                        bool areVariances,
                        Study& study) {
        const auto model = season::predictionModel(shown.trial, wish);
        if (!model) {
            study.words = quick::errorWords(model.error());
            return;
        }
        addRemarks(model->remarks, study.remarks);
        trials::MixedOptions options;
        const bool isInDetail = areVariances && model->table.rows() <= kMostTested;
        options.hasDegreesOfFreedom = isInDetail;
        options.hasTestsOfRandomTerms = isInDetail;
        if (areVariances && !isInDetail) {
            study.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "With more than %1 records the terms are not tested, and errors "
                                  "of variances come from the average information."),
                 {static_cast<std::int64_t>(kMostTested)}});
        }
        auto fit = trials::fitMixed(model->table, model->spec, options);
        if (!fit) {
            study.words = quick::errorWords(fit.error());
            return;
        }
        shown.fit = std::move(*fit);
        addRemarks(shown.fit.remarks, study.remarks);
        study.method = methodWords(wish);
        if (!areVariances) {
            showPredictions(shown, study);
            return;
        }
        const bool canBeHeritable =
            wish.related == nullptr && model->spec.smooth.empty() &&
            shown.trial.table.factor(season::kAccessionFactor)->levels.size() <= kMostHeritable;
        if (!canBeHeritable) {
            study.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "Heritability is not given: through the pedigree, beside a "
                                  "surface, or of more than %1 accessions."),
                 {static_cast<std::int64_t>(kMostHeritable)}});
        } else {
            auto heritable = trials::heritability(
                model->table, model->spec, shown.fit, season::kAccessionFactor);
            shown.heritability = heritable ? std::optional(std::move(*heritable)) : std::nullopt;
        }
        showVariances(shown, study);
    }

    static void correlate(const StudyGround& ground,
                          const Chosen& chosen,
                          const season::PredictionWish& wish,
                          Study& study) {
        const auto one = triedOf(ground, chosen.at(kWhat));
        const auto two = triedOf(ground, chosen.at(kOther));
        if (!one || !two) {
            study.words = Tr::tr("There is no second descriptor to correlate with.");
            return;
        }
        study.title = Tr::tr("%1 and %2", "two descriptors").arg(one->title, two->title);
        study.tableName = study.title;
        season::TrialOfBoth both = season::trialOfBoth(
            ground.notes, ground.catalogue->blocks(), trialQuestion(chosen), two->code);
        both.trial.table.responseName = toText(one->title);
        toShownUnit(*one, both.trial.table.response);
        toShownUnit(*two, both.other);
        season::PredictionWish places = wish;
        if (places.place == PlaceTerm::Surface) {
            places.place = PlaceTerm::Rows;
            study.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "A correlation takes no surface: rows stand in its place."),
                 {}});
        }
        const auto model = season::predictionModel(both.trial, places);
        if (!model) {
            study.words = quick::errorWords(model.error());
            return;
        }
        addRemarks(model->remarks, study.remarks);
        const auto correlated =
            trials::correlateDescriptors(model->table, toText(two->title), both.other, model->spec);
        if (!correlated) {
            study.words = quick::errorWords(correlated.error());
            return;
        }
        addRemarks(correlated->remarks, study.remarks);
        study.method = Tr::tr("A mixed model of both descriptors by restricted maximum likelihood; "
                              "standard errors by the delta method.");
        showCorrelation({ground, *one, *two, both, *correlated}, study);
    }

    static QString methodWords(const season::PredictionWish& wish) {
        return wish.related != nullptr
                   ? Tr::tr("A mixed model by restricted maximum likelihood: seasons fixed, "
                            "accessions random and related through the pedigree, with places and "
                            "interactions; predictions with their prediction error.")
                   : Tr::tr("A mixed model by restricted maximum likelihood: seasons fixed, "
                            "accessions random, with places and interactions; predictions with "
                            "their prediction error.");
    }
};

} // namespace

std::unique_ptr<StudyView> makePredictionView() {
    return std::make_unique<PredictionView>();
}

} // namespace bullace::desk
