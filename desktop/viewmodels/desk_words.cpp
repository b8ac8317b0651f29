#include "desk/desk_words.hpp"

#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"
#include "quick/trade_words.hpp"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>
#include <QTimeZone>

#include <cmath>

namespace bullace::desk {

using journal::Subject;
using journal::SubjectForm;
using quick::fromText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(DeskWords)
};

constexpr std::string_view kLot = "lot:";

QString formWords(SubjectForm form) {
    switch (form) {
    case SubjectForm::Accession:
        return Tr::tr("Accession");
    case SubjectForm::Lot:
        return Tr::tr("Lot");
    case SubjectForm::Cross:
        return Tr::tr("Cross");
    case SubjectForm::Person:
        return Tr::tr("Person");
    case SubjectForm::Round:
        return Tr::tr("Round");
    case SubjectForm::Block:
        return Tr::tr("Block");
    case SubjectForm::Descriptor:
        return Tr::tr("Descriptor");
    case SubjectForm::Weather:
        return Tr::tr("Weather");
    default:
        return {};
    }
}

QString joined(const QStringList& parts) {
    return parts.join(QStringLiteral(" · "));
}

QString instantWords(std::int64_t utcMs, std::int64_t minutes) {
    const QDateTime at =
        QDateTime::fromMSecsSinceEpoch(utcMs, Qt::OffsetFromUTC, static_cast<int>(minutes * 60));
    return QLocale().toString(at.date(), Tr::tr("d MMM yyyy")) + QStringLiteral(", ") +
           at.time().toString(QStringLiteral("HH:mm"));
}

} // namespace

QString placeWordsOf(std::string_view place) {
    if (place.substr(0, kLot.size()) == kLot) {
        return Tr::tr("Lot %1").arg(fromText(place.substr(kLot.size())));
    }
    return quick::placeWords(place);
}

QString descriptorWords(const vineyard::Catalogue& catalogue, std::string_view code) {
    const vineyard::Asked* asked = catalogue.descriptor(code);
    return asked == nullptr ? fromText(code) : quick::titleWords(*asked);
}

QString subjectWords(const vineyard::Catalogue& catalogue, std::string_view text) {
    const Subject subject = journal::readSubject(text);
    switch (subject.form) {
    case SubjectForm::Observation:
        return joined({placeWordsOf(subject.id),
                       descriptorWords(catalogue, subject.descriptor),
                       quick::dateWords(*readDate(subject.date))});
    case SubjectForm::Planting:
        return joined({quick::placeWords(subject.id),
                       Tr::tr("Planting"),
                       quick::dateWords(*readDate(subject.date))});
    case SubjectForm::Rulebook:
        return Tr::tr("Rule %1").arg(fromText(subject.id));
    case SubjectForm::Unknown:
        return fromText(text);
    default:
        return joined({formWords(subject.form) + QLatin1Char(' ') + fromText(subject.id),
                       fromText(subject.field)});
    }
}

QString sayValue(const vineyard::Catalogue& catalogue,
                 std::string_view descriptor,
                 BytesView value,
                 const UnitWishes& wishes) {
    if (value.empty()) {
        return {};
    }
    if (journal::isNullValue(value)) {
        return Tr::tr("taken back");
    }
    const vineyard::Asked* asked = catalogue.descriptor(descriptor);
    if (asked != nullptr) {
        return quick::valueWords(*asked, value, wishes);
    }
    if (const auto text = journal::textOf(value)) {
        return fromText(*text);
    }
    return fromText(journal::valueToJson(value));
}

QString
valueDetail(const vineyard::Catalogue& catalogue, std::string_view descriptor, BytesView value) {
    const vineyard::Asked* asked = catalogue.descriptor(descriptor);
    const auto code = journal::wholeNumberOf(value);
    if (asked == nullptr || !code) {
        return {};
    }
    if (asked->known.kind == descriptors::DescriptorKind::Stage) {
        const auto step = descriptors::stageStep(*code);
        return step ? quick::tradeWord(descriptors::grapevineStages()[*step].words) : QString();
    }
    return {};
}

QString whenWords(const std::optional<journal::Wall>& wall) {
    return wall ? instantWords(wall->ms, wall->minutes) : Tr::tr("no clock");
}

QString whenWords(std::int64_t utcMs, const Clock& clock) {
    return instantWords(utcMs, clock.minutesFromUtc(utcMs));
}

QString ageWords(std::int64_t ms) {
    const auto minutes = static_cast<int>(std::min<std::int64_t>(ms / 60'000, 1'000'000'000));
    if (minutes < 60) {
        return Tr::tr("%n minute(s)", nullptr, std::max(minutes, 0));
    }
    if (minutes < 48 * 60) {
        return Tr::tr("%n hour(s)", nullptr, minutes / 60);
    }
    return Tr::tr("%n day(s)", nullptr, minutes / (24 * 60));
}

