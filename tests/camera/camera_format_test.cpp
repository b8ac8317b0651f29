#include "camera/camera_format.hpp"

#include <doctest/doctest.h>

#include <vector>

using namespace bullace::camera;

namespace {

QSize chosen(CameraUse use, const std::vector<CameraFormat>& offered) {
    const auto best = formatFor(use, offered);
    return best ? offered[*best].size : QSize();
}

} // namespace

TEST_CASE("for codes the smallest format is taken that shows a label at half a metre") {
    CHECK(chosen(CameraUse::Codes,
                 {{{640, 480}, 30}, {{3840, 2160}, 30}, {{1280, 720}, 30}, {{1920, 1080}, 30}}) ==
          QSize(1280, 720));
}

TEST_CASE("a camera held upright counts by its long side") {
    CHECK(chosen(CameraUse::Codes, {{{720, 1280}, 30}, {{1080, 1920}, 30}}) == QSize(720, 1280));
}

TEST_CASE("for photos the smallest format is taken that fills a photo") {
    CHECK(chosen(CameraUse::Photos,
                 {{{1280, 720}, 30}, {{4000, 3000}, 30}, {{2048, 1536}, 15}, {{1920, 1080}, 30}}) ==
          QSize(2048, 1536));
}

TEST_CASE("a camera that offers only small formats gives its greatest") {
    const std::vector<CameraFormat> offered{{{320, 240}, 30}, {{640, 480}, 15}, {{352, 288}, 30}};
    CHECK(chosen(CameraUse::Codes, offered) == QSize(640, 480));
    CHECK(chosen(CameraUse::Photos, offered) == QSize(640, 480));
}

TEST_CASE("a format that is too slow to aim with is taken only where no other is enough") {
    CHECK(chosen(CameraUse::Codes, {{{1280, 720}, 5}, {{1920, 1080}, 10}}) == QSize(1920, 1080));
    CHECK(chosen(CameraUse::Codes, {{{1280, 720}, 5}, {{640, 480}, 30}}) == QSize(1280, 720));
    CHECK(chosen(CameraUse::Codes, {{{1280, 720}, 0}, {{1280, 800}, 30}}) == QSize(1280, 800));
}

TEST_CASE("of formats of one size the slowest that is fast enough is taken, for heat") {
    const std::vector<CameraFormat> offered{{{1280, 720}, 60}, {{1280, 720}, 5}, {{1280, 720}, 10}};
    CHECK(formatFor(CameraUse::Codes, offered) == 2);
}

TEST_CASE("a camera that names no format is left to choose for itself") {
    CHECK_FALSE(formatFor(CameraUse::Codes, {}).has_value());
    CHECK(chosen(CameraUse::Codes, {{{0, 0}, 30}}) == QSize());
}
