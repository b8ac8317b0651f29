// How people agree: values that two people noted of the same vine on the same day, before anybody
// settled them, and blind repeats. Nobody is ranked.
#include "desk/study_views.hpp"

#include "core/statistics/agreement.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <map>

namespace bullace::desk {

using descriptors::DescriptorKind;
using quick::fromText;
using quick::toText;
using season::PersonNote;

namespace {

// Below these a common exercise is called for before the next round: kappa, substantial from 0.61
// on (Landis & Koch 1977, Biometrics 33:159-174); intraclass correlation, good from 0.75 on (Koo &
// Li 2016, J. Chiropr. Med. 15:155-163).
constexpr double kGoodKappa = 0.61;
constexpr double kGoodIntraclass = 0.75;
constexpr std::size_t kFewestPairs = 10; // before anything is said (common practice, no source)

const QString kAll = QStringLiteral("!all"); // no descriptor is called so

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(PeopleStudy)
};

bool isScored(const vineyard::Asked& asked) {
    return asked.known.kind == DescriptorKind::Score || asked.known.kind == DescriptorKind::Stage ||
           asked.known.kind == DescriptorKind::Code;
}

using TwoPeople = std::pair<std::uint32_t, std::uint32_t>;
using PairsOf = std::map<TwoPeople, std::vector<statistics::Pair>>;

// Notes of one vine on one day stand together.
template<typename Each>
void eachThing(const std::vector<PersonNote>& notes, Each each) {
    std::size_t begin = 0;
    for (std::size_t at = 1; at <= notes.size(); ++at) {
        if (at == notes.size() || notes[at].vine != notes[begin].vine ||
            notes[at].day != notes[begin].day) {
            each(std::span(notes).subspan(begin, at - begin));
            begin = at;
        }
    }
}

// Stages lie as far apart as their steps.
std::vector<PersonNote> onScale(const std::vector<PersonNote>& notes,
                                const vineyard::Asked& asked) {
    std::vector<PersonNote> scaled = notes;
    for (PersonNote& note : scaled) {
        note.value = vineyard::onItsScale(asked.known, note.value);
    }
    return scaled;
}

// The person whose code comes first in the alphabet is the first of each pair.
PairsOf pairsOf(const std::vector<PersonNote>& notes, const std::vector<std::string>& codes) {
    PairsOf pairs;
    eachThing(notes, [&pairs, &codes](std::span<const PersonNote> thing) {
        for (std::size_t i = 0; i < thing.size(); ++i) {
            for (std::size_t j = i + 1; j < thing.size(); ++j) {
                const bool isFirst = codes[thing[i].author] < codes[thing[j].author];
                const PersonNote& one = isFirst ? thing[i] : thing[j];
                const PersonNote& other = isFirst ? thing[j] : thing[i];
                if (one.author != other.author) {
                    pairs[{one.author, other.author}].push_back({one.value, other.value});
                }
            }
        }
    });
    return pairs;
}

// One number for how two people agree, and whether it is good.
struct Agreement {
    std::optional<statistics::Estimate> value;
    bool isGood = false;
};

Agreement agreementOf(const std::vector<statistics::Pair>& pairs, bool isScored) {
    Agreement agreement;
    if (isScored) {
        agreement.value = kappaOf(pairs, statistics::KappaWeights::Squared).kappa;
        agreement.isGood = agreement.value && agreement.value->value >= kGoodKappa;
        return agreement;
    }
    std::vector<std::vector<double>> rows;
    for (const statistics::Pair& pair : pairs) {
        rows.push_back({pair.one, pair.other});
    }
    const auto intraclass = statistics::intraclassOf(rows);
    agreement.value = intraclass ? intraclass->icc : std::nullopt;
    agreement.isGood = agreement.value && agreement.value->value >= kGoodIntraclass;
    return agreement;
}

class PeopleView : public StudyView {
public:
    QString key() const override { return QStringLiteral("people"); }
    QString title() const override { return Tr::tr("How people agree"); }
    QString help() const override {
        return Tr::tr("Of one descriptor: each pair of people who noted the same vines on the same "
                      "days, by themselves. Scores are compared by a kappa with squared weights, "
                      "measures by the intraclass correlation; the picture shows differences "
                      "against means, with the limits within which 19 of 20 differences lie. A "
                      "person's own figures belong to that person first; they are no ranking, and "
                      "stand here in the order of the alphabet.");
    }

    std::vector<ChoiceGroup> choices(const StudyGround& ground, Chosen& chosen) const override {
        ChoiceGroup what{QStringLiteral("what"), Tr::tr("What"), false, {}};
        for (const vineyard::Asked* asked : ground.catalogue->descriptors()) {
            if (!ground.notes.notesOf(asked->known.code).people.empty()) {
                what.lines.push_back({fromText(asked->known.code), quick::titleWords(*asked)});
            }
        }
        if (!what.lines.empty()) {
            what.lines.push_back({kAll, Tr::tr("All descriptors")});
        }
        settleChoice(chosen, what);
        return {what};
    }

