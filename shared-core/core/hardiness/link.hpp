// The three shapes that a curve of kill over frost may have, with the slopes that fitting needs.
#pragma once

namespace bullace::hardiness {

// How the share of dead buds depends on η = intercept + slope·x.
enum class Link {
    Logit,               // 1/(1 + exp(-η))
    Probit,              // Φ(η)
    ComplementaryLogLog, // 1 - exp(-exp(η)); the only one that is not alike on both sides of 50 %
};

// η at which the share is `part`; 0 < part < 1.
[[nodiscard]] double linked(Link link, double part);

// The share at η, and 1 minus it, each without loss of digits where it is tiny.
[[nodiscard]] double killedAt(Link link, double eta);
[[nodiscard]] double survivingAt(Link link, double eta);

// d share / d η, and its derivative.
[[nodiscard]] double densityAt(Link link, double eta);
[[nodiscard]] double densitySlopeAt(Link link, double eta);

// A logarithm with its first and second derivative in η.
struct LogShare {
    double value = 0;
    double slope = 0;
    double curvature = 0;
};
[[nodiscard]] LogShare logKilledAt(Link link, double eta);
[[nodiscard]] LogShare logSurvivingAt(Link link, double eta);

} // namespace bullace::hardiness
