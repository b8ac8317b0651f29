// How a character is spread over the vines of one taxon: vines differ in their mean, and clusters
// or berries differ on one vine. Evidence that forgot the first would grow with every cluster of a
// vine that is merely unusual.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace bullace::fruit {

enum class LawKind {
    Count,   // negative binomial on one vine, vines' means log-normal
    Measure, // normal on one vine, vines' means normal
    Choice   // one of a few codes, once for a vine
};

struct CharacterLaw {
    LawKind kind = LawKind::Measure;
    double mean = 0;    // of the taxon, above 0 for counts; for counts the median vine's
    double between = 0; // SD of vines' means: of their logarithms for counts; 0 or more
    double within = 0;  // Measure: SD on one vine, above 0. Count: 1/k, 0 for Poisson
    // Choice: how likely each code is; codes not named are as likely as `other` says.
    struct Share {
        double code = 0;
        double probability = 0;
    };
    std::vector<Share> shares;
    double other = 0.01;
};

// The law of single values whose published range is taken to hold 90 % of them (our assumption: the
// sources say "usually"), as many below it as above. A third of the logarithmic variance of counts,
// and half of the variance of measures, is given to the differences between vines (common practice,
// no source). A narrow range of small counts, as 2 to 8, is narrower than counts can be: then fewer
// lie inside.
[[nodiscard]] CharacterLaw countLawOfRange(double low, double high);   // 1 <= low < high, whole
[[nodiscard]] CharacterLaw measureLawOfRange(double low, double high); // low < high

// The law estimated from vines with their values, by moments: between vines and within. Vines with
// one value tell of the mean alone. `kind` is Count or Measure. Needs at least two vines with two
// values each, and values that vary; the caller asks for more.
[[nodiscard]] CharacterLaw lawOfVines(LawKind kind, const std::vector<std::vector<double>>& vines);

// The log-likelihood of what one vine's values add up to under a law, with the vine's own mean
// integrated out: in closed form for measures, over a fine grid for counts. How the values scatter
// about their mean is left aside: it says more of who measured than of the taxon, and with many
// values it would outweigh all else.
class VineLikelihood {
public:
    explicit VineLikelihood(const CharacterLaw& law);

    // A count is rounded to a whole number from 0; a value that is not finite changes nothing.
    void add(double value);
    void add(std::span<const double> values);
    [[nodiscard]] double logValue() const; // 0 while nothing was added

    // A draw of the vine's mean given its values, and of a next value given the mean, from uniforms
    // in (0, 1). Counts and measures only.
    [[nodiscard]] double drawMean(double uniform) const;
    [[nodiscard]] double drawValue(double vineMean, double uniform) const;

private:
    struct Node {
        double mean = 0;
        double logNone = 0;  // of one count of 0
        double perCount = 0; // what each one counted adds
        double logPrior = 0;
    };
    [[nodiscard]] double logOfSum() const;
    [[nodiscard]] double logOfMean() const;
    [[nodiscard]] std::vector<double> logWeights() const; // of the nodes, with what was seen

    CharacterLaw law_;
    std::vector<Node> nodes_; // of counts, by ascending mean
    double n_ = 0;
    double sum_ = 0; // of measures from the law's mean on
    double log_ = 0; // of choices
};

// How far a vine's mean lies from the law's, in standard deviations of such means of n values;
// counts in logarithms. 0 for choices and without a value.
[[nodiscard]] double distanceFrom(const CharacterLaw& law, std::span<const double> values);

} // namespace bullace::fruit
