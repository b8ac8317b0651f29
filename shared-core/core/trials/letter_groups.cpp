// Insertion and absorption of letters over sorted means.
#include "core/trials/letter_groups.hpp"

#include <algorithm>
#include <numeric>

namespace bullace::trials {

namespace {

constexpr std::size_t kMostLetters = 500;

using Group = std::vector<char>; // of the sorted means, 1 where it belongs

std::vector<std::size_t> descending(std::span<const double> means) {
    std::vector<std::size_t> order(means.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, std::greater<>(), [&](std::size_t i) { return means[i]; });
    return order;
}

std::string letter(std::size_t index) {
    constexpr std::size_t kAlphabet = 26;
    if (index < kAlphabet) {
        return {static_cast<char>('a' + static_cast<int>(index))};
    }
    if (index < 2 * kAlphabet) {
        return {static_cast<char>('A' + static_cast<int>(index - kAlphabet))};
    }
    return "(" + std::to_string(index + 1) + ")";
}

bool isPartOf(const Group& one, const Group& other) {
    for (std::size_t i = 0; i < one.size(); ++i) {
        if (one[i] > other[i]) {
            return false;
        }
    }
    return true;
}

// Groups that lie within another are gone; of equal ones the first stays.
void absorb(std::vector<Group>& groups) {
    std::vector<Group> kept;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        bool isNeeded = true;
        for (std::size_t j = 0; j < groups.size() && isNeeded; ++j) {
            const bool isWithin = i != j && isPartOf(groups[i], groups[j]);
            isNeeded = !isWithin || (groups[i] == groups[j] && i < j);
        }
        if (isNeeded) {
            kept.push_back(groups[i]);
        }
    }
    groups = std::move(kept);
}

// Every group that holds both is parted in two.
void part(std::vector<Group>& groups, std::size_t one, std::size_t other) {
    const std::size_t before = groups.size();
    for (std::size_t i = 0; i < before; ++i) {
        if (groups[i][one] != 0 && groups[i][other] != 0) {
            Group copy = groups[i];
            groups[i][other] = 0;
            copy[one] = 0;
            groups.push_back(std::move(copy));
        }
    }
    if (groups.size() != before) {
        absorb(groups);
    }
}

std::vector<std::string> written(std::vector<Group> groups, const std::vector<std::size_t>& order) {
    std::ranges::sort(groups, std::greater<>()); // the group of the greatest mean first
    std::vector<std::string> letters(order.size());
    for (std::size_t i = 0; i < groups.size(); ++i) {
        for (std::size_t at = 0; at < order.size(); ++at) {
            if (groups[i][at] != 0) {
                letters[order[at]] += letter(i);
            }
        }
    }
    return letters;
}

} // namespace

std::vector<std::string> letterGroups(std::span<const double> means, const Differs& differs) {
    const std::vector<std::size_t> order = descending(means);
    std::vector<Group> groups{Group(means.size(), 1)};
    for (std::size_t one = 0; one < order.size(); ++one) {
        for (std::size_t other = one + 1; other < order.size(); ++other) {
            if (differs(order[one], order[other])) {
                part(groups, one, other);
            }
            if (groups.size() > kMostLetters) {
                return {};
            }
        }
    }
    return written(std::move(groups), order);
}

std::vector<std::string> letterStretches(std::span<const double> means, double least) {
    const std::vector<std::size_t> order = descending(means);
    std::vector<std::string> letters(means.size());
    std::size_t end = 0; // behind the last stretch
    std::size_t count = 0;
    std::size_t to = 0;
    for (std::size_t from = 0; from < order.size(); ++from) {
        while (to < order.size() && means[order[from]] - means[order[to]] <= least) {
            ++to;
        }
        if (to > end || end == 0) {
            for (std::size_t i = from; i < to; ++i) {
                letters[order[i]] += letter(count);
            }
            ++count;
            end = to;
        }
    }
    return letters;
}

} // namespace bullace::trials
