// `bullace work mixed` over plain files: models, pedigrees, surfaces, and what is said of wrong
// ones.
#include "process/programs.hpp"

#include "support/temp_folder.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <string>

using namespace bullace::test;

namespace {

bool holds(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

// The number behind a key, the first time that it stands after some words.
double numberAfter(const std::string& text, const std::string& words, const std::string& key) {
    const std::size_t from = text.find("\"" + key + "\":", text.find(words));
    REQUIRE(from != std::string::npos);
    return std::strtod(text.c_str() + from + key.size() + 3, nullptr);
}

Ran work(std::vector<std::string> options, const std::string& csv) {
    std::vector<std::string> words{"work", "mixed", "-", "--json", "--response", "yield"};
    words.insert(words.end(), options.begin(), options.end());
    return console(words, csv);
}

// Davies 1947, Statistical Methods in Research and Production: yield of dyestuff from six batches,
// five preparations of each; variances between and within batches 1764.05 and 2451.25.
const std::string kDyestuff =
    "batch,yield\nA,1545\nA,1440\nA,1440\nA,1520\nA,1580\nB,1540\nB,1555\nB,1490\nB,1560\nB,1495\n"
    "C,1595\nC,1550\nC,1605\nC,1510\nC,1560\nD,1445\nD,1440\nD,1595\nD,1465\nD,1545\n"
    "E,1595\nE,1630\nE,1515\nE,1635\nE,1625\nF,1520\nF,1455\nF,1450\nF,1480\nF,1445\n";

} // namespace

TEST_CASE("the variances of Davies's dyestuff come out as one document") {
    const Ran ran = work({"--random", "batch", "--heritability", "batch"}, kDyestuff);
    CHECK(ran.status == 0);
    CHECK(numberAfter(ran.out, "\"term\":\"batch\"", "variance") ==
          doctest::Approx(1764.05).epsilon(1e-5));
    CHECK(numberAfter(ran.out, "\"term\":\"residual\"", "variance") ==
          doctest::Approx(2451.25).epsilon(1e-5));
    CHECK(numberAfter(ran.out, "fixed effects", "value") == doctest::Approx(1527.5));
    // Balanced: 1 - 1/F, F = (5·1764.05 + 2451.25)/2451.25.
    CHECK(numberAfter(ran.out, "heritability", "by Cullis") ==
          doctest::Approx(1 - 2451.25 / (5 * 1764.05 + 2451.25)).epsilon(1e-5));
    CHECK_FALSE(holds(ran.out, "nan"));
}

TEST_CASE("relatives lend each other what is known of them") {
    const TempFolder folder;
    const std::string pedigree = folder.file("pedigree.csv");
    std::ofstream(pedigree) << "id,mother,father\nS1,P1,P2\nS2,P1,P2\nS3,P1,P3\nS4,P3,P2\n";
    const Ran ran = work({"--pedigree",
                          pedigree,
                          "--related",
                          "vine",
                          "--known-variance",
                          "2",
                          "--known-variance",
                          "1"},
                         "vine,yield\nS1,12\nS1,13\nS3,8\nS3,9\nS4,7\nS4,8\n");
    CHECK(ran.status == 0);
    // S2 has no records, but its full sister has the best.
    CHECK(numberAfter(ran.out, "\"level\":\"S2\"", "effect") > 0);
    CHECK(numberAfter(ran.out, "\"level\":\"S2\"", "reliability") > 0);
    CHECK(numberAfter(ran.out, "\"level\":\"P3\"", "effect") < 0);
    std::ofstream(pedigree) << "id,mother,father\nS1,S3,P2\nS3,S1,P3\nS4,P3,P2\n";
    const Ran circle =
        work({"--pedigree", pedigree, "--related", "vine"}, "vine,yield\nS1,12\nS3,8\n");
    CHECK(circle.status != 0);
    CHECK(holds(circle.err, "S1"));
    CHECK(holds(circle.err, "S3"));
}

TEST_CASE("a model that names what is not there, or cannot be fitted, is answered plainly") {
    const Ran none = work({"--random", "bach"}, kDyestuff);
    CHECK(none.status != 0);
    CHECK(none.out.empty());
    CHECK(holds(none.err, "there is no column \"bach\""));
    CHECK(holds(work({"--random", "batch"}, "batch,yield\nA,3\nB,3\nA,3\nB,3\n").err,
                "All 4 values are the same"));
    CHECK(holds(work({"--random", "batch"}, "batch,yield\nA,3\nB,four\n").err,
                "line 3, column \"yield\""));
    CHECK(holds(work({"--random-slope", "batch"}, kDyestuff).err, "--random-slope takes"));
    CHECK(holds(work({"--pedigree", "nowhere.csv"}, kDyestuff).err, "--related"));
    CHECK(holds(work({"--random", "batch", "--surface", "batch"}, kDyestuff).err,
                "--surface takes two columns"));
}

TEST_CASE("two columns of values are correlated, term by term") {
    std::string csv = "accession,yield,brix\n";
    for (int i = 0; i < 24; ++i) {
        const int accession = i / 3;
        csv += "A" + std::to_string(accession) + "," + std::to_string(10 + accession + i % 3) +
               "," + std::to_string(15 + accession * 2 + (i * 5) % 3) + "\n";
    }
    const Ran ran = work({"--random", "accession", "--correlated-with", "brix"}, csv);
    CHECK(ran.status == 0);
    CHECK(numberAfter(ran.out, "\"term\":\"accession\"", "value") > 0.9);
    CHECK(holds(ran.out, "\"plots with both\":24"));
}
