// Split-plot trials and nested variance components.
#include "core/trials/split_plot.hpp"

#include "trials/case_table.hpp"

#include "core/trials/nested_components.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>

using namespace bullace;
using namespace bullace::trials;
using bullace::test::CheckCase;
using bullace::test::tableOf;
using bullace::test::trialTable;

namespace {

void checkStratum(CheckCase& check,
                  const std::string& path,
                  const std::vector<VarianceLine>& lines) {
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const std::string at = "strata." + path + "." + std::to_string(i) + ".";
        CHECK(check.agrees(at + "df", static_cast<double>(lines[i].degreesOfFreedom)));
        CHECK(check.agrees(at + "ss", lines[i].sumOfSquares));
        CHECK(check.agrees(at + "ms", lines[i].meanSquare));
        if (lines[i].term != "Residuals") {
            CHECK(check.agrees(at + "F", lines[i].f));
            CHECK(check.agrees(at + "p", lines[i].p));
        }
    }
}

bool says(const Remarks& remarks, const std::string& words) {
    return std::ranges::any_of(remarks, [&words](const Remark& remark) {
        return inEnglish(remark).find(words) != std::string::npos;
    });
}

} // namespace

// Yates 1935, J. R. Stat. Soc. Suppl. 2:181-247; Venables & Ripley 2002, §10.2, print F of 1.485,
// 37.69 and 0.303 and error mean squares of 601.3 and 177.1.
TEST_CASE("Yates's oats have their strata and the four errors of a difference") {
    auto check = CheckCase::open("splitplot-oats");
    if (!check) {
        return;
    }
    const auto result = analyseSplitPlot(tableOf(*check), {"block", "W", "S"});
    REQUIRE(result.ok());
    checkStratum(*check, "block", result->blocks);
    checkStratum(*check, "wholeplot", result->wholePlots);
    checkStratum(*check, "subplot", result->subPlots);
    CHECK(check->agrees("error_a.ms", result->wholePlots.back().meanSquare));
    CHECK(check->agrees("error_a.df", result->betweenWholePlots->degreesOfFreedom));
    CHECK(check->agrees("error_b.ms", result->subPlots.back().meanSquare));
    CHECK(check->agrees("error_b.df", result->betweenSubPlots->degreesOfFreedom));
    CHECK(check->agrees("sed.W", result->betweenWholePlots->standardError));
    CHECK(check->agrees("sed.S", result->betweenSubPlots->standardError));
    CHECK(check->agrees("sed.S_within_W", result->subWithinWhole->standardError));
    CHECK(check->agrees("sed.W_at_S", result->wholeAtSub->standardError));
    CHECK(check->agrees("satterthwaite_df_W_at_S", result->wholeAtSub->degreesOfFreedom));
    for (const AdjustedMean& mean : result->wholePlotMeans->means.levels) {
        CHECK(check->agrees("means_W." + mean.level, mean.mean->value));
    }
    for (const AdjustedMean& mean : result->subPlotMeans->means.levels) {
        CHECK(check->agrees("means_S." + mean.level, mean.mean->value));
    }
    CHECK(check->agrees("varcomp_from_ms.subplot", result->subPlotVariance));
    CHECK(check->agrees("varcomp_from_ms.wholeplot", result->wholePlotVariance));
    CHECK(check->agrees("varcomp_from_ms.block", result->blockVariance));
    CHECK(check->unasked().empty());
    CHECK(result->combinations->levels.size() == 12);
    CHECK(result->subPlotMeans->comparisons.letters.size() == 4);
}

TEST_CASE("a split plot with a lost vine says what it cannot give") {
    const TrialTable table = trialTable("block,w,s,y\n1,a,x,4\n1,a,z,5.5\n1,b,x,6\n1,b,z,8\n"
                                        "2,a,x,5\n2,a,z,6\n2,b,x,6.5\n2,b,z,\n"
                                        "3,a,x,4.4\n3,a,z,5.1\n3,b,x,7\n3,b,z,8.2\n",
                                        "y");
    const auto result = analyseSplitPlot(table, {"block", "w", "s"});
    REQUIRE(result.ok());
    CHECK(result->n == 11);
    CHECK(result->leftOut == 1);
    CHECK(result->subPlots.front().p);
    CHECK_FALSE(result->wholeAtSub);
    CHECK(says(result->remarks, "Not every block holds every combination"));
}

