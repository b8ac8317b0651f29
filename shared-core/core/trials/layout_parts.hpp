// The walk through a block, drawing from a seed, and the two searches of a layout. Only its
// tests include it besides.
#pragma once

#include "core/trials/layout.hpp"

#include <random>

namespace bullace::trials {

// Draws that are the same on every machine.
class LayoutDraw {
public:
    explicit LayoutDraw(std::uint64_t seed) : engine_(seed) {}
    // From 0 to below `count`, which is above 0; each as likely (rejection).
    [[nodiscard]] std::size_t below(std::size_t count);
    template<typename T>
    void shuffle(std::vector<T>& items) {
        for (std::size_t i = items.size(); i > 1; --i) {
            std::swap(items[i - 1], items[below(i)]);
        }
    }

private:
    std::mt19937_64 engine_;
};

// Usable positions in the order of a walk up one row and down the next.
[[nodiscard]] std::vector<std::size_t> walkOrder(const std::vector<LayoutPosition>& positions);

// Where in each stretch of a walk the checks stand: `of[place]` is the check, or kNoCheck.
inline constexpr std::size_t kNoCheck = static_cast<std::size_t>(-1);
struct CheckSpread {
    std::vector<std::size_t> block; // of each place of the walk
    std::vector<std::size_t> check;
};
// Each check once in each block, moved about within its block until they lie far from one another,
// those of one check above all.
void spreadChecks(const std::vector<LayoutPosition>& positions,
                  const std::vector<std::size_t>& walk,
                  std::size_t checks,
                  LayoutDraw& draw,
                  CheckSpread& spread);

// Entries of places, by swaps within a replicate (stretches of `entries` places) so that pairs meet
// in rows and columns as evenly as can be.
void balanceConcurrences(const std::vector<LayoutPosition>& positions,
                         const std::vector<std::size_t>& walk,
                         std::size_t entries,
                         LayoutDraw& draw,
                         std::vector<std::size_t>& entryOf);

// The mean variance of a difference with replicates, rows and columns taken out, in units of a
// vine's variance; nothing where some entries are not connected.
[[nodiscard]] std::optional<double> differenceVariance(const std::vector<LayoutPosition>& positions,
                                                       const std::vector<std::size_t>& walk,
                                                       std::size_t entries,
                                                       const std::vector<std::size_t>& entryOf);

} // namespace bullace::trials
