#include "quick/words.hpp"

#include "core/journal/json_value.hpp"
#include "core/vineyard/position.hpp"
#include "quick/trade_words.hpp"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

#include <cmath>

namespace bullace::quick {

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(Words)
};

// "3 of 10" for records that count; else the parts one after the other.
QString recordWords(const vineyard::Asked& asked, BytesView value) {
    QStringList parts;
    for (const descriptors::RecordPart& part : asked.known.parts) {
        const auto member = journal::memberOf(value, part.name);
        if (!member) {
            continue;
        }
        const auto text = journal::textOf(*member);
        parts << (text ? tradeWord(*text) : localNumber(journal::valueToJson(*member)));
    }
    if (asked.known.parts.size() == 2 && asked.known.parts.back().name == "of" &&
        parts.size() == 2) {
        return Tr::tr("%1 of %2").arg(parts[0], parts[1]);
    }
    return parts.join(QStringLiteral(" "));
}

} // namespace

QString fromText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

std::string toText(const QString& text) {
    return text.toStdString();
}

QString dateWords(CivilDate date) {
    const QDate day(static_cast<int>(date.year()),
                    static_cast<int>(static_cast<unsigned>(date.month())),
                    static_cast<int>(static_cast<unsigned>(date.day())));
    //: a date: day, month in letters, year
    return QLocale().toString(day, Tr::tr("d MMM yyyy"));
}

QString placeWords(std::string_view position) {
    const auto read = vineyard::readPosition(position);
    if (!read) {
        return fromText(position);
    }
    return Tr::tr("%1 · row %2 · vine %3")
        .arg(fromText(read->block), rowWords(position), vineWords(position));
}

QString rowWords(std::string_view position) {
    const auto read = vineyard::readPosition(position);
    return read ? QString::number(read->row) : QString();
}

QString vineWords(std::string_view position) {
    const auto read = vineyard::readPosition(position);
    if (!read) {
        return fromText(position);
    }
    return QString::number(read->vine) +
           (read->letter == 0 ? QString() : QString(QLatin1Char(read->letter)));
}

QString sideWord(walk::Side side) {
    return side == walk::Side::Left    ? Tr::tr("left side")
           : side == walk::Side::Right ? Tr::tr("right side")
                                       : QString();
}

QString titleWords(const vineyard::Asked& asked) {
    return tradeWord(asked.known.title);
}

QString stageCodeWords(std::int64_t code) {
    return QStringLiteral("%1").arg(code, 2, 10, QLatin1Char('0'));
}

QString decimalMark() {
    return QLocale().decimalPoint();
}

QString localNumber(const std::string& withPoint) {
    return fromText(withPoint).replace(QLatin1Char('.'), decimalMark());
}

QString numberWords(const vineyard::Asked& asked, double stored, const UnitWishes& wishes) {
    const Unit unit = unitFor(asked.known.unit, wishes);
    const bool isWhole = asked.known.decimals == 0 && unit.isAsStored();
    // The mean of two counts may lie between two numbers: it is not said to be one of them.
    const bool isBetween = isWhole && stored != std::floor(stored);
    const double shown = isBetween ? stored : toShown(unit, stored, asked.known.decimals);
    const int decimals = isBetween ? 1 : isWhole ? 0 : shownDecimals(unit, asked.known.decimals);
    const QString number = localNumber(fixedText(shown, decimals));
    return unit.shown.empty() ? number : number + QStringLiteral(" ") + fromText(unit.shown);
}

QString valueWords(const vineyard::Asked& asked, BytesView value, const UnitWishes& wishes) {
    using descriptors::DescriptorKind;
    if (const auto none = journal::memberOf(value, "none")) {
        return tradeWord(journal::textOf(*none).value_or(""));
    }
    const auto number = journal::numberOf(value);
    switch (asked.known.kind) {
    case DescriptorKind::Stage:
        return number ? stageCodeWords(std::llround(*number)) : QString();
    case DescriptorKind::Record:
        return recordWords(asked, value);
    case DescriptorKind::Photo:
        return Tr::tr("photo");
    default:
        break;
    }
    if (number) {
        return numberWords(asked, *number, wishes);
    }
    if (const auto text = journal::textOf(value)) {
        return tradeWord(*text);
    }
    return asked.known.parts.empty() ? fromText(journal::valueToJson(value))
                                     : recordWords(asked, value);
}

