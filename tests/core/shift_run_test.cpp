// Values that stand one vine off are moved together.
#include "core/walk/shift_run.hpp"

#include <doctest/doctest.h>

#include <random>

namespace bullace::walk {

namespace {

using Values = std::vector<int>; // 0: none

std::vector<bool> isThere(const Values& values) {
    std::vector<bool> there;
    for (const int value : values) {
        there.push_back(value != 0);
    }
    return there;
}

Values after(const Values& values, const std::vector<Moved>& changes) {
    Values moved = values;
    for (const Moved& change : changes) {
        moved[change.to] = change.from ? values[*change.from] : 0;
    }
    return moved;
}

ErrorCode faultOf(const Values& values, std::size_t first, std::size_t last, int by) {
    const auto shifted = shiftRun(isThere(values), first, last, by);
    REQUIRE_FALSE(shifted.ok());
    CHECK_FALSE(shifted.error().message.empty());
    return shifted.error().code;
}

} // namespace

TEST_CASE("a run moves one stop on and leaves its first stop without a value") {
    const Values values{5, 6, 7, 8, 0, 9};
    const auto changes = shiftRun(isThere(values), 1, 3, 1);
    REQUIRE(changes.ok());
    CHECK(*changes == std::vector<Moved>{{1, std::nullopt}, {2, 1}, {3, 2}, {4, 3}});
    CHECK(after(values, *changes) == Values{5, 0, 6, 7, 8, 9});
}

TEST_CASE("a run moves one stop back, and a stop without a value inside of it moves as such") {
    const Values values{0, 6, 0, 8};
    const auto changes = shiftRun(isThere(values), 1, 3, -1);
    REQUIRE(changes.ok());
    CHECK(after(values, *changes) == Values{6, 0, 8, 0});
}

TEST_CASE("no value is pushed off the row or onto another value") {
    CHECK(faultOf({5, 6, 7}, 0, 2, 1) == ErrorCode::Refused);
    CHECK(faultOf({5, 6, 7}, 0, 1, -1) == ErrorCode::Refused);
    CHECK(faultOf({5, 6, 7, 0}, 0, 1, 1) == ErrorCode::Refused);
    CHECK(faultOf({5, 6, 7}, 1, 2, -1) == ErrorCode::Refused);
    CHECK(shiftRun({true, true, false}, 0, 2, 1).ok()); // only an empty stop falls off
}

TEST_CASE("a run that is none is refused") {
    CHECK(faultOf({5, 0}, 1, 0, 1) == ErrorCode::InvalidInput);
    CHECK(faultOf({5, 0}, 0, 2, 1) == ErrorCode::InvalidInput);
    CHECK(faultOf({5, 0}, 0, 0, 0) == ErrorCode::InvalidInput);
    CHECK(faultOf({5, 0, 0}, 1, 1, 1) == ErrorCode::InvalidInput);
    CHECK(faultOf({}, 0, 0, 1) == ErrorCode::InvalidInput);
}

TEST_CASE("a run shifted and shifted back stands as it stood, and no value is ever lost") {
    std::mt19937_64 dice(21);
    int moved = 0;
    for (int run = 0; run < 3000; ++run) {
        Values values(3 + dice() % 12);
        int next = 0;
        for (int& value : values) {
            value = dice() % 3 == 0 ? 0 : ++next;
        }
        const std::size_t first = dice() % values.size();
        const std::size_t last = first + dice() % (values.size() - first);
        const int by = dice() % 2 == 0 ? 1 : -1;
        const auto there = shiftRun(isThere(values), first, last, by);
        if (!there.ok()) {
            continue;
        }
        const Values then = after(values, *there);
        std::vector<int> kept;
        for (const int value : then) {
            if (value != 0) {
                kept.push_back(value);
            }
        }
        REQUIRE(kept.size() == static_cast<std::size_t>(next));
        for (std::size_t i = 0; i < kept.size(); ++i) {
            REQUIRE(kept[i] == static_cast<int>(i) + 1); // and their order is the same
        }
        // Back goes what was moved; a value that stood beside the run stays where it is.
        std::vector<std::size_t> came;
        for (const Moved& change : *there) {
            if (change.from) {
                came.push_back(change.to);
            }
        }
        const auto back = shiftRun(isThere(then), came.front(), came.back(), -by);
        REQUIRE(back.ok());
        REQUIRE(after(then, *back) == values);
        ++moved;
    }
    CHECK(moved > 500);
}

} // namespace bullace::walk
