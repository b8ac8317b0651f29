#include "office/case_file.hpp"

#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"
#include "store/peers.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace bullace::office {

using journal::EntryView;
using journal::Place;
using journal::Subject;
using store::Database;
using store::EntryRow;

namespace {

constexpr int kLastSeasonDays = 10;
constexpr std::size_t kMostSisters = 6;
constexpr int kLookWithinDays = 45;

Bytes valueOf(const store::StateRow& row) {
    Result<Bytes> value = store::readJson(row.valueJson);
    return row.valueJson.empty() || !value ? Bytes{} : std::move(*value);
}

// The subject's entries, with what it takes to look things up among them.
class History {
public:
    explicit History(std::vector<EntryRow> rows) : rows_(std::move(rows)) {
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            const auto entry = journal::readEntry(rows_[i].entry);
            if (entry) {
                views_.push_back(*entry);
                digests_.push_back(rows_[i].digest);
                at_[entry->place()] = views_.size() - 1;
            }
        }
    }
    [[nodiscard]] const std::vector<EntryView>& views() const { return views_; }
    [[nodiscard]] const EntryView* find(const Place& place) const {
        const auto found = at_.find(place);
        return found == at_.end() ? nullptr : &views_[found->second];
    }
    [[nodiscard]] Digest digest(const Place& place) const { return digests_[at_.at(place)]; }
    // Everything that the entry, or what it replaced, was meant to replace; itself left out.
    [[nodiscard]] std::set<Place> before(const Place& place) const {
        std::set<Place> all;
        std::vector<Place> open{place};
        while (!open.empty()) {
            const EntryView* entry = find(open.back());
            open.pop_back();
            for (const Place& edge : entry == nullptr ? std::vector<Place>{} : entry->edges()) {
                if (all.insert(edge).second) {
                    open.push_back(edge);
                }
            }
        }
        return all;
    }
    // The newest entry that all of these had seen, if there is one.
    [[nodiscard]] const EntryView* commonBefore(const std::vector<Place>& heads) const {
        std::map<Place, std::size_t> times;
        for (const Place& head : heads) {
            for (const Place& place : before(head)) {
                ++times[place];
            }
        }
        const EntryView* newest = nullptr;
        for (const auto& [place, n] : times) {
            const EntryView* entry = n == heads.size() ? find(place) : nullptr;
            if (entry != nullptr && (newest == nullptr || entry->count > newest->count)) {
                newest = entry;
            }
        }
        return newest;
    }

private:
    std::vector<EntryRow> rows_;
    std::vector<EntryView> views_; // into rows_
    std::vector<Digest> digests_;
    std::map<Place, std::size_t> at_;
};

// What the season's heat brings on.
constexpr std::array<std::string_view, 7> kHeated{
    "stage", "stage-least", "bud-break", "caps-off", "coloured", "ripe", "leaf-fall"};

class CaseReader {
public:
    CaseReader(Database& database, const vineyard::Catalogue& catalogue)
        : database_(database),
          catalogue_(catalogue) {}

    Result<CaseFile> read(const std::string& subject) {
        file_.subject = subject;
        Result<std::vector<EntryRow>> rows = database_.entries(subject);
        if (!rows) {
            return rows.error();
        }
        if (rows->empty()) {
            return Error{ErrorCode::NotFound, "Nothing was ever noted under " + subject + ".", {}};
        }
        const History history(std::move(*rows));
        const auto state = database_.state(subject);
        const auto heads = database_.heads(subject);
        if (!state || !heads) {
            return state ? heads.error() : state.error();
        }
        const Subject parts = journal::readSubject(subject);
        takeSides(parts, history, *state, *heads);
        takeLook(history);
        if (parts.form == journal::SubjectForm::Observation) {
            Status around = takeAround(parts);
            around = around ? takeHeat(parts) : std::move(around);
            if (!around) {
                return around.error();
            }
        }
        return std::move(file_);
    }

private:
    Status takeHeat(const Subject& parts) {
        const auto day = readDate(parts.date);
        if (!day || std::ranges::find(kHeated, parts.descriptor) == kHeated.end()) {
            return {};
        }
        auto heat = heatUntil(database_, *day);
        if (!heat) {
            return heat.error();
        }
        file_.heat = std::move(*heat);
        return {};
    }

