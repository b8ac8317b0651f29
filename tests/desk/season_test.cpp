// The demo's whole third season settled at the desk, through its window and by keys alone, by a
// person who knows what the vines were really like.
#include "demo/third_season.hpp"

#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"
#include "support/desk_conflicts.hpp"
#include "support/desk_glass.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

using namespace bullace;
using namespace bullace::test;
using merge::Finding;
using merge::FindingKind;

namespace {

constexpr std::int64_t kSeasonIsOver = 1'760'000'000'000; // 2025-10-09
constexpr double kDeviations = 6; // the demo's deviates never lie further out

// What the file holds under a subject.
struct Held {
    merge::State state = merge::State::Open;
    std::string json; // empty: no value

    bool operator==(const Held&) const = default;
    [[nodiscard]] Bytes value() const {
        const Result<Bytes> read = store::readJson(json);
        return json.empty() || !read ? Bytes{} : *read;
    }
};
using States = std::map<std::string, Held>;

// All observations, and all of the collection; not what the desk keeps of itself.
States statesOf(const std::string& path) {
    States states;
    auto database = store::Database::open(path, false, store::fileSurroundings());
    REQUIRE(database.ok());
    const auto take = [&states](const store::StateRow& row) {
        states[row.subject] = {row.state, row.valueJson};
        return true;
    };
    REQUIRE((*database)->eachState("", take).ok());
    return states;
}

bool isOfThirdSeason(const std::string& subject) {
    return subject.starts_with("obs/") && subject.find("/2025-") != std::string::npos;
}
bool isOfSeasonsBefore(const std::string& subject) {
    return subject.starts_with("obs/") && (subject.find("/2023-") != std::string::npos ||
                                           subject.find("/2024-") != std::string::npos);
}

// The generator's truth, asked for by subject.
class Truth {
public:
    Truth() {
        for (const demo::Vine& vine : orchard().vines) {
            vines_[vine.position] = &vine;
        }
        for (const demo::PlantedConflict& conflict : planted().conflicts) {
            conflicts_[conflict.subject] = &conflict;
        }
        for (const demo::Journal& journal : demoStation().journals) {
            for (const journal::Entry& entry : journal.entries) {
                if (journal.file == "bench.jsonl" || journal.file == "breeding.jsonl") {
                    ofBench_.insert(entry.subject);
                }
            }
        }
        REQUIRE_FALSE(ofBench_.empty());
    }

    static const demo::Orchard& orchard() { return demoStation().orchard; }
    static const demo::Truth& planted() { return demoStation().truth; }
    // The row that stands one vine too far and was not put right yet.
    static const demo::ShiftedRow& shifted() {
        const auto& rows = planted().shiftedRows;
        const auto found = std::find_if(
            rows.begin(), rows.end(), [](const demo::ShiftedRow& row) { return !row.isPutRight; });
        REQUIRE(found != rows.end());
        return *found;
    }