    Study make(const StudyGround& ground, const Chosen& chosen) const override {
        Study study;
        study.title = title();
        study.tableName = title();
        const std::string code = toText(chosen.at(QStringLiteral("what")));
        if (chosen.at(QStringLiteral("what")) == kAll) {
            addDescriptors(ground, study);
            return study;
        }
        const vineyard::Asked* asked = ground.catalogue->descriptor(code);
        if (asked == nullptr) {
            study.words = Tr::tr("No vine has been noted by two people on one day yet.");
            return study;
        }
        study.title = Tr::tr("How people agree: %1").arg(quick::titleWords(*asked));
        const auto notes = onScale(ground.notes.notesOf(code).people, *asked);
        const PairsOf pairs = pairsOf(notes, ground.notes.words);
        addPairs(ground, pairs, *asked, study);
        addPeople(ground, notes, *asked, study);
        addPlot(ground, pairs, *asked, study);
        study.method =
            isScored(*asked)
                ? Tr::tr("Kappa with squared weights (Cohen 1968); limits of agreement (Bland & "
                         "Altman 1986); people as a random effect, variances by REML.")
                : Tr::tr("Intraclass correlation ICC(2,1) (Shrout & Fleiss 1979); limits of "
                         "agreement (Bland & Altman 1986); people as a random effect, variances by "
                         "REML.");
        study.cautions << Tr::tr("These figures are for a common exercise before the next round, "
                                 "and for each person alone; not for comparing people.");
        return study;
    }

private:
    static int decimalsOf(const vineyard::Asked& asked) {
        return std::max(1, asked.known.decimals + 1);
    }

    static void addPairs(const StudyGround& ground,
                         const PairsOf& pairs,
                         const vineyard::Asked& asked,
                         Study& study) {
        study.columns = {{Tr::tr("People"), 14, false, true},
                         {Tr::tr("Vines"), 6, true},
                         {Tr::tr("Equal"), 6, true},
                         {Tr::tr("Agreement (95 %)"), 20, true},
                         {Tr::tr("Mean difference (95 %)"), 22, true},
                         {Tr::tr("Limits of agreement"), 18, true}};
        const int decimals = decimalsOf(asked);
        std::size_t poor = 0;
        for (const auto& [people, values] : pairs) {
            const Agreement agreement = agreementOf(values, isScored(asked));
            const auto difference = statistics::differenceOf(values);
            const auto equal = std::ranges::count_if(
                values, [](const statistics::Pair& pair) { return pair.one == pair.other; });
            poor += values.size() >= kFewestPairs && agreement.value && !agreement.isGood ? 1U : 0U;
            GridRow row;
            row.cells << pairWords(ground, people) << QString::number(values.size())
                      << QString::number(equal)
                      << (agreement.value ? estimateText(*agreement.value, 2) : QString())
                      << estimateText({difference->mean, {}, difference->meanInterval}, decimals)
                      << (difference->limits ? intervalText(*difference->limits, decimals)
                                             : QString());
            study.rows.push_back(std::move(row));
        }
        study.words =
            poor > 0 ? Tr::tr("A common exercise before the next round would help: %n pair(s) of "
                              "people agree less than is good.",
                              nullptr,
                              static_cast<int>(poor))
                     : Tr::tr("%n pair(s) of people noted the same vines.",
                              nullptr,
                              static_cast<int>(pairs.size()));
    }

    // Which descriptors a common exercise is called for, each by its pair of people that agrees
    // least.
    static void addDescriptors(const StudyGround& ground, Study& study) {
        study.title = Tr::tr("Where a common exercise would help");
        study.tableName = study.title;
        study.columns = {{Tr::tr("What"), 22, false, true},
                         {Tr::tr("Pairs of people"), 8, true},
                         {Tr::tr("Vines"), 6, true},
                         {Tr::tr("Least agreement (95 %)"), 22, true},
                         {Tr::tr("Exercise"), 12}};
        int wanted = 0;
        for (const vineyard::Asked* asked : ground.catalogue->descriptors()) {
            const season::DescriptorNotes& of = ground.notes.notesOf(asked->known.code);
            if (!of.people.empty()) {
                wanted += addDescriptor(ground, *asked, onScale(of.people, *asked), study);
            }
        }
        study.words = Tr::tr("A common exercise before the next round would help with %n "
                             "descriptor(s).",
                             nullptr,
                             wanted);
        study.method = Tr::tr("Scores: kappa with squared weights, good from 0.61 on (Landis & "
                              "Koch 1977). Measures: intraclass correlation, good from 0.75 on "
                              "(Koo & Li 2016). Nothing is said of fewer than ten vines.");
    }

