#include "core/merge/finding.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"

#include <array>
#include <cmath>

namespace bullace::merge {

namespace {

constexpr std::array<std::string_view, kFindingKinds> kWords{"shifted-row",
                                                             "ten-times",
                                                             "inch-for-millimetre",
                                                             "stage-backwards",
                                                             "out-of-range",
                                                             "far-from-history",
                                                             "far-from-neighbours",
                                                             "empty-position",
                                                             "future-date",
                                                             "clock-off",
                                                             "far-apart",
                                                             "unknown-subject"};

std::string numberText(const std::optional<double>& number) {
    return number ? journal::valueToJson(journal::numberValue(std::round(*number * 1000) / 1000))
                  : std::string("?");
}

std::string onDay(const Finding& finding) {
    return finding.on ? " on " + writeDate(*finding.on) : std::string{};
}

} // namespace

std::string_view findingWord(FindingKind kind) {
    return kWords[static_cast<std::size_t>(kind)];
}

std::string findingWords(const Finding& finding) {
    const std::string subject = finding.subjects.empty() ? std::string{} : finding.subjects.front();
    const std::string value = journal::valueToJson(finding.value);
    switch (finding.kind) {
    case FindingKind::ShiftedRow:
        return std::to_string(finding.subjects.size()) + " values from " + subject +
               " on look as if they stood " + std::to_string(std::abs(finding.run->along)) +
               (finding.run->along > 0 ? " too far along the row (evidence "
                                       : " too far back along the row (evidence ") +
               numberText(finding.run->evidenceAt(finding.run->along)) + ").";
    case FindingKind::TenTimes:
        return subject + ": " + value +
               " is ten times or a tenth of what fits: " + numberText(finding.other) + ".";
    case FindingKind::InchForMillimetre:
        return subject + ": " + value +
               " would fit in the other unit: " + numberText(finding.other) + ".";
    case FindingKind::StageBackwards:
        return subject + ": stage " + value + " after " + numberText(finding.other) +
               onDay(finding) + ".";
    case FindingKind::OutOfRange:
        return subject + ": " + value + " is outside of what the descriptor takes.";
    case FindingKind::FarFromHistory:
        return subject + ": " + value + " is unlike this vine's " + numberText(finding.other) +
               onDay(finding) + ".";
    case FindingKind::FarFromNeighbours:
        return subject + ": " + value + " is unlike the vines around it, " +
               numberText(finding.other) + ".";
    case FindingKind::EmptyPosition:
        return subject + ": " + value + " was noted where no vine stood.";
    case FindingKind::FutureDate:
        return subject + " is of a day that has not come.";
    case FindingKind::ClockOff:
        return finding.device + ": its clock is " + std::to_string(std::abs(finding.off)) +
               " days " + (finding.off > 0 ? "ahead of" : "behind") + " the days that it notes.";
    case FindingKind::FarApart:
        return finding.device + ": " + subject + " and " + finding.subjects.back() +
               " were noted within " + std::to_string(finding.off) + " seconds.";
    case FindingKind::UnknownSubject:
        return "\"" + subject + "\" is a subject of no known form.";
    }
    return {};
}

Bytes asideValue(FindingKind kind) {
    return journal::MapValue()
        .add("finding", journal::textValue(findingWord(kind)))
        .add("is", journal::textValue("right"))
        .bytes();
}

bool putsAside(BytesView remark, FindingKind kind) {
    const auto finding = journal::memberOf(remark, "finding");
    const auto is = journal::memberOf(remark, "is");
    return finding && is && journal::textOf(*finding) == findingWord(kind) &&
           journal::textOf(*is) == "right";
}

} // namespace bullace::merge
