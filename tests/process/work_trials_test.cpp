// `bullace work trial`, `augmented` and `design` over plain files: one document, the checks' own
// data, and errors that name line and column.
#include "process/programs.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>

using namespace bullace::test;

namespace {

bool holds(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

Ran work(std::vector<std::string> words, const std::string& csv) {
    words.insert(words.begin(), "work");
    words.insert(words.begin() + 2, "-");
    words.emplace_back("--json");
    return console(words, csv);
}

bool isPlain(const Ran& ran) {
    return ran.status == 0 && !holds(ran.out, "nan") && !holds(ran.out, "inf") &&
           holds(ran.out, "\"computation\":");
}

const std::string kTrial = "accession,block,yield,age\n"
                           "A1,1,4.1,5\nA1,2,4.4,6\nA1,3,3.8,5\n"
                           "A2,1,5.2,5\nA2,2,5.9,4\nA2,3,5.1,6\n"
                           "A3,1,7.7,6\nA3,2,7.9,5\nA3,3,,5\n";

} // namespace

TEST_CASE("a trial in blocks comes out as one document with means, letters and remarks") {
    const Ran ran = work({"trial",
                          "--response",
                          "yield",
                          "--treatment",
                          "accession",
                          "--block",
                          "block",
                          "--reference",
                          "A1",
                          "--rows"},
                         kTrial);
    CHECK(isPlain(ran));
    CHECK(holds(ran.out, "\"left out\":1"));
    CHECK(holds(ran.out, "\"letters of Tukey\":\"a\""));
    CHECK(holds(ran.out, "\"p of Dunnett\":"));
    CHECK(holds(ran.out, "\"efficiency of blocks\":[{\"block\":\"block\""));
    CHECK(holds(ran.out, "Records left out because a value"));
    CHECK(holds(ran.out, "\"line\":2,\"fitted\":"));
    CHECK(isPlain(
        work({"trial", "--response", "yield", "--treatment", "accession", "--covariate", "age"},
             kTrial)));
    const Ran log = work({"trial",
                          "--response",
                          "yield",
                          "--treatment",
                          "accession",
                          "--scale",
                          "logarithm",
                          "--kind",
                          "count"},
                         kTrial);
    CHECK(isPlain(log));
    CHECK(holds(log.out, "\"means told back\":[{\"term\":\"accession\""));
    CHECK(holds(log.out, "\"advice on the scale\":{\"scale\":"));
    CHECK(holds(log.out, "Analysed as logarithms of the value and 1."));
}

TEST_CASE("what is wrong with a trial's file is named") {
    const auto error = [](std::vector<std::string> words, const std::string& csv) {
        const Ran ran = work(std::move(words), csv);
        CHECK(ran.status != 0);
        CHECK(ran.out.empty());
        return ran.err;
    };
    CHECK(holds(error({"trial", "--response", "kg", "--treatment", "accession"}, kTrial),
                "there is no column \"kg\""));
    CHECK(holds(error({"trial", "--response", "yield"}, kTrial), "No treatment is named"));
    CHECK(holds(error({"trial", "--response", "accession", "--treatment", "block"}, kTrial),
                "line 2, column \"accession\": \"A1\" is no number"));
    CHECK(holds(error({"trial", "--response", "yield", "--sub-plot", "block"}, kTrial),
                "A split plot needs"));
    CHECK(holds(error({"trial", "--response", "y", "--treatment", "t"}, "t,y\na,\nb,\n"),
                "No record has a value of y"));
    CHECK(holds(error({"augmented", "--response", "y"}, "block,entry,y\n1,s1,4\n2,s2,5\n"),
                "No check is among the complete records"));
}

TEST_CASE("a split plot, components of variance and an augmented trial are told") {
    const Ran split =
        work({"trial", "--response", "y", "--block", "b", "--whole-plot", "w", "--sub-plot", "s"},
             "b,w,s,y\n1,a,x,4\n1,a,z,5.5\n1,b,x,6\n1,b,z,8\n2,a,x,5\n2,a,z,6.2\n2,b,x,6.5\n"
             "2,b,z,7\n3,a,x,4.4\n3,a,z,5.1\n3,b,x,7\n3,b,z,8.2\n");
    CHECK(isPlain(split));
    CHECK(holds(split.out, "\"of whole plots at one kind of sub-plot\":{\"standard error\":"));
    const Ran nested = work({"trial", "--response", "y", "--nested", "a", "--nested", "v"},
                            "a,v,y\n1,1,4\n1,1,4.2\n1,2,5\n2,1,6\n2,1,6.3\n2,2,6.6\n");
    CHECK(isPlain(nested));
    CHECK(holds(nested.out, "\"level\":\"within\""));
    const std::string seedlings = "block,entry,y\n1,c1,4\n1,c2,5\n1,s1,6\n1,s2,3\n2,c1,4.4\n"
                                  "2,c2,5.5\n2,s3,7\n2,s4,4.1\n3,c1,4.1\n3,c2,4.8\n3,s5,5\n";
    const Ran augmented = work({"augmented", "--response", "y"}, seedlings);
    CHECK(isPlain(augmented));
    CHECK(holds(augmented.out, "\"checks\":[\"c1\",\"c2\"]"));
    CHECK(holds(augmented.out, "\"of a selection and a check\":{\"standard error\":"));
    CHECK(isPlain(work({"augmented", "--response", "y", "--selections", "random"}, seedlings)));
}

// Yates 1935; Petersen 1985: read from ../shared/checks beside the project, where it is there.
TEST_CASE("the outside trials are read from their files") {
    const std::string cases = std::string(BULLACE_SOURCE) + "/../shared/checks/cases/";
    if (!std::filesystem::exists(cases)) {
        MESSAGE("left out: ../shared/checks is not beside the project");
        return;
    }
    const Ran oats = console({"work",
                              "trial",
                              cases + "splitplot-oats/data.csv",
                              "--response",
                              "y",
                              "--block",
                              "block",
                              "--whole-plot",
                              "W",
                              "--sub-plot",
                              "S",
                              "--json"});
    CHECK(isPlain(oats));
    CHECK(holds(oats.out, "\"F\":37.6856470588"));
    const Ran wheat = console({"work",
                               "augmented",
                               cases + "augmented-petersen-wheat/data.csv",
                               "--response",
                               "y",
                               "--json"});
    CHECK(isPlain(wheat));
    CHECK(holds(wheat.out, "\"error variance\":91102.65555"));
}

TEST_CASE("a planting plan comes out as a document or as a file that can be taken in") {
    const Folder folder;
    const std::string entries = folder.file("entries.csv");
    writeFile(entries, "entry,check\nS1,no\nS2,no\nS3,no\nS4,no\nC1,yes\nC2,yes\n");
    std::string positions = "position,usable\n";
    for (int row = 1; row <= 2; ++row) {
        for (int vine = 1; vine <= 5; ++vine) {
            positions += "B2-0" + std::to_string(row) + "-0" + std::to_string(vine) +
                         (row == 1 && vine == 3 ? ",no\n" : ",yes\n");
        }
    }
    const Ran plan = work({"design", "--entries", entries, "--design", "augmented"}, positions);
    CHECK(isPlain(plan));
    CHECK(holds(plan.out, "\"positions without a vine\":1"));
    CHECK_FALSE(holds(plan.out, "B2-01-03"));
    const Ran csv =
        work({"design", "--entries", entries, "--design", "augmented", "--csv"}, positions);
    CHECK(csv.out.starts_with("position,entry,replicate,check\n"));
    CHECK(csv.out ==
          work({"design", "--entries", entries, "--design", "augmented", "--csv"}, positions).out);
    const Ran full = work({"design", "--entries", entries}, positions);
    CHECK(full.status != 0);
    CHECK(holds(full.err,
                "There are 9 usable positions, too few for 2 replicates of 6 entries, which take "
                "12."));
    CHECK(holds(work({"design", "--entries", entries}, "position\nB2-7\n").err,
                "line 2, column \"position\": \"B2-7\" is no position like B2-07-14"));
    CHECK(holds(work({"design", "--entries", entries}, "row,vine,usable\n1,1,perhaps\n").err,
                "is neither yes nor no"));
}
