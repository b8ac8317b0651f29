// Curves of kill over dose by maximum likelihood, with the limits of their points.
#include "core/hardiness/dose_fit.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace bullace;
using namespace bullace::hardiness;

namespace {

struct ExpectedPoint {
    double x, error, g, fiellerLow, fiellerHigh, scaledError, scaledLow, scaledHigh;
};
struct ExpectedLine {
    double intercept, slope, interceptError, slopeError, covariance, logLikelihood;
    double deviance, devianceP, pearson, pearsonP, heterogeneity;
};
struct Expected {
    const char* name;
    const std::vector<DoseRow>& rows;
    Link link;
    int degreesOfFreedom;
    ExpectedLine line;
    std::vector<double> fitted;
    std::vector<ExpectedPoint> points; // of 10, 50 and 90 %, or of 50 % alone
    statistics::Interval profileOf50;
};

// Bliss 1935, Ann. Appl. Biol. 22:134-167, as in Dobson & Barnett 2008, An Introduction to
// Generalized Linear Models, Table 7.2; Collett 1991, Modelling Binary Data (budworms: log2 of the
// dose); the buds are invented (degrees of frost). Expected: an independent program's generalised
// linear model; Dobson & Barnett print for the beetles -60.72, 34.27, deviance 11.23 (logit),
// -34.94, 19.73, 10.12 (probit), -39.57, 22.04, 3.45 (complementary log-log), from memory.
const std::vector<DoseRow> kBeetles{{1.6907, 59, 6},
                                    {1.7242, 60, 13},
                                    {1.7552, 62, 18},
                                    {1.7842, 56, 28},
                                    {1.8113, 63, 52},
                                    {1.8369, 59, 53},
                                    {1.861, 62, 61},
                                    {1.8839, 60, 60}};
const std::vector<DoseRow> kBudworms{
    {0, 20, 1}, {1, 20, 4}, {2, 20, 9}, {3, 20, 13}, {4, 20, 18}, {5, 20, 20}};
const std::vector<DoseRow> kFemaleBudworms{
    {0, 20, 0}, {1, 20, 2}, {2, 20, 6}, {3, 20, 10}, {4, 20, 12}, {5, 20, 16}};
const std::vector<DoseRow> kBuds1{{10, 30, 1},
                                  {12.5, 30, 3},
                                  {15, 30, 16},
                                  {17.5, 30, 23},
                                  {20, 30, 29},
                                  {22.5, 30, 30},
                                  {25, 30, 30}};
const std::vector<DoseRow> kBuds2{{10, 30, 0},
                                  {12.5, 30, 0},
                                  {15, 30, 4},
                                  {17.5, 30, 15},
                                  {20, 30, 26},
                                  {22.5, 30, 30},
                                  {25, 30, 30}};
const std::vector<DoseRow> kBuds3{{10, 30, 0},
                                  {12.5, 30, 0},
                                  {15, 30, 0},
                                  {17.5, 30, 7},
                                  {20, 30, 21},
                                  {22.5, 30, 28},
                                  {25, 30, 29}};
const std::vector<DoseRow> kBuds4{{10, 30, 0},
                                  {12.5, 30, 0},
                                  {15, 30, 0},
                                  {17.5, 30, 1},
                                  {20, 30, 8},
                                  {22.5, 30, 24},
                                  {25, 30, 29}};

const std::vector<Expected> kExpected{{"beetles logit",
                                       kBeetles,
                                       Link::Logit,
                                       6,
                                       {-60.7174545616353,
                                        34.2703257341469,
                                        5.1807114633408,
                                        2.91214007063573,
                                        -15.0821510062658,
                                        -18.7151346572559,
                                        11.2322310974193,
                                        0.0814588099273361,
                                        10.0268175856375,
                                        0.123527206272969,
                                        1.67113626427292},
                                       {0.0586010255159142,
                                        0.164027868900092,
                                        0.362119005872427,
                                        0.605314906333051,
                                        0.795171771934734,
                                        0.903235819375774,
                                        0.955196106808929,
                                        0.9790493440767},
                                       {{1.7076064709239,
                                         0.00712647689876246,
                                         0.0277385808283362,
                                         1.69127674334979,
                                         1.71989454874785,
                                         0.00921257026963765,
                                         1.67804543644131,
                                         1.72613528334724},
                                        {1.77172096444757,
                                         0.00385805531143664,
                                         0.0277385808283362,
                                         1.76385817177252,
                                         1.77920047543235,
                                         0.00498740207337691,
                                         1.75851704462231,
                                         1.78387866577795},
                                        {1.83583545797125,
                                         0.0061925366441786,
                                         0.0277385808283362,
                                         1.82505548578227,
                                         1.84989051652982,
                                         0.00800524295416002,
                                         1.81948336058161,
                                         1.86112734043038}},
                                       {1.76398210356484, 1.7791872457912}},
                                      {"beetles probit",
                                       kBeetles,
                                       Link::Probit,
                                       6,
                                       {-34.935258899178,
                                        19.7279342113223,
                                        2.6479177986179,
                                        1.48723504090278,
                                        -3.93654384997524,
                                        -18.158898165047,
                                        10.1197581130015,
                                        0.119698499574708,
                                        9.51342696308496,
                                        0.146695207310364,
                                        1.58557116051416},
                                       {0.0569115259693923,
                                        0.178693708122565,
                                        0.378741105548949,
                                        0.603848536060847,
                                        0.787549764594274,
                                        0.903709794703387,
                                        0.962333097012127,
                                        0.987132795143605},
                                       {{1.70589109701708,
                                         0.00670886241947264,
                                         0.0218319324434445,
                                         1.69084607998196,
                                         1.71763974221729,
                                         0.00844776365000375,
                                         1.68001416829444,
                                         1.7233450931199},
                                        {1.7708523621864,
                                         0.00380333680685877,
                                         0.0218319324434445,
                                         1.76311431949782,
                                         1.77819380047197,
                                         0.00478914135017019,
                                         1.75828687574991,
                                         1.78240443984181},
                                        {1.83581362735572,
                                         0.00564695188832123,
                                         0.0218319324434445,
                                         1.82580478366138,
                                         1.84832563407896,
                                         0.00711061159296089,
                                         1.82083976280869,
                                         1.8571836069604}},
                                       {1.76326839152434, 1.77817011034247}},
                                      {"beetles cloglog",
                                       kBeetles,
                                       Link::ComplementaryLogLog,
                                       6,
                                       {-39.5723106061374,
                                        22.0411698207577,
                                        3.24027261967246,
                                        1.79935519098107,
                                        -5.82865148968292,
                                        -14.8222384750585,
                                        3.44643873302442,
                                        0.75108161725069,
                                        3.2946938337339,
                                        0.771053590279099,
                                        0.549115638955649},
                                       {0.0947364319856933,
                                        0.188011276290128,
                                        0.337971233320741,
                                        0.542311386499448,
                                        0.758355800275825,
                                        0.917673357033535,
                                        0.985698594337146,
                                        0.999120420041755},
                                       {{1.69328323234806,
                                         0.00944634168447763,
                                         0.0256012224309714,
                                         1.67150709285311,
                                         1.70943819143753,
                                         0.00699995997514154,
                                         1.67340274424503,
                                         1.70837091035689},
                                        {1.77875303372659,
                                         0.00400653008498074,
                                         0.0256012224309714,
                                         1.77021288340616,
                                         1.78616324777403,
                                         0.00296893243658033,
                                         1.77090990744913,
                                         1.78563273780723},
                                        {1.83322134804896,
                                         0.00449589675399211,
                                         0.0256012224309714,
                                         1.82511874838079,
                                         1.84305619777381,
                                         0.00333156457616035,
                                         1.8256839707238,
                                         1.84223570084163}},
                                       {1.77053464003474, 1.78634812327217}},
                                      {"budworms logit",
                                       kBudworms,
                                       Link::Logit,
                                       4,
                                       {-2.81855496731552,
                                        1.25894942420395,
                                        0.547986822162104,
                                        0.212065496808387,
                                        -0.102677124345234,
                                        -8.11397564978318,
                                        1.88097008142143,
                                        0.757639895667665,
                                        1.30889648755002,
                                        0.859864312814955,
                                        0.327224121887506},
                                       {0.0563296974600117,
                                        0.173703256300896,
                                        0.425397097307422,
                                        0.722779966321536,
                                        0.901787262931019,
                                        0.970002719679115},
                                       {{0.493530858375964,
                                         0.36390879486452,
                                         0.108998279676982,
                                         -0.512089592033429,
                                         1.06129589668086,
                                         0.208168593127666,
                                         -0.259925007529097,
                                         0.971063256595032},
                                        {2.2388150890952,
                                         0.203987084524242,
                                         0.108998279676982,
                                         1.80980064477438,
                                         2.65698335004071,
                                         0.116687766277907,
                                         1.8991471627493,
                                         2.57164807302554},
                                        {3.98409931981443,
                                         0.351636714141097,
                                         0.108998279676982,
                                         3.43297421185014,
                                         4.95138747313262,
                                         0.201148532565802,
                                         3.52097365008041,
                                         4.70947857240334}},
                                       {1.82708609931323, 2.64300462587082}},
                                      {"budworms probit",
                                       kBudworms,
                                       Link::Probit,
                                       4,
                                       {-1.64592296163993,
                                        0.736886515058556,
                                        0.290439299327958,
                                        0.109458415197713,
                                        -0.0274840012945295,
                                        -7.82189808984911,
                                        1.29681496155329,
                                        0.861915688644025,
                                        0.89868428657594,
                                        0.924749504500159,
                                        0.224671071643985},
                                       {0.0498898104377049,
                                        0.181665443791301,
                                        0.431659829493125,
                                        0.713873526480266,
                                        0.903477370169415,
                                        0.979250502845298},
                                       {{0.494474235379891,
                                         0.332699158405113,
                                         0.0847604542843693,
                                         -0.373855410047667,
                                         1.0295067572069,
                                         0.157697671475489,
                                         -0.029163692162321,
                                         0.875118416108337},
                                        {2.2336179696668,
                                         0.19829810218251,
                                         0.0847604542843693,
                                         1.82173782567714,
                                         2.63432564840142,
                                         0.0939922695389359,
                                         1.9651122886191,
                                         2.4973303520184},
                                        {3.9727617039537,
                                         0.318480713090889,
                                         0.0847604542843693,
                                         3.4574946524329,
                                         4.79898094856497,
                                         0.150958202314211,
                                         3.60691860370431,
                                         4.47201195362468}},
                                       {1.83297878185446, 2.62652688624908}},
                                      {"budworms, females",
                                       kFemaleBudworms,
                                       Link::Logit,
                                       4,
                                       {-2.99354175517103,
                                        0.906036435467457,
                                        0.55269976105461,
                                        0.167101660400799,
                                        -0.0839409152599278,
                                        -9.43808850473522,
                                        3.11275722619892,
                                        0.539136248233143,
                                        2.19579734178794,
                                        0.699798767659582,
                                        0.548949335446985},
                                       {0.0477184893582784,
                                        0.110317182583639,
                                        0.234788189734368,
                                        0.431573925972258,
                                        0.652626401726432,
                                        0.822975810625025},
                                       {{3.30399709988103,
                                         0.260283617995311,
                                         0.130667140440927,
                                         2.79979148141939,
                                         3.89773678164167,
                                         0.1928470353064,
                                         2.77321793233644,
                                         3.93493395908583}},
                                       {2.80784960618783, 3.87328881311114}},
                                      {"buds of accession 1",
                                       kBuds1,
                                       Link::Logit,
                                       5,
                                       {-10.3780104520492,
                                        0.681197354568396,
                                        1.47972001008895,
                                        0.0953338163395475,
                                        -0.13920654608292,
                                        -8.19166958997868,
                                        2.15500080826222,
                                        0.827308623342594,
                                        1.9336687601651,
                                        0.858245018932748,
                                        0.38673375203302},
                                       {0.0274905654273694,
                                        0.134348699167941,
                                        0.460072661961169,
                                        0.823892180314525,
                                        0.962526826698318,
                                        0.992958936077868,
                                        0.998710130352812},
                                       {{15.2349541325284,
                                         0.351845631806364,
                                         0.075239211256839,
                                         14.5111613312555,
                                         15.9454422895069,
                                         0.21880548360706,
                                         14.6535450260846,
                                         15.8077471199905}},
                                       {14.5335827397047, 15.9279322841136}},
                                      {"buds of accession 2",
                                       kBuds2,
                                       Link::Logit,
                                       5,
                                       {-15.1604980701649,
                                        0.866314175437994,
                                        2.29614577111091,
                                        0.130309780236759,
                                        -0.297161179443668,
                                        -6.21105038974478,
                                        2.3056440708042,
                                        0.80543755353451,
                                        1.48280740730246,
                                        0.915045266961807,
                                        0.296561481460491},
                                       {0.00150515017781016,
                                        0.0129762815233401,
                                        0.102865319753223,
                                        0.5,
                                        0.897134680246777,
                                        0.98702371847666,
                                        0.99849484982219},
                                       {{17.5,
                                         0.309659583781931,
                                         0.0869159267403044,
                                         16.8648486390966,
                                         18.1351513609034,
                                         0.168632740134655,
                                         17.05657386989,
                                         17.94342613011}},
                                       {16.8858741170139, 18.1141258829861}},
                                      {"buds of accession 3",
                                       kBuds3,
                                       Link::Logit,
                                       5,
                                       {-15.5540620646844,
                                        0.811350396128317,
                                        2.29401333464457,
                                        0.118978658105154,
                                        -0.271172473658024,
                                        -7.81112726966508,
                                        3.86796877367654,
                                        0.568577668630928,
                                        3.60574800928474,
                                        0.607450461221389,
                                        0.721149601856948},
                                       {0.000586613206091901,
                                        0.00444207316895489,
                                        0.032805414513358,
                                        0.2049840294132,
                                        0.662162471910714,
                                        0.937104598137545,
                                        0.991248132983468},
                                       {{19.1705854078667,
                                         0.321136824798306,
                                         0.0826071064201714,
                                         18.5147430247187,
                                         19.8290335087221,
                                         0.272711086139059,
                                         18.4322717269949,
                                         19.9122029916001}},
                                       {18.5352482864938, 19.8073593873751}},
                                      {"buds of accession 4",
                                       kBuds4,
                                       Link::Logit,
                                       5,
                                       {-19.8167365155815,
                                        0.939679978399352,
                                        3.16049148029171,
                                        0.149631645286094,
                                        -0.471027329411456,
                                        -5.65840217378743,
                                        0.318584321733371,
                                        0.997278880165098,
                                        0.219145073942793,
                                        0.998893869270898,
                                        0.0438290147885587},
                                       {2.98308769113129e-05,
                                        0.000312455252929294,
                                        0.00326398589293975,
                                        0.0331712806331363,
                                        0.264416811733442,
                                        0.790188662869161,
                                        0.975283639408143},
                                       {{21.08881424646,
                                         0.299889939892557,
                                         0.097405423197982,
                                         20.4756243477547,
                                         21.7130264638753,
                                         0.0627830993678652,
                                         20.9272066379885,
                                         21.2511774605022}},
                                       {20.4975141747471, 21.6869330048909}}};

constexpr double kRelative = 1e-7;
constexpr double kAbsolute = 1e-9;

bool agrees(double found, double expected, double relative = kRelative) {
    return std::abs(found - expected) <= kAbsolute + relative * std::abs(expected);
}

void checkLine(const DoseFit& fit, const ExpectedLine& line) {
    CHECK(agrees(fit.intercept, line.intercept));
    CHECK(agrees(fit.slope, line.slope));
    CHECK(agrees(fit.interceptError, line.interceptError));
    CHECK(agrees(fit.slopeError, line.slopeError));
    CHECK(agrees(fit.covariance, line.covariance));
    CHECK(agrees(fit.logLikelihood, line.logLikelihood));
    CHECK(agrees(fit.goodness.deviance, line.deviance));
    CHECK(agrees(fit.goodness.devianceP.value(), line.devianceP));
    CHECK(agrees(fit.goodness.pearson, line.pearson));
    CHECK(agrees(fit.goodness.pearsonP.value(), line.pearsonP));
    CHECK(agrees(fit.goodness.heterogeneity.value(), line.heterogeneity));
}

void checkPoint(const DosePoint& point, const ExpectedPoint& expected) {
    CHECK(agrees(point.x, expected.x));
    CHECK(agrees(point.error, expected.error));
    CHECK(agrees(point.g, expected.g));
    REQUIRE(point.fieller);
    CHECK(agrees(point.fieller->low, expected.fiellerLow));
    CHECK(agrees(point.fieller->high, expected.fiellerHigh));
    REQUIRE(point.scaled);
    CHECK(agrees(point.scaled->error, expected.scaledError));
    REQUIRE(point.scaled->fieller);
    CHECK(agrees(point.scaled->fieller->low, expected.scaledLow));
    CHECK(agrees(point.scaled->fieller->high, expected.scaledHigh));
}

} // namespace

