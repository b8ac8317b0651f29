// How a computation's sentences are filled in.
#include "core/base/remark.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using std::chrono::year;

TEST_CASE("a remark is filled in with names, counts, measurements and days") {
    const Remark remark{BULLACE_SENTENCE("Remark", "%1: %2 visits, %3 mm, since %4; %5 is 100 %."),
                        {std::string("A017"),
                         std::int64_t{12},
                         Remark::Number{15.25, 1},
                         year(2025) / 5 / 3,
                         std::string("%1")}};
    CHECK(inEnglish(remark) == "A017: 12 visits, 15.3 mm, since 2025-05-03; %1 is 100 %.");
}

TEST_CASE("a place without a part, and a percent sign, stay as they are") {
    CHECK(inEnglish({"95 % of %2", {std::string("it")}}) == "95 % of %2");
    CHECK(inEnglish({"half%", {}}) == "half%");
}
