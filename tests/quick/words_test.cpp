// How numbers are said.
#include "quick/words.hpp"

#include <doctest/doctest.h>

using namespace bullace;

TEST_CASE("the mean of two counts is not said to be a count, and a count has no decimals") {
    const descriptors::Descriptor* clusters = descriptors::findBuiltIn("clusters");
    REQUIRE(clusters != nullptr);
    const vineyard::Asked asked{*clusters, {}};
    CHECK(quick::numberWords(asked, 102, {}) == QStringLiteral("102"));
    CHECK(quick::numberWords(asked, 102.5, {}) == QStringLiteral("102.5"));
    CHECK(quick::numberWords(asked, 0, {}) == QStringLiteral("0"));
}
