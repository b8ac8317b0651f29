// One column, two columns, two samples: against values computed independently.
#include "core/statistics/description.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <map>
#include <string>
#include <vector>

using namespace bullace;
using namespace bullace::statistics;

namespace {

const double kMissing = std::numeric_limits<double>::quiet_NaN();

doctest::Approx near(double value) {
    return doctest::Approx(value).epsilon(1e-9);
}

struct Described {
    const char* name;
    // n, mean, sd, se, cv, 95 % of the mean, 99 % of the mean, 95 % of the variance, median,
    // quartiles, g1, g2, W, p of W
    std::vector<double> expected;
};
struct Paired {
    const char* x;
    const char* y;
    // n; r, t, p, z, its error, 95 %; rho, p; tau-b, z, p; intercept, its error, slope, its error,
    // t, p, r², residual SD
    std::vector<double> expected;
};

using Columns = std::map<std::string, std::vector<double>>;

std::vector<double> present(const std::vector<double>& column) {
    std::vector<double> kept;
    for (const double value : column) {
        if (!std::isnan(value)) {
            kept.push_back(value);
        }
    }
    return kept;
}

void checkDescribed(const Columns& columns, const Described& one) {
    INFO(one.name);
    const std::vector<double> values = present(columns.at(one.name));
    const auto of = describe(values);
    const auto wider = describe(values, 0.99);
    const auto normality = normalityOf(values);
    REQUIRE(of);
    REQUIRE(normality);
    const std::vector<double> found{static_cast<double>(of->n),
                                    of->mean,
                                    *of->sd,
                                    *of->standardError,
                                    *of->cvPercent,
                                    of->meanLimits->low,
                                    of->meanLimits->high,
                                    wider->meanLimits->low,
                                    wider->meanLimits->high,
                                    of->varianceLimits->low,
                                    of->varianceLimits->high,
                                    of->median,
                                    of->lowerQuartile,
                                    of->upperQuartile,
                                    *of->skewness,
                                    *of->excessKurtosis};
    for (std::size_t i = 0; i < found.size(); ++i) {
        INFO(i);
        CHECK(found[i] == near(one.expected[i]));
    }
    CHECK(normality->w == doctest::Approx(one.expected[16]).epsilon(1e-4));
    CHECK(std::abs(normality->p - one.expected[17]) < 1e-5 + 1e-4 * one.expected[17]);
}

void checkPaired(const Columns& columns, const Paired& one) {
    INFO(one.x << " and " << one.y);
    std::vector<double> x;
    std::vector<double> y;
    for (std::size_t i = 0; i < columns.at(one.x).size(); ++i) {
        if (!std::isnan(columns.at(one.x)[i]) && !std::isnan(columns.at(one.y)[i])) {
            x.push_back(columns.at(one.x)[i]);
            y.push_back(columns.at(one.y)[i]);
        }
    }
    const auto of = correlationOf(x, y);
    const auto line = lineOf(x, y);
    REQUIRE(of);
    REQUIRE(line);
    const std::vector<double> found{static_cast<double>(of->n),
                                    of->r,
                                    of->t,
                                    of->p,
                                    *of->z,
                                    *of->zError,
                                    of->limits->low,
                                    of->limits->high,
                                    of->rho,
                                    of->rhoP,
                                    of->tau,
                                    of->tauZ,
                                    of->tauP,
                                    line->intercept,
                                    line->interceptError,
                                    line->slope,
                                    line->slopeError,
                                    line->t,
                                    line->p,
                                    line->r2,
                                    line->residualSd};
    for (std::size_t i = 0; i < found.size(); ++i) {
        INFO(i);
        CHECK(found[i] == near(one.expected[i]));
    }
}

// Invented traits of 60 vines, with missing values and ties; values computed independently in R.
// clang-format off
const Columns kGrapes{
    {"brix", {20.9, 21.2, 23.1, 19.5, 17.9, 21.8, 19.7, 21, 21.8, 19.7, 22.6, 22.5, 23.7, 21, 23, 22.3, 21.7, 20.3, 23.4, 20.5, 19.1, 22.2, 21.7, 23.4, 20.6, 21.2, 22.6, 22.9, 18.9, 18.9, 23.1, 22.4, 20.1, 21.9, 19.2, 24.9, 19.7, 21.6, 20.1, 19.6, 20.9, 20.6, 22.5, 20.3, 24.2, 19.8, 21.3, 19.3, 24.1, 20.4, 21.8, 18.4, 21.2, 21.9, 19.4, 20.1, 19.9, 20.3, 18.4, 21.2}},
    {"acid", {10.04, 7.98, 6.53, kMissing, 9.97, 9.17, 9.06, 9.93, 6.84, 8.69, 6.35, 6.54, 6.38, 6.85, 6.42, 7.91, 7.48, 7.74, kMissing, 8.52, 8.08, 7.19, 8.47, 7.3, 6.42, 7.26, 8.07, 6.4, 8.31, 8.87, 6.06, 7.48, kMissing, 6.92, 7.17, 6.6, 6.22, 7.87, 7.85, 7.31, 6.73, 7.75, 6.86, 8.31, 6.67, 5.56, 9.75, 7.79, 5.23, 7.55, 7.03, 8.73, 6.99, 6.24, 7.74, 7.92, 9.18, 8.57, 10.18, 7.13}},
    {"berry_mm", {13.9, 15.1, 15.9, 15.9, 14.6, 14.8, kMissing, 14.1, 14.5, 14.5, 15.7, 14.6, 15.2, 15.2, 16.1, 14.7, 15.5, 15.1, kMissing, 15, 14.4, 14.7, 14.5, 15.2, 15.2, 15, 15.4, 13.5, 14.8, 15.4, 15.6, 15.9, 13.9, 16.4, 13.2, 16, 16, 15.4, 14.6, 15.5, 14.2, 15.9, 15.3, 14.3, 14.9, 15.5, 15.6, 14.5, 15.2, 15.3, 15, 15, 14.2, 14.6, 15.2, 14.1, 15, 15.1, 14, 14.7}},
    {"cluster_g", {104, 99, 172, 159, 148, 148, 71, 177, 200, 175, 151, 117, 117, 89, 70, 134, 224, 86, 151, 130, 194, 205, 159, 135, 144, 111, 73, 176, 94, 127, 146, 132, 113, 98, 144, 101, 254, 212, 292, 184, 249, 97, 164, 155, 61, 113, 140, 176, 153, 162, 136, 172, 195, 187, 109, 116, 113, 106, 128, 106}},
};
const std::vector<Described> kGrapesDescribed{
    {"brix", {60, 21.1283333333333, 1.59544815091556, 0.20597147060778, 7.55122576752652, 20.7161853726291, 21.5404812940375, 20.5800869687472, 21.6765796979195, 1.8288672372655, 3.78655554199564, 21.1, 19.875, 22.325, 0.191867656835396, -0.611360965593119, 0.987479823996403, 0.796588443881513}},
    {"acid", {57, 7.61684210526316, 1.16362143742029, 0.154125424523771, 15.2769536421956, 7.30809177904743, 7.92559243147889, 7.20586474999193, 8.02781946053438, 0.965095681953078, 2.03766688901966, 7.48, 6.73, 8.31, 0.415431815461171, -0.387749657905966, 0.970693305359221, 0.180724964071219}},
    {"berry_mm", {58, 14.9758620689655, 0.674422519661987, 0.0885560152970816, 4.50339697678969, 14.7985317071207, 15.1531924308104, 14.7398717577754, 15.2118523801557, 0.32508456702273, 0.681788821356061, 15, 14.525, 15.4, -0.256594756956255, -0.189679344381362, 0.988081671598912, 0.839442563776604}},
    {"cluster_g", {60, 144.233333333333, 47.2154695515331, 6.09549090854837, 32.7354769250287, 132.036284198149, 156.430382468518, 128.008607058775, 160.458059607892, 1601.71563905775, 3316.25232613577, 142, 110.5, 172.75, 0.725195555144286, 0.618496675379441, 0.965206180643313, 0.0847828409045652}},
};
const std::vector<Paired> kGrapesPaired{
    {"brix", "acid", {57, -0.554675059736202, -4.94380871311141, 7.56302806718196e-06, -0.625108809719714, 0.136082763487954, -0.712294518405011, -0.343796432567287, -0.562059243325801, 5.37525082954868e-06, -0.409877093563338, -4.46439568187143, 8.02950574763876e-06, 16.2042529666057, 1.74181653395578, -0.406310632602742, 0.0821857511446935, -4.94380871311141, 7.5630280671821e-06, 0.307664421893359, 0.976973328062926}},
    {"brix", "berry_mm", {58, 0.290221257927278, 2.26949715721646, 0.027108782809398, 0.298807854918217, 0.134839972492648, 0.0345126524147206, 0.510266000993574, 0.294989176259046, 0.0245796735535323, 0.203866082426629, 2.20630110102255, 0.027362924352693, 12.3664414751212, 1.15295362204556, 0.123588432502834, 0.054456306371591, 2.26949715721646, 0.0271087828093979, 0.0842283785528916, 0.651132043439245}},
    {"brix", "cluster_g", {60, -0.123883811337922, -0.950795230574473, 0.34565370944129, -0.124523468407319, 0.132453235706504, -0.366286190472132, 0.134264469973503, -0.0633106765518277, 0.630822944801003, -0.0502863793018215, -0.561781449683823, 0.574264932419088, 221.694033122071, 81.6974647729603, -3.66620019509683, 3.85593035934951, -0.950795230574474, 0.345653709441289, 0.0153471987116097, 47.2539244359261}},
    {"acid", "berry_mm", {56, -0.318548121281161, -2.46948469690976, 0.0167236825652364, -0.330030432152229, 0.137360563948689, -0.536517228613696, -0.0607338339692647, -0.347359890009986, 0.00871583921473203, -0.234630006347318, -2.50758252716244, 0.0121560191505639, 16.3559665707598, 0.564100038982486, -0.181449371824394, 0.0734766131782277, -2.4694846969098, 0.016723682565235, 0.101472905571757, 0.630808324151024}},
    {"acid", "cluster_g", {57, -0.10326999282466, -0.769987610322564, 0.4446019410373, -0.103639474166836, 0.136082763487954, -0.354303753230785, 0.161647404410829, -0.107956111049634, 0.42409693956632, -0.0823640730953534, -0.902018958302369, 0.367046796935898, 177.009327777962, 42.8286257721684, -4.28075290985774, 5.55950881867365, -0.769987610322564, 0.4446019410373, 0.0106646914180054, 48.4107878616804}},
    {"berry_mm", "cluster_g", {58, -0.17628273700585, -1.34016679326105, 0.185603535469578, -0.178143589296104, 0.134839972492648, -0.415652567707766, 0.0859254906388808, -0.210280824714913, 0.113111602880246, -0.13669052204031, -1.48591083128566, 0.13730270826805, 329.453382278613, 137.488422949, -12.2913840342615, 9.17153304802666, -1.34016679326104, 0.185603535469584, 0.031075603366273, 46.699413528254}},
};
const std::vector<double> kGrapesPartial{1, -0.520131302795344, 0.122403551566846, -0.208464588415456, -0.520131302795344, 1, -0.226512706006611, -0.233751018412421, 0.122403551566846, -0.226512706006611, 1, -0.21544151405332, -0.208464588415456, -0.233751018412421, -0.21544151405332, 1};
// clang-format on

// 47 Swiss provinces about 1888: Mosteller & Tukey 1977, Data Analysis and Regression (data set
// swiss of R); values computed independently in R.
// clang-format off
const Columns kSwiss{
    {"Fertility", {80.2, 83.1, 92.5, 85.8, 76.9, 76.1, 83.8, 92.4, 82.4, 82.9, 87.1, 64.1, 66.9, 68.9, 61.7, 68.3, 71.7, 55.7, 54.3, 65.1, 65.5, 65, 56.6, 57.4, 72.5, 74.2, 72, 60.5, 58.3, 65.4, 75.5, 69.3, 77.3, 70.5, 79.4, 65, 92.2, 79.3, 70.4, 65.7, 72.7, 64.4, 77.6, 67.6, 35, 44.7, 42.8}},
    {"Agriculture", {17, 45.1, 39.7, 36.5, 43.5, 35.3, 70.2, 67.8, 53.3, 45.2, 64.5, 62, 67.5, 60.7, 69.3, 72.6, 34, 19.4, 15.2, 73, 59.8, 55.1, 50.9, 54.1, 71.2, 58.1, 63.5, 60.8, 26.8, 49.5, 85.9, 84.9, 89.7, 78.2, 64.9, 75.9, 84.6, 63.1, 38.4, 7.7, 16.7, 17.6, 37.6, 18.7, 1.2, 46.6, 27.7}},
    {"Education", {12, 9, 5, 7, 15, 7, 7, 8, 7, 13, 6, 12, 7, 12, 5, 2, 8, 28, 20, 9, 10, 3, 12, 6, 1, 8, 3, 10, 19, 8, 2, 6, 2, 6, 3, 9, 3, 13, 12, 11, 13, 32, 7, 7, 53, 29, 29}},
    {"Infant.Mortality", {22.2, 22.2, 20.2, 20.3, 20.6, 26.6, 23.6, 24.9, 21, 24.4, 24.5, 16.5, 19.1, 22.7, 18.7, 21.2, 20, 20.2, 10.8, 20, 18, 22.4, 16.7, 15.3, 21, 23.8, 18, 16.3, 20.9, 22.5, 15.1, 19.8, 18.3, 19.4, 20.2, 17.8, 16.3, 18.1, 20.3, 20.5, 18.9, 23, 20, 19.5, 18, 18.2, 19.3}},
};
const std::vector<Described> kSwissDescribed{
    {"Fertility", {47, 70.1425531914894, 12.4916971500003, 1.82210129857907, 17.8090140458645, 66.4748535067942, 73.8102528761845, 65.2465424179753, 75.0385639650034, 107.750359042898, 246.157118754972, 70.4, 64.7, 78.45, -0.470626911609605, 0.403231924753165, 0.973067407443332, 0.344946646005486}},
    {"Agriculture", {47, 50.6595744680851, 22.7112178714901, 3.31277160173173, 44.8310474573723, 43.991311090734, 57.3278378454362, 41.7581124775151, 59.5610364586551, 356.169461664603, 813.673840631598, 54.1, 35.9, 67.65, -0.33086696012916, -0.792594179378642, 0.96643442211991, 0.193022290561351}},
    {"Education", {47, 10.9787234042553, 9.61540738629624, 1.40255131665089, 87.5821990612255, 8.15553403171008, 13.8019127768006, 7.21004909285228, 14.7473977156584, 63.8426949236084, 145.849479997477, 8, 6, 12, 2.34281029106817, 6.54143381546328, 0.748202947152872, 1.31202041648002e-07}},
    {"Infant.Mortality", {47, 19.9425531914894, 2.9126966946719, 0.424860478604263, 14.6054352554763, 19.087353403952, 20.7977529790267, 18.8009473531592, 21.0841590298195, 5.85822919323091, 13.3832019867133, 20, 18.15, 21.7, -0.342298671327609, 0.943301796892509, 0.977620463817428, 0.497805644699832}},
};
const std::vector<Paired> kSwissPaired{
    {"Fertility", "Agriculture", {47, 0.353079183619975, 2.53157734957168, 0.0149172006147263, 0.368957124868733, 0.150755672288882, 0.0733494668728504, 0.581305868253609, 0.242664276936418, 0.100280861256835, 0.179546525470831, 1.77914278033009, 0.0752163565224139, 5.63261090665668, 18.0600724380987, 0.641935052442484, 0.253571178676842, 2.53157734957167, 0.0149172006147264, 0.124664909905748, 21.483263330229}},
    {"Fertility", "Education", {47, -0.663788857035069, -5.95361925625998, 3.65861696596236e-07, -0.799556680123081, 0.150755672288882, -0.79870753263539, -0.465320585027717, -0.443257690360988, 0.0018059749419464, -0.330611161358059, -3.19587622963359, 0.00139406899287804, 46.8178791398771, 6.11244186256057, -0.510947407884922, 0.0858213106838639, -5.95361925625998, 3.65861696596234e-07, 0.440615646723923, 7.27102278100987}},
    {"Fertility", "Infant.Mortality", {47, 0.416556031434983, 3.07371239120206, 0.00358523805395057, 0.443517727039861, 0.150755672288882, 0.146969918322543, 0.628536621486827, 0.437136700574223, 0.00212373672320877, 0.315647383818337, 3.11087577608155, 0.00186533392132106, 13.1297034021544, 2.25062746363554, 0.0971286256252448, 0.0315997768376956, 3.07371239120206, 0.00358523805395056, 0.173518927324862, 2.67722195607195}},
    {"Agriculture", "Education", {47, -0.63952251894832, -5.58038722128102, 1.30459010569447e-06, -0.757365421273066, 0.150755672288882, -0.782908469801888, -0.431623143407993, -0.650463814145816, 7.45726927595533e-07, -0.476164563177849, -4.60482469996281, 4.12813451020642e-06, 24.6952656247901, 2.68889630736334, -0.270759128250792, 0.04851977425836, -5.58038722128102, 1.30459010569447e-06, 0.408989052242004, 7.47374216264106}},
    {"Agriculture", "Infant.Mortality", {47, -0.0608586084165816, -0.40901009866527, 0.684472412424378, -0.060933911264012, 0.150755672288882, -0.342047600336686, 0.230333645872611, -0.15212866043437, 0.307342351280171, -0.0800386911118148, -0.789156897555388, 0.430020310480517, 20.3379547661366, 1.05754318051327, -0.00780507098211729, 0.0190828319583982, -0.409010098665274, 0.684472412424375, 0.00370377021840282, 2.93942352309072}},
    {"Education", "Infant.Mortality", {47, -0.0993218458213457, -0.669582038354727, 0.50654555478877, -0.0996503903229571, 0.150755672288882, -0.375770942009601, 0.193359966739849, -0.018981368070256, 0.89922775645985, -0.00287432281745731, -0.0276456708213826, 0.977944755522852, 20.2728650757917, 0.652727159373721, -0.0300865476011806, 0.0449333253847553, -0.669582038354726, 0.506545554788771, 0.00986482905735915, 2.93032078563533}},
};
const std::vector<double> kSwissPartial{1, -0.0547224883724479, -0.603694805860163, 0.460583497621764, -0.0547224883724479, 1, -0.550433290780512, -0.118897630349883, -0.603694805860163, -0.550433290780512, 1, 0.150569537186255, 0.460583497621764, -0.118897630349883, 0.150569537186255, 1};
// clang-format on

std::vector<std::vector<double>> completeColumns(const Columns& columns,
                                                 const std::vector<std::string>& names) {
    std::vector<std::vector<double>> complete(names.size());
    for (std::size_t row = 0; row < columns.at(names[0]).size(); ++row) {
        bool isComplete = true;
        for (const std::string& name : names) {
            isComplete = isComplete && !std::isnan(columns.at(name)[row]);
        }
        for (std::size_t i = 0; isComplete && i < names.size(); ++i) {
            complete[i].push_back(columns.at(names[i])[row]);
        }
    }
    return complete;
}

} // namespace

