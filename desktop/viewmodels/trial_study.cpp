// A trial read whole: analysis of variance, adjusted means with letters for what differs, and the
// residuals over the block.
#include "desk/breeding_views.hpp"
#include "desk/study_remarks.hpp"
#include "desk/trial_choices.hpp"
#include "desk/trial_shown.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace bullace::desk {

using quick::fromText;
using quick::toText;
using season::TrialRepeat;
using trials::Scale;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(TrialStudy)
};

const QString kShown = QStringLiteral("shown");
const QString kRepeats = QStringLiteral("repeats");
const QString kScale = QStringLiteral("scale");
const QString kReference = QStringLiteral("reference");
const QString kNone = QStringLiteral("-");
const QString kMeans = QStringLiteral("means");
const QString kVariance = QStringLiteral("variance");
const QString kResiduals = QStringLiteral("residuals");

struct RepeatLine {
    TrialRepeat repeat;
    const char* key;
};
constexpr RepeatLine kRepeatLines[] = {{TrialRepeat::Replicates, "replicates"},
                                       {TrialRepeat::Blocks, "blocks"},
                                       {TrialRepeat::Rows, "rows"},
                                       {TrialRepeat::Vines, "vines"}};

QString repeatWords(TrialRepeat repeat) {
    switch (repeat) {
    case TrialRepeat::Replicates:
        return Tr::tr("replicates");
    case TrialRepeat::Blocks:
        return Tr::tr("blocks");
    case TrialRepeat::Rows:
        return Tr::tr("rows");
    case TrialRepeat::Vines:
        return Tr::tr("single vines");
    }
    return {};
}

const QString kLikely = QStringLiteral("likely");

TrialRepeat repeatOf(const Chosen& chosen, const season::StationTrial& trial) {
    for (const RepeatLine& line : kRepeatLines) {
        if (chosen.at(kRepeats) == QLatin1String(line.key)) {
            return line.repeat;
        }
    }
    return season::likelyRepeat(trial);
}

// Replicates only where the records lie in some.
ChoiceGroup repeatChoice(const season::StationTrial& trial) {
    ChoiceGroup group{kRepeats, Tr::tr("What repeats"), false, {}};
    group.lines.push_back(
        {kLikely,
         Tr::tr("as they stand: %1", "vines").arg(repeatWords(season::likelyRepeat(trial)))});
    for (const RepeatLine& line : kRepeatLines) {
        const char* name = season::factorOf(line.repeat);
        const trials::Factor* factor = name == nullptr ? nullptr : trial.table.factor(name);
        if (name == nullptr || (factor != nullptr && factor->levels.size() > 1)) {
            group.lines.push_back({QLatin1String(line.key), repeatWords(line.repeat)});
        }
    }
    return group;
}

ChoiceGroup scaleChoice(trials::ResponseKind kind) {
    ChoiceGroup group{kScale, Tr::tr("Scale"), false, {}};
    const auto add = [&group](Scale scale, const QString& words) {
        group.lines.push_back({fromText(trials::nameOf(scale)), words});
    };
    add(Scale::AsItIs, Tr::tr("as it is"));
    if (kind == trials::ResponseKind::Percentage) {
        add(Scale::Logit, Tr::tr("logit of the percentage"));
    } else {
        add(Scale::SquareRoot, Tr::tr("square root"));
        add(Scale::Logarithm, Tr::tr("logarithm"));
    }
    add(Scale::NormalScores, Tr::tr("normal scores of the ranks"));
    return group;
}

ChoiceGroup referenceChoice(const StudyGround& ground, const season::StationTrial& trial) {
    ChoiceGroup group{kReference, Tr::tr("Reference"), false, {}};
    group.lines.push_back({kNone, Tr::tr("none", "a reference")});
    for (const std::string& id : trial.table.factor(season::kAccessionFactor)->levels) {
        group.lines.push_back({fromText(id), accessionWords(ground, id)});
    }
    return group;
}

