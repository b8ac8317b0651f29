#include "desk/map_picture.hpp"

#include "desk/desk_words.hpp"

#include "core/journal/subject.hpp"
#include "quick/trade_words.hpp"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <string>
#include <utility>

namespace bullace::desk {

using office::PlaceValue;
using quick::BlockMapCell;
using quick::BlockMapPicture;
using quick::BlockMapScale;
using quick::fromText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(MapPicture)
};

constexpr std::size_t kMostClasses = 8;
constexpr std::size_t kMostSteps = 7;

BlockMapCell::State stateOf(PlaceValue::State state) {
    switch (state) {
    case PlaceValue::Value:
        return BlockMapCell::Value;
    case PlaceValue::NotObserved:
        return BlockMapCell::NotObserved;
    case PlaceValue::NoVine:
        return BlockMapCell::Missing;
    case PlaceValue::Dead:
        return BlockMapCell::Dead;
    case PlaceValue::Open:
        return BlockMapCell::Open;
    case PlaceValue::Empty:
        break;
    }
    return BlockMapCell::Empty;
}

// Rows and places as they stand, with states but no fills. Walked to and fro, as rounds are by
// default.
BlockMapPicture framework(const office::BlockValues& values) {
    BlockMapPicture picture;
    for (const office::BlockRow& row : values.rows) {
        quick::BlockMapRow made;
        made.block = fromText(row.block);
        made.number = QString::number(row.row);
        for (const PlaceValue& place : row.places) {
            BlockMapCell cell;
            cell.position = fromText(place.position);
            cell.vine = static_cast<int>(vineyard::readPosition(place.position)->vine);
            cell.state = stateOf(place.state);
            made.cells.push_back(std::move(cell));
        }
        picture.rows.push_back(std::move(made));
    }
    return picture;
}

template<typename Do>
void eachPlace(const office::BlockValues& values, BlockMapPicture& picture, Do what) {
    for (std::size_t row = 0; row < values.rows.size(); ++row) {
        for (std::size_t i = 0; i < values.rows[row].places.size(); ++i) {
            what(values.rows[row].places[i], picture.rows[row].cells[i]);
        }
    }
}

// What a class is called: the words that are there most often come first.
std::map<std::string, std::size_t> classesOf(const office::BlockValues& values) {
    std::map<std::string, std::size_t> counts;
    for (const office::BlockRow& row : values.rows) {
        for (const PlaceValue& place : row.places) {
            if (place.state == PlaceValue::Value && !place.word.empty()) {
                ++counts[place.word];
            }
        }
    }
    return counts;
}

std::vector<std::string> mostFrequent(const std::map<std::string, std::size_t>& counts) {
    std::vector<std::pair<std::string, std::size_t>> sorted(counts.begin(), counts.end());
    std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) {
        return a.second > b.second;
    });
    std::vector<std::string> words;
    for (std::size_t i = 0; i < std::min(sorted.size(), kMostClasses); ++i) {
        words.push_back(sorted[i].first);
    }
    return words;
}

void fillClasses(const office::BlockValues& values, BlockMapPicture& picture) {
    const auto counts = classesOf(values);
    const std::vector<std::string> words = mostFrequent(counts);
    picture.scale.kind = words.empty() ? BlockMapScale::Plain : BlockMapScale::Classes;
    for (const std::string& word : words) {
        picture.scale.steps.push_back({quick::tradeWord(word), 0});
    }
    eachPlace(values, picture, [&words](const PlaceValue& place, BlockMapCell& cell) {
        const auto found = std::find(words.begin(), words.end(), place.word);
        if (place.state == PlaceValue::Value && found != words.end()) {
            cell.value = static_cast<double>(found - words.begin());
        }
    });
    if (counts.size() > words.size()) {
        picture.notes << Tr::tr("The %n most frequent words have colours; others have none.",
                                nullptr,
                                static_cast<int>(words.size()));
    }
}

QString cellText(const vineyard::Asked& asked, double shown, bool isDifference, int decimals) {
    if (asked.known.kind == descriptors::DescriptorKind::Stage && !isDifference) {
        return quick::stageCodeWords(std::llround(shown));
    }
    const QString number = QLocale().toString(shown, 'f', decimals);
    return isDifference && shown > 0 ? QStringLiteral("+") + number : number;
}

