// Selections within a limit on kinship against trying all, and chances of being among the best.
#include "core/breeding/selection.hpp"

#include "core/statistics/distributions.hpp"

#include <doctest/doctest.h>

#include <bit>
#include <cmath>
#include <random>
#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::breeding;

namespace {

struct Case {
    std::vector<double> merits;
    std::vector<double> kinship;
    SelectionLimits limits;
};

Case randomCase(std::mt19937_64& dice) {
    Case made;
    const std::size_t n = 2 + dice() % 8;
    std::vector<std::size_t> family;
    for (std::size_t i = 0; i < n; ++i) {
        made.merits.push_back(static_cast<double>(dice() % 30));
        family.push_back(dice() % 3);
    }
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) {
            made.kinship.push_back(i == j ? 0.5 : family[i] == family[j] ? 0.25 : 0);
        }
    }
    made.limits.selected = 1 + dice() % std::min<std::size_t>(n, 4);
    if (dice() % 2 == 0) {
        made.limits.mostKinship = 0.2;
    } else {
        made.limits.mostMeanKinship = 0.1 + static_cast<double>(dice() % 40) / 100;
    }
    return made;
}

std::optional<double> byTrying(const Case& of) {
    const std::size_t n = of.merits.size();
    std::optional<double> best;
    for (unsigned set = 0; set < 1U << n; ++set) {
        if (static_cast<std::size_t>(std::popcount(set)) != of.limits.selected) {
            continue;
        }
        double sum = 0;
        double mean = 0;
        bool isKept = true;
        for (std::size_t i = 0; i < n; ++i) {
            sum += (set >> i & 1U) != 0 ? of.merits[i] : 0;
            for (std::size_t j = 0; j < n; ++j) {
                const bool isPair = (set >> i & 1U) != 0 && (set >> j & 1U) != 0;
                mean += isPair ? of.kinship[i * n + j] : 0;
                isKept = isKept && !(isPair && i != j &&
                                     of.kinship[i * n + j] > of.limits.mostKinship.value_or(1));
            }
        }
        mean /= static_cast<double>(of.limits.selected * of.limits.selected);
        isKept = isKept && mean <= of.limits.mostMeanKinship.value_or(1) * (1 + 1e-6);
        best = isKept && (!best || sum > *best) ? sum : best;
    }
    return best;
}

} // namespace

TEST_CASE("the selection within a limit on kinship is the best of all") {
    CHECK(rc::check([](std::uint64_t seed) {
        std::mt19937_64 dice(seed);
        const Case of = randomCase(dice);
        const auto best = byTrying(of);
        const auto found = selectWithin(of.merits, of.kinship, of.limits);
        RC_ASSERT(found.ok());
        RC_ASSERT((found->status == ProgrammeStatus::Optimal) == best.has_value());
        RC_ASSERT((best ? found->selected.size() == of.limits.selected : !found->remarks.empty()));
        RC_ASSERT((!best || std::abs(found->sum - *best) < 1e-6));
    }));
}

TEST_CASE("taking the best one by one would end in one family") {
    // A1 is a half sib of A2 and of A3, which are not related: the two are worth more.
    const std::vector<double> merits{10, 9, 8};
    const std::vector<double> kinship{0.5, 0.125, 0.125, 0.125, 0.5, 0, 0.125, 0, 0.5};
    SelectionLimits limits;
    limits.selected = 2;
    limits.mostKinship = 0.1;
    const auto found = selectWithin(merits, kinship, limits);
    REQUIRE(found.ok());
    CHECK(found->selected == std::vector<std::size_t>{1, 2});
    CHECK(found->meanKinship == doctest::Approx(0.25));
}

TEST_CASE("wrong input of a selection is refused") {
    const std::vector<double> two{1, 2};
    SelectionLimits limits;
    limits.selected = 3;
    CHECK_FALSE(selectWithin(two, {}, limits).ok());
    limits.selected = 1;
    CHECK(selectWithin(two, {}, limits)->selected == std::vector<std::size_t>{1});
    limits.mostMeanKinship = 0.2;
    CHECK_FALSE(selectWithin(two, {}, limits).ok());
    CHECK_FALSE(selectWithin(two, std::vector{0.1, 1.0, 1.0, 0.1}, limits).ok());
    CHECK_FALSE(selectWithin(two, std::vector{0.5, 0.1, 0.2, 0.5}, limits).ok());
    CHECK_FALSE(selectWithin(std::vector{std::nan(""), 1.0}, {}, {}).ok());
}

TEST_CASE("the chance of the better of two is that of a normal difference") {
    const auto chances = amongBest(std::vector{1.0, 0.0}, std::vector{0.5, 1.0}, 1);
    REQUIRE(chances.ok());
    const double exact = statistics::normalBelow(1 / std::sqrt(1.5));
    CHECK(std::abs((*chances)[0].probability - exact) < 4 * (*chances)[0].standardError);
    CHECK((*chances)[0].probability + (*chances)[1].probability == doctest::Approx(1));
    // Errors in common do not change the order: difference of variance 1.5 - 2 × 0.6.
    const auto related = amongBest(std::vector{1.0, 0.0}, std::vector{0.5, 0.6, 0.6, 1.0}, 1);
    const double sure = statistics::normalBelow(1 / std::sqrt(0.3));
    CHECK(std::abs((*related)[0].probability - sure) < 4 * (*related)[0].standardError);
}

TEST_CASE("chances add up to the number of the best, and are sure without errors") {
    const std::vector<double> predictions{3, 1, 2, 5, 4};
    const auto chances = amongBest(predictions, std::vector<double>(5, 1.0), 2);
    double sum = 0;
    for (const AmongBest& of : *chances) {
        sum += of.probability;
    }
    CHECK(sum == doctest::Approx(2));
    const auto sure = amongBest(predictions, std::vector<double>(5, 0.0), 2, 100);
    CHECK((*sure)[3].probability == 1);
    CHECK((*sure)[0].probability == 0);
    CHECK(amongBest(predictions, std::vector<double>(5, 1.0), 5)->front().probability == 1);
    CHECK_FALSE(amongBest(predictions, std::vector<double>(5, -1.0), 2).ok());
    CHECK_FALSE(amongBest(predictions, std::vector<double>(4, 1.0), 2).ok());
    CHECK_FALSE(amongBest(predictions, std::vector<double>(5, 1.0), 6).ok());
}
