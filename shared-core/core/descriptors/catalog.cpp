// The table of built-in descriptors. A range is there to catch slips of the hand: it is wider than
// anything known of muscadines.
#include "core/descriptors/catalog.hpp"

#include <array>
#include <utility>

namespace bullace::descriptors {

namespace {

using Kind = DescriptorKind;
using Words = std::string_view;

constexpr Words kPractice = "common practice, no source";
constexpr Words kBbch = "Lorenz et al. 1995, Aust. J. Grape Wine Res. 1:100-103";
constexpr Words kPercents = "percentages that define the stages of Lorenz et al. 1995";
constexpr Words kFlora = "Moore & Wen, Flora of North America 12:7";
constexpr Words kAppliedPomology =
    "range among cultivars: J. Amer. Pomol. Soc. 54(3):114, 2000; limits: common practice";
constexpr Words kPigments = "3,5-diglucosides after Ballinger et al., Am. J. Enol. Vitic., 1970s";
constexpr Words kColdBuds = "dissection of buds: J. Amer. Pomol. Soc. 52:47, 1998";

constexpr Rule kAsk{RuleName::Ask, std::nullopt};
constexpr Rule kAll{RuleName::All, std::nullopt};
constexpr Rule meanWithin(double amount, bool isPercent = false) {
    return {RuleName::Mean, Within{amount, isPercent}};
}

constexpr std::array<Words, 6> kReasons{
    "not-observed", "no-vine", "dead", "out-of-reach", "no-crop", "walked-past"};

constexpr std::array<Words, 5> kColours{"bronze", "pink", "red", "purple", "black"};
constexpr std::array<Words, 4> kSexes{"1", "2", "3", "4"};
constexpr std::array<Words, 3> kTips{"growing", "slowing", "stopped"};
constexpr std::array<Words, 3> kVerdicts{"pull", "look-again", "take-on"};
constexpr std::array<Words, 6> kVines{
    "sound", "weak", "dead", "missing", "replanted", "not-the-accession"};
constexpr std::array<Words, 3> kBuds{"primary", "secondary", "tertiary"};
constexpr std::array<Words, 2> kWavelengths{"420", "520"};
constexpr std::array<Words, 8> kCrossSteps{"bagged",
                                           "emasculated",
                                           "pollen-collected",
                                           "pollinated",
                                           "re-pollinated",
                                           "bag-off",
                                           "set",
                                           "harvested"};

constexpr RecordPart whole(Words name, double least, double greatest) {
    return {.name = name,
            .kind = PartKind::Whole,
            .range = {least, greatest},
            .words = {},
            .atMost = {},
            .per = {}};
}
constexpr RecordPart number(Words name, double least, double greatest, int decimals) {
    RecordPart part = whole(name, least, greatest);
    part.kind = PartKind::Number;
    part.decimals = decimals;
    return part;
}
constexpr RecordPart word(Words name, std::span<const Words> words) {
    RecordPart part = whole(name, 0, 0);
    part.kind = PartKind::Word;
    part.words = words;
    return part;
}
constexpr RecordPart id(Words name) {
    RecordPart part = whole(name, 0, 0);
    part.kind = PartKind::Id;
    return part;
}
constexpr RecordPart orNot(RecordPart part) {
    part.isRequired = false;
    return part;
}
constexpr RecordPart atMost(RecordPart part, Words other) {
    part.atMost = other;
    return part;
}
constexpr RecordPart per(RecordPart part, Words other) {
    part.per = other;
    return part;
}

constexpr std::array<RecordPart, 2> kOnShoots{whole("n", 0, 20000), whole("of", 1, 5000)};
constexpr std::array<RecordPart, 2> kOnCordon{whole("n", 0, 20000), number("of", 0.1, 50, 2)};
constexpr std::array<RecordPart, 2> kBerriesTogether{per(number("g", 0.1, 40, 2), "of"),
                                                     whole("of", 1, 1000)};
constexpr std::array<RecordPart, 2> kDeadOf{atMost(whole("dead", 0, 10000), "of"),
                                            whole("of", 1, 10000)};
constexpr std::array<RecordPart, 4> kFreeze{number("c", -60, 10, 1),
                                            atMost(whole("dead", 0, 10000), "of"),
                                            whole("of", 1, 10000),
                                            word("bud", kBuds)};
constexpr std::array<RecordPart, 2> kShoot{whole("shoot", 1, 9999), number("cm", 0, 1500, 1)};
constexpr RecordPart kWavelength{.name = "nm",
                                 .kind = PartKind::Whole,
                                 .range = {420, 520},
                                 .words = kWavelengths,
                                 .atMost = {},
                                 .per = {}};
constexpr std::array<RecordPart, 7> kAbsorbance{whole("day", 0, 3650),
                                                kWavelength,
                                                number("a", 0, 10, 4),
                                                number("dilution", 1, 1000, 2),
                                                number("path_mm", 1, 100, 2),
                                                orNot(number("ph", 2, 5, 2)),
                                                orNot(number("storage_c", -30, 60, 1))};
constexpr std::array<RecordPart, 5> kCrossWork{id("cross"),
                                               word("step", kCrossSteps),
                                               orNot(whole("count", 0, 100000)),
                                               orNot(id("lot")),
                                               orNot(whole("tag", 1, 999999))};

constexpr Descriptor plain(Words code, Words title, Kind kind, Rule rule, Words source) {
    Descriptor made;
    made.code = code;
    made.title = title;
    made.kind = kind;
    made.rule = rule;
    made.source = source;
    return made;
}
constexpr Descriptor sampled(Descriptor one) {
    one.isSampled = true;
    return one;
}
constexpr Descriptor stage(Words code, Words title, Rule rule) {
    return plain(code, title, Kind::Stage, rule, kBbch);
}
constexpr Descriptor percent(Words code, Words title, Words source = kPractice) {
    Descriptor made = plain(code, title, Kind::Percent, meanWithin(10), source);
    made.unit = "%";
    made.range = Range{0, 100};
    return made;
}
constexpr Descriptor count(Words code, Words title, double greatest, Rule rule, Words source) {
    Descriptor made = plain(code, title, Kind::Count, rule, source);
    made.range = Range{0, greatest};
    return made;
}
constexpr Descriptor score(Words code, Words title, Range range, Rule rule) {
    Descriptor made = plain(code, title, Kind::Score, rule, kPractice);
    made.range = range;
    return made;
}
constexpr Descriptor nineScore(Words code, Words title) {
    return score(code, title, {1, 9}, meanWithin(1));
}
constexpr Descriptor category(Words code, Words title, std::span<const Words> words) {
    Descriptor made = plain(code, title, Kind::Category, kAsk, kPractice);
    made.codes = words;
    return made;
}
constexpr Descriptor
record(Words code, Words title, std::span<const RecordPart> parts, Words source = kPractice) {
    Descriptor made = plain(code, title, Kind::Record, kAsk, source);
    made.parts = parts;
    return made;
}

struct Scale {
    Words unit;
    Range range;
    int decimals = 0;
};
constexpr Descriptor
measure(Words code, Words title, Scale scale, Words source = kPractice, Rule rule = kAsk) {
    Descriptor made = plain(code, title, Kind::Measure, rule, source);
    made.unit = scale.unit;
    made.range = scale.range;
    made.decimals = scale.decimals;
    return made;
}
constexpr Descriptor pigment(Words code, Words title) {
    return measure(code, title, {"mg/100 g", {0, 2000}, 1}, kPigments);
}
constexpr Descriptor berryWeight() {
    Descriptor made =
        sampled(measure("berry-weight", "Berry weight", {"g", {0.1, 40}, 2}, kAppliedPomology));
    made.parts = kBerriesTogether;
    return made;
}
constexpr Descriptor flowerSex() {
    Descriptor made = plain("flower-sex", "Flower sex", Kind::Code, kAsk, "OIV 151, states 1 to 4");
    made.range = Range{1, 4};
    made.codes = kSexes;
    return made;
}
// Any even or odd 2n can be noted: crosses between the subgenera have 39, and unreduced pollen
// gives more.
constexpr Descriptor chromosomes() {
    Descriptor made = plain("chromosomes",
                            "Chromosomes (2n)",
                            Kind::Code,
                            kAsk,
                            "Viljoen & Spies 1995, Vitis 34:221-224, for 38, 39 and 40");
    made.range = Range{19, 160};
    return made;
}

constexpr std::array kBuiltIn{
    stage("stage", "Stage", {RuleName::Advanced, Within{2, false}}),
    stage("stage-least", "Stage, least advanced", kAsk),
    percent("bud-break", "Buds past green tip", kPercents),
    percent("caps-off", "Caps off", kPercents),
    percent("coloured", "Berries coloured", kPercents),
    percent("ripe", "Berries ripe", kPercents),
    percent("leaf-fall", "Leaves fallen", kPercents),
    count("clusters", "Clusters on the vine", 2000, meanWithin(5, true), kPractice),
    record("clusters-on-shoots", "Clusters on counted shoots", kOnShoots),
    record("clusters-on-cordon", "Clusters on measured cordon", kOnCordon),
    sampled(count("berries-per-cluster", "Berries per cluster", 200, kAsk, kFlora)),
    sampled(measure("cluster-weight", "Cluster weight", {"g", {1, 2000}, 1})),
    sampled(measure("berry-diameter", "Berry diameter", {"mm", {3, 60}, 1}, kFlora)),
    berryWeight(),
    category("berry-colour", "Berry colour", kColours),
    sampled(count("seeds-per-berry", "Seeds per berry", 8, kAsk, kAppliedPomology)),
    sampled(measure("seed-length", "Seed length", {"mm", {1, 20}, 1}, kFlora)),
    sampled(measure("leaf-width", "Leaf width", {"mm", {5, 300}, 1}, kFlora)),
    sampled(measure("leaf-length", "Leaf length", {"mm", {5, 300}, 1}, kFlora)),
    sampled(measure("soluble-solids",
                    "Soluble solids",
                    {"°Brix", {0, 35}, 1},
                    kAppliedPomology,
                    meanWithin(0.5))),
    measure("titratable-acidity",
            "Titratable acidity, as tartaric",
            {"g/L", {0, 30}, 2},
            kPractice,
            meanWithin(0.5)),
    measure("ph", "pH of the juice", {"", {2, 5}, 2}, kPractice, meanWithin(0.1)),
    nineScore("skin-thickness", "Skin thickness"),
    nineScore("lenticels", "Lenticels"),
    nineScore("flavour", "Flavour"),
    nineScore("vigour", "Vigour"),
    nineScore("rot", "Rot"),
    nineScore("disease", "Disease"),
    percent("dry-scar", "Berries with a dry scar"),
    flowerSex(),
    record("primary-buds", "Primary buds dead", kDeadOf, kColdBuds),
    record("secondary-buds", "Secondary buds dead", kDeadOf, kColdBuds),
    record("tertiary-buds", "Tertiary buds dead", kDeadOf, kColdBuds),
    sampled(record("freeze-test", "Freeze test", kFreeze, kColdBuds)),
    percent("dead-spurs", "Spurs dead"),
    percent("dead-cordon", "Cordon dead"),
    score("trunk", "Trunk", {0, 3}, kAsk),
    sampled(record("shoot-length", "Length of a tagged shoot", kShoot)),
    measure("cordon-length", "Cordon length", {"cm", {0, 3000}, 0}),
    category("shoot-tip", "Shoot tip", kTips),
    measure("pruning-weight", "Pruning weight", {"kg", {0, 50}, 2}),
    sampled(measure("yield", "Yield", {"kg", {0, 200}, 2}, kAppliedPomology)),
    pigment("pigment-delphinidin", "Delphinidin 3,5-diglucoside"),
    pigment("pigment-cyanidin", "Cyanidin 3,5-diglucoside"),
    pigment("pigment-petunidin", "Petunidin 3,5-diglucoside"),
    pigment("pigment-peonidin", "Peonidin 3,5-diglucoside"),
    pigment("pigment-malvidin", "Malvidin 3,5-diglucoside"),
    sampled(record("absorbance", "Absorbance of the juice", kAbsorbance)),
    chromosomes(),
    sampled(record("cross-work", "Work on a cross", kCrossWork)),
    category("verdict", "Verdict", kVerdicts),
    category("vine", "The vine itself", kVines),
    plain("note", "Note", Kind::Text, kAll, kPractice),
    plain("photo", "Photo", Kind::Photo, kAll, kPractice),
};

constexpr std::array<std::pair<Kind, Words>, 10> kKindWords{{{Kind::Stage, "stage"},
                                                             {Kind::Code, "code"},
                                                             {Kind::Category, "category"},
                                                             {Kind::Percent, "percent"},
                                                             {Kind::Count, "count"},
                                                             {Kind::Score, "score"},
                                                             {Kind::Measure, "measure"},
                                                             {Kind::Record, "record"},
                                                             {Kind::Text, "text"},
                                                             {Kind::Photo, "photo"}}};

} // namespace

std::span<const Descriptor> builtInDescriptors() {
    return kBuiltIn;
}

const Descriptor* findBuiltIn(std::string_view code) {
    for (const Descriptor& descriptor : kBuiltIn) {
        if (descriptor.code == code) {
            return &descriptor;
        }
    }
    return nullptr;
}

std::span<const std::string_view> noneReasons() {
    return kReasons;
}

std::optional<DescriptorKind> readKindWord(std::string_view word) {
    for (const auto& [kind, text] : kKindWords) {
        if (text == word) {
            return kind;
        }
    }
    return std::nullopt;
}

std::string_view kindWord(DescriptorKind kind) {
    for (const auto& [known, text] : kKindWords) {
        if (known == kind) {
            return text;
        }
    }
    return {};
}

} // namespace bullace::descriptors
