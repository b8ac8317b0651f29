// How the desk says what the office knows: subjects, values, who and when, causes and rules.
#pragma once

#include "office/case_file.hpp"
#include "office/overruled.hpp"

#include "core/merge/finding.hpp"
#include "core/vineyard/catalogue.hpp"
#include "core/vineyard/flower_sex.hpp"
#include "quick/words.hpp"

#include <QString>

#include <string_view>

namespace bullace::desk {

// "B2 · row 7 · vine 14 · Clusters on the vine · 14 May 2026"; other subjects likewise.
[[nodiscard]] QString subjectWords(const vineyard::Catalogue& catalogue, std::string_view subject);
// A descriptor's title; of other subjects the field.
[[nodiscard]] QString descriptorWords(const vineyard::Catalogue& catalogue, std::string_view code);
// A position in words, a lot, or an ID with its name.
[[nodiscard]] QString placeWordsOf(std::string_view place);
// A value with its unit; "taken back" for null, an empty text for none at all.
[[nodiscard]] QString sayValue(const vineyard::Catalogue& catalogue,
                               std::string_view descriptor,
                               BytesView value,
                               const UnitWishes& wishes);
// What a code stands for: "full bloom, half of the caps off"; empty where it says it all itself.
[[nodiscard]] QString
valueDetail(const vineyard::Catalogue& catalogue, std::string_view descriptor, BytesView value);
// "14 May 2026, 09:14" by the device's clock, at its own time of day.
[[nodiscard]] QString whenWords(const std::optional<journal::Wall>& wall);
[[nodiscard]] QString whenWords(std::int64_t utcMs, const Clock& clock);
// "3 days", "2 hours": how long ago, in one number.
[[nodiscard]] QString ageWords(std::int64_t ms);
// "female": of flowers; "sex not known" for nothing.
[[nodiscard]] QString flowerWords(const std::optional<vineyard::FlowerSex>& sex);
[[nodiscard]] QString personWords(const vineyard::Catalogue& catalogue, std::string_view code);

// A cause as a heading.
[[nodiscard]] QString causeWords(office::Cause cause);
// What looks wrong, as a heading.
[[nodiscard]] QString findingKindWords(merge::FindingKind kind);
// "the mean, within 10"; the descriptor's unit is not repeated.
[[nodiscard]] QString ruleWords(const descriptors::Rule& rule);
// What the rule would do here, and why it left the conflict open.
[[nodiscard]] QString ruleVerdict(const office::CaseFile& file);
// "People overruled it in 3 of 40." Empty where it never proposed anything.
[[nodiscard]] QString overruledWords(const office::Overruled& counts);

} // namespace bullace::desk
