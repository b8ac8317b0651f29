// Checks spread over a block, and entries balanced over rows and columns, by swaps that are kept
// where they better the plan.
#include "core/trials/layout_parts.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <map>
#include <utility>

namespace bullace::trials {

namespace {

constexpr std::size_t kMostProposals = 400000;
constexpr double kSameCheck =
    4; // two of one check count as near as two others at half the distance

double apart(const LayoutPosition& one, const LayoutPosition& other) {
    if (one.block != other.block) {
        return 1e9;
    }
    const double rows = static_cast<double>(one.row) - static_cast<double>(other.row);
    const double vines = static_cast<double>(one.vine) - static_cast<double>(other.vine);
    return rows * rows + vines * vines;
}

class Spreading {
public:
    Spreading(const std::vector<LayoutPosition>& positions,
              const std::vector<std::size_t>& walk,
              CheckSpread& spread)
        : positions_(positions),
          walk_(walk),
          spread_(spread) {
        for (std::size_t place = 0; place < walk.size(); ++place) {
            if (spread.check[place] != kNoCheck) {
                places_.push_back(place);
            }
        }
    }

    [[nodiscard]] std::size_t count() const { return places_.size(); }
    [[nodiscard]] std::size_t place(std::size_t index) const { return places_[index]; }

    // What a check at a place adds to the sum over pairs, beside all but two of the checks.
    [[nodiscard]] double
    cost(std::size_t check, std::size_t at, std::size_t without, std::size_t andWithout) const {
        double sum = 0;
        for (std::size_t i = 0; i < places_.size(); ++i) {
            if (i == without || i == andWithout) {
                continue;
            }
            const double distance = apart(positions_[walk_[at]], positions_[walk_[places_[i]]]);
            sum += (spread_.check[places_[i]] == check ? kSameCheck : 1.0) / distance;
        }
        return sum;
    }

    // To a place of the same block, whose check, if it has one, goes the other way.
    void tryMove(std::size_t index, std::size_t to) {
        const std::size_t from = places_[index];
        const std::size_t mine = spread_.check[from];
        const std::size_t other = spread_.check[to];
        std::size_t otherIndex = kNoCheck;
        if (other != kNoCheck) {
            otherIndex = static_cast<std::size_t>(std::ranges::find(places_, to) - places_.begin());
        }
        double before = cost(mine, from, index, otherIndex);
        double after = cost(mine, to, index, otherIndex);
        if (other != kNoCheck) {
            before += cost(other, to, index, otherIndex);
            after += cost(other, from, index, otherIndex);
        }
        if (after < before - 1e-12) {
            spread_.check[to] = mine;
            spread_.check[from] = other;
            places_[index] = to;
            if (other != kNoCheck) {
                places_[otherIndex] = from;
            }
        }
    }

private:
    const std::vector<LayoutPosition>& positions_;
    const std::vector<std::size_t>& walk_;
    CheckSpread& spread_;
    std::vector<std::size_t> places_;
};

// How often pairs of entries meet in rows and columns, each meeting over the line's length.
class Concurrences {
public:
    Concurrences(const std::vector<LayoutPosition>& positions,
                 const std::vector<std::size_t>& walk,
                 std::size_t entries,
                 std::vector<std::size_t>& entryOf)
        : entryOf_(entryOf),
          size_(static_cast<Eigen::Index>(entries)),
          met_(Eigen::MatrixXd::Zero(size_, size_)),
          linesOf_(entryOf.size()) {
        std::map<std::pair<std::string, std::uint32_t>, std::size_t> rows;
        std::map<std::pair<std::string, std::uint32_t>, std::size_t> columns;
        for (std::size_t place = 0; place < entryOf.size(); ++place) {
            const LayoutPosition& at = positions[walk[place]];
            linesOf_[place][0] = lineOf(rows, {at.block, at.row});
            linesOf_[place][1] = lineOf(columns, {at.block, at.vine});
            for (const std::size_t line : linesOf_[place]) {
                lines_[line].push_back(place);
            }
        }
        for (const auto& line : lines_) {
            for (const std::size_t one : line) {
                for (const std::size_t other : line) {
                    met_(entry(one), entry(other)) += 1 / static_cast<double>(line.size());
                }
            }
        }
    }

    // Two entries change places where the sum of squares is less for it.
    void trySwap(std::size_t one, std::size_t other) {
        if (one == other || entryOf_[one] == entryOf_[other]) {
            return;
        }
        const double change = move(one, other);
        if (change > -1e-12) {
            move(one, other); // back again
        }
    }

private:
    using Lines = std::map<std::pair<std::string, std::uint32_t>, std::size_t>;

    std::size_t lineOf(Lines& lines, const std::pair<std::string, std::uint32_t>& key) {
        const auto [found, isNew] = lines.emplace(key, lines_.size());
        if (isNew) {
            lines_.emplace_back();
        }
        return found->second;
    }
    [[nodiscard]] Eigen::Index entry(std::size_t place) const {
        return static_cast<Eigen::Index>(entryOf_[place]);
    }

    double move(std::size_t one, std::size_t other) {
        double grown = meet(one, kNoCheck, -1);
        const std::size_t entryOne = entryOf_[one];
        const std::size_t entryOther = entryOf_[other];
        // With the first taken out, it must not be counted as the second's company.
        grown += meet(other, one, -1);
        entryOf_[one] = entryOther;
        entryOf_[other] = entryOne;
        grown += meet(other, one, 1);
        grown += meet(one, kNoCheck, 1);
        return grown;
    }

