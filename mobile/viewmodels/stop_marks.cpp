// The page of one stop: what is worth saying after a value is in.
#include "field/memory.hpp"
#include "tablet/stop_view_model.hpp"
#include "tablet/walk_words.hpp"

#include "core/fruit/sample_size.hpp"

namespace bullace::tablet {

namespace {

constexpr std::size_t kCheckEvery = 10; // stops; 1 % of values misplaced, one slip in 500

} // namespace

// How many samples more the wanted precision needs; said once, after the last one.
StopViewModel::Mark StopViewModel::moreMark(std::size_t stop, std::size_t ask) const {
    const field::Ask& asks = walk()->plan().asks[ask];
    const vineyard::Asked* known = session_.book()->catalogue().descriptor(asks.descriptor);
    const auto noted = walk()->sheet().at(stop, asks.descriptor);
    if (known == nullptr || noted.empty() || noted.size() < walk()->wanted(stop, ask)) {
        return {};
    }
    std::vector<double> numbers;
    for (const field::NotedValue* one : noted) {
        const auto number = vineyard::comparableNumber(*known, one->value);
        if (number) {
            numbers.push_back(*number);
        }
    }
    Mark mark{MarkKind::More, {}, {}, {}, {}, stop, ask, 0};
    const fruit::Spread spread = fruit::spreadOf(numbers);
    const QString vine = vineWords(walk()->plan().stops[stop].position);
    // Letters of twice the size leave no room for it beside the mean.
    const bool hasRoom = session_.book()->settings().textScale < 1.5;
    const QString evidence = hasRoom ? evidenceWords(stop, asks.descriptor) : QString();
    if (spread.cvPercent) {
        mark.words = tr("Vine %1: mean %2, CV %3 %.")
                         .arg(vine,
                              numberWords(*known, spread.mean, session_.wishes()),
                              localNumber(fixedText(*spread.cvPercent, 0)));
        addMore(numbers, asks, mark);
    } else if (!evidence.isEmpty()) {
        mark.words = tr("Vine %1.").arg(vine);
    } else {
        return {};
    }
    mark.words += evidence.isEmpty() ? QString() : QStringLiteral(" ") + evidence;
    return mark;
}

void StopViewModel::addMore(const std::vector<double>& numbers,
                            const field::Ask& asks,
                            Mark& mark) const {
    const auto more =
        asks.precisionPercent ? fruit::moreNeeded(numbers, *asks.precisionPercent) : std::nullopt;
    if (more && *more > 0) {
        mark.by = static_cast<int>(*more);
        mark.words +=
            QStringLiteral(" ") + tr("For %1 % it takes %n more.", nullptr, mark.by)
                                      .arg(localNumber(fixedText(*asks.precisionPercent, 0)));
        mark.second = tr("Take %n more", nullptr, mark.by);
    }
}

StopViewModel::Mark StopViewModel::slipMark() const {
    const auto slip = walk()->slip();
    if (!slip) {
        return {};
    }
    Mark mark{MarkKind::Slip, {}, tr("In place"), tr("Check the tag"), {}, 0, 0, slip->along};
    mark.words =
        slip->along > 0
            ? tr("The last %n look like one vine further on.",
                 nullptr,
                 static_cast<int>(slip->vines))
            : tr("The last %n look like one vine back.", nullptr, static_cast<int>(slip->vines));
    return mark;
}

// Every tenth stop a quiet look: it asks for nothing, and walking on is an answer too.
StopViewModel::Mark StopViewModel::checkMark() const {
    const field::Footing& footing = walk()->footing();
    const std::size_t along = footing.stop - walk()->legOf(footing.stop).first;
    if (along == 0 || along % kCheckEvery != 0 || footing.stop != footing.front ||
        footing.ask != 0 || walk()->plan().isList) {
        return {};
    }
    return {MarkKind::Check,
            tr("Does the tag say vine %1?").arg(vineWords(walk()->here().position)),
            tr("Yes"),
            tr("No"),
            {},
            footing.stop,
            0,
            0};
}

} // namespace bullace::tablet
