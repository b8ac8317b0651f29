// The list of stages, in words of our own; codes and their order after the source named in the
// header.
#include "core/descriptors/stages.hpp"

#include <algorithm>
#include <array>

namespace bullace::descriptors {

namespace {

constexpr std::array<Stage, 43> kStages{{
    {0, "dormant, bud scales shut"},
    {1, "buds swell inside their scales"},
    {3, "buds swollen, nothing green"},
    {5, "brown wool shows"},
    {7, "first green at the bud tip"},
    {9, "bud break, green tip plain to see"},
    {11, "first leaf open"},
    {12, "two leaves open"},
    {13, "three leaves open"},
    {14, "four leaves open"},
    {15, "five leaves open"},
    {16, "six leaves open"},
    {17, "seven leaves open"},
    {18, "eight leaves open"},
    {19, "nine leaves open or more"},
    {53, "flower clusters show"},
    {55, "flower clusters swell, buds tight together"},
    {57, "flower clusters full, buds apart"},
    {60, "first caps come loose"},
    {61, "bloom begins, a tenth of the caps off"},
    {62, "a fifth of the caps off"},
    {63, "three tenths of the caps off"},
    {64, "four tenths of the caps off"},
    {65, "full bloom, half of the caps off"},
    {66, "six tenths of the caps off"},
    {67, "seven tenths of the caps off"},
    {68, "eight tenths of the caps off"},
    {69, "bloom over"},
    {71, "fruit set, berries start to grow"},
    {73, "berries like shot, clusters begin to hang"},
    {75, "berries like peas, clusters hang"},
    {77, "berries begin to touch"},
    {79, "most berries touch"},
    {81, "colour or clearing begins"},
    {83, "berries turn colour"},
    {85, "berries go soft"},
    {89, "ripe to pick"},
    {91, "after picking, wood is ripe"},
    {92, "leaves begin to turn"},
    {93, "leaves begin to fall"},
    {95, "half of the leaves are down"},
    {97, "bare"},
    {99, "the picked crop"},
}};

} // namespace

std::span<const Stage> grapevineStages() {
    return kStages;
}

std::optional<std::size_t> stageStep(std::int64_t code) {
    const auto* const found = std::lower_bound(
        kStages.begin(), kStages.end(), code, [](const Stage& stage, std::int64_t wanted) {
            return stage.code < wanted;
        });
    if (found == kStages.end() || found->code != code) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - kStages.begin());
}

} // namespace bullace::descriptors
