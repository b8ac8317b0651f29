// Sizes on the glass in millimetres, inks that are seen, and words that fit.
#include "quick/theme.hpp"

#include "core/report/colour.hpp"
#include "quick/key_grid.hpp"
#include "quick/text_fit.hpp"
#include "support/screen.hpp"

#include <QFontMetricsF>

#include <doctest/doctest.h>

using namespace bullace::quick;
namespace report = bullace::report;

namespace {

report::Rgb rgb(const QColor& colour) {
    return {colour.redF(), colour.greenF(), colour.blueF()};
}

double contrast(const QColor& one, const QColor& other) {
    return report::contrast(rgb(one), rgb(other));
}

double leastDifference(const QList<QColor>& fills, report::Vision vision) {
    double least = 1000;
    for (qsizetype i = 0; i < fills.size(); ++i) {
        for (qsizetype j = i + 1; j < fills.size(); ++j) {
            const auto one = report::seenWith(vision, rgb(fills[i]));
            const auto other = report::seenWith(vision, rgb(fills[j]));
            least = std::min(least, report::differenceOf(one, other));
        }
    }
    return least;
}

constexpr report::Vision kVisions[] = {
    report::Vision::Full, report::Vision::Protan, report::Vision::Deutan, report::Vision::Tritan};

} // namespace

TEST_CASE("by day all is pure black and white, and the ring of the focus is seen on the page") {
    const Palette day = paletteOf(Light::Day);
    for (const QColor& colour :
         {day.ink, day.paper, day.keyInk, day.keyFill, day.chosenInk, day.chosenFill, day.line}) {
        CHECK((colour == QColor(0, 0, 0) || colour == QColor(255, 255, 255)));
    }
    CHECK(contrast(day.focus, day.paper) >= 3);
}

TEST_CASE("every ink stands at least 7 to 1 on its ground, by day and at dusk") {
    for (const Light light : {Light::Day, Light::Dusk}) {
        const Palette palette = paletteOf(light);
        CHECK(contrast(palette.ink, palette.paper) >= 7);
        CHECK(contrast(palette.keyInk, palette.keyFill) >= 7);
        CHECK(contrast(palette.chosenInk, palette.chosenFill) >= 7);
        CHECK(contrast(palette.ink, palette.keyFill) >= 7);
        CHECK(contrast(palette.line, palette.paper) >= 7);
        CHECK(contrast(palette.focus, palette.paper) >= 3);
    }
}

TEST_CASE("categories and stages stay apart for every colour vision") {
    for (const report::Vision vision : kVisions) {
        CAPTURE(int(vision));
        CHECK(leastDifference(categoryFills(), vision) >= 12);
        CHECK(leastDifference(stageFills(), vision) >= 12);
    }
}

TEST_CASE("the eight category colours have the published least differences") {
    // Computed elsewhere from the same sources: 26 with full colour vision, 21 protan, 17 deutan,
    // 16 tritan.
    const double published[] = {26, 21, 17, 16};
    for (int i = 0; i < 4; ++i) {
        CHECK(leastDifference(categoryFills(), kVisions[i]) ==
              doctest::Approx(published[i]).epsilon(0.03));
    }
}

TEST_CASE("the stage written in its cell is white on the dark steps and black on the light ones") {
    for (qsizetype i = 0; i < stageFills().size(); ++i) {
        CHECK(contrast(inkOn(stageFills()[i]), stageFills()[i]) >= 4.5);
    }
    CHECK(inkOn(stageFills().first()) == QColor(255, 255, 255));
    CHECK(inkOn(stageFills().last()) == QColor(0, 0, 0));
}