TEST_CASE("published and invented kills are fitted to seven digits, with all their limits") {
    for (const Expected& expected : kExpected) {
        CAPTURE(expected.name);
        const auto fit = fitDoses(expected.rows, expected.link);
        REQUIRE(fit);
        CHECK(fit->goodness.degreesOfFreedom == expected.degreesOfFreedom);
        checkLine(*fit, expected.line);
        REQUIRE(fit->fitted.size() == expected.fitted.size());
        for (std::size_t i = 0; i < fit->fitted.size(); ++i) {
            CHECK(std::abs(fit->fitted[i] - expected.fitted[i]) < 1e-8);
        }
        const std::vector<double> parts =
            expected.points.size() == 3 ? std::vector{0.1, 0.5, 0.9} : std::vector{0.5};
        REQUIRE(expected.points.size() == parts.size());
        for (std::size_t i = 0; i < parts.size(); ++i) {
            CAPTURE(parts[i]);
            checkPoint(pointOf(expected.rows, *fit, parts[i]), expected.points[i]);
        }
        const DosePoint half = pointOf(expected.rows, *fit, 0.5);
        CHECK(agrees(half.profile.low, expected.profileOf50.low, 1e-6));
        CHECK(agrees(half.profile.high, expected.profileOf50.high, 1e-6));
    }
}

