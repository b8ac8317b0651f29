// Walks along the rows: what is there to be seen, and what people note of it.
#include "demo/seasons.hpp"

#include "core/base/numbers.hpp"
#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <string_view>

namespace bullace::demo {

namespace {

using journal::integerValue;
using journal::numberValue;
using journal::textValue;

constexpr std::array<std::string_view, 3> kTips{"growing", "slowing", "stopped"};
constexpr std::array<std::string_view, 3> kVerdicts{"pull", "look-again", "take-on"};
constexpr std::array<std::string_view, 5> kColours{"bronze", "pink", "red", "purple", "black"};

const VineSeason& seasonOf(const Vine& vine, CivilDate date) {
    const int year = static_cast<int>(date.year());
    return vine.seasons[static_cast<std::size_t>(year - kYears.front())];
}

std::string_view verdictOn(const VineSeason& vine) {
    const double merit = vine.brix + vine.diameterMm / 4 + vine.vigour * 0.5;
    return merit > 26 ? "take-on" : merit > 22 ? "look-again" : "pull";
}

int stepped(std::int64_t code, int steps) {
    const auto stages = descriptors::grapevineStages();
    const int last = static_cast<int>(stages.size()) - 1;
    const int step = static_cast<int>(*descriptors::stageStep(code));
    const int to = step + steps > last || step + steps < 0 ? step - steps : step + steps;
    return static_cast<int>(stages[static_cast<std::size_t>(std::clamp(to, 0, last))].code);
}

template<std::size_t N>
std::string_view otherWord(const std::array<std::string_view, N>& words, std::string_view word) {
    const auto at =
        static_cast<std::size_t>(std::find(words.begin(), words.end(), word) - words.begin());
    return words[at + 1 < N ? at + 1 : at - 1];
}

// Another word of the same list.
Bytes otherOf(std::string_view descriptor, std::string_view word) {
    return textValue(descriptor == "shoot-tip"      ? otherWord(kTips, word)
                     : descriptor == "berry-colour" ? otherWord(kColours, word)
                                                    : otherWord(kVerdicts, word));
}

bool isScore(std::string_view descriptor) {
    return descriptor == "vigour" || descriptor == "flavour";
}
bool isPercent(std::string_view descriptor) {
    return descriptor == "caps-off" || descriptor == "ripe" || descriptor == "dead-spurs" ||
           descriptor == "wasp-damage";
}

double kept(double value, double least, double greatest) {
    return std::clamp(value, least, greatest);
}

// The value with the small errors of a person who looks once.
Bytes unsteady(Dice& dice, std::string_view descriptor, const Bytes& value) {
    const auto number = journal::numberOf(value);
    if (!number) {
        return value;
    }
    if (descriptor == "stage") {
        const int steps = dice.chance(0.12) ? dice.between(0, 1) * 2 - 1 : 0;
        return integerValue(stepped(static_cast<std::int64_t>(*number), steps));
    }
    if (isPercent(descriptor)) {
        return integerValue(static_cast<std::int64_t>(
            kept(std::nearbyint(dice.normal(*number, 3) / 5) * 5, 0, 100)));
    }
    if (descriptor == "clusters") {
        return numberValue(std::max(0.0, std::nearbyint(*number * dice.normal(1, 0.012))));
    }
    return value;
}

// {"none": …}, and for a vine found dead the act of two entries.
void noteEmpty(Pen& pen, const Vine& vine, const Walk& walk) {
    const std::string subject = observation(vine.position, walk.date, walk.descriptor);
    if (!seasonOf(vine, walk.date).dies) {
        pen.observe(subject, journal::noneValue("no-vine"));
        return;
    }
    pen.beginGroup();
    pen.observe(observation(vine.position, walk.date, "vine"), textValue("dead"));
    pen.observe(subject, journal::noneValue("dead"));
    pen.endGroup();
}

bool isFirstWalk(const Walk& walk) {
    return std::string_view(walk.descriptor) == "stage" && walk.date.month() == std::chrono::March;
}

// Whether the vine stands when the walk comes by; a replanted place is empty in March.
bool isThere(const Vine& vine, const Walk& walk) {
    const VineSeason& season = seasonOf(vine, walk.date);
    return season.stands && !(season.dies && isFirstWalk(walk));
}

double sampleOf(Dice& dice, const Nature& nature, const VineSeason& vine, const Walk& walk) {
    const std::string_view descriptor = walk.descriptor;
    if (descriptor == "berries-per-cluster") {
        const double berries = dice.normal(vine.berriesPerCluster, vine.berriesPerCluster * 0.15);
        return kept(std::nearbyint(berries), 1, 200);
    }
    if (descriptor == "berry-diameter") {
        return rounded(kept(dice.normal(vine.diameterMm, vine.diameterMm * 0.04), 3.5, 59), 1);
    }
    if (descriptor == "seed-length") {
        return rounded(dice.normal(nature.seedMm, nature.seedMm * 0.02), 1);
    }
    if (descriptor == "leaf-width") {
        return rounded(dice.normal(nature.leafMm, nature.leafMm * 0.08), 1);
    }
    assert(descriptor == "soluble-solids");
    return rounded(dice.normal(vine.brix, 0.6), 1);
}

// Where a person typed a decimal comma, the text is kept beside the number.
std::optional<std::string> typed(Dice& dice, double value) {
    if (value == std::nearbyint(value) || !dice.chance(0.02)) {
        return std::nullopt;
    }
    std::string text = shortestFloat(value);
    std::replace(text.begin(), text.end(), '.', ',');
    return text;
}

// What only a vine with fruit has.
Bytes fruitValue(const Orchard& orchard, const VineSeason& season, const Walk& walk) {
    const std::string_view descriptor = walk.descriptor;
    if (descriptor == "clusters") {
        return integerValue(season.clusters);
    }
    if (descriptor == "ripe") {
        return integerValue(ripeOn(season, dayOfYear(walk.date)));
    }
    if (descriptor == "flavour") {
        return integerValue(season.flavour);
    }
    if (descriptor == "skin-thickness") {
        return integerValue(orchard.collection[season.accession].nature.skin);
    }
    if (descriptor == "berry-colour") {
        return textValue(orchard.collection[season.accession].berryColour);
    }
    if (descriptor == "verdict") {
        return textValue(verdictOn(season));
    }
    assert(descriptor == "wasp-damage"); // they go for the sweet ones
    return integerValue(std::clamp(static_cast<int>(season.brix - 12) * 2, 0, 100));
}

enum class Apart { Not, Little, Far };

// Of eight vines five are noted alike, two a little apart and one far.
Apart apartness(std::size_t at) {
    return at % 8 < 5 ? Apart::Not : at % 8 < 7 ? Apart::Little : Apart::Far;
}

// The second person's number, `difference` away from the first's and inside the scale.
Bytes shifted(std::string_view descriptor, double value, double difference) {
    if (descriptor == "stage") {
        return integerValue(
            stepped(static_cast<std::int64_t>(value), static_cast<int>(difference)));
    }
    const double greatest = isPercent(descriptor) ? 100 : isScore(descriptor) ? 9 : 1e6;
    const double to = value + difference > greatest ? value - difference : value + difference;
    return numberValue(rounded(to, 2));
}

Bytes secondValue(const Walk& walk, const Bytes& first, const SecondLook& look, Apart apart) {
    if (apart == Apart::Not) {
        return first;
    }
    if (const auto word = journal::textOf(first)) {
        return otherOf(walk.descriptor, *word);
    }
    const double value = journal::numberOf(first).value_or(0);
    double difference = apart == Apart::Little ? look.little : look.far;
    if (look.isPercent) {
        difference = std::max(1.0, std::nearbyint(value * difference / 100));
    }
    return shifted(walk.descriptor, value, difference);
}

} // namespace

Bytes trueValue(const Orchard& orchard, const Vine& vine, const Walk& walk) {
    const VineSeason& season = seasonOf(vine, walk.date);
    const std::string_view descriptor = walk.descriptor;
    if (!isThere(vine, walk)) {
        return {};
    }
    if (descriptor == "stage") {
        return integerValue(stageOn(season, dayOfYear(walk.date)));
    }
    if (descriptor == "caps-off") {
        return integerValue(capsOffOn(season, dayOfYear(walk.date)));
    }
    if (descriptor == "flower-sex") {
        return integerValue(orchard.collection[season.accession].flowerSex);
    }
    if (descriptor == "pruning-weight") {
        return numberValue(rounded(season.pruningKg, 2));
    }
    if (descriptor == "dead-spurs") {
        return integerValue(season.deadSpurs);
    }
    if (descriptor == "vigour") {
        return integerValue(season.vigour);
    }
    if (descriptor == "shoot-tip") {
        return textValue(kTips[season.vigour >= 6 ? 1 : 2]);
    }
    return season.bears ? fruitValue(orchard, season, walk) : Bytes();
}

std::vector<Noted> walkRows(Dice& dice, const Orchard& orchard, Pen& pen, const Walk& walk) {
    std::vector<Noted> noted;
    const auto vines = orchard.row(walk.block, walk.row);
    for (std::size_t i = 0; i < vines.size(); ++i) {
        const Vine& vine = *vines[i];
        const auto source = static_cast<std::ptrdiff_t>(i) - walk.along;
        const bool isInRow = source >= 0 && source < static_cast<std::ptrdiff_t>(vines.size());
        if (!isThere(vine, walk) && isFirstWalk(walk)) {
            noteEmpty(pen, vine, walk);
            continue;
        }
        Bytes value =
            isInRow ? trueValue(orchard, *vines[static_cast<std::size_t>(source)], walk) : Bytes();
        if (value.empty()) {
            continue;
        }
        value = unsteady(dice, walk.descriptor, value);
        if (vine.position == walk.slipAt) {
            value = numberValue(rounded(*journal::numberOf(value) * 10, 1));
        }
        const std::string subject = observation(vine.position, walk.date, walk.descriptor);
        const journal::Place place = pen.observe(subject, value);
        noted.push_back({subject, value, &vine, place});
    }
    return noted;
}

void walkSamples(Dice& dice, const Orchard& orchard, Pen& pen, const Walk& walk, int samples) {
    for (const Vine* const vine : orchard.row(walk.block, walk.row)) {
        const VineSeason& season = seasonOf(*vine, walk.date);
        const bool isOfLeaves = std::string_view(walk.descriptor) == "leaf-width";
        if (!season.stands || !(season.bears || isOfLeaves)) {
            continue;
        }
        const Nature& nature = orchard.collection[season.accession].nature;
        for (int i = 0; i < samples; ++i) {
            const double value = sampleOf(dice, nature, season, walk);
            pen.sample(observation(vine->position, walk.date, walk.descriptor),
                       numberValue(value),
                       typed(dice, value));
        }
    }
}

void lookAgain(const Orchard& orchard,
               Pen& pen,
               const Walk& walk,
               const std::vector<Noted>& first,
               const SecondLook& look,
               Truth& truth) {
    for (std::size_t i = 0; i < first.size(); ++i) {
        const Noted& noted = first[i];
        const Apart apart = apartness(i);
        const Bytes value = secondValue(walk, noted.value, look, apart);
        pen.observe(noted.subject, value);
        if (journal::isSameValue(value, noted.value)) {
            truth.agreed.push_back(noted.subject);
            continue;
        }
        const bool isFar = look.hasWithin && apart == Apart::Far;
        truth.conflicts.push_back({noted.subject,
                                   look.rule,
                                   !look.hasWithin ? ""
                                   : isFar         ? "exceeded"
                                                   : "inside",
                                   isFar || std::string_view(look.rule) == "ask",
                                   trueValue(orchard, *noted.vine, walk)});
    }
}

} // namespace bullace::demo
