#include "desk/trial_choices.hpp"

#include "desk/study_remarks.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace bullace::desk {

using descriptors::DescriptorKind;
using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(TrialChoices)
};

const QString kWhat = QStringLiteral("what");
const QString kSeasons = QStringLiteral("seasons");
const QString kBlocks = QStringLiteral("blocks");

// Numbers, and records that give one.
bool isOfNumbers(DescriptorKind kind) {
    return kind == DescriptorKind::Count || kind == DescriptorKind::Measure ||
           kind == DescriptorKind::Score || kind == DescriptorKind::Percent ||
           kind == DescriptorKind::Record;
}

trials::ResponseKind kindOf(const vineyard::Asked& asked) {
    switch (asked.known.kind) {
    case DescriptorKind::Count:
        return trials::ResponseKind::Count;
    case DescriptorKind::Score:
        return trials::ResponseKind::Score;
    case DescriptorKind::Percent:
        return trials::ResponseKind::Percentage;
    case DescriptorKind::Record:
        return std::ranges::any_of(asked.known.parts,
                                   [](const auto& part) { return part.name == "dead"; })
                   ? trials::ResponseKind::Percentage
                   : trials::ResponseKind::Measurement;
    default:
        return trials::ResponseKind::Measurement;
    }
}

// What stands there while nobody has chosen; empty where nothing of it was noted.
QString firstOf(const ChoiceGroup& what) {
    for (const char* code : {"yield", "clusters", "berry-weight", "soluble-solids"}) {
        const auto found = std::ranges::find(what.lines, QLatin1String(code), &ChoiceLine::key);
        if (found != what.lines.end()) {
            return found->key;
        }
    }
    return {};
}

// Blocks of the vineyard in which it was noted.
ChoiceGroup blockChoice(const StudyGround& ground, const std::string& code) {
    ChoiceGroup group{kBlocks, Tr::tr("Blocks of the vineyard"), true, {}};
    std::vector<bool> isNoted(ground.notes.vines.size(), false);
    const season::DescriptorNotes& notes = ground.notes.notesOf(code);
    for (const season::NumberNote& note : notes.numbers) {
        isNoted[note.vine] = true;
    }
    for (const season::RecordNote& note : notes.records) {
        if (note.vine != season::kNoVine) {
            isNoted[note.vine] = true;
        }
    }
    std::set<std::string> codes;
    for (std::size_t vine = 0; vine < isNoted.size(); ++vine) {
        const std::string& position = ground.notes.vines[vine].position;
        if (isNoted[vine]) {
            codes.insert(position.substr(0, position.find('-')));
        }
    }
    for (const std::string& block : codes) {
        const vineyard::Block* known = ground.catalogue->block(block);
        const QString name = known == nullptr ? QString() : fromText(known->name);
        group.lines.push_back({fromText(block),
                               name.isEmpty()
                                   ? fromText(block)
                                   : QStringLiteral("%1 %2").arg(fromText(block), name)});
    }
    return group;
}

QString factorWords(const std::string& factor) {
    const std::map<std::string, QString> words{
        {"accession", Tr::tr("accession", "a term of a model")},
        {"season", Tr::tr("season", "a term of a model")},
        {"block", Tr::tr("block", "a term of a model")},
        {"row", Tr::tr("row", "a term of a model")},
        {"replicate", Tr::tr("replicate", "a term of a model")},
        {"vine", Tr::tr("vine", "a term of a model")},
        {"residual", Tr::tr("residual", "what a model leaves")},
        {"Residuals", Tr::tr("residual", "what a model leaves")}};
    const auto found = words.find(factor);
    return found == words.end() ? fromText(factor) : found->second;
}

} // namespace

QString Tried::titleWithUnit() const {
    return unit.empty() ? title : QStringLiteral("%1, %2").arg(title, fromText(unit));
}