    // Adds or takes away all meetings of a place with its lines, as if `absent` were not there;
    // gives what the squares grow by.
    double meet(std::size_t place, std::size_t absent, double sign) {
        double grown = 0;
        const Eigen::Index mine = entry(place);
        for (const std::size_t line : linesOf_[place]) {
            const double share = sign / static_cast<double>(lines_[line].size());
            for (const std::size_t other : lines_[line]) {
                if (other == absent) {
                    continue;
                }
                const Eigen::Index theirs = entry(other);
                // Two places of one entry meet in both orders in one element.
                const double times = other == place || theirs != mine ? 1 : 2;
                double& here = met_(mine, theirs);
                const double before = here * here;
                here += times * share;
                met_(theirs, mine) = here;
                grown += (theirs != mine ? 2 : 1) * (here * here - before);
            }
        }
        return grown;
    }

    std::vector<std::size_t>& entryOf_;
    Eigen::Index size_;
    Eigen::MatrixXd met_;
    std::vector<std::vector<std::size_t>> lines_;
    std::vector<std::array<std::size_t, 2>> linesOf_;
};

} // namespace

void spreadChecks(const std::vector<LayoutPosition>& positions,
                  const std::vector<std::size_t>& walk,
                  std::size_t checks,
                  LayoutDraw& draw,
                  CheckSpread& spread) {
    spread.check.assign(walk.size(), kNoCheck);
    std::vector<std::pair<std::size_t, std::size_t>> stretches; // of each block
    for (std::size_t from = 0; from < walk.size();) {
        std::size_t to = from;
        while (to < walk.size() && spread.block[to] == spread.block[from]) {
            ++to;
        }
        std::vector<std::size_t> order(checks);
        for (std::size_t i = 0; i < checks; ++i) {
            order[i] = i;
        }
        draw.shuffle(order);
        // One check in each of as many equal parts of the stretch.
        for (std::size_t i = 0; i < checks; ++i) {
            const std::size_t start = from + i * (to - from) / checks;
            const std::size_t end = from + (i + 1) * (to - from) / checks;
            spread.check[start + draw.below(end - start)] = order[i];
        }
        stretches.emplace_back(from, to);
        from = to;
    }
    Spreading spreading(positions, walk, spread);
    const std::size_t count = spreading.count();
    const std::size_t proposals = std::min(40 * walk.size(), 40000000 / (count * count + 1));
    for (std::size_t i = 0; i < proposals; ++i) {
        const std::size_t index = draw.below(count);
        const auto [from, to] = stretches[spread.block[spreading.place(index)]];
        const std::size_t target = from + draw.below(to - from);
        if (target != spreading.place(index)) {
            spreading.tryMove(index, target);
        }
    }
}

void balanceConcurrences(const std::vector<LayoutPosition>& positions,
                         const std::vector<std::size_t>& walk,
                         std::size_t entries,
                         LayoutDraw& draw,
                         std::vector<std::size_t>& entryOf) {
    if (entries < 2) {
        return;
    }
    Concurrences concurrences(positions, walk, entries, entryOf);
    const std::size_t replicates = entryOf.size() / entries;
    const std::size_t proposals = std::min(kMostProposals, 400 * entryOf.size());
    for (std::size_t i = 0; i < proposals; ++i) {
        const std::size_t start = draw.below(replicates) * entries;
        concurrences.trySwap(start + draw.below(entries), start + draw.below(entries));
    }
}

std::optional<double> differenceVariance(const std::vector<LayoutPosition>& positions,
                                         const std::vector<std::size_t>& walk,
                                         std::size_t entries,
                                         const std::vector<std::size_t>& entryOf) {
    constexpr std::size_t kMostInverted = 600;
    if (entries < 2 || entries > kMostInverted) {
        return {};
    }
    // Normal equations of entries and of replicates, rows and columns, the latter absorbed.
    std::map<std::pair<std::string, std::uint32_t>, Eigen::Index> lines;
    const auto size = static_cast<Eigen::Index>(entries);
    std::vector<std::array<Eigen::Index, 3>> ofPlace(entryOf.size());
    for (std::size_t place = 0; place < entryOf.size(); ++place) {
        const LayoutPosition& at = positions[walk[place]];
        const auto next = [&](const std::string& kind, std::uint32_t number) {
            return lines.emplace(std::pair(kind, number), static_cast<Eigen::Index>(lines.size()))
                .first->second;
        };
        ofPlace[place] = {next("r", static_cast<std::uint32_t>(place / entries)),
                          next("w" + at.block, at.row),
                          next("c" + at.block, at.vine)};
    }
    const auto count = static_cast<Eigen::Index>(lines.size());
    Eigen::MatrixXd cross = Eigen::MatrixXd::Zero(size, count);
    Eigen::MatrixXd own = Eigen::MatrixXd::Zero(count, count);
    Eigen::MatrixXd information = Eigen::MatrixXd::Zero(size, size);
    for (std::size_t place = 0; place < entryOf.size(); ++place) {
        const auto entry = static_cast<Eigen::Index>(entryOf[place]);
        information(entry, entry) += 1;
        for (const Eigen::Index one : ofPlace[place]) {
            cross(entry, one) += 1;
            for (const Eigen::Index other : ofPlace[place]) {
                own(one, other) += 1;
            }
        }
    }
    const Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> solved(own);
    information -= cross * solved.solve(cross.transpose());
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> parts(
        (information + information.transpose()) / 2, Eigen::EigenvaluesOnly);
    // One value is 0, for the general mean; the variance of a difference, over all pairs, is twice
    // the mean of the others' inverses.
    double inverses = 0;
    for (Eigen::Index i = 1; i < size; ++i) {
        const double value = parts.eigenvalues()[i];
        if (value < 1e-8) {
            return {};
        }
        inverses += 1 / value;
    }
    return 2 * inverses / static_cast<double>(size - 1);
}

} // namespace bullace::trials
