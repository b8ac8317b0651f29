#include "core/report/colour.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::report {

namespace {

double linear(double part) {
    return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
}

double written(double part) {
    const double inside = std::clamp(part, 0.0, 1.0);
    return inside <= 0.0031308 ? inside * 12.92 : 1.055 * std::pow(inside, 1 / 2.4) - 0.055;
}

using Matrix = std::array<std::array<double, 3>, 3>;

std::array<double, 3> times(const Matrix& matrix, const std::array<double, 3>& vector) {
    std::array<double, 3> product{};
    for (std::size_t row = 0; row < 3; ++row) {
        product[row] =
            matrix[row][0] * vector[0] + matrix[row][1] * vector[1] + matrix[row][2] * vector[2];
    }
    return product;
}

std::array<double, 3> linearOf(const Rgb& colour) {
    return {linear(colour.red), linear(colour.green), linear(colour.blue)};
}

constexpr Matrix kFull{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
constexpr Matrix kProtan{{{0.152286, 1.052583, -0.204868},
                          {0.114503, 0.786281, 0.099216},
                          {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix kDeutan{{{0.367322, 0.860646, -0.227968},
                          {0.280085, 0.672501, 0.047413},
                          {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix kTritan{{{1.255528, -0.076749, -0.178779},
                          {-0.078411, 0.930809, 0.147602},
                          {0.004733, 0.691367, 0.303900}}};
constexpr Matrix kToXyz{
    {{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}}};

const Matrix& matrixOf(Vision vision) {
    switch (vision) {
    case Vision::Protan:
        return kProtan;
    case Vision::Deutan:
        return kDeutan;
    case Vision::Tritan:
        return kTritan;
    case Vision::Full:
        break;
    }
    return kFull;
}

// The cube root with CIE's straight part near black.
double labRoot(double share) {
    constexpr double kEdge = 6.0 / 29.0;
    return share > kEdge * kEdge * kEdge ? std::cbrt(share)
                                         : share / (3 * kEdge * kEdge) + 4.0 / 29.0;
}

} // namespace

double luminance(const Rgb& colour) {
    return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) +
           0.0722 * linear(colour.blue);
}

double contrast(const Rgb& one, const Rgb& other) {
    const auto [dark, light] = std::minmax({luminance(one), luminance(other)});
    return (light + 0.05) / (dark + 0.05);
}

Rgb seenWith(Vision vision, const Rgb& colour) {
    if (vision == Vision::Full) {
        return colour;
    }
    const auto seen = times(matrixOf(vision), linearOf(colour));
    return {written(seen[0]), written(seen[1]), written(seen[2])};
}

Lab labOf(const Rgb& colour) {
    const auto xyz = times(kToXyz, linearOf(colour));
    const double x = labRoot(xyz[0] / 0.9505);
    const double y = labRoot(xyz[1]);
    const double z = labRoot(xyz[2] / 1.0890);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

double differenceOf(const Rgb& one, const Rgb& other) {
    const Lab a = labOf(one);
    const Lab b = labOf(other);
    return std::hypot(a.lightness - b.lightness, a.a - b.a, a.b - b.b);
}

} // namespace bullace::report
