#include "core/walk/round.hpp"

#include "core/base/cbor.hpp"
#include "core/journal/json_value.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <set>
#include <utility>

namespace bullace::walk {

namespace {

using vineyard::Block;
using vineyard::readPosition;

// Each of these reads one shape into `to`, and leaves it as it was where the value has another.

bool take(BytesView value, std::string& to) {
    const auto text = journal::textOf(value);
    if (text) {
        to = *text;
    }
    return text.has_value();
}

bool take(BytesView value, bool& to) {
    CborReader in(value);
    bool read = false;
    if (!in.boolean(read)) {
        return false;
    }
    to = read;
    return true;
}

bool take(BytesView value, unsigned& to) {
    const auto number = journal::wholeNumberOf(value);
    if (!number || *number < 1 || *number > std::numeric_limits<unsigned>::max()) {
        return false;
    }
    to = static_cast<unsigned>(*number);
    return true;
}

bool take(BytesView value, Order& to) {
    const auto word = journal::textOf(value);
    if (word != "serpentine" && word != "one-way") {
        return false;
    }
    to = word == "serpentine" ? Order::Serpentine : Order::OneWay;
    return true;
}

bool take(BytesView value, std::optional<CivilDate>& to) {
    const auto text = journal::textOf(value);
    const auto date = text ? readDate(*text) : std::nullopt;
    if (date) {
        to = date;
    }
    return date.has_value();
}

bool take(BytesView value, std::int64_t& to) {
    const auto number = journal::wholeNumberOf(value);
    to = number.value_or(to);
    return number.has_value();
}

bool take(BytesView value, double& to) {
    const auto number = journal::numberOf(value);
    if (!number || !(*number > 0) || *number > 100) {
        return false;
    }
    to = *number;
    return true;
}

template<typename T>
bool take(BytesView value, std::vector<T>& to) {
    const auto items = journal::itemsOf(value);
    if (!items) {
        return false;
    }
    std::vector<T> read(items->size());
    for (std::size_t i = 0; i < read.size(); ++i) {
        if (!take((*items)[i], read[i])) {
            return false;
        }
    }
    to = std::move(read);
    return true;
}

template<typename T>
bool take(BytesView value, std::map<std::string, T>& to) {
    CborReader in(value);
    CborType type{};
    std::size_t count = 0;
    if (!in.peek(type) || type != CborType::Map || !in.map(count)) {
        return false;
    }
    std::map<std::string, T> read;
    std::string_view key;
    BytesView item;
    for (std::size_t i = 0; i < count; ++i) {
        if (!in.text(key) || !in.any(item) || !take(item, read[std::string(key)])) {
            return false;
        }
    }
    to = std::move(read);
    return true;
}

bool takePatterns(BytesView value, std::vector<std::string>& to) {
    std::vector<std::string> read;
    if (!take(value, read) || !std::all_of(read.begin(), read.end(), vineyard::isPositionPattern)) {
        return false;
    }
    to = std::move(read);
    return true;
}

// Sets one member of the round from a value, or from what a round without entries has.
template<auto Member>
bool setMember(Round& round, BytesView value) {
    if (journal::isNullValue(value)) {
        round.*Member = Round{}.*Member;
        return true;
    }
    return take(value, round.*Member);
}

bool setWhere(Round& round, BytesView value) {
    return journal::isNullValue(value) ? setMember<&Round::where>(round, value)
                                       : takePatterns(value, round.where);
}

struct Field {
    std::string_view name;
    bool (*set)(Round&, BytesView);
};

constexpr std::array<Field, 17> kFields{
    {{"title", setMember<&Round::title>},
     {"where", setWhere},
     {"descriptors", setMember<&Round::descriptors>},
     {"order", setMember<&Round::order>},
     {"every-nth-row", setMember<&Round::everyNthRow>},
     {"both-sides", setMember<&Round::bothSides>},
     {"blind", setMember<&Round::isBlind>},
     {"decision", setMember<&Round::isDecision>},
     {"only-what-stands-out", setMember<&Round::isOnlyWhatStandsOut>},
     {"least", setMember<&Round::asksLeast>},
     {"repeat", setMember<&Round::isRepeat>},
     {"stages", setMember<&Round::stages>},
     {"samples", setMember<&Round::samples>},
     {"precision", setMember<&Round::precisionPercent>},
     {"from", setMember<&Round::from>},
     {"by", setMember<&Round::by>},
     {"closed", setMember<&Round::closed>}}};

// Whether the pattern names the row as a whole, and not one vine of it.
bool namesRow(std::string_view pattern, const Block& block, const vineyard::Row& row) {
    return pattern.ends_with('*') && row.vines > 0 &&
           vineyard::matchesPattern(pattern,
                                    vineyard::writePosition({block.code, row.number, 1, 0}));
}

bool isOnPlan(std::string_view position, const std::vector<Block>& blocks) {
    const auto place = readPosition(position);
    return place && std::any_of(blocks.begin(), blocks.end(), [&](const Block& block) {
               return vineyard::isOnPlan(block, *place);
           });
}

void appendRows(std::string_view pattern,
                const std::vector<Block>& blocks,
                std::vector<RowPlan>& rows) {
    for (const Block& block : blocks) {
        for (const vineyard::Row& row : block.rows) {
            const bool isThere = std::any_of(rows.begin(), rows.end(), [&](const RowPlan& known) {
                return known.block == block.code && known.row == row.number;
            });
            if (!isThere && namesRow(pattern, block, row)) {
                rows.push_back({block.code, row.number, row.vines, {}});
            }
        }
    }
}

} // namespace

bool setField(Round& round, std::string_view field, BytesView value) {
    const auto* const known = std::find_if(
        kFields.begin(), kFields.end(), [field](const Field& f) { return f.name == field; });
    if (known != kFields.end()) {
        return known->set(round, value);
    }
    auto& unknown = round.unknownFields;
    if (std::find(unknown.begin(), unknown.end(), field) == unknown.end()) {
        unknown.emplace_back(field);
    }
    return true;
}

std::vector<RowPlan> rowsOf(const Round& round, const std::vector<Block>& blocks) {
    std::vector<RowPlan> rows;
    for (const std::string& pattern : round.where) {
        appendRows(pattern, blocks, rows);
    }
    return rows;
}

void addBetween(std::vector<RowPlan>& rows, std::span<const std::string> positions) {
    for (const std::string& position : positions) {
        const auto place = readPosition(position);
        if (!place || place->letter == 0) {
            continue;
        }
        const auto row = std::find_if(rows.begin(), rows.end(), [&place](const RowPlan& plan) {
            return plan.block == place->block && plan.row == place->row;
        });
        if (row != rows.end()) {
            row->between.push_back(position);
        }
    }
}

bool isListOfVines(const Round& round) {
    return std::any_of(round.where.begin(), round.where.end(), [](const std::string& pattern) {
        return readPosition(pattern).has_value();
    });
}

std::vector<std::string> vinesOf(const Round& round, const std::vector<Block>& blocks) {
    std::vector<std::string> vines;
    std::set<std::string> known;
    const auto add = [&](const std::string& position) {
        if (known.insert(position).second) {
            vines.push_back(position);
        }
    };
    for (const std::string& pattern : round.where) {
        if (isOnPlan(pattern, blocks)) {
            add(pattern);
        }
        std::vector<RowPlan> rows;
        appendRows(pattern, blocks, rows);
        for (const RowPlan& row : rows) {
            for (unsigned vine = 1; vine <= row.vines; ++vine) {
                add(vineyard::writePosition({row.block, row.row, vine, 0}));
            }
        }
    }
    return vines;
}

std::vector<std::string> goneFromPlan(const Round& round, const std::vector<Block>& blocks) {
    std::vector<std::string> gone;
    for (const std::string& pattern : round.where) {
        std::vector<RowPlan> rows;
        appendRows(pattern, blocks, rows);
        if (rows.empty() && !isOnPlan(pattern, blocks)) {
            gone.push_back(pattern);
        }
    }
    return gone;
}

} // namespace bullace::walk
