#include "core/season/station_trial.hpp"

#include "core/journal/json_value.hpp"
#include "core/trials/linear_model.hpp"
#include "core/vineyard/position.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <utility>

namespace bullace::season {

using trials::kNoLevel;
using trials::TrialTable;

namespace {

// A vine in a season: what was noted of it, so that it can be a mean, a sum or a quotient.
struct Cell {
    double above = 0;
    double below = 0;
};
using Cells = std::map<std::pair<std::uint32_t, int>, Cell>;

struct Gathered {
    Cells cells;
    std::size_t values = 0;
    std::int32_t firstDay = std::numeric_limits<std::int32_t>::max();
    std::int32_t lastDay = std::numeric_limits<std::int32_t>::min();
};

std::optional<vineyard::Position> placeOf(const StationNotes& notes, std::uint32_t vine) {
    return vineyard::readPosition(notes.vines[vine].position);
}

bool isIn(const StationNotes& notes, const TrialQuestion& question, std::uint32_t vine) {
    if (vine == kNoVine) {
        return false;
    }
    const auto place = placeOf(notes, vine);
    return place &&
           (question.blocks.empty() || question.blocks.contains(std::string(place->block)));
}

bool isIn(const TrialQuestion& question, std::int32_t day) {
    return question.seasons.empty() || question.seasons.contains(yearOfDay(day));
}

// Of so many, with the factor that makes a share a percentage.
std::optional<Cell> shareOf(BytesView record) {
    const auto of = journal::numberIn(record, "of");
    const auto dead = journal::numberIn(record, "dead");
    const auto count = journal::numberIn(record, "n");
    const bool isAtOneTemperature = journal::memberOf(record, "c").has_value();
    if (!of || !(*of > 0) || isAtOneTemperature || (!dead && !count)) {
        return {};
    }
    return Cell{dead ? *dead * 100 : *count, *of};
}

// Which vines are asked for is looked up once for each, not for each of its notes.
class VinesAsked {
public:
    VinesAsked(const StationNotes& notes, const TrialQuestion& question)
        : isAsked_(notes.vines.size()) {
        for (std::uint32_t vine = 0; vine < notes.vines.size(); ++vine) {
            isAsked_[vine] = isIn(notes, question, vine);
        }
    }
    [[nodiscard]] bool has(std::uint32_t vine) const { return vine != kNoVine && isAsked_[vine]; }

private:
    std::vector<bool> isAsked_;
};

Gathered gather(const StationNotes& notes,
                const TrialQuestion& question,
                const VinesAsked& asked,
                const std::string& descriptor) {
    Gathered gathered;
    const bool isSum = seasonValueOf(descriptor) == SeasonValue::Sum;
    const auto add = [&](std::uint32_t vine, std::int32_t day, const Cell& part) {
        Cell& cell = gathered.cells[{vine, yearOfDay(day)}];
        cell.above += part.above;
        cell.below = isSum ? 1 : cell.below + part.below;
        ++gathered.values;
        gathered.firstDay = std::min(gathered.firstDay, day);
        gathered.lastDay = std::max(gathered.lastDay, day);
    };
    for (const NumberNote& note : notes.notesOf(descriptor).numbers) {
        if (asked.has(note.vine) && isIn(question, note.day)) {
            add(note.vine, note.day, {note.value, 1});
        }
    }
    for (const RecordNote& note : notes.notesOf(descriptor).records) {
        const auto share =
            asked.has(note.vine) && isIn(question, note.day) ? shareOf(note.value) : std::nullopt;
        if (share) {
            add(note.vine, note.day, *share);
        }
    }
    return gathered;
}

// The columns of a table while it is filled, row by row.
struct Columns {
    std::vector<std::string> accession, season, block, row, replicate, vine;
    std::vector<double> rowNumber, place;
};

const vineyard::Block* blockOf(std::span<const vineyard::Block> blocks, std::string_view code) {
    const auto found = std::ranges::find(blocks, code, &vineyard::Block::code);
    return found == blocks.end() ? nullptr : &*found;
}

// Vines that stood one after the other at one place are different ones: "B1-01-02 (2)".
std::vector<std::string> vineNames(const StationNotes& notes) {
    std::map<std::string, int> seen;
    std::vector<std::string> names;
    for (const NotedVine& vine : notes.vines) {
        const int number = ++seen[vine.position];
        names.push_back(number == 1 ? vine.position
                                    : vine.position + " (" + std::to_string(number) + ")");
    }
    return names;
}

void addRow(const StationNotes& notes,
            std::span<const vineyard::Block> blocks,
            std::uint32_t vine,
            int season,
            Columns& into) {
    const vineyard::Position at = *placeOf(notes, vine);
    const std::string block(at.block);
    const vineyard::Block* plan = blockOf(blocks, block);
    const auto replicate = plan == nullptr ? std::nullopt : vineyard::replicateAt(*plan, at);
    into.accession.push_back(notes.accessions[notes.vines[vine].accession].id);
    into.season.push_back(std::to_string(season));
    into.block.push_back(block);
    into.row.push_back(notes.vines[vine].position.substr(0, notes.vines[vine].position.rfind('-')));
    into.replicate.push_back(replicate ? block + " " + std::to_string(*replicate) : std::string());
    into.rowNumber.push_back(at.row);
    into.place.push_back(at.vine);
}

void fill(const Columns& columns, TrialTable& table) {
    table.factors = {trials::makeFactor(kAccessionFactor, columns.accession),
                     trials::makeFactor(kSeasonFactor, columns.season),
                     trials::makeFactor(kBlockFactor, columns.block),
                     trials::makeFactor(kRowFactor, columns.row),
                     trials::makeFactor(kReplicateFactor, columns.replicate),
                     trials::makeFactor(kVineFactor, columns.vine)};
    table.covariates = {{kRowNumber, columns.rowNumber}, {kPlaceInRow, columns.place}};
}

std::set<std::uint32_t> lostVines(const StationNotes& notes, const TrialQuestion& question) {
    std::set<std::uint32_t> lost;
    const int last =
        question.seasons.empty() ? std::numeric_limits<int>::max() : *question.seasons.rbegin();
    for (const WordNote& note : notes.notesOf("vine").words) {
        const std::string& word = notes.words[note.word];
        if ((word == "dead" || word == "missing") && yearOfDay(note.day) <= last) {
            lost.insert(note.vine);
        }
    }
    return lost;
}

void countLeftOut(const StationNotes& notes,
                  const TrialQuestion& question,
                  const VinesAsked& asked,
                  StationTrial& trial) {
    const DescriptorNotes& of = notes.notesOf(question.descriptor);
    const auto isHere = [&](const auto& note) {
        return asked.has(note.vine) && isIn(question, note.day);
    };
    trial.open = static_cast<std::size_t>(std::ranges::count_if(of.open, isHere));
    trial.missed = static_cast<std::size_t>(std::ranges::count_if(of.missed, isHere));
    std::vector<bool> hasValue(notes.vines.size(), false);
    std::vector<bool> isTried(notes.accessions.size(), false);
    for (const std::uint32_t vine : trial.vines) {
        hasValue[vine] = true;
        isTried[notes.vines[vine].accession] = true;
    }
    const std::set<std::uint32_t> lost = lostVines(notes, question);
    for (std::uint32_t vine = 0; vine < notes.vines.size(); ++vine) {
        if (isTried[notes.vines[vine].accession] && !hasValue[vine] && asked.has(vine)) {
            ++trial.without;
            trial.lost += lost.contains(vine) ? 1U : 0U;
        }
    }
}

void tellLeftOut(StationTrial& trial) {
    const auto tell = [&trial](std::string_view sentence, std::size_t count) {
        if (count > 0) {
            trial.remarks.push_back({sentence, {static_cast<std::int64_t>(count)}});
        }
    };
    tell(BULLACE_SENTENCE("Remark",
                          "A trial with open conflicts: values that nobody has settled are left "
                          "out, %1 in all, and what stands here may change with them."),
         trial.open);
    tell(
        BULLACE_SENTENCE("Remark",
                         "Vines of these accessions without any value: %1. The others stand for "
                         "them, which is fair only where it has nothing to do with the accession."),
        trial.without);
    tell(BULLACE_SENTENCE("Remark", "Of those, noted as dead or missing: %1."), trial.lost);
}

StationTrial trialFrom(const StationNotes& notes,
                       std::span<const vineyard::Block> blocks,
                       const TrialQuestion& question,
                       const VinesAsked& asked,
                       const std::vector<const Gathered*>& sources) {
    StationTrial trial;
    trial.table.responseName = question.descriptor;
    const std::vector<std::string> names = vineNames(notes);
    Cells keys = sources.front()->cells;
    for (const Gathered* more : sources) {
        keys.insert(more->cells.begin(), more->cells.end());
    }
    const Cells& cells = sources.front()->cells;
    Columns columns;
    for (const auto& [key, ignored] : keys) {
        const auto found = cells.find(key);
        const double value = found == cells.end() ? std::numeric_limits<double>::quiet_NaN()
                                                  : found->second.above / found->second.below;
        trial.table.response.push_back(value);
        trial.vines.push_back(key.first);
        trial.seasons.push_back(key.second);
        columns.vine.push_back(names[key.first]);
        addRow(notes, blocks, key.first, key.second, columns);
    }
    fill(columns, trial.table);
    trial.values = sources.front()->values;
    trial.firstDay = sources.front()->firstDay;
    trial.lastDay = sources.front()->lastDay;
    countLeftOut(notes, question, asked, trial);
    tellLeftOut(trial);
    if (runsThroughSeason(question.descriptor) && !trial.vines.empty()) {
        trial.remarks.push_back(
            {BULLACE_SENTENCE("Remark",
                              "%1 changes from day to day: means over the season compare only "
                              "accessions that were noted on the same days. When a stage is "
                              "reached is told by the page Season."),
             {question.descriptor}});
    }
    return trial;
}

} // namespace

SeasonValue seasonValueOf(std::string_view descriptor) {
    return descriptor == "yield" ? SeasonValue::Sum : SeasonValue::Mean;
}

bool runsThroughSeason(std::string_view descriptor) {
    constexpr std::array<std::string_view, 5> kRunning{
        "bud-break", "caps-off", "coloured", "ripe", "leaf-fall"};
    return std::ranges::find(kRunning, descriptor) != kRunning.end();
}

bool canBeTried(const DescriptorNotes& notes) {
    return !notes.numbers.empty() || std::ranges::any_of(notes.records, [](const RecordNote& note) {
        return note.vine != kNoVine && shareOf(note.value);
    });
}

StationTrial trialOf(const StationNotes& notes,
                     std::span<const vineyard::Block> blocks,
                     const TrialQuestion& question) {
    const VinesAsked asked(notes, question);
    const Gathered gathered = gather(notes, question, asked, question.descriptor);
    return trialFrom(notes, blocks, question, asked, {&gathered});
}

TrialOfBoth trialOfBoth(const StationNotes& notes,
                        std::span<const vineyard::Block> blocks,
                        const TrialQuestion& question,
                        const std::string& otherDescriptor) {
    const VinesAsked asked(notes, question);
    const Gathered one = gather(notes, question, asked, question.descriptor);
    const Gathered two = gather(notes, question, asked, otherDescriptor);
    TrialOfBoth both{trialFrom(notes, blocks, question, asked, {&one, &two}), {}};
    for (std::size_t row = 0; row < both.trial.table.rows(); ++row) {
        const auto found = two.cells.find({both.trial.vines[row], both.trial.seasons[row]});
        both.other.push_back(found == two.cells.end() ? std::numeric_limits<double>::quiet_NaN()
                                                      : found->second.above / found->second.below);
    }
    return both;
}

} // namespace bullace::season
