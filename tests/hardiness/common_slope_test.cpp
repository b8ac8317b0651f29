// Accessions compared by curves of one slope, and what dies without frost.
#include "core/hardiness/common_slope.hpp"

#include "core/hardiness/natural_mortality.hpp"
#include "core/statistics/adjust.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace bullace;
using namespace bullace::hardiness;

namespace {

struct Row {
    const char* group;
    double x;
    int counted, dead;
};
struct ExpectedGroup {
    double x50, error, g, low, high;
};
struct ExpectedDifference {
    const char* one;
    const char* other;
    double x50, error, z, p;
};
struct Expected {
    const char* name;
    const std::vector<Row>& rows;
    Link link;
    std::vector<std::string> groups;
    std::vector<double> intercepts;
    double slope, slopeError, logLikelihood, deviance;
    int degreesOfFreedom;
    double pearson;
    std::vector<ExpectedGroup> points;
    std::vector<ExpectedDifference> differences;
    struct {
        double statistic;
        int degreesOfFreedom;
        double p;
    } parallelism;
};

// Collett 1991 (budworms, log2 of the dose); Venables & Ripley 2002, p. 193, print 3.264 (0.2297)
// for the females, from memory. The buds are invented (degrees of frost). Expected: an independent
// program's generalised linear model.
const std::vector<Row> kBudworms{{"M", 0, 20, 1},
                                 {"M", 1, 20, 4},
                                 {"M", 2, 20, 9},
                                 {"M", 3, 20, 13},
                                 {"M", 4, 20, 18},
                                 {"M", 5, 20, 20},
                                 {"F", 0, 20, 0},
                                 {"F", 1, 20, 2},
                                 {"F", 2, 20, 6},
                                 {"F", 3, 20, 10},
                                 {"F", 4, 20, 12},
                                 {"F", 5, 20, 16}};
const std::vector<Row> kBuds{
    {"Acc1", 10, 30, 1},    {"Acc1", 12.5, 30, 3},  {"Acc1", 15, 30, 16},   {"Acc1", 17.5, 30, 23},
    {"Acc1", 20, 30, 29},   {"Acc1", 22.5, 30, 30}, {"Acc1", 25, 30, 30},   {"Acc2", 10, 30, 0},
    {"Acc2", 12.5, 30, 0},  {"Acc2", 15, 30, 4},    {"Acc2", 17.5, 30, 15}, {"Acc2", 20, 30, 26},
    {"Acc2", 22.5, 30, 30}, {"Acc2", 25, 30, 30},   {"Acc3", 10, 30, 0},    {"Acc3", 12.5, 30, 0},
    {"Acc3", 15, 30, 0},    {"Acc3", 17.5, 30, 7},  {"Acc3", 20, 30, 21},   {"Acc3", 22.5, 30, 28},
    {"Acc3", 25, 30, 29},   {"Acc4", 10, 30, 0},    {"Acc4", 12.5, 30, 0},  {"Acc4", 15, 30, 0},
    {"Acc4", 17.5, 30, 1},  {"Acc4", 20, 30, 8},    {"Acc4", 22.5, 30, 24}, {"Acc4", 25, 30, 29}};
const std::vector<Expected> kExpected{
    {"budworm logit",
     kBudworms,
     Link::Logit,
     {"F", "M"},
     {-3.47315530708714, -2.37241194409178},
     1.06421396991937,
     0.131077489527272,
     -18.4337326168227,
     6.75706423222892,
     9,
     5.30601705871151,
     {{3.26358740371571, 0.229753893107763, 0.0582766395396393, 2.81221727915175, 3.74063947528828},
      {2.22926217015506,
       0.225964947720875,
       0.0582766395396393,
       1.76849319745559,
       2.68129685782677}},
     {{"F", "M", 1.03432523356065, 0.322941657445196, 3.20282382193501, 0.00136087206374019}},
     {1.76333692460857, 1, 0.184208841412573}},
    {"budworm probit",
     kBudworms,
     Link::Probit,
     {"F", "M"},
     {-2.06033037520083, -1.40668513171855},
     0.632448795426247,
     0.0697487416925253,
     -17.8381821441639,
     5.56596328691128,
     9,
     4.52473726666051,
     {{3.25770305849385, 0.224069119634311, 0.0467216526914369, 2.82126693266877, 3.72127781314015},
      {2.22418817442841,
       0.218953482461338,
       0.0467216526914369,
       1.77981358598359,
       2.65892952645995}},
     {{"F", "M", 1.03351488406544, 0.314339690772498, 3.28789177569509, 0.00100940634457459}},
     {1.79800081256712, 1, 0.179954374917164}},
    {"buds logit",
     kBuds,
     Link::Logit,
     {"Acc1", "Acc2", "Acc3", "Acc4"},
     {-12.318831921859, -14.1418148008051, -15.4918691090517, -17.050356467761},
     0.808103702903149,
     0.0598633159585458,
     -29.1819662161433,
     11.2666315604111,
     23,
     9.95387981286054,
     {{15.2441226015956, 0.321574407467209, 0.0210806271879108, 14.6064462744026, 15.880495858088},
      {17.5, 0.320999211234696, 0.0210806271879108, 16.864114979249, 18.135885020751},
      {19.1706448731722, 0.321781637687753, 0.0210806271879108, 18.5335369954999, 19.8084071082604},
      {21.0992183385707,
       0.323665644776194,
       0.0210806271879108,
       20.4600395596642,
       21.7423799565408}},
     {{"Acc1",
       "Acc2",
       -2.25587739840436,
       0.45436834523455,
       -4.96486478880885,
       6.87489498417235e-07},
      {"Acc1",
       "Acc3",
       -3.92652227157652,
       0.454926990802212,
       -8.63110422323492,
       6.07624843774175e-18},
      {"Acc1",
       "Acc4",
       -5.85509573697507,
       0.456289663126244,
       -12.8319710266044,
       1.08566586612871e-37},
      {"Acc2",
       "Acc3",
       -1.67064487317216,
       0.454515033817704,
       -3.67566471704921,
       0.000237230918084845},
      {"Acc2",
       "Acc4",
       -3.5992183385707,
       0.455850790524362,
       -7.89560622332265,
       2.88907493938952e-15},
      {"Acc3",
       "Acc4",
       -1.92857346539854,
       0.456385201001505,
       -4.22575811215268,
       2.38137688113825e-05}},
     {2.61943358593473, 3, 0.454092769785163}},
    {"buds probit",
     kBuds,
     Link::Probit,
     {"Acc1", "Acc2", "Acc3", "Acc4"},
     {-6.80873360025334, -7.80874348717036, -8.59018003398143, -9.4157507958223},
     0.446213913552592,
     0.0294494835610274,
     -29.1288946281834,
     11.1604883844913,
     23,
     12.757973248395,
     {{15.258900257154, 0.321912496904535, 0.0167326733266399, 14.6223097750176, 15.8948753483316},
      {17.5, 0.321554293606813, 0.0167326733266399, 16.864425301776, 18.135574698224},
      {19.2512599295472, 0.32171824345373, 0.0167326733266399, 18.6155176791678, 19.8873152309729},
      {21.1014280591511,
       0.323799267343434,
       0.0167326733266399,
       20.4629319364445,
       21.7429596292815}},
     {{"Acc1", "Acc2", -2.241099742846, 0.454999801538736, -4.92549608871688, 8.4146594006574e-07},
      {"Acc1",
       "Acc3",
       -3.99235967239316,
       0.455117273530781,
       -8.77215589164656,
       1.75277505410853e-18},
      {"Acc1",
       "Acc4",
       -5.84252780199713,
       0.456604500144677,
       -12.7955983792229,
       1.73510817992843e-37},
      {"Acc2",
       "Acc3",
       -1.75125992954716,
       0.454862387880038,
       -3.85008735874864,
       0.000118075702889132},
      {"Acc2",
       "Acc4",
       -3.60142805915113,
       0.456336640287761,
       -7.89204228019058,
       2.97280971624766e-15},
      {"Acc3",
       "Acc4",
       -1.85016812960397,
       0.456444352868903,
       -4.05343634547137,
       5.04707374659273e-05}},
     {3.14342170070865, 3, 0.370036592239139}},
    {"buds cloglog",
     kBuds,
     Link::ComplementaryLogLog,
     {"Acc1", "Acc2", "Acc3", "Acc4"},
     {-7.9196717727417, -8.86519130290067, -9.84233668515138, -10.5767060560923},
     0.476473381242343,
     0.0316804850553913,
     -40.7990864403885,
     34.5008720089014,
     23,
     111.923392958536,
     {{15.8522157784893, 0.331747134362611, 0.0169825358587725, 15.1864148549289, 16.4981747219096},
      {17.8366278514023, 0.329407336126373, 0.0169825358587725, 17.1770150946991, 18.4794819783619},
      {19.8874147803655, 0.327416593824432, 0.0169825358587725, 19.2317877344734, 20.5263832970035},
      {21.4286747958278,
       0.327589385424125,
       0.0169825358587725,
       20.7723449162246,
       22.0676329472901}},
     {{"Acc1",
       "Acc2",
       -1.98441207291298,
       0.464868391715134,
       -4.26876102630141,
       1.96561715567725e-05},
      {"Acc1",
       "Acc3",
       -4.03519900187621,
       0.463475743174362,
       -8.70638660448331,
       3.1371551318173e-18},
      {"Acc1",
       "Acc4",
       -5.57645901733846,
       0.463484775642991,
       -12.0315904866611,
       2.42444726289504e-33},
      {"Acc2",
       "Acc3",
       -2.05078692896323,
       0.462215542403725,
       -4.43686276384872,
       9.12794462738951e-06},
      {"Acc2",
       "Acc4",
       -3.59204694442548,
       0.462242216660814,
       -7.77091926041292,
       7.79185558273163e-15},
      {"Acc3",
       "Acc4",
       -1.54126001546225,
       0.460839645006067,
       -3.34446055621357,
       0.00082442751838703}},
     {5.57155358399531, 3, 0.134421010242813}}};

std::vector<DoseGroup> groupsOf(const std::vector<Row>& rows) {
    std::vector<DoseGroup> groups;
    for (const Row& row : rows) {
        if (groups.empty() || groups.back().name != row.group) {
            groups.push_back({row.group, {}});
        }
        groups.back().rows.push_back({row.x, row.counted, row.dead});
    }
    return groups;
}

bool agrees(double found, double expected, double relative = 1e-7) {
    return std::abs(found - expected) <= 1e-9 + relative * std::abs(expected);
}

void checkGroups(const CommonSlope& fit, const Expected& expected) {
    REQUIRE(fit.groups.size() == expected.groups.size());
    for (std::size_t i = 0; i < fit.groups.size(); ++i) {
        const CommonSlope::Group& group = fit.groups[i];
        const ExpectedGroup& point = expected.points[i];
        CAPTURE(group.name);
        CHECK(group.name == expected.groups[i]);
        CHECK(agrees(group.intercept, expected.intercepts[i]));
        CHECK(agrees(group.x50, point.x50));
        CHECK(agrees(group.error, point.error));
        CHECK(agrees(group.g, point.g));
        REQUIRE(group.fieller);
        CHECK(agrees(group.fieller->low, point.low));
        CHECK(agrees(group.fieller->high, point.high));
    }
}

} // namespace

