#include "core/breeding/plan_swaps.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bullace::breeding {

namespace {

constexpr int kPrices = 16; // that are tried
constexpr int kMostRounds = 60;

class Swaps {
public:
    explicit Swaps(const SwapQuestion& question)
        : question_(question),
          isChosen_(question.pairs.size(), false),
          uses_(Eigen::VectorXd::Zero(question.kinship.rows())),
          related_(Eigen::VectorXd::Zero(question.kinship.rows())),
          parents_(2 * static_cast<double>(question.crosses)) {}

    // The worthiest pairs that the uses allow; false where they are too few.
    bool begin() {
        std::vector<std::size_t> order(question_.pairs.size());
        for (std::size_t i = 0; i < order.size(); ++i) {
            order[i] = i;
        }
        std::ranges::stable_sort(order, [this](std::size_t one, std::size_t other) {
            return question_.pairs[one].worth > question_.pairs[other].worth;
        });
        for (const std::size_t pair : order) {
            if (chosen_.size() < question_.crosses && hasRoom(pair)) {
                use(pair, 1);
                isChosen_[pair] = true;
                chosen_.push_back(pair);
            }
        }
        return chosen_.size() == question_.crosses;
    }

    // Exchanges until none is worth anything at this price of a unit of c'Kc; only such, where a
    // limit is given, as keep it.
    void improve(double price, double limit) {
        for (int round = 0; round < kMostRounds; ++round) {
            bool isBetter = false;
            for (std::size_t& pair : chosen_) {
                isBetter = exchange(pair, price, limit) || isBetter;
            }
            if (!isBetter) {
                return;
            }
        }
    }

    [[nodiscard]] double kinship() const { return uses_.dot(related_) / (parents_ * parents_); }
    [[nodiscard]] double worth() const {
        double sum = 0;
        for (const std::size_t pair : chosen_) {
            sum += question_.pairs[pair].worth;
        }
        return sum;
    }
    [[nodiscard]] const std::vector<std::size_t>& chosen() const { return chosen_; }

private:
    [[nodiscard]] bool hasRoom(std::size_t pair) const {
        const AllowedPair& each = question_.pairs[pair];
        const auto room = [this](std::uint32_t parent) {
            return static_cast<double>(question_.mostUses[parent]) - uses_[parent];
        };
        return each.mother == each.father ? room(each.mother) >= 2
                                          : room(each.mother) >= 1 && room(each.father) >= 1;
    }

    void use(std::size_t pair, double times) {
        const AllowedPair& each = question_.pairs[pair];
        for (const std::uint32_t parent : {each.mother, each.father}) {
            uses_[parent] += times;
            related_ += times * question_.kinship.col(parent);
        }
    }

    // u'Ku with one more pair, less u'Ku.
    [[nodiscard]] double growth(const AllowedPair& pair) const {
        const auto& kinship = question_.kinship;
        return 2 * (related_[pair.mother] + related_[pair.father]) +
               kinship(pair.mother, pair.mother) + kinship(pair.father, pair.father) +
               2 * kinship(pair.mother, pair.father);
    }

    // The best pair in the place of one that is chosen.
    bool exchange(std::size_t& place, double price, double limit) {
        const std::size_t old = place;
        use(old, -1);
        const double squared = parents_ * parents_;
        const double without = uses_.dot(related_);
        const auto valueOf = [&](std::size_t pair) {
            return question_.pairs[pair].worth - price * growth(question_.pairs[pair]) / squared;
        };
        std::size_t best = old;
        double value = valueOf(old) + 1e-9;
        for (std::size_t pair = 0; pair < question_.pairs.size(); ++pair) {
            if (isChosen_[pair] || valueOf(pair) <= value || !hasRoom(pair) ||
                without + growth(question_.pairs[pair]) > limit * squared) {
                continue;
            }
            best = pair;
            value = valueOf(pair);
        }
        use(best, 1);
        isChosen_[old] = false;
        isChosen_[best] = true;
        place = best;
        return best != old;
    }

    const SwapQuestion& question_;
    std::vector<std::size_t> chosen_;
    std::vector<bool> isChosen_;
    Eigen::VectorXd uses_;
    Eigen::VectorXd related_; // K times the uses
    double parents_;
};

} // namespace

std::vector<std::size_t> plannedBySwaps(const SwapQuestion& question) {
    constexpr double kNoLimit = std::numeric_limits<double>::infinity();
    Swaps swaps(question);
    if (!swaps.begin()) {
        return {};
    }
    std::vector<std::size_t> best;
    double bestWorth = -kNoLimit;
    const auto keep = [&](const Swaps& found) {
        if (found.kinship() <= question.limit && found.worth() > bestWorth) {
            best = found.chosen();
            bestWorth = found.worth();
        }
    };
    keep(swaps);
    // A price at which a unit of kinship outweighs all that the pairs differ in, then down.
    const auto [least, greatest] =
        std::ranges::minmax(question.pairs, {}, [](const AllowedPair& pair) { return pair.worth; });
    double low = 0;
    double high =
        std::max(greatest.worth - least.worth, 1e-6) * static_cast<double>(question.crosses) * 200;
    for (int step = 0; step < kPrices; ++step) {
        const double price = step == 0 ? high : std::sqrt(std::max(low, high * 1e-4) * high);
        swaps.improve(price, kNoLimit);
        Swaps exact = swaps;
        const bool isKept = swaps.kinship() <= question.limit;
        if (isKept) {
            exact.improve(0, question.limit);
            keep(exact);
        } else if (step == 0) {
            break; // no price is high enough
        }
        (isKept ? high : low) = price;
    }
    return best;
}

} // namespace bullace::breeding
