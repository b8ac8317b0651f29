// `bullace work kill-curve`, `growth` and `colour` over plain files: one document, and errors that
// name line and column.
#include "process/programs.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace bullace::test;

namespace {

bool holds(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

Ran work(const std::string& method, const std::string& csv) {
    return console({"work", method, "-", "--json"}, csv);
}

// Nothing that a JSON reader would stumble on.
bool isPlain(const Ran& ran) {
    return ran.status == 0 && !holds(ran.out, "nan") && !holds(ran.out, "inf") &&
           holds(ran.out, "\"computation\":");
}

} // namespace

TEST_CASE("a freezing test comes out as one document with its temperatures and remarks") {
    const Ran ran = work("kill-curve",
                         "accession,temperature,counted,dead\n"
                         "A1,-12,30,2\nA1,-16,30,17\nA1,-20,30,29\n"
                         "A2,-12,30,0\nA2,-16,30,4\nA2,-20,30,21\n");
    CHECK(isPlain(ran));
    CHECK(holds(ran.out, "\"percent killed\":50"));
    CHECK(holds(ran.out, "\"compared by one slope\""));
    CHECK(holds(ran.out, "official forecasts and local advice come first"));
    const Ran none = work("kill-curve", "temperature,counted,dead\n-12,30,0\n-20,30,0\n");
    CHECK(isPlain(none));
    CHECK(holds(none.out, "colder than the coldest tested"));
}

TEST_CASE("a wrong cell of a freezing test is named by line and column") {
    const Ran more = work("kill-curve", "temperature,counted,dead\n-12,30,2\n-16,30,31\n");
    CHECK(more.status != 0);
    CHECK(more.out.empty());
    CHECK(holds(more.err, "line 3, column \"dead\": more dead than counted"));
    CHECK(holds(work("kill-curve", "temperature,counted,dead\ncold,30,2\n").err,
                "line 2, column \"temperature\""));
    CHECK(work("kill-curve", "counted,dead\n30,2\n").status != 0);
}

TEST_CASE("growth and colour take their columns and name what is wrong") {
    const Ran growth = work("growth",
                            "shoot,date,cm,tip\n1,2026-04-20,8,\n1,2026-05-04,31,\n"
                            "1,2026-05-18,90,\n1,2026-06-01,160,\n1,2026-06-20,205,growing\n"
                            "1,2026-07-20,221,stopped\n");
    CHECK(isPlain(growth));
    CHECK(holds(growth.out, "\"first stopped\":\"2026-07-20\""));
    CHECK(holds(work("growth", "shoot,date,tip\n1,2026-04-20,resting\n").err,
                "line 2, column \"tip\""));
    const Ran storage = work("colour", "day,absorbance\n0,1.2\n30,0.9\n60,0.66\n90,0.5\n");
    CHECK(isPlain(storage));
    CHECK(holds(storage.out, "\"half-life, days\":{\"value\":"));
    const Ran pigments = work("colour", "delphinidin,malvidin\n40,20\n30,28\n");
    CHECK(isPlain(pigments));
    CHECK(holds(pigments.out, "\"malvidin to delphinidin\":{\"value\":"));
    CHECK(holds(work("colour", "delphinidin\n-1\n").err, "line 2, column \"delphinidin\""));
}
