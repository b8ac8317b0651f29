#include "office/row_findings.hpp"

#include "core/descriptors/stages.hpp"
#include "core/journal/json_value.hpp"
#include "core/walk/weigh.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <set>

namespace bullace::office {

using descriptors::DescriptorKind;
using merge::Finding;
using merge::FindingKind;
using merge::RowValues;

namespace {

constexpr std::size_t kNeighbours = 10;
// Which vine is ahead at bud break says little of which is at bloom: stages are compared with days
// of the same part of the season, of any year (common practice, no source).
constexpr int kSameSeasonDays = 30;
constexpr int kYearDays = 365;

bool isOfSeason(DescriptorKind kind) {
    return kind == DescriptorKind::Stage || kind == DescriptorKind::Percent;
}

bool isNear(CivilDate a, CivilDate b) {
    const int apart = std::abs(daysBetween(a, b)) % kYearDays;
    return std::min(apart, kYearDays - apart) <= kSameSeasonDays;
}

FindingKind kindOf(walk::Doubt doubt) {
    switch (doubt) {
    case walk::Doubt::OutOfRange:
        return FindingKind::OutOfRange;
    case walk::Doubt::StageBackwards:
        return FindingKind::StageBackwards;
    case walk::Doubt::FarFromHistory:
        return FindingKind::FarFromHistory;
    case walk::Doubt::FarFromNeighbours:
        return FindingKind::FarFromNeighbours;
    case walk::Doubt::TenTimes:
        return FindingKind::TenTimes;
    case walk::Doubt::InchForMillimetre:
        return FindingKind::InchForMillimetre;
    }
    return FindingKind::FarFromHistory;
}

// What says by itself that no vine is there.
bool saysNoVine(const RowValue& value) {
    if (value.descriptor == "vine" || value.descriptor == "note" || value.descriptor == "photo") {
        return true;
    }
    return journal::memberOf(value.value, "none").has_value();
}

class RowLook {
public:
    RowLook(const RowOfValues& row,
            const std::vector<std::string>& places,
            const vineyard::Catalogue& catalogue,
            CivilDate today)
        : row_(row),
          places_(places),
          catalogue_(catalogue),
          today_(today) {}

    std::vector<Finding> find() {
        findShifted();
        for (std::size_t place = 0; place < places_.size(); ++place) {
            const auto vine = row_.vines.find(places_[place]);
            if (vine == row_.vines.end()) {
                continue;
            }
            for (const RowValue& value : vine->second) {
                lookAt(place, vine->second, value);
            }
        }
        return std::move(found_);
    }

private:
    // A descriptor's numbers on one day, by place.
    struct Day {
        RowValues values;
        std::vector<const RowValue*> sources;
        std::vector<const vineyard::Planting*> plantings;
    };
    using Days = std::map<CivilDate, Day>;

    [[nodiscard]] std::optional<double> numberOf(const RowValue& value) const {
        const vineyard::Asked* asked = catalogue_.descriptor(value.descriptor);
        const auto number =
            asked == nullptr ? std::nullopt : vineyard::comparableNumber(*asked, value.value);
        return number ? std::optional(vineyard::onItsScale(asked->known, *number)) : std::nullopt;
    }

    // Descriptors in which vines differ, and which are noted once a day.
    [[nodiscard]] bool showsShifts(const std::string& descriptor) const {
        const vineyard::Asked* asked = catalogue_.descriptor(descriptor);
        if (asked == nullptr || asked->known.isSampled) {
            return false;
        }
        const DescriptorKind kind = asked->known.kind;
        return kind == DescriptorKind::Stage || kind == DescriptorKind::Score ||
               kind == DescriptorKind::Count || kind == DescriptorKind::Measure ||
               kind == DescriptorKind::Percent;
    }