    Side sideOf(const EntryView& entry, const Digest& digest) {
        const std::string device = journal::deviceText(entry.origin.letter, entry.origin.device);
        const auto name = names_.find(device);
        return {entry.place(),
                digest,
                std::string(entry.author),
                name == names_.end() ? device : name->second,
                entry.wall,
                entry.kind,
                Bytes(entry.value),
                entry.why ? std::optional(std::string(*entry.why)) : std::nullopt,
                entry.as ? std::optional(std::string(*entry.as)) : std::nullopt};
    }

    // A fork puts several entries at one place: a head is the entry itself, not its place.
    void takeSides(const Subject& parts,
                   const History& history,
                   const std::optional<store::StateRow>& state,
                   const std::vector<store::HeadRow>& rows) {
        file_.form = parts.form;
        file_.place = parts.id;
        file_.date = parts.date;
        file_.descriptor =
            parts.form == journal::SubjectForm::Observation ? parts.descriptor : parts.field;
        names_ = deviceNames(database_);
        std::vector<EntryView> heads;
        std::vector<BytesView> values;
        if (state) {
            file_.state = state->state;
            file_.value = valueOf(*state);
            for (const store::HeadRow& row : rows) {
                if (const auto entry = journal::readEntry(row.entry)) {
                    heads.push_back(*entry);
                    values.push_back(entry->value);
                    file_.sides.push_back(sideOf(*entry, row.digest));
                }
            }
            if (const EntryView* agreed = history.commonBefore(state->heads)) {
                file_.agreed = sideOf(*agreed, history.digest(agreed->place()));
            }
        }
        // A digest is as good as a die, and the same at every desk.
        std::sort(file_.sides.begin(), file_.sides.end(), [](const Side& a, const Side& b) {
            return a.digest < b.digest;
        });
        if (heads.size() > 1) {
            file_.cause = causeOf(parts, heads, database_.rulebook());
        }
        file_.spread = spreadOf(parts, values, database_.rulebook());
        const auto match = database_.rulebook().matchFor(parts);
        file_.rule = match.number;
        file_.ruleItself = match.rule;
    }

    void takeLook(const History& history) {
        for (const EntryView& entry : history.views()) {
            const auto round = entry.kind == journal::Kind::Remark
                                   ? journal::memberOf(entry.value, "look-again")
                                   : std::nullopt;
            const auto id = round ? journal::textOf(*round) : std::nullopt;
            if (id && isStopOf(database_, *id, file_.place)) {
                file_.round = std::string(*id);
            }
        }
    }

    Status takeAround(const Subject& parts) {
        const auto date = readDate(parts.date);
        if (!parts.position) {
            return takeVine(parts, *date);
        }
        file_.accession = catalogue_.accessionAt(parts.id, *date);
        Status read = takeVine(parts, *date);
        read = read ? takeRow(parts) : std::move(read);
        return read ? takeSisters(parts, *date) : std::move(read);
    }

    // What stands at this vine: its year, the year before around that day, photos and notes of the
    // day, and second looks.
    Status takeVine(const Subject& parts, CivilDate date) {
        const std::string vine = "obs/" + std::string(parts.id) + "/";
        const std::string lastYear = writeDate(addDays(date, -365 - kLastSeasonDays));
        int nearest = kLastSeasonDays + 1;
        return database_.eachStateBetween(
            vine + lastYear,
            vine + writeDate(date).substr(0, 4) + "-12-32",
            [&](const store::StateRow& row) {
                const Subject other = journal::readSubject(row.subject);
                const auto day = readDate(other.date);
                if (!day) {
                    return true;
                }
                Dated dated{
                    std::string(other.id), std::string(other.date), valueOf(row), row.state};
                if (other.date == parts.date && other.descriptor == "photo") {
                    takeTexts(dated.value, file_.photos);
                } else if (other.date == parts.date && other.descriptor == "note") {
                    takeTexts(dated.value, file_.notes);
                } else if (other.descriptor == parts.descriptor) {
                    takeSame(other, dated, daysBetween(date, *day), nearest);
                }
                return true;
            });
    }