TEST_CASE("a split plot recorded twice, or of one whole plot, is refused in plain words") {
    const auto twice = analyseSplitPlot(trialTable("block,w,s,y\n1,a,x,4\n1,a,x,5\n2,b,z,6\n", "y"),
                                        {"block", "w", "s"});
    CHECK(twice.error().message ==
          "The combination 1:a:x (block:w:s) is recorded more than once: give one value of each "
          "part of a whole plot.");
    const auto one =
        analyseSplitPlot(trialTable("block,w,s,y\n1,a,x,4\n2,a,z,5\n", "y"), {"block", "w", "s"});
    CHECK(one.error().message.starts_with("There is only one w"));
    CHECK_FALSE(analyseSplitPlot(trialTable("block,w,s,y\n1,a,x,4\n", "y"), {"block", "w", "q"}));
}

// Davies & Goldsmith 1972, dyestuff (balanced): by Searle, Casella & McCulloch 1992 the moments are
// those of REML where none is below 0; the checks' REML values are met to the tolerance of these.
TEST_CASE("balanced variance components by moments are those of maximum likelihood") {
    auto check = CheckCase::open("reml-dyestuff");
    auto nested = CheckCase::open("reml-pastes-nested");
    if (!check || !nested) {
        return;
    }
    const auto factorNames = [](const TrialTable& table) {
        std::vector<std::string> names;
        for (const Factor& factor : table.factors) {
            names.push_back(factor.name);
        }
        return names;
    };
    for (CheckCase* each : {&*check, &*nested}) {
        const auto& expected = each->expected()["varcomp"];
        const TrialTable table = tableOf(*each);
        std::vector<std::string> names = factorNames(table);
        std::ranges::sort(
            names, {}, [&](const std::string& name) { return table.factor(name)->levels.size(); });
        std::erase_if(names, [&](const std::string& name) { return !expected.contains(name); });
        const auto result = nestedComponents(table, names);
        REQUIRE(result.ok());
        for (std::size_t i = 0; i + 1 < result->levels.size(); ++i) {
            CHECK(*result->levels[i].variance ==
                  doctest::Approx(expected[result->levels[i].name].get<double>()).epsilon(1e-6));
        }
        CHECK(*result->levels.back().variance ==
              doctest::Approx(expected["residual"].get<double>()).epsilon(1e-6));
    }
}

// The expected sums of squares themselves: with each record's y a unit vector, y'Qy has the
// diagonal of Q, so that the coefficients are summed up without their formula.
TEST_CASE("unequal nested numbers have unbiased components") {
    auto check = CheckCase::open("varcomp-vines-nested");
    if (!check) {
        return;
    }
    const TrialTable table = tableOf(*check);
    const auto result = nestedComponents(table, {"accession", "vine"});
    REQUIRE(result.ok());
    REQUIRE(result->levels.size() == 3);
    CHECK(result->n == 130);
    // Σ over the levels of a factor of S(indicator), which is what one unit of its variance adds to
    // the expectation of each estimate: 1 to its own, 0 to the others.
    for (const std::string name : {"accession", "vine"}) {
        const Factor& factor = *table.factor(name);
        std::map<std::string, double> added;
        for (std::uint32_t level = 0; level < factor.levels.size(); ++level) {
            TrialTable unit = table;
            for (std::size_t row = 0; row < table.rows(); ++row) {
                unit.response[row] = factor.of[row] == level ? 1.0 : 0.0;
            }
            const auto estimate = nestedComponents(unit, {"accession", "vine"});
            for (const auto& each : estimate->levels) {
                added[each.name] += *each.variance;
            }
        }
        for (const auto& [of, sum] : added) {
            CHECK(sum == doctest::Approx(of == name ? 1.0 : 0.0).epsilon(1e-9));
        }
    }
    // Near what REML makes of the same records: accession 2.20, vine 1.00, within 0.90.
    CHECK(std::abs(*result->levels[0].variance - 2.198) < 0.4);
    CHECK(std::abs(*result->levels[1].variance - 0.997) < 0.15);
    CHECK(std::abs(*result->levels[2].variance - 0.898) < 0.05);
}