    std::map<std::string, Days> daysOf() const {
        std::map<std::string, Days> all;
        for (std::size_t place = 0; place < places_.size(); ++place) {
            const auto vine = row_.vines.find(places_[place]);
            for (const RowValue& value : vine == row_.vines.end() ? kNone : vine->second) {
                const auto number = value.isSample || !showsShifts(value.descriptor)
                                        ? std::nullopt
                                        : numberOf(value);
                if (!number) {
                    continue;
                }
                Day& day = all[value.descriptor][value.date];
                if (day.values.empty()) {
                    day.values.resize(places_.size());
                    day.sources.resize(places_.size());
                    day.plantings.resize(places_.size());
                }
                day.values[place] = number;
                day.sources[place] = &value;
                day.plantings[place] = catalogue_.plantings().at(places_[place], value.date);
            }
        }
        return all;
    }

    void findShifted() {
        for (const auto& [descriptor, days] : daysOf()) {
            const DescriptorKind kind = catalogue_.descriptor(descriptor)->known.kind;
            const bool isSteps = kind == DescriptorKind::Stage || kind == DescriptorKind::Score;
            for (const auto& [date, day] : days) {
                std::vector<RowValues> others;
                for (const auto& [otherDate, other] : days) {
                    if (otherDate != date && (!isOfSeason(kind) || isNear(date, otherDate))) {
                        others.push_back(ofSameVines(day, other, places_, catalogue_, date));
                    }
                }
                // Along the places as they are stops of a walk, empty ones among them.
                const auto run = merge::findShiftedRun(day.values,
                                                       others,
                                                       isSteps ? merge::ShiftScale::Steps
                                                               : merge::ShiftScale::Free);
                if (run) {
                    addShifted(day, *run);
                }
            }
        }
    }

    // The other day's values where the vine is the one that stands there on `date`.
    static RowValues ofSameVines(const Day& day,
                                 const Day& other,
                                 const std::vector<std::string>& places,
                                 const vineyard::Catalogue& catalogue,
                                 CivilDate date) {
        RowValues values = other.values;
        for (std::size_t i = 0; i < values.size(); ++i) {
            const vineyard::Planting* here = day.plantings[i] != nullptr
                                                 ? day.plantings[i]
                                                 : catalogue.plantings().at(places[i], date);
            if (values[i] && other.plantings[i] != here) {
                values[i].reset();
            }
        }
        return values;
    }

    void addShifted(const Day& day, const merge::ShiftedRun& run) {
        Finding finding;
        finding.kind = FindingKind::ShiftedRow;
        finding.run = run;
        std::map<std::size_t, const RowValue*> moved; // by the place where it belongs
        std::vector<std::size_t> left;
        for (std::size_t i = run.first; i <= run.last; ++i) {
            const auto target = static_cast<std::ptrdiff_t>(i) - run.along;
            if (day.sources[i] == nullptr) {
                continue;
            }
            finding.subjects.push_back(day.sources[i]->subject);
            left.push_back(i);
            if (target >= 0 && target < static_cast<std::ptrdiff_t>(places_.size())) {
                moved[static_cast<std::size_t>(target)] = day.sources[i];
            }
        }
        if (finding.subjects.empty()) {
            return;
        }
        finding.value = day.sources[left.front()]->value;
        for (const auto& [place, source] : moved) {
            finding.repair.push_back({subjectAt(*source, place), source->value});
        }
        for (const std::size_t place : left) {
            if (moved.count(place) == 0) {
                finding.repair.push_back({day.sources[place]->subject, journal::nullValue()});
            }
        }
        for (const std::string& subject : finding.subjects) {
            shifted_.insert(subject);
        }
        found_.push_back(std::move(finding));
    }

    [[nodiscard]] std::string subjectAt(const RowValue& value, std::size_t place) const {
        return "obs/" + places_[place] + "/" + writeDate(value.date) + "/" + value.descriptor;
    }