    void takeSame(const Subject& other, const Dated& dated, int days, int& nearest) {
        const bool isSample = !other.sample.empty();
        const bool hasValue = !dated.value.empty();
        if (isSample) {
            if (file_.round && hasValue && days > 0 && days <= kLookWithinDays) {
                file_.looks.push_back(dated);
            }
            return;
        }
        const int off = std::abs(days + 365);
        if (off <= kLastSeasonDays && off < nearest && hasValue) {
            nearest = off;
            file_.lastSeason = dated;
        }
        if (dated.date.substr(0, 4) != file_.date.substr(0, 4)) {
            return;
        }
        file_.season.push_back(dated);
        if (days < 0 && hasValue) {
            file_.before = dated;
        } else if (days > 0 && hasValue && !file_.after) {
            file_.after = dated;
        }
    }

    static void takeTexts(BytesView value, std::vector<std::string>& into) {
        if (const auto text = journal::textOf(value)) {
            into.emplace_back(*text);
        }
        for (const BytesView item : journal::itemsOf(value).value_or(std::vector<BytesView>{})) {
            if (const auto text = journal::textOf(item)) {
                into.emplace_back(*text);
            }
        }
    }

    Result<std::optional<Dated>> sameAt(const std::string& position, const Subject& parts) {
        const auto row = database_.state("obs/" + position + "/" + std::string(parts.date) + "/" +
                                         std::string(parts.descriptor));
        if (!row) {
            return row.error();
        }
        if (!*row) {
            return std::optional<Dated>{};
        }
        return std::optional(
            Dated{position, std::string(parts.date), valueOf(**row), (*row)->state});
    }

    Status takeRow(const Subject& parts) {
        const vineyard::Position here = *parts.position;
        const unsigned first = here.vine > kNeighbours ? here.vine - kNeighbours : 1;
        const vineyard::Block* block = catalogue_.block(here.block);
        unsigned last = here.vine;
        for (const vineyard::Row& row :
             block == nullptr ? std::vector<vineyard::Row>{} : block->rows) {
            last = row.number == here.row ? std::max(last, row.vines) : last;
        }
        last = std::min(last, here.vine + kNeighbours);
        for (unsigned vine = first; vine <= last; ++vine) {
            const std::string position = vineyard::writePosition(
                {here.block, here.row, vine, vine == here.vine ? here.letter : char{0}});
            auto same = sameAt(position, parts);
            if (!same) {
                return same.error();
            }
            file_.row.push_back(same->value_or(
                Dated{position, std::string(parts.date), {}, merge::State::Retracted}));
        }
        return {};
    }

    Status takeSisters(const Subject& parts, CivilDate date) {
        if (file_.accession.empty()) {
            return {};
        }
        for (const vineyard::Planting* planting : catalogue_.plantings().standing(date)) {
            if (planting->accession != file_.accession || planting->position == parts.id) {
                continue;
            }
            auto same = sameAt(planting->position, parts);
            if (!same) {
                return same.error();
            }
            if (*same && !(*same)->value.empty()) {
                file_.sisters.push_back(std::move(**same));
            }
            if (file_.sisters.size() == kMostSisters) {
                break;
            }
        }
        return {};
    }

    Database& database_;
    const vineyard::Catalogue& catalogue_;
    CaseFile file_;
    std::map<std::string, std::string> names_;
};

} // namespace

std::map<std::string, std::string> deviceNames(Database& database) {
    std::map<std::string, std::string> names;
    if (const auto rows = store::devices(database)) {
        for (const store::DeviceRow& row : *rows) {
            names[journal::deviceText(row.letter, row.device)] = row.name;
        }
    }
    return names;
}

bool isStopOf(Database& database, std::string_view round, std::string_view place) {
    const auto where = database.state("round/" + std::string(round) + "/where");
    if (!where || !*where) {
        return false;
    }
    const Bytes value = valueOf(**where);
    const Bytes wanted = journal::textValue(place);
    const auto items = journal::itemsOf(value).value_or(std::vector<BytesView>{});
    return std::find(items.begin(), items.end(), wanted) != items.end();
}

Bytes lookAgainValue(const std::string& round) {
    return journal::MapValue().add("look-again", journal::textValue(round)).bytes();
}

Result<CaseFile>
readCase(Database& database, const vineyard::Catalogue& catalogue, const std::string& subject) {
    return CaseReader(database, catalogue).read(subject);
}

} // namespace bullace::office
