// The steps of one cross at its mother vine, and which is due after those that are done.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace bullace::breeding {

// The next step of `cross-work` (its words: bagged, emasculated, pollinated, bag-off, set,
// harvested) after those done; nothing where the cross is harvested.
// flowerSex  of the mother, OIV 151: 3 is perfect and has to be emasculated before it is bagged; a
//            female (4), or an unknown one, is bagged as she is.
// Source: common practice, no source.
[[nodiscard]] std::optional<std::string_view>
nextCrossStep(const std::set<std::string, std::less<>>& done, std::optional<int> flowerSex);

// Whether a mother vine at this stage (BBCH) has to be bagged or emasculated now: from separating
// flowers (55) until the first caps come loose (60), after which pollen of others may have come.
// Source: stages of Lorenz et al. 1995; the span: common practice, no source.
[[nodiscard]] bool isAboutToLoseCaps(int stage);

} // namespace bullace::breeding