// Finney 1971, Probit Analysis, rotenone: LD50 4.85; the other digits computed by two independent
// programs.
TEST_CASE("Finney's rotenone kills half at 4.85") {
    std::vector<DoseRow> rows{
        {2.6, 50, 6}, {3.8, 48, 16}, {5.1, 46, 24}, {7.7, 49, 42}, {10.2, 50, 44}};
    for (DoseRow& row : rows) {
        row.x = std::log10(row.x);
    }
    const auto fit = fitDoses(rows, Link::Probit);
    REQUIRE(fit);
    CHECK(std::abs(fit->intercept - -2.8874633) < 1e-5);
    CHECK(std::abs(fit->slope - 4.2131968) < 1e-5);
    CHECK(std::abs(fit->interceptError - 0.351040) < 1e-5);
    CHECK(std::abs(fit->slopeError - 0.480562) < 1e-5);
    CHECK(std::abs(fit->goodness.pearson - 1.72888) < 1e-5);
    CHECK(fit->goodness.degreesOfFreedom == 3);
    const DosePoint half = pointOf(rows, *fit, 0.5);
    CHECK(std::abs(half.x - 0.6853379) < 1e-6);
    CHECK(std::abs(half.error - 0.0220684) < 1e-6);
    CHECK(std::abs(std::pow(10, half.x) - 4.845492) < 1e-5);
    CHECK(std::abs(std::pow(10, half.fieller->low) - 4.36449) < 1e-5);
    CHECK(std::abs(std::pow(10, half.fieller->high) - 5.35439) < 1e-5);
    const DosePoint most = pointOf(rows, *fit, 0.9);
    CHECK(std::abs(std::pow(10, most.x) - 9.76143) < 1e-5);
    CHECK(std::abs(std::pow(10, most.fieller->low) - 8.39907) < 1e-5);
    CHECK(std::abs(std::pow(10, most.fieller->high) - 12.15532) < 1e-5);
}