QString refusalWords(const descriptors::NumberPad& pad) {
    using descriptors::Refusal;
    const auto bound = [&pad](double number) {
        return localNumber(fixedText(number, pad.decimals())) +
               (pad.unit().empty() ? QString() : QStringLiteral(" ") + fromText(pad.unit()));
    };
    switch (pad.refusal()) {
    case Refusal::None:
        return {};
    case Refusal::TooGreat:
        return Tr::tr("At most %1 can be noted.").arg(bound(pad.range().greatest));
    case Refusal::TooSmall:
        return Tr::tr("At least %1 can be noted.").arg(bound(pad.range().least));
    case Refusal::TooManyDecimals:
        return Tr::tr("No more than %n decimal(s).", nullptr, pad.decimals());
    case Refusal::WholeOnly:
        return Tr::tr("Whole numbers only.");
    case Refusal::AfterZero:
        return Tr::tr("No number begins with 0 and another digit.");
    case Refusal::NoDigitYet:
        return Tr::tr("A digit first.");
    case Refusal::SecondPoint:
        return Tr::tr("There is a decimal mark already.");
    case Refusal::NoNegative:
        return Tr::tr("Nothing below zero can be noted.");
    case Refusal::NothingThere:
        return Tr::tr("Nothing is typed yet.");
    case Refusal::NoSuchKey:
        return Tr::tr("This key types no digit.");
    }
    return {};
}

QString labelFaultWords(vineyard::LabelFault fault) {
    using vineyard::LabelFault;
    switch (fault) {
    case LabelFault::None:
        return {};
    case LabelFault::Empty:
        return Tr::tr("Type the label's eight characters.");
    case LabelFault::NeverUsed:
        return Tr::tr("No label has B, I, L, O or U. Look again: 8, 1, 0 or V?");
    case LabelFault::NoSymbol:
        return Tr::tr("A label has letters and digits only.");
    case LabelFault::TooShort:
        return Tr::tr("A label has eight characters; some are missing.");
    case LabelFault::TooLong:
        return Tr::tr("A label has eight characters; there are too many.");
    case LabelFault::FirstIsDigit:
        return Tr::tr("A label begins with a letter.");
    case LabelFault::WrongCheck:
        return Tr::tr("That is no label: a character is wrong, or two changed places.");
    }
    return {};
}

QString errorWords(const Error& error) {
    const bool isEnglish = QLocale().language() == QLocale::English;
    if (isEnglish || error.code == ErrorCode::Internal) {
        return fromText(error.message);
    }
    switch (error.code) {
    case ErrorCode::DiskFull:
        return Tr::tr("The tablet's disk is full. What was shown as recorded is safe; nothing "
                      "more can be recorded until there is room.");
    case ErrorCode::Network:
        return Tr::tr("The station does not answer. Are you in reach of the office's network?");
    case ErrorCode::WrongKey:
        return Tr::tr("This is another computer than the one that was paired. Nothing was sent. "
                      "Ask the office.");
    case ErrorCode::WrongVersion:
    case ErrorCode::NewerVersion:
        return Tr::tr("The other side has another version. Update the older one.");
    case ErrorCode::Refused:
        return Tr::tr("The office refused. Ask there, and pair again if need be.");
    case ErrorCode::Damaged:
        return Tr::tr("The journal is damaged. Nothing in it was changed. Take the tablet to the "
                      "office.");
    case ErrorCode::InUse:
        return Tr::tr("Another program has this journal open. Close it first.");
    case ErrorCode::NotFound:
        return Tr::tr("That was not found here.");
    case ErrorCode::InvalidInput:
        return Tr::tr("That cannot be recorded here.");
    case ErrorCode::ReadOnly:
    case ErrorCode::Io:
        return Tr::tr("The disk cannot be written. What was shown as recorded is safe.");
    case ErrorCode::AlreadyThere:
        return Tr::tr("That is there already.");
    case ErrorCode::Outdated:
        return Tr::tr("Something new came in about this since it was shown. Nothing was written; "
                      "look at it as it is now.");
    case ErrorCode::BeyondLimit:
        return Tr::tr("That is too large.");
    case ErrorCode::Cancelled:
        return Tr::tr("Stopped. What was sent counts; the next time goes on from there.");
    case ErrorCode::Internal:
        break;
    }
    return fromText(error.message);
}

} // namespace bullace::quick
