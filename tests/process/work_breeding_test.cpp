// `bullace work pedigree`, `index` and `cross-plan` over plain files: one document, and errors that
// name what is wrong.
#include "process/programs.hpp"

#include "support/check_file.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace bullace::test;

namespace {

bool holds(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

bool isPlain(const Ran& ran) {
    return ran.status == 0 && ran.err.empty() && !holds(ran.out, ":nan") &&
           holds(ran.out, "\"computation\":");
}

const std::string kMrode =
    "id,mother,father,taxon\n6,2,5,\n5,3,4,\n4,,1,\n3,2,1,\n1,,,rotundifolia\n2,,,munsoniana\n";

} // namespace

TEST_CASE("a pedigree comes out with inbreeding, founders and kinships of those asked for") {
    // Mrode 2014, Table 2.1.
    const Ran ran =
        console({"work", "pedigree", "-", "--json", "--focus", "6", "--focus", "5"}, kMrode);
    CHECK(isPlain(ran));
    CHECK(holds(ran.out, "\"id\":\"6\",\"mother\":\"2\",\"father\":\"5\""));
    CHECK(holds(ran.out, "\"share of munsoniana\":0.625"));
    CHECK(holds(ran.out, "\"inbreeding\":0.125"));
    CHECK(holds(ran.out, "\"kinship\":0.34375"));
    CHECK(isPlain(console({"work", "pedigree", "-", "--json"}, kMrode)));
    CHECK(isPlain(console({"work", "pedigree", "-", "--json"}, "id,mother,father\n")));
}

TEST_CASE("a wrong pedigree is refused by name") {
    const Ran circle = console({"work", "pedigree", "-"}, "id,parent1,parent2\nA1,A2,\nA2,A1,\n");
    CHECK(circle.status != 0);
    CHECK(circle.out.empty());
    CHECK(holds(circle.err, "A1 is its own ancestor: A1 (line 2), A2 (line 3)."));
    CHECK(holds(console({"work", "pedigree", "-", "--focus", "Z"}, kMrode).err, "Z is not in"));
    CHECK(console({"work", "pedigree", "-"}, "id,mother\nA1,\n").status != 0);
}

TEST_CASE("an index ranks candidates, and a selection has its expected response") {
    // Mrode 2014, pp. 15-18: coefficients 0.674 and 2.695.
    const Folder folder;
    const std::string variances = folder.file("variances.csv");
    writeFile(variances,
              "kind,trait,growth,lean\nphenotypic,growth,6400,-57.6\n"
              "phenotypic,lean,-57.6,51.84\ngenetic,growth,2752,62.064\n"
              "genetic,lean,62.064,15.552\n");
    const std::string candidates = "id,growth,lean\nA1,900,55\nA2,950,\nA3,870,61\n";
    const Ran ran = console({"work",
                             "index",
                             "-",
                             "--json",
                             "--variances",
                             variances,
                             "--weight",
                             "growth=1.5",
                             "--weight",
                             "lean=0.5",
                             "--select",
                             "1"},
                            candidates);
    CHECK(isPlain(ran));
    CHECK(holds(ran.out, "\"coefficient\":0.6741022727272"));
    CHECK(holds(ran.out, "\"id\":\"A2\",\"index\":"));
    CHECK(holds(ran.out, "\"intensity\":0.8462843753216"));
    CHECK(holds(ran.out, "Candidates of which not every trait was measured: 1."));
    CHECK(holds(
        console({"work", "index", "-", "--variances", variances, "--weight", "yield=1"}, candidates)
            .err,
        "yield=1 is not a trait"));
    CHECK(console({"work", "index", "-", "--variances", variances, "--weight", "growth=1"},
                  "id,growth\nA1,9\n")
              .status != 0);
}

TEST_CASE("a plan of crosses comes out with its reasons, and her own list is commented") {
    const Folder folder;
    const std::string list = folder.file("list.csv");
    const std::string pedigree = folder.file("pedigree.csv");
    writeFile(list, "mother,father\nF1,P1\nF1,F2\nP1,P1\nF2,\nF2,P1+P2\n");
    writeFile(pedigree, "id,mother,father\nF1,X1,X2\nP1,X1,X2\nF2,,\nP2,,\n");
    const std::string candidates = "id,sex,merit,chromosomes,most uses\nF1,female,5,40,2\n"
                                   "F2,4,3,40,2\nP1,perfect,4,38,2\nP2,3,2,40,2\n";
    const Ran plan = console({"work",
                              "cross-plan",
                              "-",
                              "--json",
                              "--crosses",
                              "2",
                              "--pedigree",
                              pedigree,
                              "--most-kinship",
                              "0.2",
                              "--curve",
                              "3"},
                             candidates);
    CHECK(isPlain(plan));
    CHECK(holds(plan.out, "\"plan\":\"proven the best\""));
    CHECK(holds(plan.out, "\"sum of worths\":7.0"));
    CHECK(holds(plan.out, "almost sterile"));
    CHECK(holds(plan.out, "\"why\":\"too related\""));
    CHECK(holds(plan.out, "\"merit against kinship\":[{"));
    const Ran own = console({"work", "cross-plan", "-", "--json", "--list", list}, candidates);
    CHECK(isPlain(own));
    CHECK(holds(own.out, "F2 has female flowers: its pollen does not function."));
    CHECK(holds(own.out, "Open pollination"));
    CHECK(holds(console({"work", "cross-plan", "-"}, "id,sex\nA1,hermaphrodite\n").err,
                "line 2, column \"sex\""));
    CHECK(holds(console({"work", "cross-plan", "-", "--species", "x"}, candidates).err,
                "x is not a species"));
}

TEST_CASE("a hundred thousand vines pass through the console") {
    const auto csv = checkFile("cases/ped-100k/pedigree.csv");
    if (!csv) {
        return;
    }
    const Ran ran = console({"work", "pedigree", "-", "--json", "--focus", "N028000"}, *csv);
    CHECK(isPlain(ran));
    CHECK(holds(ran.out, "\"inbreeding\":0.0361328125"));
    CHECK(holds(ran.out, "relationships\":-74450.07404056"));
}