    [[nodiscard]] const demo::PlantedConflict* conflict(const std::string& subject) const {
        const auto found = conflicts_.find(subject);
        return found == conflicts_.end() ? nullptr : found->second;
    }
    // Not noted on a walk; its truth is a law, which another test recovers.
    [[nodiscard]] bool isOfBench(const std::string& subject) const {
        return ofBench_.contains(subject);
    }
    [[nodiscard]] const demo::Vine& vine(const std::string& subject) const {
        return *vines_.at(std::string(journal::readSubject(subject).id));
    }
    [[nodiscard]] const demo::VineSeason& season(const std::string& subject) const {
        return vine(subject).seasons[2];
    }
    // What a careful person would have noted; empty where there was nothing to note.
    [[nodiscard]] Bytes right(const std::string& subject) const {
        const journal::Subject parts = journal::readSubject(subject);
        const std::string descriptor(parts.descriptor);
        return demo::trueValue(
            orchard(), vine(subject), {"", 0, *readDate(parts.date), descriptor.c_str()});
    }
    // Whether the value is what the vine was really like, as far as one look can tell it: what the
    // demo's people note is off by chance, and by no more than this.
    [[nodiscard]] bool isTrue(const std::string& subject, const Bytes& value) const {
        const journal::Subject parts = journal::readSubject(subject);
        if (!parts.sample.empty()) {
            return isTrueSample(subject, value);
        }
        if (parts.descriptor == "vine") {
            return season(subject).dies && journal::textOf(value) == "dead";
        }
        if (const auto none = journal::memberOf(value, "none")) {
            const char* reason = season(subject).dies ? "dead" : "no-vine";
            return right(subject).empty() && journal::textOf(*none) == reason;
        }
        const Bytes really = right(subject);
        if (really.empty() || journal::isSameValue(value, really)) {
            return !really.empty();
        }
        const auto number = journal::numberOf(value);
        const auto wanted = journal::numberOf(really);
        return number && wanted &&
               distance(parts.descriptor, *number, *wanted) <=
                   oneLook(parts.descriptor, *wanted) + twoLooks(subject, *wanted);
    }

private:
    // In steps for stages.
    static double distance(std::string_view descriptor, double a, double b) {
        if (descriptor != "stage") {
            return std::abs(a - b);
        }
        const auto one = descriptors::stageStep(std::llround(a));
        const auto two = descriptors::stageStep(std::llround(b));
        REQUIRE((one && two));
        return std::abs(static_cast<double>(*one) - static_cast<double>(*two));
    }
    static double oneLook(std::string_view descriptor, double number) {
        if (descriptor == "stage") {
            return 1;
        }
        const bool isPercent = descriptor == "caps-off" || descriptor == "ripe" ||
                               descriptor == "dead-spurs" || descriptor == "wasp-damage";
        return isPercent                  ? kDeviations * 3 + 2.5 // noted in fives
               : descriptor == "clusters" ? kDeviations * 0.012 * number + 0.5
                                          : 0;
    }
    // Where two looked and the rule took something between, or one of them.
    [[nodiscard]] double twoLooks(const std::string& subject, double number) const {
        const demo::PlantedConflict* both = conflict(subject);
        if (both == nullptr || both->within != "inside") {
            return 0;
        }
        const std::string_view descriptor = journal::readSubject(subject).descriptor;
        const demo::SecondLook& look = both->kind == "advanced"   ? demo::kAdvanced
                                       : both->kind == "greatest" ? demo::kGreatest
                                       : both->kind == "least"    ? demo::kLeast
                                       : descriptor == "clusters" ? demo::kMeanPercent
                                       : descriptor == "caps-off" ? demo::kMeanOfPercents
                                                                  : demo::kMeanOfScores;
        return look.isPercent ? std::max(1.0, std::ceil(number * look.little / 100)) : look.little;
    }
    [[nodiscard]] bool isTrueSample(const std::string& subject, const Bytes& value) const {
        const std::string_view descriptor = journal::readSubject(subject).descriptor;
        if (descriptor == "cross-work") {
            return season(subject).bears; // chance alone says how many flowers it were
        }
        const demo::VineSeason& vine = season(subject);
        const demo::Nature& nature = orchard().collection[vine.accession].nature;
        const bool isBerries = descriptor == "berries-per-cluster";
        const bool isSeed = descriptor == "seed-length";
        const bool isLeaf = descriptor == "leaf-width";
        const bool isSugar = descriptor == "soluble-solids";
        REQUIRE((isBerries || isSeed || isLeaf || isSugar || descriptor == "berry-diameter"));
        const double middle = isBerries ? vine.berriesPerCluster
                              : isSeed  ? nature.seedMm
                              : isLeaf  ? nature.leafMm
                              : isSugar ? vine.brix
                                        : vine.diameterMm;
        const double spread = isBerries ? 0.15 * middle
                              : isSeed  ? 0.02 * middle
                              : isLeaf  ? 0.08 * middle
                              : isSugar ? 0.6
                                        : 0.04 * middle;
        const double step = isBerries ? 1 : 0.1;
        const auto number = journal::numberOf(value);
        return number && std::abs(*number - middle) <= kDeviations * spread + step;
    }

