// Writing what was planned, all or not at all; and the two scales of stages.
#include "office/table_import.hpp"

#include "core/descriptors/stages.hpp"
#include "core/journal/standing.hpp"

#include <algorithm>
#include <array>

namespace bullace::office {

namespace {

// The modified scale beside BBCH. 29 to 34 and 36 to 37 have no stage of their own there.
constexpr std::array<std::pair<std::int64_t, std::int64_t>, 20> kScale{
    {{1, 0},   {3, 5},   {4, 9},   {9, 13},  {12, 53}, {15, 55}, {17, 57},
     {19, 60}, {20, 61}, {21, 63}, {23, 65}, {25, 68}, {26, 69}, {27, 71},
     {31, 75}, {35, 81}, {38, 89}, {41, 91}, {43, 93}, {47, 97}}};

} // namespace

std::optional<std::int64_t> bbchOfEichhornLorenz(std::int64_t code) {
    const auto* found = std::find_if(
        kScale.begin(), kScale.end(), [code](const auto& pair) { return pair.first == code; });
    return found != kScale.end() && descriptors::stageStep(found->second)
               ? std::optional(found->second)
               : std::nullopt;
}

Result<std::size_t>
importTable(store::Database& database, const TablePlan& plan, const Clock& clock) {
    if (plan.problemCount > 0) {
        return Error{
            ErrorCode::InvalidInput,
            "Some lines cannot be taken. Put them right in the file; until then nothing of "
            "it is taken.",
            {}};
    }
    if (plan.drafts.empty()) {
        return Error{ErrorCode::InvalidInput, "Everything in this file is there already.", {}};
    }
    if (plan.drafts.size() <= journal::kGreatestGroup) {
        const auto written = perform(database, {plan.drafts, plan.seen}, clock);
        return written ? Result<std::size_t>(written->size()) : written.error();
    }
    for (const Seen& seen : plan.seen) {
        const auto heads = headsOf(database, seen.subject);
        if (!heads) {
            return heads.error();
        }
        if (*heads != seen.heads) {
            return Error{ErrorCode::Outdated,
                         "Something was written since the file was looked at. Look at it again.",
                         seen.subject};
        }
    }
    // More than one group can hold: still one transaction.
    const std::int64_t now = clock.nowMs();
    const auto written =
        database.append(plan.drafts, journal::Wall{now, clock.minutesFromUtc(now)});
    return written ? Result<std::size_t>(written->size()) : written.error();
}

} // namespace bullace::office