class TrialView : public StudyView {
public:
    QString key() const override { return QStringLiteral("trials"); }
    QString title() const override { return Tr::tr("Trials"); }
    QString help() const override {
        return Tr::tr(
            "One descriptor as a trial: which accessions differ, by how much, and whether the "
            "trial can tell. What repeats is what makes the error: blocks, rows or the replicates "
            "of a planting plan, in which the vines of one accession are one plot, or each vine by "
            "itself. Letters: accessions that share one do not differ by Tukey's test. With a "
            "reference, each is compared with it by Dunnett's. The residuals over the block show "
            "whether the blocks took out what the place does: large ones that lie together say "
            "that they did not.");
    }
    std::vector<StudyAction> actions() const override {
        return {{QStringLiteral("planting-plan"), Tr::tr("Plan a planting"), QStringLiteral("L")}};
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        ChoiceGroup shown{kShown, Tr::tr("Shown"), false, {}};
        shown.lines = {{kMeans, Tr::tr("adjusted means")},
                       {kVariance, Tr::tr("analysis of variance")},
                       {kResiduals, Tr::tr("residuals over the block")}};
        settleChoice(chosen, shown);
        std::vector<ChoiceGroup> groups = trialChoices(ground, chosen);
        groups.insert(groups.begin(), shown);
        const season::StationTrial trial = chosenTrial(ground, chosen);
        const auto tried = triedOf(ground, chosen[QStringLiteral("what")]);
        groups.push_back(repeatChoice(trial));
        groups.push_back(scaleChoice(tried ? tried->kind : trials::ResponseKind::Measurement));
        groups.push_back(referenceChoice(ground, trial));
        for (std::size_t i = groups.size() - 3; i < groups.size(); ++i) {
            settleChoice(chosen, groups[i]);
        }
        return groups;
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const auto tried = triedOf(ground, chosen.at(QStringLiteral("what")));
        const season::StationTrial all = chosenTrial(ground, chosen);
        if (!tried || all.table.rows() == 0) {
            study.words = Tr::tr("Nothing has been counted or measured yet.");
            tellTrial(all, study);
            return study;
        }
        study.title =
            Tr::tr("%1, %2", "a descriptor and its seasons").arg(tried->title, seasonWords(all));
        study.tableName = study.title;
        ShownTrial trial{ground, *tried, season::eachVineOnce(all), {}, {}, {}, {}, {}, {}};
        trial.repeat = repeatOf(chosen, trial.vines);
        trial.plots = season::plotsOf(trial.vines, trial.repeat);
        trial.reference = chosen.at(kReference) == kNone ? QString() : chosen.at(kReference);
        trial.values = all.values;
        analyse(chosen, trial, study);
        tellTrial(trial.vines, study);
        return study;
    }

private:
    static void analyse(const Chosen& chosen, ShownTrial& trial, Study& study) {
        const Scale scale = trials::scaleOf(toText(chosen.at(kScale))).value_or(Scale::AsItIs);
        auto scaled = trials::ScaledResponse::of(trial.plots.table.response, scale);
        if (!scaled) {
            study.words = quick::errorWords(scaled.error());
            return;
        }
        trials::TrialTable table = trial.plots.table;
        table.response = scaled->values();
        trials::TrialPlan plan{{season::kAccessionFactor}, {}, {}};
        if (const char* factor = season::factorOf(trial.repeat)) {
            plan.blocks.push_back(factor);
        }
        if (!trial.reference.isEmpty()) {
            plan.reference = toText(trial.reference);
        }
        auto analysis = trials::analyseTrial(table, plan);
        if (!analysis) {
            study.words = quick::errorWords(analysis.error());
            return;
        }
        trial.scaled = std::move(*scaled);
        trial.analysis = std::move(*analysis);
        study.words = answerWords(trial);
        study.method = methodWords(trial);
        tellAnalysis(trial, study);
        tellScale(trial, scale, study);
        const QString shown = chosen.at(kShown);
        shown == kVariance    ? showVariance(trial, study)
        : shown == kResiduals ? showResiduals(trial, study)
                              : showMeans(trial, study);
    }

    static void tellScale(const ShownTrial& trial, Scale scale, Study& study) {
        const auto groups = season::groupsOf(trial.plots.table, season::kAccessionFactor);
        const trials::ScaleAdvice advice = trials::adviseScale(groups, trial.tried.kind);
        addRemarks(trial.scaled.remarks(), study.remarks);
        study.remarks.push_back(advice.reason);
        if (advice.scale != scale) {
            study.remarks.push_back(
                {BULLACE_SENTENCE("Remark",
                                  "The records speak for another scale than the chosen "
                                  "one; the list of scales has it."),
                 {}});
        }
    }

    static QString answerWords(const ShownTrial& trial) {
        const trials::VarianceLine* line = lineOf(trial, season::kAccessionFactor);
        const int accessions =
            static_cast<int>(trial.analysis.treatments.front().means.levels.size());
        if (line == nullptr || !line->p) {
            return Tr::tr(
                "%n accession(s); the trial cannot tell whether they differ.", nullptr, accessions);
        }
        constexpr double kChance = 0.05;
        const QString f = numberText(*line->f, 2);
        const QString p = chanceText(line->p);
        return *line->p < kChance
                   ? Tr::tr("%n accession(s); they differ: F %1, p %2.", nullptr, accessions)
                         .arg(f, p)
                   : Tr::tr("%n accession(s); no difference is beyond doubt: F %1, p %2.",
                            nullptr,
                            accessions)
                         .arg(f, p);
    }

    static QString methodWords(const ShownTrial& trial) {
        switch (trial.repeat) {
        case TrialRepeat::Vines:
            return Tr::tr("One-way analysis of variance; each vine is a replicate. Vines side by "
                          "side share their soil, so that differences look more certain than they "
                          "are. Least-squares means, Tukey's and Dunnett's tests at 5 %.");
        case TrialRepeat::Blocks:
            return Tr::tr("Analysis of variance with blocks of the vineyard as replicates, on the "
                          "mean of an accession's vines in each. Least-squares means, Tukey's and "
                          "Dunnett's tests at 5 %.");
        case TrialRepeat::Rows:
            return Tr::tr("Analysis of variance with rows as replicates, on the mean of an "
                          "accession's vines in each. Least-squares means, Tukey's and Dunnett's "
                          "tests at 5 %.");
        case TrialRepeat::Replicates:
            return Tr::tr("Analysis of variance with the replicates of the planting plan, on the "
                          "mean of an accession's vines in each. Least-squares means, Tukey's and "
                          "Dunnett's tests at 5 %.");
        }
        return {};
    }
};

} // namespace

std::unique_ptr<StudyView> makeTrialView() {
    return std::make_unique<TrialView>();
}

} // namespace bullace::desk
