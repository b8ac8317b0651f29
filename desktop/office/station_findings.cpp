#include "office/station_findings.hpp"

#include "office/case_file.hpp"
#include "office/row_findings.hpp"

#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <set>
#include <tuple>

namespace bullace::office {

using journal::EntryView;
using journal::Subject;
using merge::Finding;
using merge::FindingKind;

namespace {

constexpr std::int64_t kDayMs = 86'400'000;
constexpr int kClockDays = 2;            // a walk that began before midnight ends on the next day
constexpr std::int64_t kWalkSeconds = 3; // nobody goes from one row to another in less
constexpr unsigned kFarRows = 2;
constexpr unsigned kFarVines = 12;
constexpr std::size_t kMostOfOneKind = 2000; // of a kind; more is not a list for a person

std::string rowOf(std::string_view position) {
    return std::string(position.substr(0, position.rfind('-')));
}

// The positions of a row in planting order, those between two among them.
std::vector<std::string> placesOf(const vineyard::Catalogue& catalogue, const RowOfValues& row) {
    std::set<std::string> all;
    const auto first = vineyard::readPosition(row.vines.begin()->first);
    const vineyard::Block* block = catalogue.block(first->block);
    for (const vineyard::Row& planned :
         block == nullptr ? std::vector<vineyard::Row>{} : block->rows) {
        for (unsigned vine = 1; planned.number == first->row && vine <= planned.vines; ++vine) {
            all.insert(vineyard::writePosition({first->block, first->row, vine, 0}));
        }
    }
    for (const auto& [position, values] : row.vines) {
        all.insert(position);
    }
    std::vector<std::string> places(all.begin(), all.end());
    std::sort(places.begin(), places.end(), [](const std::string& a, const std::string& b) {
        return vineyard::compareAlongRows(*vineyard::readPosition(a), *vineyard::readPosition(b)) <
               0;
    });
    return places;
}

class Looker {
public:
    Looker(store::Database& database,
           const vineyard::Catalogue& catalogue,
           CivilDate today,
           const Token& token)
        : database_(database),
          catalogue_(catalogue),
          today_(today),
          token_(token) {}

    // Of all rows, and of the devices that wrote there.
    Result<std::vector<Finding>> look() {
        Status read = lookAtRows("obs/", "obs0");
        read = read ? lookAtEntries() : std::move(read);
        return finish(std::move(read));
    }
    // Of the rows of one block; '.' follows '-'.
    Result<std::vector<Finding>> lookAtBlock(const std::string& block) {
        return finish(lookAtRows("obs/" + block + "-", "obs/" + block + "."));
    }

private:
    Result<std::vector<Finding>> finish(Status read) {
        read = read ? leaveOutAside() : std::move(read);
        if (!read) {
            return read.error();
        }
        if (token_.isCancelled()) {
            return Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
        }
        std::stable_sort(found_.begin(), found_.end(), [](const Finding& a, const Finding& b) {
            return a.kind < b.kind;
        });
        return std::move(found_);
    }

    void add(std::vector<Finding> more) {
        for (Finding& finding : more) {
            if (++counts_[finding.kind] <= kMostOfOneKind) {
                found_.push_back(std::move(finding));
            }
        }
    }

    // Subjects lie along the rows as bytes do: one row is held at a time.
    Status lookAtRows(const std::string& low, const std::string& high) {
        std::string current;
        RowOfValues row;
        const auto finishRow = [&] {
            if (!row.vines.empty()) {
                add(findInRow(row, placesOf(catalogue_, row), catalogue_, today_));
                row.vines.clear();
            }
        };
        const Status read =
            database_.eachStateBetween(low, high, [&](const store::StateRow& state) {
                const Subject subject = journal::readSubject(state.subject);
                const auto date = readDate(subject.date);
                if (!subject.position || !date || state.valueJson.empty()) {
                    return !token_.isCancelled();
                }
                if (std::string now = rowOf(subject.id); now != current) {
                    finishRow();
                    current = std::move(now);
                }
                Result<Bytes> value = store::readJson(state.valueJson);
                if (value) {
                    row.vines[std::string(subject.id)].push_back({*date,
                                                                  state.subject,
                                                                  std::string(subject.descriptor),
                                                                  !subject.sample.empty(),
                                                                  std::move(*value)});
                }
                return !token_.isCancelled();
            });
        finishRow();
        return read;
    }