TEST_CASE("what has no finite slope is not fitted, and is told apart") {
    const auto told = [](const std::vector<DoseRow>& rows) {
        CHECK_FALSE(fitDoses(rows, Link::Logit).has_value());
        return overlapOf(pooledDoses(rows));
    };
    CHECK(told({}) == Overlap::Nothing);
    CHECK(told({{10, 0, 0}}) == Overlap::Nothing);
    CHECK(told({{10, 30, 0}, {13, 30, 0}}) == Overlap::NoneDead);
    CHECK(told({{10, 30, 30}, {13, 30, 30}}) == Overlap::AllDead);
    CHECK(told({{10, 30, 4}, {10, 30, 7}}) == Overlap::OneDose);
    CHECK(told({{16, 30, 0}, {10, 30, 0}, {19, 30, 30}}) == Overlap::Separated);
    CHECK(told({{10, 30, 0}, {16, 30, 11}, {19, 30, 30}}) == Overlap::QuasiSeparated);
    CHECK(told({{10, 30, 30}, {16, 30, 0}}) == Overlap::ReversedSeparation);
    CHECK(told({{10, 30, 30}, {13, 30, 4}, {16, 30, 0}}) == Overlap::ReversedSeparation);
    CHECK(overlapOf(pooledDoses(std::vector<DoseRow>{{10, 30, 1}, {16, 30, 29}})) ==
          Overlap::Overlapping);
}

