#include "core/walk/shift_run.hpp"

#include <string>
#include <utility>

namespace bullace::walk {

namespace {

// Where `stop` goes; nothing beyond either end of `count` stops.
std::optional<std::size_t> moved(std::size_t stop, long long by, std::size_t count) {
    const auto steps = static_cast<std::size_t>(by < 0 ? -by : by);
    if (by < 0) {
        return stop < steps ? std::nullopt : std::optional(stop - steps);
    }
    return steps >= count - stop ? std::nullopt : std::optional(stop + steps);
}

Error refused(std::string message) {
    return {ErrorCode::Refused, std::move(message), {}};
}

// Whether every value of the run finds a place.
Status checkPlaces(const std::vector<bool>& hasValue, std::size_t first, std::size_t last, int by) {
    bool holdsOne = false;
    for (std::size_t stop = first; stop <= last; ++stop) {
        if (!hasValue[stop]) {
            continue;
        }
        holdsOne = true;
        const auto to = moved(stop, by, hasValue.size());
        if (!to) {
            return refused("The values cannot be moved: there is no further stop for the last of "
                           "them. Choose a shorter run.");
        }
        if ((*to < first || *to > last) && hasValue[*to]) {
            return refused("The values cannot be moved: the stop beside them has a value of its "
                           "own. Choose a longer run, or undo that value first.");
        }
    }
    if (!holdsOne) {
        return Error{ErrorCode::InvalidInput, "There is no value in these stops to move.", {}};
    }
    return {};
}

} // namespace

Result<std::vector<Moved>>
shiftRun(const std::vector<bool>& hasValue, std::size_t first, std::size_t last, int by) {
    if (first > last || last >= hasValue.size() || by == 0) {
        return Error{ErrorCode::InvalidInput,
                     "Choose the first and the last stop of the values to move, and the way they "
                     "go.",
                     {}};
    }
    if (const Status places = checkPlaces(hasValue, first, last, by); !places) {
        return places.error();
    }
    std::vector<Moved> changes;
    for (std::size_t to = 0; to < hasValue.size(); ++to) {
        const auto from = moved(to, -static_cast<long long>(by), hasValue.size());
        const bool comes = from && *from >= first && *from <= last && hasValue[*from];
        const bool leaves = to >= first && to <= last && hasValue[to];
        if (comes) {
            changes.push_back({to, from});
        } else if (leaves) {
            changes.push_back({to, std::nullopt});
        }
    }
    return changes;
}

} // namespace bullace::walk