TEST_CASE("traits of sixty vines are described, paired and put on a line") {
    for (const Described& one : kGrapesDescribed) {
        checkDescribed(kGrapes, one);
    }
    for (const Paired& one : kGrapesPaired) {
        checkPaired(kGrapes, one);
    }
    const auto partial =
        partialCorrelations(completeColumns(kGrapes, {"brix", "acid", "berry_mm", "cluster_g"}));
    REQUIRE(partial);
    for (std::size_t i = 0; i < kGrapesPartial.size(); ++i) {
        CHECK((*partial)[i] == near(kGrapesPartial[i]));
    }
}

TEST_CASE("Swiss provinces are described, paired and put on a line") {
    for (const Described& one : kSwissDescribed) {
        checkDescribed(kSwiss, one);
    }
    for (const Paired& one : kSwissPaired) {
        checkPaired(kSwiss, one);
    }
    const auto partial = partialCorrelations(
        completeColumns(kSwiss, {"Fertility", "Agriculture", "Education", "Infant.Mortality"}));
    REQUIRE(partial);
    for (std::size_t i = 0; i < kSwissPartial.size(); ++i) {
        CHECK((*partial)[i] == near(kSwissPartial[i]));
    }
}

TEST_CASE("hours of sleep gained with two drugs, Student's own example") {
    // Student 1908, Biometrika 6:1-25: Welch t = -1.8608, p = 0.0794, paired t = -4.0621, p =
    // 0.00283 as R prints them; further digits computed in R.
    const std::vector<double> one{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2};
    const std::vector<double> other{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
    const TwoSamples of = compareSamples(one, other);

    REQUIRE(of.welch);
    CHECK(of.welch->t == near(-1.86081346748685));
    CHECK(of.welch->freedom == near(17.7764735161785));
    CHECK(of.welch->p == near(0.0793941401873582));
    CHECK(of.welch->limits.low == near(-3.36548323071171));
    CHECK(of.welch->limits.high == near(0.20548323071171));
    REQUIRE(of.pooled);
    CHECK(of.pooled->t == near(-1.86081346748685));
    CHECK(of.pooled->freedom == near(18.0));
    CHECK(of.pooled->p == near(0.0791867142159382));
    CHECK(of.pooled->limits.low == near(-3.3638740322876));
    CHECK(of.pooled->limits.high == near(0.203874032287599));
    REQUIRE(of.paired);
    CHECK(of.paired->t == near(-4.06212768338204));
    CHECK(of.paired->freedom == near(9.0));
    CHECK(of.paired->p == near(0.00283289019738427));
    CHECK(of.paired->limits.low == near(-2.45988576327698));
    CHECK(of.paired->limits.high == near(-0.700114236723018));
    CHECK(of.welch->difference == near(-1.58));
    CHECK(*of.varianceRatio == near(0.798342617998392));
    CHECK(*of.varianceRatioP == near(0.742719931726045));
    CHECK(*of.rankSum == near(25.5));
    CHECK(*of.rankSumP == near(0.0693275754336266));
}

TEST_CASE("too few values, equal values and columns that follow from one another are left unsaid") {
    CHECK_FALSE(describe({}));
    const auto one = describe(std::vector<double>{4});
    REQUIRE(one);
    CHECK_FALSE(one->sd);
    CHECK(one->median == 4);
    const std::vector<double> equal(5, 3.0);
    CHECK_FALSE(describe(equal)->skewness);
    CHECK_FALSE(normalityOf(equal));
    CHECK_FALSE(normalityOf(std::vector<double>{1, 2}));
    CHECK_FALSE(correlationOf(equal, std::vector<double>{1, 2, 3, 4, 5}));
    CHECK_FALSE(lineOf(equal, std::vector<double>{1, 2, 3, 4, 5}));
    const std::vector<double> rising{1, 2, 3, 4, 5};
    const auto perfect = correlationOf(rising, rising);
    REQUIRE(perfect);
    CHECK(perfect->r == 1);
    CHECK(perfect->p == 0);
    CHECK_FALSE(perfect->z);
    CHECK_FALSE(partialCorrelations({rising, rising, {5, 4, 3, 2, 2}}));
    CHECK_FALSE(partialCorrelations({rising}));
    CHECK_FALSE(compareSamples(equal, equal).welch);
    CHECK_FALSE(compareSamples({}, rising).rankSum);
    CHECK_FALSE(compareSamples(std::vector<double>{1}, rising).pooled);
}

TEST_CASE("three values have a W with its own law") {
    // Royston 1995: p = 6/π (asin √W - asin √¾); W of 1 2 4 by hand: (½√½·... ) = 27/28.
    const auto of = normalityOf(std::vector<double>{1, 2, 4});
    REQUIRE(of);
    CHECK(of->w == doctest::Approx(27.0 / 28).epsilon(1e-9));
    CHECK(of->p == doctest::Approx(6 / 3.14159265358979 *
                                   (std::asin(std::sqrt(27.0 / 28)) - std::asin(std::sqrt(0.75)))));
}