    // 1 where an exercise is called for.
    static int addDescriptor(const StudyGround& ground,
                             const vineyard::Asked& asked,
                             const std::vector<PersonNote>& notes,
                             Study& study) {
        const PairsOf pairs = pairsOf(notes, ground.notes.words);
        Agreement least;
        std::size_t vines = 0;
        bool isEnough = false;
        for (const auto& [people, values] : pairs) {
            vines += values.size();
            const Agreement agreement = agreementOf(values, isScored(asked));
            if (values.size() < kFewestPairs || !agreement.value) {
                continue;
            }
            isEnough = true;
            if (!least.value || agreement.value->value < least.value->value) {
                least = agreement;
            }
        }
        const bool isWanted = isEnough && !least.isGood;
        GridRow row;
        row.isStrong = isWanted;
        row.cells << quick::titleWords(asked) << QString::number(pairs.size())
                  << QString::number(vines)
                  << (least.value ? estimateText(*least.value, 2) : QString())
                  << (!isEnough  ? Tr::tr("too few vines")
                      : isWanted ? Tr::tr("would help")
                                 : Tr::tr("not needed"));
        study.rows.push_back(std::move(row));
        return isWanted ? 1 : 0;
    }

    // Of all people together, and the own figures of the one who sits at the desk.
    static void addPeople(const StudyGround& ground,
                          const std::vector<PersonNote>& notes,
                          const vineyard::Asked& asked,
                          Study& study) {
        std::map<std::uint32_t, std::size_t> people;
        for (const PersonNote& note : notes) {
            people.emplace(note.author, people.size());
        }
        std::vector<statistics::Reading> readings;
        std::size_t thing = 0;
        eachThing(notes, [&](std::span<const PersonNote> of) {
            for (const PersonNote& note : of) {
                readings.push_back({thing, people[note.author], note.value});
            }
            ++thing;
        });
        const auto model = statistics::observerModel(readings, people.size());
        if (!model) {
            return;
        }
        const int decimals = decimalsOf(asked);
        study.remarks.insert(study.remarks.end(), model->remarks.begin(), model->remarks.end());
        if (model->observerSd && model->readingSd) {
            study.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                      "People differ with a standard deviation of "
                                                      "%1; what is left of single values has %2, "
                                                      "from %3 vines noted by two people or more."),
                                     {Remark::Number{*model->observerSd, decimals},
                                      Remark::Number{*model->readingSd, decimals},
                                      static_cast<std::int64_t>(model->things)}});
        }
        for (const auto& [author, index] : people) {
            const statistics::ObserverEffect& own = model->observers[index];
            if (ground.notes.words[author] == ground.author && own.bias && own.spread) {
                study.remarks.push_back(
                    {BULLACE_SENTENCE("Remark",
                                      "Your own values lie %1 above (below with a minus) those of "
                                      "all (95 %: %2 to %3), and spread by %4, from %5 vines."),
                     {Remark::Number{own.bias->value, decimals},
                      Remark::Number{own.bias->interval->low, decimals},
                      Remark::Number{own.bias->interval->high, decimals},
                      Remark::Number{*own.spread, decimals},
                      static_cast<std::int64_t>(own.readings)}});
            }
        }
    }

    static QString pairWords(const StudyGround& ground, const TwoPeople& people) {
        return Tr::tr("%1 and %2")
            .arg(fromText(ground.notes.words[people.first]),
                 fromText(ground.notes.words[people.second]));
    }

    static void addPlot(const StudyGround& ground,
                        const PairsOf& pairs,
                        const vineyard::Asked& asked,
                        Study& study) {
        report::Plot plot;
        plot.title = toText(study.title);
        const std::string unit(asked.known.unit);
        plot.x.title = toText(Tr::tr("Mean of both values"));
        plot.x.unit = unit;
        plot.y.title = toText(Tr::tr("Difference"));
        plot.y.unit = unit;
        std::vector<statistics::Pair> all;
        for (const auto& [people, values] : pairs) {
            report::PlotSeries series;
            series.name = toText(pairWords(ground, people));
            for (const statistics::Pair& pair : values) {
                report::PlotPoint point;
                point.x = (pair.one + pair.other) / 2;
                point.y = pair.one - pair.other;
                point.label = series.name;
                series.points.push_back(std::move(point));
                all.push_back(pair);
            }
            plot.series.push_back(std::move(series));
        }
        const auto difference = statistics::differenceOf(all);
        if (!difference) {
            return;
        }
        plot.marks.push_back({difference->mean, toText(Tr::tr("mean")), true});
        if (difference->limits) {
            plot.marks.push_back({difference->limits->low, toText(Tr::tr("lower limit")), true});
            plot.marks.push_back({difference->limits->high, toText(Tr::tr("upper limit")), true});
        }
        plot.notes.count = all.size();
        plot.notes.missing = toText(Tr::tr("Values that were written over another on the screen "
                                           "are left out: they are not independent."));
        study.plot = std::move(plot);
    }
};

} // namespace

std::unique_ptr<StudyView> makePeopleView() {
    return std::make_unique<PeopleView>();
}

} // namespace bullace::desk