    // What one device noted last, to compare the next with.
    struct Last {
        std::string subject;
        std::int64_t ms = 0;
        std::optional<journal::Group> group;
    };
    struct ClockOf {
        std::vector<std::int64_t> days; // wall's day less the noted day
        std::string lastOff;            // what was noted last by a clock that was off
    };

    Status lookAtEntries() {
        names_ = deviceNames(database_);
        const Status read = database_.eachEntry([this](const Digest&, BytesView bytes) {
            const auto entry = journal::readEntry(bytes);
            if (entry) {
                lookAt(*entry);
            }
            return !token_.isCancelled();
        });
        for (auto& [origin, clock] : clocks_) {
            addClock(origin, clock);
        }
        return read;
    }

    void lookAt(const EntryView& entry) {
        const Subject subject = journal::readSubject(entry.subject);
        if (subject.form == journal::SubjectForm::Unknown) {
            if (unknown_.emplace(entry.subject).second) {
                Finding finding;
                finding.kind = FindingKind::UnknownSubject;
                finding.subjects = {std::string(entry.subject)};
                finding.value = Bytes(entry.value);
                add({std::move(finding)});
            }
            return;
        }
        const auto date = readDate(subject.date);
        if (entry.origin.letter != 't' || entry.kind != journal::Kind::Observe || !entry.wall ||
            !subject.position || !date) {
            return;
        }
        const std::string origin = entry.origin.text();
        const std::int64_t local = entry.wall->ms + entry.wall->minutes * 60'000;
        const std::int64_t day = local >= 0 ? local / kDayMs : (local - kDayMs + 1) / kDayMs;
        const CivilDate epoch{std::chrono::year(1970), std::chrono::month(1), std::chrono::day(1)};
        ClockOf& clock = clocks_[origin];
        clock.days.push_back(day - daysBetween(epoch, *date));
        if (std::abs(clock.days.back()) >= kClockDays) {
            clock.lastOff = entry.subject;
        }
        Last& last = lasts_[origin];
        if (!last.subject.empty() && !(entry.group && entry.group == last.group)) {
            comparePlaces(origin, last, entry);
        }
        last = {std::string(entry.subject), entry.wall->ms, entry.group};
    }

    void comparePlaces(const std::string& origin, const Last& last, const EntryView& entry) {
        const auto here = journal::readSubject(entry.subject).position;
        const auto there = journal::readSubject(last.subject).position;
        const std::int64_t seconds = (entry.wall->ms - last.ms) / 1000;
        if (!here || !there || entry.wall->ms < last.ms || seconds >= kWalkSeconds) {
            return;
        }
        const auto apart = [](unsigned a, unsigned b) { return a > b ? a - b : b - a; };
        const bool isFar = here->block != there->block ||
                           apart(here->row, there->row) >= kFarRows ||
                           (here->row == there->row && apart(here->vine, there->vine) >= kFarVines);
        if (isFar) {
            Finding finding;
            finding.kind = FindingKind::FarApart;
            finding.subjects = {last.subject, std::string(entry.subject)};
            finding.value = Bytes(entry.value);
            finding.off = seconds;
            finding.device = origin;
            add({std::move(finding)});
        }
    }