TEST_CASE("a wrong row is named") {
    const auto message = [](const DoseRow& row) {
        const std::vector<DoseRow> rows{{10, 30, 0}, row};
        const Status checked = checkDoses(rows);
        return checked ? std::string{} : checked.error().message;
    };
    CHECK(message({13, 30, 31}) == "Row 2 has more dead (31) than counted (30).");
    CHECK(message({13, -1, 0}) == "Row 2 has a count below 0.");
    CHECK(message({13, 30, -2}) == "Row 2 has a count below 0.");
    CHECK(message({NAN, 30, 2}) == "Row 2 has a temperature or dose that cannot be one.");
    CHECK(message({13, 5'000'000'000, 2}) == "Row 2 has a count that no one can have made.");
    CHECK(message({13, 0, 0}).empty());
}

TEST_CASE(
    "the supremum of a separated table is a perfect fit, of a quasi-separated its one share") {
    const std::vector<DoseRow> separated{{10, 30, 0}, {13, 30, 30}};
    CHECK(supremumLogLikelihood(separated) == 0);
    const std::vector<DoseRow> quasi{{10, 30, 0}, {13, 4, 1}, {16, 30, 30}};
    CHECK(supremumLogLikelihood(quasi) ==
          doctest::Approx(std::log(4 * 0.25 * 0.75 * 0.75 * 0.75)).epsilon(1e-12));
}
