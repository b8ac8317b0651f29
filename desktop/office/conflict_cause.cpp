#include "office/conflict_cause.hpp"

#include "core/base/units.hpp"
#include "core/journal/json_value.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::office {

using descriptors::DescriptorKind;
using journal::EntryView;
using journal::Subject;

namespace {

// A slip of the point leaves the digits as they are; rounding to one decimal moves 25.4 a little.
constexpr double kTenfoldTolerance = 0.001;
constexpr double kUnitTolerance = 0.02;
constexpr double kMmPerInch = 25.4;

bool isNone(BytesView value) {
    return journal::memberOf(value, "none").has_value();
}

// Whether the value says that there is no living vine to look at.
bool saysNoVine(const Subject& subject, BytesView value) {
    if (const auto reason = journal::memberOf(value, "none")) {
        const auto word = journal::textOf(*reason).value_or("");
        return word == "dead" || word == "no-vine";
    }
    const auto word = subject.descriptor == "vine" ? journal::textOf(value) : std::nullopt;
    return word && (*word == "dead" || *word == "missing");
}

bool isRatio(double a, double b, double ratio, double tolerance) {
    return b != 0 && std::abs(a / b / ratio - 1) < tolerance;
}

std::optional<Cause> slipOf(std::span<const EntryView> heads, bool isMeasure) {
    if (heads.size() != 2) {
        return std::nullopt;
    }
    const auto one = journal::numberOf(heads[0].value);
    const auto two = journal::numberOf(heads[1].value);
    if (!one || !two) {
        return std::nullopt;
    }
    const double greater = std::max(*one, *two);
    const double less = std::min(*one, *two);
    if (isRatio(greater, less, 10, kTenfoldTolerance)) {
        return Cause::TenTimes;
    }
    if (isMeasure && isRatio(greater, less, kMmPerInch, kUnitTolerance)) {
        return Cause::UnitSlip;
    }
    return std::nullopt;
}

} // namespace

Cause causeOf(const Subject& subject,
              std::span<const EntryView> heads,
              const merge::Rulebook& rulebook) {
    const auto isAny = [&](auto what) { return std::any_of(heads.begin(), heads.end(), what); };
    if (isAny([](const EntryView& head) { return head.kind == journal::Kind::Ruling; })) {
        return Cause::TwoRulings;
    }
    if (subject.form != journal::SubjectForm::Observation) {
        return Cause::Collection;
    }
    if (isAny([](const EntryView& head) { return head.isNull(); })) {
        return Cause::Removed;
    }
    const auto noVine = [&](const EntryView& head) { return saysNoVine(subject, head.value); };
    if (isAny(noVine) && !std::all_of(heads.begin(), heads.end(), noVine)) {
        return Cause::VineState;
    }
    const auto kind = rulebook.kindOf(subject.descriptor);
    const bool isNumber = kind != DescriptorKind::Stage && kind != DescriptorKind::Code;
    if (const auto slip = isNumber && !isAny([](const auto& h) { return isNone(h.value); })
                              ? slipOf(heads, kind == DescriptorKind::Measure)
                              : std::nullopt) {
        return *slip;
    }
    const bool isOne = std::all_of(heads.begin(), heads.end(), [&](const EntryView& head) {
        return head.author == heads[0].author;
    });
    return isOne ? Cause::OnePerson : Cause::Apart;
}

std::optional<double> spreadOf(const Subject& subject,
                               std::span<const BytesView> values,
                               const merge::Rulebook& rulebook) {
    const bool isStage = rulebook.kindOf(subject.descriptor) == DescriptorKind::Stage;
    std::vector<double> scale;
    for (const BytesView value : values) {
        if (isStage) {
            if (const auto step = rulebook.stepOf(subject.descriptor, value)) {
                scale.push_back(static_cast<double>(*step));
            }
        } else if (const auto number = journal::numberOf(value)) {
            scale.push_back(*number);
        }
    }
    if (scale.size() < 2) {
        return std::nullopt;
    }
    const auto [least, greatest] = std::minmax_element(scale.begin(), scale.end());
    return *greatest - *least;
}

} // namespace bullace::office
