#include "core/merge/settle.hpp"

#include "core/journal/json_value.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <vector>

namespace bullace::merge {

using descriptors::DescriptorKind;
using descriptors::Rule;
using descriptors::RuleName;
using descriptors::Within;
using journal::Subject;

namespace {

// Several heads of one observation that differ, and the rule that is to decide between them.
class Decision {
public:
    Decision(const Subject& subject, std::span<const Member> heads, const Rulebook& rulebook)
        : heads_(heads),
          kind_(rulebook.kindOf(subject.descriptor)) {
        for (const Member& head : heads) {
            const BytesView value = head.entry->value;
            if (kind_ == DescriptorKind::Stage) {
                if (const auto step = rulebook.stepOf(subject.descriptor, value)) {
                    scale_.push_back(static_cast<double>(*step));
                }
            } else if (const auto number = journal::numberOf(value);
                       number && kind_ != DescriptorKind::Code) {
                scale_.push_back(*number);
            }
        }
    }

    // The picked value, or nothing where the rule leaves the subject open.
    std::optional<Bytes> by(const Rule& rule) const {
        switch (rule.name) {
        case RuleName::Ask:
            return std::nullopt;
        case RuleName::All:
            return all();
        case RuleName::Later:
            return isWithin(rule.within) ? std::optional(later()) : std::nullopt;
        case RuleName::Advanced:
            return isStage() && isWithin(rule.within) ? std::optional(extreme(1)) : std::nullopt;
        case RuleName::Greatest:
            return isNumbers() && isWithin(rule.within) ? std::optional(extreme(1)) : std::nullopt;
        case RuleName::Least:
            return isNumbers() && isWithin(rule.within) ? std::optional(extreme(-1)) : std::nullopt;
        case RuleName::Mean:
            return isNumbers() && isWithin(rule.within) && std::isfinite(mean())
                       ? std::optional(journal::numberValue(mean()))
                       : std::nullopt;
        }
        return std::nullopt;
    }

private:
    bool isMeasured() const { return scale_.size() == heads_.size(); }
    bool isStage() const { return kind_ == DescriptorKind::Stage && isMeasured(); }
    bool isNumbers() const { return kind_ != DescriptorKind::Stage && isMeasured(); }

    double mean() const {
        double sum = 0;
        for (const double value : scale_) {
            sum += value;
        }
        return sum / static_cast<double>(scale_.size());
    }

    // Values without a spread (texts, codes of classes), and percent of a mean of stages, are never
    // within.
    bool isWithin(const std::optional<Within>& within) const {
        if (!within) {
            return true;
        }
        if (!isMeasured() || (within->isPercent && kind_ == DescriptorKind::Stage)) {
            return false;
        }
        const auto [least, greatest] = std::minmax_element(scale_.begin(), scale_.end());
        const double allowed =
            within->isPercent ? within->amount / 100 * std::abs(mean()) : within->amount;
        return *greatest - *least <= allowed;
    }

    // The first head whose place on the scale, times `sign`, no other exceeds.
    Bytes extreme(double sign) const {
        std::size_t best = 0;
        for (std::size_t i = 1; i < scale_.size(); ++i) {
            if (sign * scale_[i] > sign * scale_[best]) {
                best = i;
            }
        }
        return Bytes(heads_[best].entry->value);
    }

    // By the clocks, for stations that watch them; an entry without one is the earliest of all.
    Bytes later() const {
        const auto clock = [](const Member& head) {
            const auto& entry = *head.entry;
            return std::tuple(
                entry.wall.has_value(), entry.wall ? entry.wall->ms : 0, entry.origin, entry.seq);
        };
        const auto latest =
            std::max_element(heads_.begin(), heads_.end(), [&](const Member& a, const Member& b) {
                return clock(a) < clock(b);
            });
        return Bytes(latest->entry->value);
    }

    Bytes all() const {
        std::vector<Bytes> values;
        for (const Member& head : heads_) {
            values.emplace_back(head.entry->value);
        }
        return journal::listValue(values);
    }

    std::span<const Member> heads_;
    std::optional<DescriptorKind> kind_;
    std::vector<double>
        scale_; // the heads' numbers or steps; shorter than heads_ where one has none
};

bool agree(std::span<const Member> heads) {
    return std::all_of(heads.begin() + 1, heads.end(), [&](const Member& head) {
        return journal::isSameValue(head.entry->value, heads[0].entry->value);
    });
}

} // namespace

std::string_view stateWord(State state) {
    switch (state) {
    case State::Settled:
        return "settled";
    case State::Agreed:
        return "agreed";
    case State::Retracted:
        return "retracted";
    case State::Ruled:
        return "ruled";
    case State::Open:
        return "open";
    }
    return {};
}

Outcome settle(std::string_view subject, std::span<const Member> heads, const Rulebook& rulebook) {
    const auto isNull = [](const Member& head) { return head.entry->isNull(); };
    if (std::all_of(heads.begin(), heads.end(), isNull)) {
        return {State::Retracted, {}, std::nullopt};
    }
    if (heads.size() == 1) {
        return {State::Settled, Bytes(heads[0].entry->value), std::nullopt};
    }
    if (std::any_of(heads.begin(), heads.end(), isNull)) {
        return {State::Open, {}, std::nullopt};
    }
    if (agree(heads)) {
        return {State::Agreed, Bytes(heads[0].entry->value), std::nullopt};
    }
    const Subject parts = journal::readSubject(subject);
    const bool hasRuling = std::any_of(heads.begin(), heads.end(), [](const Member& head) {
        return head.entry->kind == journal::Kind::Ruling;
    });
    if (parts.form != journal::SubjectForm::Observation || hasRuling) {
        return {State::Open, {}, std::nullopt};
    }
    const Rule rule = rulebook.ruleFor(parts);
    if (auto value = Decision(parts, heads, rulebook).by(rule)) {
        return {State::Ruled, std::move(*value), rule.name};
    }
    return {State::Open, {}, std::nullopt};
}

} // namespace bullace::merge