TEST_CASE("accessions with one slope: intercepts, LT50s, all differences and parallelism") {
    for (const Expected& expected : kExpected) {
        CAPTURE(expected.name);
        const auto compared = compareBySlope(groupsOf(expected.rows), expected.link);
        REQUIRE(compared.ok());
        REQUIRE(compared->fit);
        const CommonSlope& fit = *compared->fit;
        CHECK(agrees(fit.slope, expected.slope));
        CHECK(agrees(fit.slopeError, expected.slopeError));
        CHECK(agrees(fit.logLikelihood, expected.logLikelihood));
        CHECK(agrees(fit.goodness.deviance, expected.deviance));
        CHECK(fit.goodness.degreesOfFreedom == expected.degreesOfFreedom);
        CHECK(agrees(fit.goodness.pearson, expected.pearson));
        checkGroups(fit, expected);
        REQUIRE(fit.differences.size() == expected.differences.size());
        for (std::size_t i = 0; i < fit.differences.size(); ++i) {
            const ExpectedDifference& difference = expected.differences[i];
            CHECK(fit.differences[i].one == difference.one);
            CHECK(fit.differences[i].other == difference.other);
            CHECK(agrees(fit.differences[i].x50, difference.x50));
            CHECK(agrees(fit.differences[i].error, difference.error));
            CHECK(agrees(fit.differences[i].z, difference.z));
            CHECK(agrees(fit.differences[i].p, difference.p, 2e-7));
        }
        REQUIRE(fit.parallelism);
        CHECK(agrees(fit.parallelism->statistic, expected.parallelism.statistic));
        CHECK(fit.parallelism->degreesOfFreedom == expected.parallelism.degreesOfFreedom);
        CHECK(agrees(fit.parallelism->p, expected.parallelism.p));
    }
}

