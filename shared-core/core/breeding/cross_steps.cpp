#include "core/breeding/cross_steps.hpp"

#include <array>

namespace bullace::breeding {

namespace {

constexpr std::array<std::string_view, 6> kSteps{
    "emasculated", "bagged", "pollinated", "bag-off", "set", "harvested"};
constexpr int kPerfect = 3;

} // namespace

std::optional<std::string_view> nextCrossStep(const std::set<std::string, std::less<>>& done,
                                              std::optional<int> flowerSex) {
    // The last step that is done says how far the cross is: what was not noted before it is past.
    std::size_t next = flowerSex == kPerfect ? 0 : 1;
    for (std::size_t i = 0; i < kSteps.size(); ++i) {
        const bool isDone =
            done.count(kSteps[i]) > 0 ||
            (kSteps[i] == "pollinated" && done.count(std::string_view("re-pollinated")) > 0);
        next = isDone ? i + 1 : next;
    }
    return next < kSteps.size() ? std::optional(kSteps[next]) : std::nullopt;
}

bool isAboutToLoseCaps(int stage) {
    return stage >= 55 && stage <= 60;
}

} // namespace bullace::breeding