std::optional<Tried> triedOf(const StudyGround& ground, const QString& code) {
    const vineyard::Asked* asked = ground.catalogue->descriptor(toText(code));
    if (asked == nullptr) {
        return {};
    }
    Tried tried;
    tried.code = toText(code);
    tried.title = quick::titleWords(*asked);
    tried.kind = kindOf(*asked);
    if (asked->known.kind == DescriptorKind::Record) {
        const bool isShare = tried.kind == trials::ResponseKind::Percentage;
        tried.unit = std::string(isShare ? "%" : "");
        tried.decimals = isShare ? 0 : 1;
        return tried;
    }
    const Unit unit = unitFor(asked->known.unit, ground.units);
    tried.unit = std::string(unit.shown);
    tried.factor = unit.factor;
    tried.zero = unit.zero;
    tried.decimals = shownDecimals(unit, asked->known.decimals);
    return tried;
}

std::vector<ChoiceGroup> trialChoices(const StudyGround& ground, Chosen& chosen) {
    ChoiceGroup what{kWhat, Tr::tr("What"), false, {}};
    for (const vineyard::Asked* asked : ground.catalogue->descriptors()) {
        if (isOfNumbers(asked->known.kind) &&
            season::canBeTried(ground.notes.notesOf(asked->known.code))) {
            what.lines.push_back({fromText(asked->known.code), quick::titleWords(*asked)});
        }
    }
    if (chosen[kWhat].isEmpty()) {
        chosen[kWhat] = firstOf(what);
    }
    settleChoice(chosen, what);
    const std::string code = toText(chosen[kWhat]);
    const std::array<std::string_view, 1> codes{code};
    ChoiceGroup seasons = seasonChoice(season::yearsOf(ground.notes, codes));
    seasons.key = kSeasons;
    seasons.title = Tr::tr("Seasons");
    seasons.isMany = true;
    settleChoice(chosen, seasons);
    ChoiceGroup blocks = blockChoice(ground, code);
    settleChoice(chosen, blocks);
    return {what, seasons, blocks};
}

season::TrialQuestion trialQuestion(const Chosen& chosen) {
    season::TrialQuestion question{toText(chosen.at(kWhat))};
    for (const QString& season : chosen.at(kSeasons).split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        question.seasons.insert(season.toInt());
    }
    for (const QString& block : chosen.at(kBlocks).split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        question.blocks.insert(toText(block));
    }
    return question;
}

season::StationTrial chosenTrial(const StudyGround& ground, const Chosen& chosen) {
    const auto tried = triedOf(ground, chosen.at(kWhat));
    season::StationTrial trial =
        season::trialOf(ground.notes, ground.catalogue->blocks(), trialQuestion(chosen));
    if (tried) {
        toShownUnit(*tried, trial.table.response);
    }
    return trial;
}

void toShownUnit(const Tried& tried, std::vector<double>& values) {
    for (double& value : values) {
        value = value / tried.factor + tried.zero;
    }
}

QString termWords(const std::string& term) {
    QStringList words;
    for (const QString& factor : fromText(term).split(QLatin1Char(':'))) {
        words << factorWords(toText(factor));
    }
    return words.join(QStringLiteral(" × "));
}

QString seasonWords(const season::StationTrial& trial) {
    if (trial.values == 0) {
        return {};
    }
    const int first = season::yearOfDay(trial.firstDay);
    const int last = season::yearOfDay(trial.lastDay);
    return first == last ? QString::number(first)
                         : Tr::tr("%1 to %2", "seasons").arg(first).arg(last);
}

QString accessionWords(const StudyGround& ground, const std::string& id) {
    const auto found = ground.notes.accession(id);
    return fromText(found ? ground.notes.accessions[*found].words : id);
}

QString chanceText(const std::optional<double>& p) {
    constexpr double kLeast = 0.001;
    return !p            ? QString()
           : *p < kLeast ? QStringLiteral("< %1").arg(numberText(kLeast, 3))
                         : numberText(*p, 3);
}

void tellTrial(const season::StationTrial& trial, Study& study) {
    study.openLeft += trial.open;
    study.missedLeft += trial.missed;
    addRemarks(trial.remarks, study.remarks);
}

} // namespace bullace::desk