    std::map<std::string, const demo::Vine*> vines_;
    std::map<std::string, const demo::PlantedConflict*> conflicts_;
    std::set<std::string> ofBench_;
};

std::string typedAs(const Bytes& value) {
    const auto text = journal::textOf(value);
    return text ? std::string(*text) : journal::valueToJson(value);
}

// The first card that shows the value, by its number key; nothing where none does. Where two cards
// show it, both are equally good.
std::optional<Qt::Key> cardOf(DeskGlass& desk, const Bytes& value) {
    const auto& sides = conflictsOf(desk).file()->sides;
    const auto found = std::find_if(sides.begin(), sides.end(), [&value](const office::Side& side) {
        return journal::isSameValue(side.value, value);
    });
    return found == sides.end()
               ? std::nullopt
               : std::optional(static_cast<Qt::Key>(Qt::Key_1 + (found - sides.begin())));
}

// The generator knows one value for each conflict that waits: no two of them were both right, so
// none is kept as samples. Where nobody noted what is right, it is typed.
void settleByTruth(DeskGlass& desk, const demo::PlantedConflict& planted) {
    const auto& sides = conflictsOf(desk).file()->sides;
    // Cards that all said the same would leave nothing to decide.
    CHECK(std::any_of(sides.begin(), sides.end(), [&sides](const office::Side& side) {
        return !journal::isSameValue(side.value, sides.front().value);
    }));
    const std::optional<Qt::Key> card = cardOf(desk, planted.right);
    if (card) {
        desk.press(*card);
    } else {
        desk.press("e");
        desk.answer(QString::fromStdString(typedAs(planted.right)));
    }
    if (planted.kind == "ruling") {
        desk.press("o");
        desk.answer(QStringLiteral("counted on the photo of both sides"));
    } else {
        desk.press(planted.kind == "ask" ? "p" : planted.kind == "mean" ? "t" : "k");
    }
}

// On the vine's page, which V opens from the finding.
void putRight(DeskGlass& desk, const std::string& subject, const Bytes& right) {
    desk.press("v");
    REQUIRE(desk.app().page() == desk::DeskApp::Vine);
    const QString key = QString::fromStdString(subject);
    desk.press(Qt::Key_Home);
    for (int i = 0; i < 100 && desk.page().table()->currentKey() != key; ++i) {
        desk.press(Qt::Key_Down);
    }
    REQUIRE(desk.page().table()->currentKey() == key);
    desk.press("e");
    desk.press(Qt::Key_A, Qt::ControlModifier);
    desk.answer(QString::fromStdString(typedAs(right)));
    desk.answer(QStringLiteral("the photo shows it"));
    for (int i = 0; i < 3 && desk.app().page() != desk::DeskApp::Findings; ++i) {
        desk.press(Qt::Key_Escape);
    }
    REQUIRE(desk.app().page() == desk::DeskApp::Findings);
}

// What a person did who worked through the findings.
struct Worked {
    int repaired = 0;
    int putRight = 0;
    int calledRight = 0;
};

class FindingsWork {
public:
    FindingsWork(DeskGlass& desk, const Truth& truth, const std::string& path)
        : desk_(desk),
          truth_(truth),
          path_(path) {}

