#include "tablet/walk_words.hpp"

#include "field/memory.hpp"

#include "core/journal/json_value.hpp"
#include "quick/trade_words.hpp"

#include <QCoreApplication>

namespace bullace::tablet {

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(Words)
};

} // namespace

QString cellWords(const vineyard::Asked& asked,
                  const std::vector<const field::NotedValue*>& noted,
                  const UnitWishes& wishes) {
    if (noted.empty()) {
        return {};
    }
    if (noted.size() == 1) {
        // The unit stands beside the question; on the wire there is room for the number.
        QString words = valueWords(asked, noted.front()->value, wishes);
        const QString unit =
            QStringLiteral(" ") + fromText(unitFor(asked.known.unit, wishes).shown);
        if (unit.size() > 1 && words.endsWith(unit)) {
            words.chop(unit.size());
        }
        return words;
    }
    return QStringLiteral("×%1").arg(noted.size());
}

QString
doubtWords(const vineyard::Asked& asked, const field::NotedValue& noted, const UnitWishes& wishes) {
    if (!noted.doubt) {
        return {};
    }
    const QString value = valueWords(asked, noted.value, wishes);
    const double other = noted.doubt->other;
    const QString otherWords = asked.known.kind == descriptors::DescriptorKind::Stage
                                   ? stageCodeWords(std::llround(other))
                                   : numberWords(asked, other, wishes);
    const QString on = noted.doubt->on ? dateWords(*noted.doubt->on) : QString();
    switch (noted.doubt->doubt) {
    case walk::Doubt::OutOfRange:
        return Tr::tr("%1 is beyond %2.").arg(value, otherWords);
    case walk::Doubt::StageBackwards:
        return Tr::tr("%1 after %2 on %3.").arg(value, otherWords, on);
    case walk::Doubt::FarFromHistory:
        return on.isEmpty() ? Tr::tr("%1, and %2 before.").arg(value, otherWords)
                            : Tr::tr("%1, and %2 on %3.").arg(value, otherWords, on);
    case walk::Doubt::FarFromNeighbours:
        return Tr::tr("%1, and the vines beside it about %2.").arg(value, otherWords);
    case walk::Doubt::TenTimes:
        return Tr::tr("%1: was %2 meant?").arg(value, otherWords);
    case walk::Doubt::InchForMillimetre:
        return Tr::tr("%1 looks like another unit: was %2 meant?").arg(value, otherWords);
    }
    return {};
}
} // namespace bullace::tablet
