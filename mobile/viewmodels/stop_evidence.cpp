// The page of one stop: what the clusters and berries that were just noted say of the vine.
#include "tablet/stop_view_model.hpp"
#include "tablet/walk_words.hpp"

#include "core/fruit/identity.hpp"

#include <cmath>

namespace bullace::tablet {

namespace {

// Beyond a thousand times it is no use to know how much.
constexpr double kMostToSay = 3;

fruit::VineValues
valuesAt(const field::Walk& walk, const vineyard::Catalogue& catalogue, std::size_t stop) {
    fruit::VineValues values;
    for (const std::string_view character : {fruit::kBerriesPerCluster, fruit::kBerryDiameter}) {
        const vineyard::Asked* known = catalogue.descriptor(character);
        for (const field::NotedValue* one : walk.sheet().at(stop, std::string(character))) {
            const auto number =
                known == nullptr ? std::nullopt : vineyard::comparableNumber(*known, one->value);
            if (number) {
                values[std::string(character)].push_back(*number);
            }
        }
    }
    return values;
}

// "V. munsoniana": there is little room.
QString shortTaxon(const std::string& taxon) {
    const QString words = quick::fromText(taxon);
    const qsizetype space = words.indexOf(QLatin1Char(' '));
    return space > 1 ? words.left(1) + QLatin1Char('.') + words.mid(space) : words;
}

} // namespace

QString StopViewModel::evidenceWords(std::size_t stop, const std::string& descriptor) const {
    if (descriptor != fruit::kBerriesPerCluster && descriptor != fruit::kBerryDiameter) {
        return {};
    }
    const auto& profiles = fruit::publishedProfiles();
    const fruit::VineValues values = valuesAt(*walk(), session_.book()->catalogue(), stop);
    const fruit::Identity identity = fruit::identify(profiles, values);
    if (identity.verdict == fruit::Verdict::Contradictory) {
        return tr("Clusters and berries speak for different taxa.");
    }
    if (!identity.lead) {
        return {};
    }
    const QString taxon = shortTaxon(profiles[*identity.leading].taxon);
    if (!identity.isUsual) {
        return tr("Nearest to %1, but unusual for it: undecided.").arg(taxon);
    }
    const double times = std::pow(10, std::min(*identity.lead, kMostToSay));
    const QString number =
        localNumber(fixedText(roundTo(times, times < 10 ? 1 : 0), times < 10 ? 1 : 0));
    // Against the nearest other taxon; there is no room for its name.
    const QString said = *identity.lead > kMostToSay ? tr("%1 > %2 : 1.").arg(taxon, number)
                                                     : tr("%1 %2 : 1.").arg(taxon, number);
    if (identity.verdict == fruit::Verdict::Decided) {
        return said;
    }
    const auto needed = fruit::stillNeeded(profiles, values, fruit::kBerriesPerCluster);
    return needed.more ? said + QStringLiteral(" ") +
                             tr("About %n more cluster(s) would decide.",
                                nullptr,
                                static_cast<int>(*needed.more))
                       : said + QStringLiteral(" ") + tr("More clusters will hardly decide.");
}

} // namespace bullace::tablet
