// Renumbered rows: from a date on, vines have new positions. What was noted before keeps the
// position under which it was noted; here it is followed to the vine's position on another date.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/result.hpp"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bullace::vineyard {

// The value of `block/CODE/renumber-DATE`. From `from` on, the vine at `first` is called `second`;
// all at once, so that two vines can change places. Vines that are not named keep their positions.
struct Renumbering {
    CivilDate from;
    std::vector<std::pair<std::string, std::string>> oldToNew;
};

class Renumberings {
public:
    Renumberings() = default;

    // Any order; several of one date are one act.
    // Errors: InvalidInput where a position is misspelt, or on one date an old or a new position is
    // named twice: then two vines would share a place, and nobody could tell them apart afterwards.
    static Result<Renumberings> of(const std::vector<Renumbering>& renumberings);

    [[nodiscard]] bool isEmpty() const { return steps_.empty(); }

    // The position on `date` of the vine that on `written` was called `position`. Both ways: `date`
    // may lie before `written`. A renumbering holds on its own date already.
    [[nodiscard]] std::string
    follow(std::string_view position, CivilDate written, CivilDate date) const;

    // The position as the newest numbering has it: one name for a vine's place over all time.
    [[nodiscard]] std::string newest(std::string_view position, CivilDate written) const;

private:
    struct Step {
        std::map<std::string, std::string, std::less<>> forward;
        std::map<std::string, std::string, std::less<>> back;
    };
    std::map<CivilDate, Step> steps_;
};

} // namespace bullace::vineyard