void fillNumbers(const office::BlockValues& values,
                 const vineyard::Asked& asked,
                 bool isDifference,
                 const UnitWishes& wishes,
                 BlockMapPicture& picture) {
    const Unit unit = unitFor(asked.known.unit, wishes);
    const int decimals = asked.known.decimals == 0 && !asked.known.isSampled
                             ? 0
                             : shownDecimals(unit, asked.known.decimals);
    double least = std::numeric_limits<double>::infinity();
    double greatest = -least;
    eachPlace(values, picture, [&](const PlaceValue& place, BlockMapCell& cell) {
        if (!place.number) {
            return;
        }
        // A difference has no zero of its own: 9 °F more are 5 °C more.
        const double shown =
            isDifference ? *place.number / unit.factor : *place.number / unit.factor + unit.zero;
        least = std::min(least, shown);
        greatest = std::max(greatest, shown);
        cell.value = shown;
        cell.text = cellText(asked, shown, isDifference, decimals);
    });
    picture.scale.unit = isDifference && asked.known.kind == descriptors::DescriptorKind::Stage
                             ? Tr::tr("steps of the scale")
                             : fromText(unit.shown);
    if (!(least <= greatest)) {
        picture.scale.kind = BlockMapScale::Plain;
    } else if (isDifference) {
        picture.scale.kind = BlockMapScale::Diverging;
        picture.scale.steps = quick::divergingSteps(std::max(std::abs(least), std::abs(greatest)));
    } else {
        picture.scale.kind = BlockMapScale::Ordered;
        picture.scale.steps = quick::orderedSteps(least, greatest, kMostSteps);
    }
}

QString blockTitle(const office::BlockWish& wish) {
    return wish.block.empty() ? Tr::tr("All blocks") : Tr::tr("Block %1").arg(fromText(wish.block));
}

// What stands in the cells, as of when, and what is left out.
QString noteOf(const office::BlockWish& wish) {
    if (wish.isDifference) {
        return Tr::tr("How much more it is than on the day before on which the vine was noted, in "
                      "the same season. Vines noted only once are shown as not observed.");
    }
    return wish.visit ? Tr::tr("What was not noted on that day is left out of the fills.")
                      : Tr::tr("The last value of each vine in the season; what was not noted is "
                               "left out of the fills.");
}

} // namespace

BlockMapPicture valuePicture(const office::BlockValues& values,
                             const vineyard::Asked* asked,
                             const office::BlockWish& wish,
                             const UnitWishes& units) {
    BlockMapPicture picture = framework(values);
    if (asked == nullptr) {
        picture.title = Tr::tr("%1: what is planted").arg(blockTitle(wish));
        eachPlace(values, picture, [](const PlaceValue& place, BlockMapCell& cell) {
            cell.state =
                place.state == PlaceValue::Empty ? BlockMapCell::Empty : BlockMapCell::Value;
        });
        return picture;
    }
    const QString title = quick::titleWords(*asked);
    picture.title =
        wish.visit
            ? Tr::tr("%1: %2, %3").arg(blockTitle(wish), title, quick::dateWords(*wish.visit))
            : Tr::tr("%1: %2, season %3")
                  .arg(blockTitle(wish), title, QString::number(wish.season));
    picture.scale.title = wish.isDifference ? Tr::tr("%1, difference").arg(title) : title;
    picture.notes << noteOf(wish);
    const bool isClass = asked->known.kind == descriptors::DescriptorKind::Category;
    if (isClass) {
        fillClasses(values, picture);
    } else {
        fillNumbers(values, *asked, wish.isDifference, units, picture);
    }
    return picture;
}

BlockMapPicture findingPicture(const office::BlockValues& values,
                               const std::vector<merge::Finding>& findings,
                               const office::BlockWish& wish) {
    BlockMapPicture picture = framework(values);
    picture.title = Tr::tr("%1: what looks wrong").arg(blockTitle(wish));
    picture.scale.title = Tr::tr("What looks wrong");
    // One kind a place: the first of its kinds in the order of the list of findings.
    std::map<std::string, merge::FindingKind, std::less<>> kinds;
    std::vector<merge::FindingKind> classes;
    for (const merge::Finding& finding : findings) {
        for (const std::string& subject : finding.subjects) {
            kinds.emplace(journal::readSubject(subject).id, finding.kind);
        }
        if (classes.size() < kMostClasses &&
            std::find(classes.begin(), classes.end(), finding.kind) == classes.end()) {
            classes.push_back(finding.kind);
        }
    }
    picture.scale.kind = classes.empty() ? BlockMapScale::Plain : BlockMapScale::Classes;
    for (const merge::FindingKind kind : classes) {
        picture.scale.steps.push_back({findingKindWords(kind), 0});
    }
    eachPlace(values, picture, [&](const PlaceValue& place, BlockMapCell& cell) {
        cell.state = place.state == PlaceValue::Empty ? BlockMapCell::Empty : BlockMapCell::Value;
        const auto kind = kinds.find(place.position);
        if (kind == kinds.end()) {
            return;
        }
        cell.isMarked = true;
        cell.state = BlockMapCell::Value;
        const auto found = std::find(classes.begin(), classes.end(), kind->second);
        if (found != classes.end()) {
            cell.value = static_cast<double>(found - classes.begin());
        }
    });
    picture.notes << (findings.empty()
                          ? Tr::tr("Nothing looks wrong.")
                          : Tr::tr("Vines with more than one finding show the first."));
    return picture;
}

} // namespace bullace::desk