    Worked run() {
        for (int i = 0; i < 200 && !desk_.app().findings().found().empty(); ++i) {
            desk_.press(Qt::Key_Home);
            const int at = desk_.page().table()->currentKey().toInt();
            lookAt(desk_.app().findings().found().at(static_cast<std::size_t>(at)));
        }
        return worked_;
    }
    [[nodiscard]] const std::set<std::string>& corrected() const { return corrected_; }

private:
    void lookAt(const Finding finding) {
        INFO(merge::findingWords(finding));
        const std::string first = finding.subjects.empty() ? "" : finding.subjects.front();
        switch (finding.kind) {
        case FindingKind::ShiftedRow:
            isShifted(finding) ? repair("began at the second vine") : callRight();
            return;
        case FindingKind::TenTimes:
            REQUIRE(first == Truth::planted().slip.subject);
            CHECK(journal::isSameValue(finding.repair.front().value, Truth::planted().slip.right));
            repair("the point was left out");
            return;
        case FindingKind::StageBackwards:
            lookAtStages({first, earlierOf(finding)});
            return;
        case FindingKind::FarFromHistory:
        case FindingKind::FarFromNeighbours:
            // Unlike the others, and true: vines of another accession.
            CHECK(truth_.isTrue(first, finding.value));
            callRight();
            return;
        case FindingKind::ClockOff:
            // It is put right on the device; the desk is told that somebody knows.
            CHECK(finding.device == Truth::planted().wrongClock);
            CHECK(finding.off == Truth::planted().wrongClockDays);
            callRight();
            return;
        default:
            FAIL("nothing of the kind was planted");
        }
    }

    static bool isShifted(const Finding& finding) {
        const bool isIt = finding.subjects == Truth::shifted().subjects;
        CHECK((!isIt || finding.run->along == Truth::shifted().along));
        return isIt;
    }
    static std::string earlierOf(const Finding& finding) {
        const journal::Subject parts = journal::readSubject(finding.subjects.front());
        return "obs/" + std::string(parts.id) + "/" + writeDate(*finding.on) + "/stage";
    }
    // One of the two days must be wrong; the truth says which.
    void lookAtStages(const std::vector<std::string>& days) {
        const States now = statesOf(path_);
        for (const std::string& day : days) {
            const Bytes right = truth_.right(day);
            if (!journal::isSameValue(now.at(day).value(), right)) {
                putRight(desk_, day, right);
                corrected_.insert(day);
                ++worked_.putRight;
                return;
            }
        }
        callRight();
    }
    void repair(const char* why) {
        desk_.press("r");
        desk_.answer(QString::fromLatin1(why));
        ++worked_.repaired;
    }
    void callRight() {
        const std::size_t before = desk_.app().findings().found().size();
        desk_.press("k");
        CHECK(desk_.app().findings().found().size() == before - 1);
        ++worked_.calledRight;
    }

    DeskGlass& desk_;
    const Truth& truth_;
    const std::string& path_;
    std::set<std::string> corrected_;
    Worked worked_;
};

// Each vine of the row has its own count again; only the last one's was never noted.
void checkRowIsPutRight(const States& after, const Truth& truth) {
    const demo::ShiftedRow& shifted = Truth::shifted();
    const auto vines = Truth::orchard().row(shifted.block, shifted.row);
    int filled = 0;
    for (std::size_t i = 0; i < vines.size(); ++i) {
        const std::string subject =
            "obs/" + vines[i]->position + "/" + shifted.date + "/" + shifted.descriptor;
        INFO(subject);
        const auto found = after.find(subject);
        const bool wasNoted = i + 1 < vines.size() && !truth.right(subject).empty();
        REQUIRE((found != after.end() || !wasNoted));
        CHECK((found != after.end() && !found->second.json.empty()) == wasNoted);
        filled += wasNoted ? 1 : 0;
    }
    CHECK(filled == static_cast<int>(shifted.subjects.size()));
}

// All that was observed in the third season is what the vines were like. What was open is so to the
// digit; what a rule settles without a person is the rule's.
int checkThirdSeason(const States& before, const States& after, const Truth& truth) {
    int checked = 0;
    for (const auto& [subject, held] : after) {
        if (!isOfThirdSeason(subject) || held.json.empty()) {
            continue;
        }
        INFO(subject << " " << held.json);
        CHECK(held.state != merge::State::Open);
        if (truth.isOfBench(subject)) {
            CHECK(held == before.at(subject));
            continue;
        }
        const demo::PlantedConflict* planted = truth.conflict(subject);
        const bool isRuled = planted != nullptr && !planted->isOpen;
        if (planted != nullptr && planted->isOpen) {
            CHECK(held.state == merge::State::Settled);
            CHECK(journal::isSameValue(held.value(), planted->right));
        } else if (isRuled && (planted->kind == "later" || planted->kind == "all")) {
            // Of two words the later, and of notes all: no truth, but the station's rule.
            CHECK(held.state == merge::State::Ruled);
            CHECK(held == before.at(subject));
        } else {
            CHECK(held.state == (isRuled ? merge::State::Ruled : held.state));
            CHECK(truth.isTrue(subject, held.value()));
        }
        ++checked;
    }
    return checked;
}

} // namespace

