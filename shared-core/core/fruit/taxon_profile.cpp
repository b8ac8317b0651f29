#include "core/fruit/taxon_profile.hpp"

#include <algorithm>

namespace bullace::fruit {

namespace {

constexpr const char* kFlora = "Flora of North America 12:7 (Moore & Wen)";
constexpr const char* kFloraGenus = "Flora of North America 12:6; x = 20 in the subgenus";
constexpr const char* kMemory = "2n = 40 in the subgenus, from memory";

ProfileCharacter counted(double low, double high) {
    ProfileCharacter character;
    character.law = countLawOfRange(low, high);
    character.range = statistics::Interval{low, high};
    character.source = kFlora;
    return character;
}

ProfileCharacter measured(double low, double high) {
    ProfileCharacter character;
    character.law = measureLawOfRange(low, high);
    character.range = statistics::Interval{low, high};
    character.source = kFlora;
    return character;
}

ProfileCharacter chromosomes(const char* source) {
    ProfileCharacter character;
    character.law.kind = LawKind::Choice;
    character.law.shares = {{40, 0.98}};
    character.law.other = 0.005;
    character.source = source;
    return character;
}

std::vector<TaxonProfile> makePublished() {
    TaxonProfile rotundifolia{"Vitis rotundifolia", "Michaux", {}};
    rotundifolia.characters[std::string(kBerriesPerCluster)] = counted(2, 8);
    rotundifolia.characters[std::string(kBerryDiameter)] = measured(15, 25);
    rotundifolia.characters[std::string(kChromosomes)] = chromosomes(kFloraGenus);
    TaxonProfile munsoniana{"Vitis munsoniana", "J. H. Simpson ex Planchon", {}};
    munsoniana.characters[std::string(kBerriesPerCluster)] = counted(12, 30);
    munsoniana.characters[std::string(kBerryDiameter)] = measured(8, 12);
    munsoniana.characters[std::string(kChromosomes)] = chromosomes(kMemory);
    TaxonProfile popenoei{"Vitis popenoei", "J. L. Fennell", {}};
    popenoei.characters[std::string(kChromosomes)] = chromosomes(kMemory);
    return {rotundifolia, munsoniana, popenoei};
}

struct OwnValues {
    std::size_t accessions = 0;
    std::vector<std::vector<double>> vines;
};

// By taxon and character.
using Own = std::map<std::string, std::map<std::string, OwnValues>>;

Own ownOf(const std::vector<VerifiedAccession>& verified) {
    Own own;
    for (const VerifiedAccession& accession : verified) {
        for (const auto& [character, vines] : accession.vines) {
            OwnValues& values = own[accession.taxon][character];
            const std::size_t before = values.vines.size();
            std::ranges::copy_if(vines,
                                 std::back_inserter(values.vines),
                                 [](const std::vector<double>& vine) { return !vine.empty(); });
            values.accessions += values.vines.size() > before ? 1U : 0U;
        }
    }
    return own;
}

bool isEnough(LawKind kind, const OwnValues& values) {
    const std::size_t atLeast = kind == LawKind::Choice ? 1 : 2;
    const auto telling = std::ranges::count_if(
        values.vines, [atLeast](const auto& vine) { return vine.size() >= atLeast; });
    return values.accessions >= kEnoughAccessions &&
           telling >= static_cast<std::ptrdiff_t>(kEnoughVines);
}

// Shares of codes, with half a vine added to each code that was met and to all others together, so
// that what was never met is unlikely and not impossible (Jeffreys' prior).
CharacterLaw choiceLaw(const std::vector<std::vector<double>>& vines) {
    std::map<double, double> met;
    for (const std::vector<double>& vine : vines) {
        met[vine.front()] += 1;
    }
    const double all =
        static_cast<double>(vines.size()) + 0.5 * static_cast<double>(met.size() + 1);
    CharacterLaw law;
    law.kind = LawKind::Choice;
    for (const auto& [code, times] : met) {
        law.shares.push_back({code, (times + 0.5) / all});
    }
    law.other = 0.5 / all;
    return law;
}

ProfileCharacter ownCharacter(const std::string& character, const OwnValues& values) {
    ProfileCharacter made;
    made.isOwn = true;
    made.accessions = values.accessions;
    made.vines = values.vines.size();
    for (const std::vector<double>& vine : values.vines) {
        made.values += vine.size();
    }
    const LawKind kind = kindOf(character);
    made.law = kind == LawKind::Choice ? choiceLaw(values.vines) : lawOfVines(kind, values.vines);
    return made;
}

} // namespace

LawKind kindOf(std::string_view character) {
    if (character == kBerriesPerCluster || character == kSeedsPerBerry) {
        return LawKind::Count;
    }
    const bool isChosen =
        character == kChromosomes || character == kSkin || character == kLenticels;
    return isChosen ? LawKind::Choice : LawKind::Measure;
}

const std::vector<TaxonProfile>& publishedProfiles() {
    static const std::vector<TaxonProfile> published = makePublished();
    return published;
}

std::vector<TaxonProfile> profilesWith(const std::vector<VerifiedAccession>& verified) {
    std::vector<TaxonProfile> profiles = publishedProfiles();
    for (const auto& [taxon, characters] : ownOf(verified)) {
        auto found = std::ranges::find(profiles, taxon, &TaxonProfile::taxon);
        TaxonProfile profile = found != profiles.end() ? *found : TaxonProfile{taxon, "", {}};
        for (const auto& [character, values] : characters) {
            if (!isEnough(kindOf(character), values)) {
                continue;
            }
            ProfileCharacter own = ownCharacter(character, values);
            own.range = profile.characters[character].range;
            profile.characters[character] = std::move(own);
        }
        if (found != profiles.end()) {
            *found = std::move(profile);
        } else if (!profile.characters.empty()) {
            profiles.push_back(std::move(profile));
        }
    }
    return profiles;
}

} // namespace bullace::fruit