TEST_CASE("an accession of which nothing died is left out by name, one that is separated is not") {
    std::vector<DoseGroup> groups = groupsOf(kBuds);
    groups.push_back({"Hardy", {{10, 30, 0}, {20, 30, 0}}});
    groups.push_back({"Sudden", {{10, 30, 0}, {15, 30, 0}, {20, 30, 30}}});
    const auto compared = compareBySlope(groups, Link::Logit);
    REQUIRE(compared.ok());
    REQUIRE(compared->fit);
    REQUIRE(compared->leftOut.size() == 1);
    CHECK(compared->leftOut[0].first == "Hardy");
    CHECK(compared->leftOut[0].second == Overlap::NoneDead);
    REQUIRE(compared->fit->groups.size() == 5);
    CHECK(compared->fit->groups[4].name == "Sudden");
    CHECK(compared->fit->groups[4].x50 > 15);
    CHECK(compared->fit->groups[4].x50 < 20);
    CHECK(compared->fit->parallelism->degreesOfFreedom == 4);
}

TEST_CASE("separated accessions alone have no common slope, and one accession has no comparison") {
    const std::vector<DoseRow> sudden{{10, 30, 0}, {15, 30, 30}};
    const auto lackOf = [](const std::vector<DoseGroup>& groups) {
        const auto compared = compareBySlope(groups, Link::Logit);
        REQUIRE(compared.ok());
        CHECK_FALSE(compared->fit.has_value());
        return compared->lack;
    };
    using Lack = SlopeComparison::Lack;
    CHECK(lackOf({{"a", sudden}, {"b", sudden}}) == Lack::NoFiniteSlope);
    CHECK(lackOf({{"a", sudden}}) == Lack::TooFewGroups);
    CHECK(lackOf({}) == Lack::TooFewGroups);
    const std::vector<DoseRow> backwards{{10, 30, 20}, {15, 30, 5}};
    CHECK(lackOf({{"a", backwards}, {"b", backwards}}) == Lack::NoRise);
    CHECK_FALSE(compareBySlope({{"a", sudden}, {"a", sudden}}, Link::Logit).ok());
}