QString flowerWords(const std::optional<vineyard::FlowerSex>& sex) {
    if (!sex) {
        return Tr::tr("sex not known", "flowers");
    }
    switch (*sex) {
    case vineyard::FlowerSex::Male:
        return Tr::tr("male", "flowers");
    case vineyard::FlowerSex::Female:
        return Tr::tr("female", "flowers");
    case vineyard::FlowerSex::Perfect:
        return Tr::tr("perfect", "flowers");
    }
    return {};
}

QString personWords(const vineyard::Catalogue& catalogue, std::string_view code) {
    for (const vineyard::Person& person : catalogue.people()) {
        if (person.code == code && !person.name.empty() && person.name != person.code) {
            return Tr::tr("%1 (%2)").arg(fromText(person.name), fromText(person.code));
        }
    }
    return fromText(code);
}

QString causeWords(office::Cause cause) {
    switch (cause) {
    case office::Cause::TwoRulings:
        return Tr::tr("Decided twice, apart");
    case office::Cause::VineState:
        return Tr::tr("One says there is no living vine");
    case office::Cause::Removed:
        return Tr::tr("Taken back by one, kept by another");
    case office::Cause::TenTimes:
        return Tr::tr("One is ten times the other");
    case office::Cause::UnitSlip:
        return Tr::tr("One may be inches, the other millimetres");
    case office::Cause::OnePerson:
        return Tr::tr("The same person, twice on one day");
    case office::Cause::Apart:
        return Tr::tr("Two noted different values");
    case office::Cause::Collection:
        return Tr::tr("The collection, changed twice");
    }
    return {};
}

QString findingKindWords(merge::FindingKind kind) {
    switch (kind) {
    case merge::FindingKind::ShiftedRow:
        return Tr::tr("Values that stand along the row from where they belong");
    case merge::FindingKind::TenTimes:
        return Tr::tr("Ten times, or a tenth of, what fits");
    case merge::FindingKind::InchForMillimetre:
        return Tr::tr("Would fit in another unit");
    case merge::FindingKind::StageBackwards:
        return Tr::tr("A stage behind an earlier day's");
    case merge::FindingKind::OutOfRange:
        return Tr::tr("Outside of what the descriptor takes");
    case merge::FindingKind::FarFromHistory:
        return Tr::tr("Unlike the vine's own history");
    case merge::FindingKind::FarFromNeighbours:
        return Tr::tr("Unlike the vines around it");
    case merge::FindingKind::EmptyPosition:
        return Tr::tr("Noted where no vine stood");
    case merge::FindingKind::FutureDate:
        return Tr::tr("Of a day that has not come");
    case merge::FindingKind::ClockOff:
        return Tr::tr("A clock far from the days that it notes");
    case merge::FindingKind::FarApart:
        return Tr::tr("Two places far apart, within seconds");
    case merge::FindingKind::UnknownSubject:
        return Tr::tr("Of no known form");
    }
    return {};
}

QString ruleWords(const descriptors::Rule& rule) {
    using descriptors::RuleName;
    QString words;
    switch (rule.name) {
    case RuleName::Ask:
        return Tr::tr("ask a person");
    case RuleName::Later:
        words = Tr::tr("take the one noted later");
        break;
    case RuleName::Advanced:
        words = Tr::tr("take the further stage");
        break;
    case RuleName::Greatest:
        words = Tr::tr("take the greatest");
        break;
    case RuleName::Least:
        words = Tr::tr("take the least");
        break;
    case RuleName::Mean:
        words = Tr::tr("take the mean");
        break;
    case RuleName::All:
        words = Tr::tr("keep all");
        break;
    }
    if (!rule.within) {
        return words;
    }
    const QString amount = QLocale().toString(rule.within->amount, 'g', 6);
    return rule.within->isPercent
               ? Tr::tr("%1, where they lie within %2 percent of their mean").arg(words, amount)
               : Tr::tr("%1, where they lie within %2").arg(words, amount);
}

QString overruledWords(const office::Overruled& counts) {
    return counts.proposals == 0 ? QString()
                                 : Tr::tr("People overruled it in %1 of %2.")
                                       .arg(counts.overruled)
                                       .arg(counts.proposals);
}

QString ruleVerdict(const office::CaseFile& file) {
    if (file.form != SubjectForm::Observation) {
        return Tr::tr("No rule decides about the collection.");
    }
    const QString which = file.rule ? Tr::tr("Rule %1 of the rulebook").arg(*file.rule)
                                    : Tr::tr("The descriptor's own rule");
    const QString what = ruleWords(file.ruleItself);
    if (file.ruleItself.name == descriptors::RuleName::Ask) {
        return Tr::tr("%1: %2.").arg(which, what);
    }
    if (file.spread && file.ruleItself.within) {
        return Tr::tr("%1: %2. These lie %3 apart.")
            .arg(which, what, QLocale().toString(*file.spread, 'g', 6));
    }
    return Tr::tr("%1: %2. It does not fit these values.").arg(which, what);
}

} // namespace bullace::desk
