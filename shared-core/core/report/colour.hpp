// Colours as numbers: how far apart two of them look, to people of every colour vision, on a screen
// in any light.
#pragma once

namespace bullace::report {

// An sRGB colour; each part 0 to 1, as written on a screen (not linear).
struct Rgb {
    double red = 0;
    double green = 0;
    double blue = 0;
};

// CIE 1976 L*a*b* under D65; lightness 0 to 100.
struct Lab {
    double lightness = 0;
    double a = 0;
    double b = 0;
};

enum class Vision { Full, Protan, Deutan, Tritan };

// Relative luminance, 0 (black) to 1 (white).
// Source  WCAG 2.2, definition of relative luminance (IEC 61966-2-1 with the threshold 0.04045).
[[nodiscard]] double luminance(const Rgb& colour);

// Contrast of two colours, 1 to 21, in either order.
// Source  WCAG 2.2, definition of contrast ratio.
[[nodiscard]] double contrast(const Rgb& one, const Rgb& other);

// The colour as somebody of that vision sees it (severity 1.0); parts stay within 0 to 1.
// Source  Machado, Oliveira & Fernandes 2009, IEEE Trans. Vis. Comput. Graph. 15:1291-1298, the
// published matrices for
//         severity 1.0, applied to linear RGB.
[[nodiscard]] Rgb seenWith(Vision vision, const Rgb& colour);

// Source  CIE 15:2004; sRGB primaries and D65 white of IEC 61966-2-1.
[[nodiscard]] Lab labOf(const Rgb& colour);

// CIE 1976 colour difference ΔE*ab: about 2.3 is a just noticeable difference.
[[nodiscard]] double differenceOf(const Rgb& one, const Rgb& other);

} // namespace bullace::report
