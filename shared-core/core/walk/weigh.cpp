#include "core/walk/weigh.hpp"

#include "core/descriptors/stages.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>

namespace bullace::walk {

namespace {

using descriptors::DescriptorKind;

// In spreads. A value beyond kFar is unusual; one within kOrdinary is what was to be expected. Of
// normal deviates hardly any lie so far out; but the spread is itself estimated from few notes, and
// simulated walks have about one value in a hundred there.
constexpr double kFar = 3.7;
constexpr double kSlipFar = 3.0; // where a slip of the hand explains the value
constexpr double kOrdinary = 1.5;
constexpr double kFits = 2.0;
constexpr double kMadToSd = 1.4826; // of a normal distribution
// How the numbers of one vine vary between years, and those of one row between vines, in natural
// logarithms (common practice, no source; Strickland's uniform vines of 1932 have a CV of 43 %).
constexpr double kUsualSpread = 0.4;
// As many numbers' worth that usual spread counts beside the one that is seen.
constexpr double kUsualWeight = 6;
constexpr std::size_t kFewestNeighbours = 5;
constexpr std::size_t kMostNeighbours = 21;
constexpr int kMovesOnAfterDays = 4;

double medianOf(std::vector<double> numbers) {
    const auto middle = numbers.begin() + static_cast<std::ptrdiff_t>(numbers.size() / 2);
    std::nth_element(numbers.begin(), middle, numbers.end());
    if (numbers.size() % 2 == 1) {
        return *middle;
    }
    return (*middle + *std::max_element(numbers.begin(), middle)) / 2;
}

// Numbers that vary by a share of their size are compared by their logarithms, scores as they are.
class Gauge {
public:
    explicit Gauge(const Background& background)
        : isByRatio_(background.kind != DescriptorKind::Score &&
                     !(background.range && background.range->least < 0)),
          halfStep_(std::pow(10.0, -background.decimals) / 2) {
        const auto& range = background.range;
        usual_ = kUsualSpread;
        if (!isByRatio_) {
            usual_ = range ? (range->greatest - range->least) / 6 : 1;
        } else if (range && range->least > 0) {
            // A narrow range, like that of pH, tells that the numbers vary little.
            usual_ = std::min(usual_, std::log(range->greatest / range->least) / 8);
        }
    }

    [[nodiscard]] bool isByRatio() const { return isByRatio_; }
    [[nodiscard]] double usual() const { return usual_; }

    // Half a step keeps a zero on the scale and makes small counts as uncertain as they are.
    [[nodiscard]] double of(double number) const {
        return isByRatio_ ? std::log(std::max(number, 0.0) + halfStep_) : number;
    }
    // The spread that a number has from being written in whole steps, and a count from being one.
    [[nodiscard]] double floor(double number, DescriptorKind kind) const {
        const double steps =
            isByRatio_ ? halfStep_ / (std::max(number, 0.0) + halfStep_) : halfStep_;
        return kind == DescriptorKind::Count && isByRatio_
                   ? 1 / std::sqrt(std::max(number, 0.0) + halfStep_)
                   : steps;
    }

private:
    bool isByRatio_;
    double halfStep_;
    double usual_ = kUsualSpread;
};

// What a value is held against: a middle and a spread on the gauge.
struct Expected {
    double middle = 0; // as a number
    double at = 0;     // on the gauge
    double spread = 0;
};

std::optional<Expected>
expectedOf(const Gauge& gauge, DescriptorKind kind, const std::vector<double>& numbers) {
    if (numbers.empty()) {
        return std::nullopt;
    }
    Expected expected;
    expected.middle = medianOf(numbers);
    expected.at = gauge.of(expected.middle);
    std::vector<double> away;
    away.reserve(numbers.size());
    for (const double number : numbers) {
        away.push_back(std::abs(gauge.of(number) - expected.at));
    }
    const double seen = kMadToSd * medianOf(away);
    const auto count = static_cast<double>(numbers.size());
    const double variance = (kUsualWeight * gauge.usual() * gauge.usual() + count * seen * seen) /
                            (kUsualWeight + count);
    const double floor = gauge.floor(expected.middle, kind);
    // The median of few numbers is itself uncertain, by pi/2 of the mean's variance.
    expected.spread = std::sqrt((variance + floor * floor) * (1 + 1.57 / count));
    return expected;
}

// What a value is held against: both, one or none of the vine's history and its neighbours.
struct Grounds {
    Gauge gauge;
    std::optional<Expected> history;
    std::optional<Expected> neighbours;