TEST_CASE("keys have the sizes that hands need, in millimetres of this glass") {
    Theme theme;
    for (const qreal density : {4.0, 7.3, 11.8}) {
        theme.setPxPerMm(density);
        theme.setSmallGlass(false);
        theme.setLayout(Theme::Bare);
        CHECK(theme.keyWidth() == doctest::Approx(20 * density));
        CHECK(theme.keyHeight() == doctest::Approx(16 * density));
        theme.setSmallGlass(true);
        CHECK(theme.keyWidth() == doctest::Approx(18 * density));
        CHECK(theme.keyHeight() == doctest::Approx(15 * density));
        theme.setLayout(Theme::Glove);
        CHECK(theme.keyWidth() == doctest::Approx(22 * density));
        CHECK(theme.keyHeight() == doctest::Approx(22 * density));
        theme.setLayout(Theme::Rain);
        CHECK(theme.keyWidth() > 22 * density);
        CHECK(theme.undoDistance() == doctest::Approx(8 * density));
    }
}

TEST_CASE("capitals are 4, 2.9, 12 and 8 mm high, and twice that at 200 %") {
    Theme theme;
    theme.setPxPerMm(8);
    const auto capitalsMm = [&theme](int fontPx) {
        return QFontMetricsF(theme.fontOf(fontPx)).capHeight() / 8;
    };
    for (const qreal scale : {1.0, 2.0}) {
        theme.setTextScale(scale);
        CHECK(capitalsMm(theme.labelPx()) == doctest::Approx(4.0 * scale).epsilon(0.04));
        CHECK(capitalsMm(theme.smallPx()) == doctest::Approx(2.9 * scale).epsilon(0.04));
        CHECK(capitalsMm(theme.echoPx()) == doctest::Approx(12.0 * scale).epsilon(0.04));
        CHECK(capitalsMm(theme.placePx()) == doctest::Approx(8.0 * scale).epsilon(0.04));
    }
    CHECK(theme.family() == QStringLiteral("B612"));
}

TEST_CASE("what no glass and no eye has is not taken") {
    Theme theme;
    theme.setPxPerMm(6);
    theme.setPxPerMm(0);
    theme.setPxPerMm(-3);
    theme.setPxPerMm(std::nan(""));
    CHECK(theme.pxPerMm() == doctest::Approx(6));
    theme.setTextScale(9);
    CHECK(theme.textScale() == doctest::Approx(2));
    theme.setTextScale(std::nan(""));
    CHECK(theme.textScale() == doctest::Approx(1));
}

TEST_CASE("words are as large as the room allows, and never smaller than the least") {
    Theme theme;
    const QString words = "Bud swell";
    const int large = theme.fit(words, 10, 600, 400, 200);
    const int small = theme.fit(words, 10, 60, 100, 40);
    CHECK(large > small);
    CHECK(small >= 10);
    CHECK(theme.fit(words, 10, 60, 5, 5) == 10);
    CHECK(theme.fit(words, 10, 5, 400, 200) == 10);
    CHECK(theme.wrappedHeight(words, large, 400) <= 200);
    CHECK(theme.widestWord(words, large) <= 400);
    const bool isOneMoreTooMuch = theme.wrappedHeight(words, large + 1, 400) > 200 ||
                                  theme.widestWord(words, large + 1) > 400;
    CHECK(isOneMoreTooMuch);
    CHECK(theme.wrappedHeight("", 20, 100) == 0);
    CHECK(theme.widestWord("a transplanting b", 20) ==
          doctest::Approx(theme.widestWord("transplanting", 20)));
}

TEST_CASE("a scale's keys fill the room, all in sight where they fit") {
    const GridPlan fits = planGrid(10, {1000, 500}, {100, 80}, 10);
    CHECK(fits.columns * fits.rows >= 10);
    CHECK(fits.rows * fits.keyHeight + (fits.rows - 1) * 10 <= 500.01);
    CHECK(fits.columns * fits.keyWidth + (fits.columns - 1) * 10 == doctest::Approx(1000));
    CHECK(fits.keyWidth >= 100);
    const GridPlan tight = planGrid(60, {320, 200}, {100, 80}, 10);
    CHECK(tight.columns == 3);
    CHECK(tight.keyHeight == doctest::Approx(80));
    CHECK(planGrid(0, {320, 200}, {100, 80}, 10).columns == 1);
    CHECK(planGrid(5, {10, 10}, {100, 80}, 10).columns == 1);
}
