#include "core/season/bloom_windows.hpp"

#include "core/statistics/distributions.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace bullace::season {

namespace {

constexpr std::size_t kDraws = 4096;
constexpr double kYear = 365.25;
constexpr std::size_t kOfRole = 2; // a vine's place, and the error of the means

// Four numbers between 0 and 1 for each draw: by the powers of 1/g, g the root of g⁵ = g + 1.
double pointOf(std::size_t draw, std::size_t dimension) {
    constexpr double kRoot = 1.1673039782614187;
    double step = 1;
    for (std::size_t i = 0; i <= dimension; ++i) {
        step /= kRoot;
    }
    const double at = 0.5 + step * static_cast<double>(draw + 1);
    return std::clamp(at - std::floor(at), 1e-9, 1 - 1e-9);
}

struct Draw {
    float start = 0;
    float end = 0;
};
using Draws = std::vector<Draw>;

// What is drawn does not depend on the accession but for its degrees of freedom.
struct Chances {
    std::array<std::vector<double>, 2> vine;  // by role, standard normal
    std::array<std::vector<double>, 2> share; // by role, uniform
};

Chances chances() {
    Chances made;
    for (std::size_t role = 0; role < 2; ++role) {
        for (std::size_t draw = 0; draw < kDraws; ++draw) {
            made.vine[role].push_back(statistics::normalQuantile(pointOf(draw, role * kOfRole)));
            made.share[role].push_back(pointOf(draw, role * kOfRole + 1));
        }
    }
    return made;
}

// Quantiles of Student's t at 257 shares and straight lines between them are enough for chance; for
// 4096 draws of each accession exact ones would take the most time of all.
class TQuantiles {
public:
    explicit TQuantiles(double degreesOfFreedom) {
        const double freedom = std::clamp(degreesOfFreedom, 1e-2, 1e6);
        for (std::size_t i = 0; i < at_.size(); ++i) {
            const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(at_.size());
            at_[i] = statistics::studentTQuantile(share, freedom);
        }
    }
    [[nodiscard]] double at(double share) const {
        const double place = share * static_cast<double>(at_.size()) - 0.5;
        const double below =
            std::clamp(std::floor(place), 0.0, static_cast<double>(at_.size() - 2));
        const auto i = static_cast<std::size_t>(below);
        const double part = std::clamp(place - below, 0.0, 1.0);
        return at_[i] + part * (at_[i + 1] - at_[i]);
    }

private:
    std::array<double, 257> at_{};
};

Draws drawsOf(const BloomWindow& window, const Chances& chances, std::size_t role) {
    const TQuantiles start(window.start.degreesOfFreedom);
    const TQuantiles end(window.end.degreesOfFreedom);
    Draws draws(kDraws);
    for (std::size_t i = 0; i < kDraws; ++i) {
        const double vine = chances.vine[role][i];
        const double share = chances.share[role][i];
        const double first = window.start.mean + window.start.spread * vine +
                             window.start.standardError * start.at(share);
        const double last =
            window.end.mean + window.end.spread * vine + window.end.standardError * end.at(share);
        draws[i] = {static_cast<float>(first), static_cast<float>(std::max(first, last))};
    }
    return draws;
}

BloomOverlap overlapOf(const Draws& mother, const Draws& father, std::vector<float>& room) {
    BloomOverlap made;
    room.resize(kDraws);
    double sum = 0;
    std::size_t meeting = 0;
    for (std::size_t i = 0; i < kDraws; ++i) {
        const float days =
            std::min(mother[i].end, father[i].end) - std::max(mother[i].start, father[i].start);
        room[i] = std::max(0.0F, days);
        sum += static_cast<double>(room[i]);
        meeting += days >= 1.0F ? 1U : 0U;
    }
    made.days.value = sum / static_cast<double>(kDraws);
    made.probability = static_cast<double>(meeting) / static_cast<double>(kDraws);
    const auto ranked = [&room](std::size_t rank) {
        std::ranges::nth_element(room, room.begin() + static_cast<std::ptrdiff_t>(rank));
        return static_cast<double>(room[rank]);
    };
    made.days.interval =
        statistics::Interval{ranked(kDraws / 40), ranked(kDraws - 1 - kDraws / 40)};
    return made;
}

std::optional<StoredPollen> storedFor(const BloomWindow& mother, const BloomWindow& father) {
    if (father.end.mean < mother.start.mean) {
        return StoredPollen{mother.start.mean - father.end.mean, false};
    }
    if (mother.end.mean < father.start.mean) {
        return StoredPollen{mother.start.mean + kYear - father.end.mean, true};
    }
    return std::nullopt;
}

bool isFine(const StageDate& date) {
    return std::isfinite(date.mean) && std::abs(date.mean) < 1e5 && date.spread >= 0 &&
           std::isfinite(date.spread) && date.standardError >= 0 &&
           std::isfinite(date.standardError) && date.degreesOfFreedom > 0;
}

Status checked(std::span<const BloomWindow> windows) {
    for (const BloomWindow& window : windows) {
        if (!isFine(window.start) || !isFine(window.end)) {
            return Error{ErrorCode::InvalidInput,
                         window.accession + ": a day, spread or error of its bloom is no number, "
                                            "or negative.",
                         {}};
        }
        if (window.end.mean < window.start.mean) {
            return Error{ErrorCode::InvalidInput,
                         window.accession + ": its bloom would end before it begins.",
                         {}};
        }
    }
    return {};
}

bool canCross(const BloomWindow& mother, const BloomWindow& father) {
    return mother.sex != FlowerSex::Male && father.sex != FlowerSex::Female;
}

void remarkOn(std::span<const BloomWindow> windows, BloomOverlaps& made) {
    if (made.leftOut > 0) {
        made.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                 "Male vines are no mothers and female vines shed "
                                                 "no pollen: such pairs are left out (pairs: %1)."),
                                {static_cast<std::int64_t>(made.leftOut)}});
    }
    for (const BloomWindow& window : windows) {
        if (!window.sex) {
            made.remarks.push_back({BULLACE_SENTENCE("Remark",
                                                     "The flower sex of %1 is not known: it stands "
                                                     "both as mother and as father."),
                                    {window.accession}});
        }
    }
}

} // namespace

Result<BloomOverlaps> bloomOverlaps(std::span<const BloomWindow> windows) {
    if (Status fine = checked(windows); !fine) {
        return fine.error();
    }
    const Chances chance = chances();
    std::vector<Draws> mothers;
    std::vector<Draws> fathers;
    for (const BloomWindow& window : windows) {
        mothers.push_back(drawsOf(window, chance, 0));
        fathers.push_back(drawsOf(window, chance, 1));
    }
    BloomOverlaps made;
    std::vector<float> room;
    for (std::size_t mother = 0; mother < windows.size(); ++mother) {
        for (std::size_t father = 0; father < windows.size(); ++father) {
            if (mother == father) {
                continue;
            }
            if (!canCross(windows[mother], windows[father])) {
                ++made.leftOut;
                continue;
            }
            BloomOverlap overlap = overlapOf(mothers[mother], fathers[father], room);
            overlap.mother = mother;
            overlap.father = father;
            overlap.stored = storedFor(windows[mother], windows[father]);
            made.pairs.push_back(overlap);
        }
    }
    remarkOn(windows, made);
    return made;
}

} // namespace bullace::season