    [[nodiscard]] static double
    away(const Gauge& gauge, const std::optional<Expected>& expected, double value) {
        return expected ? (gauge.of(value) - expected->at) / expected->spread : 0;
    }
    [[nodiscard]] double fromHistory(double value) const { return away(gauge, history, value); }
    [[nodiscard]] double fromNeighbours(double value) const {
        return away(gauge, neighbours, value);
    }
    // Far from one, to `limit` spreads, and not ordinary for the other: a frost that took the crop
    // of a whole row makes no vine of it unusual, nor does a vine that is always unlike its row.
    [[nodiscard]] bool isFar(double value, double limit) const {
        const double a = fromHistory(value);
        const double b = fromNeighbours(value);
        if (!history || !neighbours) {
            return std::max(std::abs(a), std::abs(b)) > limit;
        }
        return a * b > 0 && std::max(std::abs(a), std::abs(b)) > limit &&
               std::min(std::abs(a), std::abs(b)) > kOrdinary;
    }
    [[nodiscard]] double worst(double value) const {
        return std::max(std::abs(fromHistory(value)), std::abs(fromNeighbours(value)));
    }
};

Grounds groundsOf(const Background& background) {
    Grounds grounds{Gauge(background), {}, {}};
    std::vector<double> noted;
    for (const Noted& note : background.history) {
        noted.push_back(note.number);
    }
    grounds.history = expectedOf(grounds.gauge, background.kind, noted);
    std::vector<double> beside = background.neighbours;
    beside.resize(std::min(beside.size(), kMostNeighbours));
    if (beside.size() >= kFewestNeighbours) {
        grounds.neighbours = expectedOf(grounds.gauge, background.kind, beside);
    }
    return grounds;
}

bool isInMillimetres(const Background& background) {
    if (!background.unit.empty()) {
        return background.unit == "mm";
    }
    const auto* const builtIn = descriptors::findBuiltIn(background.code);
    return builtIn != nullptr && builtIn->unit == "mm";
}

std::optional<Doubtful> weighRange(const Background& background, double value) {
    const auto& range = background.range;
    if (!range || (value >= range->least && value <= range->greatest)) {
        return std::nullopt;
    }
    return Doubtful{Doubt::OutOfRange, value < range->least ? range->least : range->greatest, {}};
}

// The slip of the hand that explains the value best, if one does.
std::optional<Doubtful> slipOf(const Background& background, const Grounds& grounds, double value) {
    constexpr double kMmPerInch = 25.4;
    struct Way {
        Doubt doubt;
        double factor;
    };
    constexpr std::array<Way, 4> kWays{{{Doubt::TenTimes, 0.1},
                                        {Doubt::TenTimes, 10},
                                        {Doubt::InchForMillimetre, kMmPerInch},
                                        {Doubt::InchForMillimetre, 1 / kMmPerInch}}};
    if (!grounds.gauge.isByRatio() || !(value > 0) || !grounds.isFar(value, kSlipFar)) {
        return std::nullopt;
    }
    std::optional<Doubtful> best;
    double least = kFits;
    for (const Way& way : kWays) {
        const double meant = value * way.factor;
        const bool canBe = (way.doubt == Doubt::TenTimes || isInMillimetres(background)) &&
                           !weighRange(background, meant);
        if (canBe && grounds.worst(meant) < least) {
            least = grounds.worst(meant);
            best = Doubtful{way.doubt, meant, {}};
        }
    }
    return best;
}

std::optional<Doubtful> weighNumber(const Background& background, double value) {
    const Grounds grounds = groundsOf(background);
    if (const auto slip = slipOf(background, grounds, value)) {
        return slip;
    }
    if (const auto outside = weighRange(background, value)) {
        return outside;
    }
    if (!grounds.isFar(value, kFar)) {
        return std::nullopt;
    }
    if (std::abs(grounds.fromHistory(value)) >= std::abs(grounds.fromNeighbours(value))) {
        const Noted& last = background.history.back();
        return Doubtful{Doubt::FarFromHistory, last.number, last.date};
    }
    return Doubtful{Doubt::FarFromNeighbours, grounds.neighbours->middle, {}};
}

// A stage's place in its list.
std::optional<int> stepOf(const Background& background, double stage) {
    const auto code = static_cast<std::int64_t>(std::llround(stage));
    if (background.ownStages.empty()) {
        const auto step = descriptors::stageStep(code);
        return step ? std::optional(static_cast<int>(*step)) : std::nullopt;
    }
    const auto& own = background.ownStages;
    const auto found = std::find(own.begin(), own.end(), code);
    return found == own.end() ? std::nullopt : std::optional(static_cast<int>(found - own.begin()));
}

// Whether a vine that stood at the stage has surely moved on a few days later.
bool isGrowing(const Background& background, double stage) {
    constexpr double kBudsSwollen = 3;
    constexpr double kBloomOver = 69;
    return background.ownStages.empty() && stage >= kBudsSwollen && stage <= kBloomOver;
}

std::optional<Doubtful> weighStage(const Background& background, CivilDate today, double value) {
    const auto step = stepOf(background, value);
    if (!step) {
        return Doubtful{Doubt::OutOfRange, value, {}};
    }
    const auto& history = background.history;
    const auto end = std::find_if(
        history.begin(), history.end(), [today](const Noted& note) { return note.date >= today; });
    std::optional<Doubtful> found;
    int furthest = 0;
    for (auto note = history.begin(); note != end; ++note) {
        const auto then = stepOf(background, note->number);
        if (!then || note->date.year() != today.year()) {
            continue;
        }
        const bool isLast = note + 1 == end;
        const bool hasMovedOn = isGrowing(background, note->number) &&
                                daysBetween(note->date, today) >= kMovesOnAfterDays;
        const int enough = !isLast ? 3 : hasMovedOn ? 1 : 2;
        const int behind = *then - *step;
        if (behind >= enough && behind > furthest) {
            furthest = behind;
            found = Doubtful{Doubt::StageBackwards, note->number, note->date};
        }
    }
    return found;
}

std::optional<Doubtful> weighCode(const Background& background, double value) {
    if (const auto outside = weighRange(background, value)) {
        return outside;
    }
    const auto& history = background.history;
    const bool isNew = std::none_of(history.begin(), history.end(), [value](const Noted& note) {
        return note.number == value;
    });
    if (history.empty() || !isNew) {
        return std::nullopt;
    }
    return Doubtful{Doubt::FarFromHistory, history.back().number, history.back().date};
}

} // namespace

std::optional<Doubtful> weigh(const Background& background, CivilDate today, double value) {
    switch (background.kind) {
    case DescriptorKind::Stage:
        return weighStage(background, today, value);
    case DescriptorKind::Code:
        return weighCode(background, value);
    case DescriptorKind::Count:
    case DescriptorKind::Measure:
    case DescriptorKind::Score:
        return weighNumber(background, value);
    case DescriptorKind::Percent:
        // They run from 0 to 100 within a season, and differ as much from vine to vine.
        return weighRange(background, value);
    case DescriptorKind::Category:
    case DescriptorKind::Record:
    case DescriptorKind::Text:
    case DescriptorKind::Photo:
        break;
    }
    return std::nullopt;
}

} // namespace bullace::walk