// The data are invented; values by an independent program (method: Abbott 1925; Finney 1971).
TEST_CASE("buds that are dead without frost are told from those that the frost killed") {
    const std::vector<DoseRow> rows{{10, 40, 1},
                                    {12, 40, 2},
                                    {14, 40, 4},
                                    {16, 40, 10},
                                    {18, 40, 17},
                                    {20, 40, 32},
                                    {22, 40, 40},
                                    {24, 40, 39},
                                    {26, 40, 40}};
    const std::vector<double> half{0.5};
    const auto found = fitNaturalMortality(rows, {80, 5}, Link::Logit, half);
    REQUIRE(found);
    CHECK(agrees(found->fit.intercept, -14.1317334552645, 1e-5));
    CHECK(agrees(found->fit.slope, 0.777111111256452, 1e-5));
    CHECK(agrees(found->fit.natural, 0.051929784688906, 1e-5));
    CHECK(agrees(found->fit.interceptError, 2.11089494432708, 1e-4));
    CHECK(agrees(found->fit.slopeError, 0.111576448941648, 1e-4));
    CHECK(agrees(found->fit.naturalError.value(), 0.0183585709030936, 1e-4));
    CHECK(std::abs(found->fit.logLikelihood - -15.9585382333026) < 1e-6);
    CHECK(agrees(-found->points[0].x, -18.18495868939, 1e-5));
    CHECK(agrees(found->points[0].error, 0.305842858355573, 1e-4));
    // Ten rows with the control, three parameters; the deviance is twice what a perfect fit adds.
    CHECK(found->fit.goodness.degreesOfFreedom == 7);
    std::vector<DoseRow> apart = rows;
    apart.push_back({0, 80, 5});
    CHECK(found->fit.goodness.deviance ==
          doctest::Approx(2 * (supremumLogLikelihood(apart) - found->fit.logLikelihood))
              .epsilon(1e-9));
    CHECK(found->points[0].profile.holds(found->points[0].x));
    CHECK(found->fit.naturalLimits.holds(found->fit.natural));
}

TEST_CASE("with nothing dead in the control and at mild frost the curve is the plain one") {
    const std::vector<DoseRow> rows{
        {10, 30, 0}, {15, 30, 0}, {17.5, 30, 7}, {20, 30, 21}, {25, 30, 30}};
    const auto found = fitNaturalMortality(rows, {60, 0}, Link::Logit, std::vector{0.5});
    const auto plain = fitDoses(rows, Link::Logit);
    REQUIRE(found);
    REQUIRE(plain);
    CHECK(found->fit.natural < 1e-6);
    CHECK(found->fit.naturalLimits.high < 0.05);
    CHECK(found->points[0].x == doctest::Approx(pointOf(rows, *plain, 0.5).x).epsilon(1e-6));
}

// Holm 1979: four tests; the products by hand.
TEST_CASE("probabilities of several tests are adjusted step by step") {
    const std::vector<double> adjusted =
        statistics::holm(std::vector<double>{0.01, 0.04, 0.03, 0.005});
    CHECK(adjusted[0] == doctest::Approx(0.03));
    CHECK(adjusted[1] == doctest::Approx(0.06));
    CHECK(adjusted[2] == doctest::Approx(0.06));
    CHECK(adjusted[3] == doctest::Approx(0.02));
    CHECK(statistics::holm({}).empty());
}
