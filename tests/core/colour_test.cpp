// Contrast, colour difference and colour vision against published values.
#include "core/report/colour.hpp"

#include <doctest/doctest.h>

#include <initializer_list>

using namespace bullace::report;

namespace {

Rgb hex(unsigned value) {
    return {((value >> 16) & 255) / 255.0, ((value >> 8) & 255) / 255.0, (value & 255) / 255.0};
}

} // namespace

TEST_CASE("black on white has the greatest contrast, 21, and a colour on itself 1") {
    CHECK(contrast(hex(0x000000), hex(0xFFFFFF)) == doctest::Approx(21));
    CHECK(contrast(hex(0xFFFFFF), hex(0x000000)) == doctest::Approx(21));
    CHECK(contrast(hex(0x0072B2), hex(0x0072B2)) == doctest::Approx(1));
}

TEST_CASE("the grey that just passes as body text on white is at 4.54") {
    // WCAG 2.2's much-used limiting grey #767676; the figure follows from the definition.
    CHECK(contrast(hex(0x767676), hex(0xFFFFFF)) == doctest::Approx(4.54).epsilon(0.002));
}

TEST_CASE("Okabe and Ito's blue, vermillion and yellow on white") {
    CHECK(contrast(hex(0x0072B2), hex(0xFFFFFF)) == doctest::Approx(5.19).epsilon(0.002));
    CHECK(contrast(hex(0xD55E00), hex(0xFFFFFF)) == doctest::Approx(3.87).epsilon(0.002));
    CHECK(contrast(hex(0xF0E442), hex(0xFFFFFF)) == doctest::Approx(1.32).epsilon(0.004));
}

TEST_CASE("the corners of sRGB have their published L*a*b* values") {
    // sRGB primaries under D65 (Lindbloom's tables): red 53.24, 80.09, 67.20; blue 32.30, 79.19,
    // -107.86. The published values carry two decimals, and the matrix here four.
    const Lab red = labOf(hex(0xFF0000));
    CHECK(red.lightness == doctest::Approx(53.24).epsilon(0.001));
    CHECK(red.a == doctest::Approx(80.09).epsilon(0.001));
    CHECK(red.b == doctest::Approx(67.20).epsilon(0.001));
    const Lab blue = labOf(hex(0x0000FF));
    CHECK(blue.lightness == doctest::Approx(32.30).epsilon(0.001));
    CHECK(blue.a == doctest::Approx(79.19).epsilon(0.001));
    CHECK(blue.b == doctest::Approx(-107.86).epsilon(0.001));
    CHECK(labOf(hex(0xFFFFFF)).lightness == doctest::Approx(100));
    CHECK(labOf(hex(0x000000)).lightness == doctest::Approx(0));
}

TEST_CASE("the seven steps of viridis rise evenly in lightness") {
    const unsigned steps[] = {0x440154, 0x443983, 0x31688E, 0x21918C, 0x35B779, 0x90D743, 0xFDE725};
    const double published[] = {15, 29, 42, 54, 67, 79, 91};
    for (int i = 0; i < 7; ++i) {
        CHECK(labOf(hex(steps[i])).lightness == doctest::Approx(published[i]).epsilon(0.04));
    }
}

TEST_CASE("greys look the same to everybody") {
    // The rows of each published matrix sum to 1 within its six decimals.
    for (const Vision vision : {Vision::Protan, Vision::Deutan, Vision::Tritan}) {
        for (const unsigned grey : {0x000000u, 0x595959u, 0xFFFFFFu}) {
            CHECK(differenceOf(seenWith(vision, hex(grey)), hex(grey)) < 0.01);
        }
    }
}

TEST_CASE("red and green come close for two colour visions, and a usual set of red, green and "
          "brown is found out") {
    const Rgb red = hex(0xC62828);
    const Rgb green = hex(0x558B2F);
    const double full = differenceOf(red, green);
    CHECK(differenceOf(seenWith(Vision::Deutan, red), seenWith(Vision::Deutan, green)) < full / 2);
    CHECK(differenceOf(seenWith(Vision::Protan, red), seenWith(Vision::Protan, green)) < full / 2);
}
