// What looks wrong on a walk: one value against what is known of the vine, and the run of values
// against the row one vine along.
#include "field/walk.hpp"

#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"

#include <algorithm>

namespace bullace::field {

namespace {

constexpr std::size_t kNeighbours = 10; // stops back

// Values that differ from vine to vine and hardly within a visit: a slip shows in them.
bool showsSlips(const descriptors::Descriptor& known) {
    using descriptors::DescriptorKind;
    return known.kind == DescriptorKind::Stage || known.kind == DescriptorKind::Score;
}

} // namespace

std::optional<double> Walk::measureOf(const NotedValue& noted) const {
    const vineyard::Asked* known = catalogue_.descriptor(noted.descriptor);
    return known == nullptr ? std::nullopt : vineyard::comparableNumber(*known, noted.value);
}

Status Walk::weigh(NotedValue& noted, std::size_t stop) {
    const vineyard::Asked* known = catalogue_.descriptor(noted.descriptor);
    const auto number = measureOf(noted);
    noted.doubt.reset();
    if (known == nullptr || !number) {
        return {};
    }
    Result<std::vector<walk::Noted>> history =
        memory_->numbers(plan_.stops[stop].position, noted.descriptor);
    if (!history) {
        return history.error();
    }
    walk::Background background;
    background.code = known->known.code;
    background.kind = known->known.kind;
    background.range = known->known.range;
    background.history = std::move(*history);
    background.decimals = known->known.decimals;
    background.unit = known->known.unit;
    const Leg leg = legOf(stop);
    for (std::size_t i = stop; i > leg.first && stop - i < kNeighbours; --i) {
        for (const NotedValue* other : sheet_->at(i - 1, noted.descriptor)) {
            const auto beside = measureOf(*other);
            if (beside) {
                background.neighbours.push_back(*beside);
            }
        }
    }
    noted.doubt = walk::weigh(background, plan_.date, *number);
    return {};
}

Status Walk::weighLeg() {
    const Leg leg = legOf(footing_.stop);
    for (std::size_t stop = leg.first; stop <= leg.last; ++stop) {
        for (const NotedValue& noted : sheet_->all(stop)) {
            NotedValue* changeable = sheet_->find(noted.subject);
            if (changeable == nullptr) {
                continue;
            }
            if (Status weighed = weigh(*changeable, stop); !weighed) {
                return weighed;
            }
        }
    }
    return {};
}

Result<const NotedValue*> Walk::weighLast() {
    NotedValue* noted = lastNoted_.empty() ? nullptr : sheet_->find(lastNoted_);
    const auto stop = noted == nullptr ? std::nullopt : sheet_->stopOf(lastNoted_);
    if (!stop) {
        return static_cast<const NotedValue*>(nullptr);
    }
    if (Status weighed = weigh(*noted, *stop); !weighed) {
        return weighed.error();
    }
    return noted->doubt ? static_cast<const NotedValue*>(noted) : nullptr;
}

void Walk::keep(const std::string& subject) {
    NotedValue* noted = sheet_->find(subject);
    if (noted != nullptr) {
        noted->isKept = true;
    }
}

void Walk::putSlipAside() {
    slipAsideUntil_ = footing_.stop;
}

std::optional<walk::Slip> Walk::slip() {
    const vineyard::Asked* known = catalogue_.descriptor(plan_.asks.front().descriptor);
    if (known == nullptr || !showsSlips(known->known) || plan_.isList) {
        return {};
    }
    const Leg leg = legOf(footing_.stop);
    const auto past = [&](std::size_t stop) -> std::optional<double> {
        const auto last =
            memory_->lastThisYear(plan_.stops[stop].position, plan_.asks.front().descriptor);
        return last && *last ? std::optional(vineyard::onItsScale(known->known, **last))
                             : std::nullopt;
    };
    walk::SlipDetector detector;
    for (std::size_t i = std::max(leg.first, slipAsideUntil_);
         i <= std::min(leg.last, footing_.front);
         ++i) {
        const auto noted = sheet_->at(i, plan_.asks.front().descriptor);
        const auto number = noted.empty() ? std::nullopt : measureOf(*noted.front());
        if (number) {
            detector.add(vineyard::onItsScale(known->known, *number),
                         past(i),
                         i > leg.first ? past(i - 1) : std::nullopt,
                         i < leg.last ? past(i + 1) : std::nullopt);
        }
    }
    return detector.slip();
}

} // namespace bullace::field