    void addClock(const std::string& origin, ClockOf& clock) {
        const auto middle = clock.days.begin() + static_cast<std::ptrdiff_t>(clock.days.size() / 2);
        std::nth_element(clock.days.begin(), middle, clock.days.end());
        if (std::abs(*middle) >= kClockDays) {
            Finding finding;
            finding.kind = FindingKind::ClockOff;
            // Once it is put aside, it is told again when the device notes by such a clock again.
            finding.subjects = {clock.lastOff};
            finding.device = origin;
            const auto name = names_.find(origin.substr(0, origin.find('.')));
            finding.deviceName = name == names_.end() ? std::string{} : name->second;
            finding.off = *middle;
            add({std::move(finding)});
        }
    }

    // A remark over the present heads says that it is right.
    Status leaveOutAside() {
        Status failed;
        std::erase_if(found_, [&](const Finding& finding) {
            if (finding.subjects.empty() || !failed) {
                return false;
            }
            const auto entries = database_.entries(finding.subjects.front());
            const auto heads = headsOf(database_, finding.subjects.front());
            if (!entries || !heads) {
                failed = entries ? heads.error() : entries.error();
                return false;
            }
            return std::any_of(entries->begin(), entries->end(), [&](const store::EntryRow& row) {
                const auto entry = journal::readEntry(row.entry);
                if (!entry || entry->kind != journal::Kind::Remark ||
                    !merge::putsAside(entry->value, finding.kind)) {
                    return false;
                }
                std::vector<journal::Place> over = entry->edges();
                std::sort(over.begin(), over.end());
                return over == *heads;
            });
        });
        return failed;
    }

    store::Database& database_;
    const vineyard::Catalogue& catalogue_;
    CivilDate today_;
    const Token& token_;
    std::vector<Finding> found_;
    std::map<FindingKind, std::size_t> counts_;
    std::map<std::string, Last> lasts_;
    std::map<std::string, ClockOf> clocks_;
    std::map<std::string, std::string> names_; // of devices
    std::set<std::string> unknown_;
};

} // namespace

Result<std::vector<Finding>> stationFindings(store::Database& database,
                                             const vineyard::Catalogue& catalogue,
                                             CivilDate today,
                                             const Token& token) {
    return Looker(database, catalogue, today, token).look();
}

Result<std::vector<Finding>> blockFindings(store::Database& database,
                                           const vineyard::Catalogue& catalogue,
                                           const std::string& block,
                                           CivilDate today,
                                           const Token& token) {
    return Looker(database, catalogue, today, token).lookAtBlock(block);
}

Result<Act> repairAct(store::Database& database,
                      const Finding& finding,
                      const std::string& author,
                      const std::string& why) {
    if (finding.repair.empty()) {
        return Error{
            ErrorCode::InvalidInput,
            "What is right here only a person can say. Put the value right on the vine's page.",
            {}};
    }
    Act act;
    for (const merge::Repair& repair : finding.repair) {
        auto heads = headsOf(database, repair.subject);
        if (!heads) {
            return heads.error();
        }
        store::Draft draft;
        draft.author = author;
        draft.kind =
            journal::isNullValue(repair.value) ? journal::Kind::Retract : journal::Kind::Observe;
        draft.subject = repair.subject;
        draft.value = repair.value;
        draft.over = *heads;
        draft.why = why;
        act.seen.push_back({repair.subject, std::move(*heads)});
        act.drafts.push_back(std::move(draft));
    }
    return act;
}

Result<Act> asideAct(store::Database& database, const Finding& finding, const std::string& author) {
    if (finding.subjects.empty()) {
        return Error{ErrorCode::InvalidInput, "This finding names no place to say so.", {}};
    }
    auto heads = headsOf(database, finding.subjects.front());
    if (!heads) {
        return heads.error();
    }
    store::Draft draft;
    draft.author = author;
    draft.kind = journal::Kind::Remark;
    draft.subject = finding.subjects.front();
    draft.value = merge::asideValue(finding.kind);
    draft.over = *heads;
    Act act;
    act.seen.push_back({draft.subject, std::move(*heads)});
    act.drafts.push_back(std::move(draft));
    return act;
}

} // namespace bullace::office