    void lookAt(std::size_t place, const std::vector<RowValue>& vine, const RowValue& value) {
        const vineyard::Planting* planting = catalogue_.plantings().at(places_[place], value.date);
        if (value.date > addDays(today_, 1)) {
            add(FindingKind::FutureDate, value);
        }
        if (planting == nullptr && !saysNoVine(value)) {
            add(FindingKind::EmptyPosition, value);
            return;
        }
        const vineyard::Asked* asked = catalogue_.descriptor(value.descriptor);
        const auto number =
            asked == nullptr ? std::nullopt : vineyard::comparableNumber(*asked, value.value);
        if (!number || shifted_.count(value.subject) > 0) {
            return; // a shifted run looks odd vine by vine, and is told of as one
        }
        walk::Background background;
        background.code = asked->known.code;
        background.kind = asked->known.kind;
        background.range = asked->known.range;
        background.decimals = asked->known.decimals;
        background.unit = asked->known.unit;
        background.history = historyOf(vine, value, *asked, planting);
        background.neighbours = neighboursOf(place, value, *asked);
        if (const auto doubt = walk::weigh(background, value.date, *number)) {
            addDoubt(value, *number, *doubt);
        }
    }

    [[nodiscard]] std::vector<walk::Noted> historyOf(const std::vector<RowValue>& vine,
                                                     const RowValue& value,
                                                     const vineyard::Asked& asked,
                                                     const vineyard::Planting* planting) const {
        std::vector<walk::Noted> history;
        for (const RowValue& other : vine) {
            if (other.date >= value.date) {
                break;
            }
            const auto number = other.descriptor == value.descriptor
                                    ? vineyard::comparableNumber(asked, other.value)
                                    : std::nullopt;
            if (number &&
                catalogue_.plantings().at(places_[placeOf(other)], other.date) == planting &&
                shifted_.count(other.subject) == 0) {
                history.push_back({other.date, *number});
            }
        }
        return history;
    }

    [[nodiscard]] std::size_t placeOf(const RowValue& value) const {
        const std::string position = value.subject.substr(4, value.subject.find('/', 4) - 4);
        return static_cast<std::size_t>(std::find(places_.begin(), places_.end(), position) -
                                        places_.begin());
    }

    [[nodiscard]] std::vector<double>
    neighboursOf(std::size_t place, const RowValue& value, const vineyard::Asked& asked) const {
        std::vector<double> numbers;
        for (std::size_t off = 1; off <= kNeighbours; ++off) {
            for (const std::ptrdiff_t by :
                 {-static_cast<std::ptrdiff_t>(off), static_cast<std::ptrdiff_t>(off)}) {
                const auto at = static_cast<std::ptrdiff_t>(place) + by;
                if (at < 0 || at >= static_cast<std::ptrdiff_t>(places_.size())) {
                    continue;
                }
                const auto vine = row_.vines.find(places_[static_cast<std::size_t>(at)]);
                for (const RowValue& other : vine == row_.vines.end() ? kNone : vine->second) {
                    if (other.date == value.date && other.descriptor == value.descriptor) {
                        if (const auto number = vineyard::comparableNumber(asked, other.value)) {
                            numbers.push_back(*number);
                        }
                    }
                }
            }
        }
        return numbers;
    }

    void add(FindingKind kind, const RowValue& value) {
        Finding finding;
        finding.kind = kind;
        finding.subjects = {value.subject};
        finding.value = value.value;
        found_.push_back(std::move(finding));
    }

    void addDoubt(const RowValue& value, double number, const walk::Doubtful& doubt) {
        Finding finding;
        finding.kind = kindOf(doubt.doubt);
        finding.subjects = {value.subject};
        finding.value = value.value;
        finding.number = number;
        finding.other = doubt.other;
        finding.on = doubt.on;
        if (doubt.doubt == walk::Doubt::TenTimes || doubt.doubt == walk::Doubt::InchForMillimetre) {
            finding.repair = {{value.subject, journal::numberValue(doubt.other)}};
        }
        found_.push_back(std::move(finding));
    }

    static const std::vector<RowValue> kNone;
    const RowOfValues& row_;
    const std::vector<std::string>& places_;
    const vineyard::Catalogue& catalogue_;
    CivilDate today_;
    std::set<std::string> shifted_; // subjects of shifted runs
    std::vector<Finding> found_;
};

const std::vector<RowValue> RowLook::kNone;

} // namespace

std::vector<Finding> findInRow(const RowOfValues& row,
                               const std::vector<std::string>& places,
                               const vineyard::Catalogue& catalogue,
                               CivilDate today) {
    return RowLook(row, places, catalogue, today).find();
}

} // namespace bullace::office
