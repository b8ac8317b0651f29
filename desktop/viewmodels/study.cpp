#include "desk/study.hpp"

#include "quick/trade_words.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <cmath>

namespace bullace::desk {

using quick::fromText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(Study)
};

const QLatin1Char kComma(',');

QString partText(const Remark::Part& part) {
    if (const auto* text = std::get_if<std::string>(&part)) {
        // Core names descriptors by their codes; a person reads their titles.
        const descriptors::Descriptor* known = descriptors::findBuiltIn(*text);
        return quick::tradeWord(known != nullptr ? known->title : std::string_view(*text));
    }
    if (const auto* whole = std::get_if<std::int64_t>(&part)) {
        return QLocale().toString(static_cast<qlonglong>(*whole));
    }
    if (const auto* day = std::get_if<CivilDate>(&part)) {
        return quick::dateWords(*day);
    }
    const Remark::Number number = std::get<Remark::Number>(part);
    return numberText(number.value, number.decimals);
}

} // namespace

bool isChosen(const Chosen& chosen, const ChoiceGroup& group, const QString& line) {
    const auto found = chosen.find(group.key);
    const QString now = found == chosen.end() ? QString() : found->second;
    return group.isMany ? now.isEmpty() || now.split(kComma).contains(line) : now == line;
}

void settleChoice(Chosen& chosen, const ChoiceGroup& group) {
    QString& now = chosen[group.key];
    const auto exists = [&group](const QString& key) {
        return std::ranges::find(group.lines, key, &ChoiceLine::key) != group.lines.end();
    };
    if (!group.isMany) {
        now = exists(now) ? now : group.lines.empty() ? QString() : group.lines.front().key;
        return;
    }
    QStringList kept;
    for (const QString& key : now.split(kComma, Qt::SkipEmptyParts)) {
        if (exists(key)) {
            kept << key;
        }
    }
    now = kept.join(kComma);
}

QString remarkWords(const Remark& remark) {
    QString words = QCoreApplication::translate("Remark", std::string(remark.sentence).c_str());
    // All at once: a part may itself hold "%1".
    QStringList parts;
    for (const Remark::Part& part : remark.parts) {
        parts << partText(part);
    }
    QString said;
    for (qsizetype at = 0; at < words.size(); ++at) {
        const int part = words[at] == QLatin1Char('%') && at + 1 < words.size()
                             ? words[at + 1].digitValue() - 1
                             : -1;
        if (part >= 0 && part < parts.size()) {
            said += parts[part];
            ++at;
        } else {
            said += words[at];
        }
    }
    return said;
}

void tellOf(const QString& accession, const Remark& remark, Study& study) {
    const auto same = std::ranges::find(study.ofSome, remark, &RemarkOfSome::remark);
    RemarkOfSome& told =
        same != study.ofSome.end() ? *same : study.ofSome.emplace_back(RemarkOfSome{{}, remark});
    if (!told.of.contains(accession)) {
        told.of << accession;
    }
}

QString remarkWords(const RemarkOfSome& remark, const Study& study) {
    const bool isOfAll =
        remark.of.size() > 1 && static_cast<std::size_t>(remark.of.size()) == study.rows.size();
    const QString words = remarkWords(remark.remark);
    return isOfAll ? words
                   : QStringLiteral("%1: %2").arg(remark.of.join(QStringLiteral(", ")), words);
}

QString numberText(double value, int decimals) {
    return std::isfinite(value) ? QLocale().toString(roundTo(value, decimals), 'f', decimals)
                                : QString();
}

QString intervalText(const statistics::Interval& interval, int decimals) {
    const bool hasLow = std::isfinite(interval.low);
    const bool hasHigh = std::isfinite(interval.high);
    if (hasLow && hasHigh) {
        return Tr::tr("%1 to %2", "an interval")
            .arg(numberText(interval.low, decimals), numberText(interval.high, decimals));
    }
    return hasLow    ? Tr::tr("%1 or more").arg(numberText(interval.low, decimals))
           : hasHigh ? Tr::tr("%1 or less").arg(numberText(interval.high, decimals))
                     : Tr::tr("without bound");
}

QString estimateText(const statistics::Estimate& estimate, int decimals) {
    const QString value = numberText(estimate.value, decimals);
    return estimate.interval
               ? QStringLiteral("%1 (%2)").arg(value, intervalText(*estimate.interval, decimals))
               : value;
}

ChoiceGroup seasonChoice(const std::vector<int>& seasons) {
    ChoiceGroup group{QStringLiteral("season"), Tr::tr("Season"), false, {}};
    for (const int season : seasons) {
        const QString year = QString::number(season);
        group.lines.push_back({year, year});
    }
    return group;
}

ChoiceGroup accessionChoice(const StudyGround& ground,
                            std::span<const std::string_view> descriptors,
                            bool isMany) {
    std::vector<bool> isNoted(ground.notes.accessions.size(), false);
    for (const std::string_view descriptor : descriptors) {
        const season::DescriptorNotes& notes = ground.notes.notesOf(descriptor);
        for (const season::NumberNote& note : notes.numbers) {
            isNoted[ground.notes.vines[note.vine].accession] = true;
        }
        for (const season::RecordNote& note : notes.records) {
            const auto accession = note.vine != season::kNoVine
                                       ? std::optional(ground.notes.vines[note.vine].accession)
                                       : ground.notes.lots[note.lot].accession;
            if (accession) {
                isNoted[*accession] = true;
            }
        }
    }
    ChoiceGroup group{isMany ? QStringLiteral("accessions") : QStringLiteral("accession"),
                      isMany ? Tr::tr("Accessions") : Tr::tr("Accession"),
                      isMany,
                      {}};
    for (std::size_t i = 0; i < isNoted.size(); ++i) {
        if (isNoted[i]) {
            group.lines.push_back({fromText(ground.notes.accessions[i].id),
                                   fromText(ground.notes.accessions[i].words)});
        }
    }
    std::ranges::sort(group.lines, {}, &ChoiceLine::key);
    return group;
}

void countLeftOut(const season::DescriptorNotes& notes, int season, Study& study) {
    const auto isIn = [season](std::int32_t day) {
        return season == 0 || season::yearOfDay(day) == season;
    };
    for (const season::OpenNote& note : notes.open) {
        study.openLeft += isIn(note.day) ? 1U : 0U;
    }
    for (const season::MissNote& note : notes.missed) {
        study.missedLeft += isIn(note.day) ? 1U : 0U;
    }
}

} // namespace bullace::desk