TEST_CASE("the demo's third season is settled by keys alone until nothing waits, and everything "
          "is as the vines were") {
    const TempFolder folder;
    const std::string path = folder.file("station.db");
    makeDemoFile(path);
    const Truth truth;
    const States before = statesOf(path);
    FixedClock clock(kSeasonIsOver);
    DeskGlass desk(path, clock);
    desk.sit("hl");

    desk.press(Qt::Key_2, Qt::ControlModifier);
    const int conflicts = conflictsOf(desk).openCount();
    REQUIRE(conflicts >= 40);
    for (int left = conflicts; left > 0; --left) {
        REQUIRE(conflictsOf(desk).file().has_value());
        const std::string subject = conflictsOf(desk).file()->subject;
        INFO(subject);
        const demo::PlantedConflict* planted = truth.conflict(subject);
        REQUIRE(planted != nullptr);
        REQUIRE(planted->isOpen);
        settleByTruth(desk, *planted);
        REQUIRE(conflictsOf(desk).openCount() == left - 1);
    }

    desk.press(Qt::Key_3, Qt::ControlModifier);
    const std::size_t findings = desk.app().findings().found().size();
    CHECK(findings >= 20);
    FindingsWork work(desk, truth, path);
    const Worked worked = work.run();
    CHECK(desk.app().findings().found().empty());
    CHECK(desk.page().words() == QStringLiteral("Nothing looks wrong."));
    CHECK(worked.repaired == 2); // the shifted row and the slip of the point

    // Putting things right has raised no new conflict.
    desk.press(Qt::Key_2, Qt::ControlModifier);
    CHECK(conflictsOf(desk).openCount() == 0);
    CHECK(desk.page().words() == QStringLiteral("Nothing waits for a decision."));

    const States after = statesOf(path);
    CHECK(after.at(Truth::planted().slip.subject).json ==
          journal::valueToJson(Truth::planted().slip.right));
    checkRowIsPutRight(after, truth);
    for (const std::string& subject : work.corrected()) {
        CHECK(journal::isSameValue(after.at(subject).value(), truth.right(subject)));
    }
    const int checked = checkThirdSeason(before, after, truth);
    CHECK(checked > 5000);
    // The seasons before, and the collection, are as they were; but what was left open of them.
    int settled = 0;
    for (const auto& [subject, held] : before) {
        INFO(subject);
        const demo::PlantedConflict* planted = truth.conflict(subject);
        if (isOfThirdSeason(subject)) {
            CHECK(after.count(subject) == 1);
        } else if (isOfSeasonsBefore(subject) && planted != nullptr && planted->isOpen) {
            CHECK(journal::isSameValue(after.at(subject).value(), planted->right));
            ++settled;
        } else {
            CHECK(after.at(subject) == held);
        }
    }
    MESSAGE(conflicts << " conflicts, " << settled << " of them of the year before; " << findings
                      << " findings: " << worked.repaired << " repaired, " << worked.putRight
                      << " put right, " << worked.calledRight << " called right; " << checked
                      << " observations as the vines were");
}
