// Dead buds, what to leave at pruning, winters side by side, and scales of severity.
#include "core/hardiness/bud_injury.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <rapidcheck.h>
#include <vector>

using namespace bullace;
using namespace bullace::hardiness;

namespace {

bool says(const Remarks& remarks, const std::string& words) {
    return std::ranges::any_of(remarks, [&](const Remark& remark) {
        return inEnglish(remark).find(words) != std::string::npos;
    });
}

// P(at most / at least k of n), summed directly.
double binomialBetween(int from, int to, int n, double p) {
    double sum = 0;
    for (int k = from; k <= to; ++k) {
        sum += std::exp(std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0) +
                        k * std::log(p) + (n - k) * std::log1p(-p));
    }
    return sum;
}

BudInjury injuryOf(std::int64_t dead, std::int64_t counted) {
    const auto injury = budInjury({dead, counted}, {}, {});
    REQUIRE(injury.ok());
    return *injury;
}

} // namespace

TEST_CASE("exact limits leave 2.5 % in either tail, and Wilson's solve his equation") {
    const auto share = deadShare({7, 40});
    REQUIRE(share.ok());
    CHECK((*share)->percent == doctest::Approx(17.5));
    CHECK(binomialBetween(7, 40, 40, (*share)->clopperPearson.low / 100) ==
          doctest::Approx(0.025).epsilon(1e-9));
    CHECK(binomialBetween(0, 7, 40, (*share)->clopperPearson.high / 100) ==
          doctest::Approx(0.025).epsilon(1e-9));
    for (const double limit : {(*share)->wilson.low / 100, (*share)->wilson.high / 100}) {
        CHECK(std::abs(0.175 - limit) / std::sqrt(limit * (1 - limit) / 40) ==
              doctest::Approx(1.959964).epsilon(1e-6));
    }
}

TEST_CASE("none dead, all dead, none counted and more dead than counted") {
    CHECK((*deadShare({0, 30}))->clopperPearson.low == 0);
    // 1 - 0.025^(1/30), the closed form.
    CHECK((*deadShare({0, 30}))->clopperPearson.high ==
          doctest::Approx(100 * (1 - std::pow(0.025, 1 / 30.0))).epsilon(1e-9));
    CHECK((*deadShare({30, 30}))->wilson.high == 100);
    CHECK_FALSE(deadShare({0, 0})->has_value());
    CHECK(deadShare({31, 30}).error().message ==
          "There are more dead (31) than counted (30), or less than none.");
}

// Cornell University 2014: 35 % of buds injured, leave 35 % more; less than 20 %, no adjustment.
TEST_CASE("pruning is corrected by the rule of thumb, and by the count that restores living buds") {
    const BudInjury third = injuryOf(35, 100);
    CHECK(third.pruning->ruleOfThumbPercent == 35.0);
    CHECK(third.pruning->restoringPercent->value == doctest::Approx(53.846).epsilon(1e-4));
    CHECK(third.pruning->restoringPercent->interval->holds(53.846));
    CHECK(injuryOf(19, 100).pruning->ruleOfThumbPercent == 0.0);
    CHECK(injuryOf(20, 100).pruning->ruleOfThumbPercent == 20.0);
    CHECK(injuryOf(80, 100).pruning->ruleOfThumbPercent == 80.0);
    CHECK(injuryOf(81, 100).pruning->isLeastPruning);
    CHECK_FALSE(injuryOf(81, 100).pruning->ruleOfThumbPercent);
    CHECK_FALSE(injuryOf(100, 100).pruning->restoringPercent);
    CHECK_FALSE(injuryOf(0, 0).pruning);
    CHECK(says(third.remarks, "local extension advice comes first"));
    CHECK(says(injuryOf(3, 20).remarks, "20 primary buds were cut"));
}

TEST_CASE("winters are listed by their cold, with no killing temperature") {
    const auto table = injuryByWinter(std::vector<WinterInjury>{{"2022/23", -9, {5, 100}},
                                                                {"2023/24", -15, {60, 100}},
                                                                {"2024/25", -12, {2, 100}},
                                                                {"2025/26", -13, {0, 0}}});
    REQUIRE(table.ok());
    REQUIRE(table->rows.size() == 3);
    CHECK(table->rows[0].winter == "2023/24");
    // Of three pairs two agree and one does not.
    CHECK(table->rankAgreement.value() == doctest::Approx(1 / 3.0));
    CHECK(table->leftOut == 1);
    CHECK(says(table->remarks, "these are no killing temperatures"));
    const auto few = injuryByWinter(std::vector<WinterInjury>{{"2022/23", -9, {5, 100}}});
    CHECK_FALSE(few->rankAgreement);
    CHECK(injuryByWinter(std::vector<WinterInjury>{{"2022/23", -9, {5, 1}}}).error().message ==
          "Winter 2022/23: more are injured than were counted.");
}

TEST_CASE("spurs, cordon and trunk are summed up apart, each with its own n") {
    const auto summary = vineInjury(std::vector<VineInjury>{
        {20.0, 0.0, 0}, {40.0, {}, 1}, {{}, 100.0, 3}, {{}, {}, 2}, {{}, {}, {}}});
    REQUIRE(summary.ok());
    CHECK(summary->deadSpursPercent->value == doctest::Approx(30));
    CHECK(summary->spursScored == 2);
    CHECK(summary->deadSpursPercent->interval->low == 0);
    CHECK(summary->trunks == std::array<std::size_t, 4>{1, 1, 1, 1});
    CHECK(summary->killedToGround->percent == 50);
    CHECK_FALSE(vineInjury(std::vector<VineInjury>{{120.0, {}, {}}}).ok());
    CHECK_FALSE(vineInjury({})->deadSpursPercent);
}

// Horsfall & Barratt 1945, as in an open textbook on the epidemiology of plant diseases, with its
// twelve scores of 40.2778.
TEST_CASE("grades of Horsfall and Barratt, and the severity index") {
    const std::vector<double> middles{0, 1.5, 4.5, 9, 18.5, 37.5, 62.5, 81.5, 91, 95.5, 98.5, 100};
    for (int grade = 0; grade < 12; ++grade) {
        CHECK(horsfallBarrattMidpoint(grade) == middles[static_cast<std::size_t>(grade)]);
    }
    CHECK_FALSE(horsfallBarrattMidpoint(12));
    CHECK_FALSE(horsfallBarrattMidpoint(-1));
    const std::vector<int> scores{2, 3, 1, 1, 3, 4, 5, 0, 2, 5, 2, 1};
    CHECK(std::abs(severityIndex(scores, 6).value() - 40.2778) < 1e-4);
    CHECK_FALSE(severityIndex(scores, 4));
    CHECK_FALSE(severityIndex({}, 6));
}

TEST_CASE("the exact limits hold the Wilson limits' centre and the share, of any counts") {
    CHECK(rc::check([] {
        const int counted = *rc::gen::inRange(1, 400);
        const int dead = *rc::gen::inRange(0, counted + 1);
        const auto share = deadShare({dead, counted});
        RC_ASSERT(share.ok() && share->has_value());
        RC_ASSERT((*share)->clopperPearson.holds((*share)->percent));
        RC_ASSERT((*share)->wilson.low <= (*share)->percent + 1e-9);
        RC_ASSERT((*share)->wilson.high >= (*share)->percent - 1e-9);
        RC_ASSERT((*share)->clopperPearson.low >= 0 && (*share)->clopperPearson.high <= 100);
    }));
}
