#include "bench/walk.hpp"

#include "core/base/civil_date.hpp"
#include "core/journal/json_value.hpp"
#include "core/vineyard/position.hpp"

#include <algorithm>
#include <array>
#include <numeric>
#include <random>

namespace bullace::bench {

namespace {

constexpr std::array<const char*, 8> kDescriptors{
    "stage", "clusters", "vigour", "rot", "skin-thickness", "vine", "ripe", "disease"};
constexpr std::size_t kVines = 40;
constexpr std::size_t kRows = 60;

std::string subjectOf(std::size_t number, int round) {
    const std::size_t vine = number / kDescriptors.size();
    const std::size_t perBlock = kVines * kRows;
    const std::size_t perDay = perBlock * 4;
    const std::string block = "B" + std::to_string(vine % perDay / perBlock + 1);
    const vineyard::Position position{block,
                                      static_cast<unsigned>(vine % perBlock / kVines + 1),
                                      static_cast<unsigned>(vine % kVines + 1),
                                      0};
    const CivilDate day =
        addDays(*readDate("2020-01-01"), static_cast<int>(vine / perDay) + round * 400);
    return "obs/" + vineyard::writePosition(position) + "/" + writeDate(day) + "/" +
           kDescriptors[number % kDescriptors.size()];
}

} // namespace

journal::Run Walk::run(std::size_t from, std::size_t count) const {
    const std::size_t end = std::min(entries.size(), from + count);
    return {origin,
            from + 1,
            {entries.begin() + static_cast<std::ptrdiff_t>(from),
             entries.begin() + static_cast<std::ptrdiff_t>(end)},
            digests[end - 1]};
}

Walk makeWalk(
    journal::Origin origin, std::size_t count, Order order, std::uint64_t seed, int round) {
    Walk walk{origin, {}, {}, {}};
    std::vector<std::size_t> numbers(count);
    std::iota(numbers.begin(), numbers.end(), std::size_t{0});
    if (order == Order::Random) {
        std::mt19937_64 dice(seed);
        std::shuffle(numbers.begin(), numbers.end(), dice);
    }
    Digest digest;
    for (std::size_t i = 0; i < count; ++i) {
        journal::Entry entry{
            origin,
            i + 1,
            i + 1,
            journal::Wall{1'780'000'000'000 + static_cast<std::int64_t>(i) * 2400, -300},
            "mk",
            "observe",
            subjectOf(numbers[i], round),
            journal::integerValue(static_cast<std::int64_t>(numbers[i] % 9 + 1)),
            {},
            {},
            {},
            {},
            {}};
        walk.entries.push_back(entry.encode());
        walk.subjects.push_back(entry.subject);
        digest = journal::chainDigest(digest, walk.entries.back());
        walk.digests.push_back(digest);
    }
    return walk;
}

} // namespace bullace::bench
