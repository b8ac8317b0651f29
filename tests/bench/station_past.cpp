#include "bench/station_past.hpp"

#include "bench/measure.hpp"
#include "bench/origin_writer.hpp"

#include "core/journal/json_value.hpp"
#include "core/vineyard/label_code.hpp"
#include "core/vineyard/position.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <utility>
#include <vector>

namespace bullace::bench {

namespace {

using journal::integerValue;
using journal::textValue;

constexpr std::size_t kAccessions = 600;
constexpr int kFirstYear = 2021;
constexpr int kThisYear = 2026;
constexpr unsigned kTodaysRows = 15; // of B2

// One walk of every year over all vines.
struct YearlyWalk {
    const char* monthAndDay;
    const char* descriptor;
    unsigned samples; // 0: one value that is no sample
};
constexpr std::array<YearlyWalk, 15> kYear{{{"01-20", "pruning-weight", 0},
                                            {"01-20", "dead-spurs", 0},
                                            {"03-25", "stage", 0},
                                            {"04-22", "stage", 0},
                                            {"05-05", "stage", 0},
                                            {"05-20", "stage", 0},
                                            {"06-02", "stage", 0},
                                            {"06-12", "clusters", 0},
                                            {"07-08", "vigour", 0},
                                            {"07-08", "disease", 0},
                                            {"08-20", "berry-diameter", 3},
                                            {"08-27", "ripe", 0},
                                            {"09-03", "ripe", 0},
                                            {"09-03", "rot", 0},
                                            {"10-01", "stage", 0}}};

std::uint64_t mixed(std::uint64_t x) {
    x ^= x >> 31;
    x *= 0x9E3779B97F4A7C15ULL;
    return x ^ (x >> 29);
}

void writeBlocks(OriginWriter& office) {
    std::vector<Bytes> rows;
    for (unsigned row = 1; row <= kPastRows; ++row) {
        rows.push_back(journal::listValue({integerValue(row), integerValue(kPastVines)}));
    }
    for (unsigned block = 1; block <= kPastBlocks; ++block) {
        office.write("hq",
                     journal::Kind::Catalog,
                     "block/B" + std::to_string(block) + "/rows",
                     journal::listValue(rows));
    }
}

void writePlantings(OriginWriter& office, const std::vector<std::string>& positions) {
    std::uint64_t number = 0;
    for (const std::string& position : positions) {
        const auto accession = "A" + std::to_string(mixed(number) % kAccessions);
        office.write("hq",
                     journal::Kind::Catalog,
                     "planting/" + position + "/2016-03-01",
                     journal::MapValue()
                         .add("accession", textValue(accession))
                         .add("until", journal::nullValue())
                         .bytes());
        const std::size_t dash = position.find('-');
        office.write("hq",
                     journal::Kind::Catalog,
                     "block/" + position.substr(0, dash) + "/label-" + position.substr(dash + 1),
                     textValue(vineyard::labelCode(++number)));
    }
}

void writeAccessions(OriginWriter& office) {
    for (std::size_t i = 0; i < kAccessions; ++i) {
        const std::string above = "accession/A" + std::to_string(i) + "/";
        office.write(
            "hq", journal::Kind::Catalog, above + "name", textValue("Sel. " + std::to_string(i)));
        office.write("hq", journal::Kind::Catalog, above + "status", textValue("selection"));
        office.write(
            "hq", journal::Kind::Catalog, above + "flower-sex", integerValue(i % 2 == 0 ? 3 : 4));
    }
}

void writeRound(OriginWriter& office,
                const char* id,
                const char* descriptor,
                const std::vector<Bytes>& where) {
    const std::string above = std::string("round/") + id + "/";
    office.write("hq", journal::Kind::Catalog, above + "title", textValue(id));
    office.write("hq", journal::Kind::Catalog, above + "where", journal::listValue(where));
    office.write("hq",
                 journal::Kind::Catalog,
                 above + "descriptors",
                 journal::listValue({textValue(descriptor)}));
    office.write("hq", journal::Kind::Catalog, above + "from", textValue("2026-05-04"));
}

// That of today, and three that are open beside it, over all vines and over one block.
void writeRounds(OriginWriter& office) {
    std::vector<Bytes> today{textValue("B1-*")};
    for (unsigned row = 1; row <= kTodaysRows; ++row) {
        today.push_back(textValue(vineyard::writePosition({"B2", row, 1, 0}).substr(0, 6) + "*"));
    }
    writeRound(office, kPastRound, "stage", today);
    writeRound(office, "caps", "caps-off", {textValue("*")});
    writeRound(office, "vines", "vine", {textValue("*")});
    writeRound(office, "sex", "flower-sex", {textValue("B3-*")});
}

Bytes valueOf(const std::string& position, CivilDate date, const YearlyWalk& walk, unsigned of) {
    const std::string_view code = walk.descriptor;
    const std::uint64_t own =
        mixed(std::hash<std::string>{}(position) + of * 31 + std::uint64_t(unsigned(date.month())));
    if (code == "stage") {
        return integerValue(stageOf(position, date));
    }
    if (code == "berry-diameter" || code == "pruning-weight") {
        return journal::numberValue(double(own % 100 + 120) / (code[0] == 'b' ? 10.0 : 100.0));
    }
    if (code == "clusters") {
        return integerValue(std::int64_t(own % 40 + 110));
    }
    const bool isPercent = code == "ripe" || code == "dead-spurs";
    return integerValue(std::int64_t(isPercent ? own % 60 : own % 9 + 1));
}

struct DatedWalk {
    CivilDate date;
    const YearlyWalk* walk = nullptr;
};

std::vector<DatedWalk> allWalks() {
    std::vector<DatedWalk> walks;
    for (int year = kFirstYear; year <= kThisYear; ++year) {
        for (const YearlyWalk& walk : kYear) {
            const auto date = readDate(std::to_string(year) + "-" + walk.monthAndDay);
            if (*date < pastToday()) {
                walks.push_back({*date, &walk});
            }
        }
    }
    return walks;
}

// Each block has its tablet; `skip` entries of the oldest walks are left out.
void writeWalks(std::array<OriginWriter, 3>& tablets,
                const std::vector<std::string>& positions,
                std::size_t skip) {
    for (const DatedWalk& dated : allWalks()) {
        for (std::size_t i = 0; i < positions.size(); ++i) {
            const std::size_t block = i / (positions.size() / kPastBlocks);
            OriginWriter& tablet = tablets[block % tablets.size()];
            const std::string subject =
                "obs/" + positions[i] + "/" + writeDate(dated.date) + "/" + dated.walk->descriptor;
            for (unsigned of = 0; of < std::max(1U, dated.walk->samples); ++of) {
                if (skip > 0) {
                    --skip;
                    continue;
                }
                const std::string sample = dated.walk->samples == 0
                                               ? ""
                                               : "/t000000000000001" +
                                                     std::to_string(block % tablets.size()) +
                                                     ".1," + std::to_string(of + 1);
                tablet.write("mk",
                             journal::Kind::Observe,
                             subject + sample,
                             valueOf(positions[i], dated.date, *dated.walk, of));
            }
        }
    }
}

} // namespace

std::vector<std::string> pastPositions() {
    std::vector<std::string> positions;
    for (unsigned block = 1; block <= kPastBlocks; ++block) {
        for (unsigned row = 1; row <= kPastRows; ++row) {
            for (unsigned vine = 1; vine <= kPastVines; ++vine) {
                positions.push_back(
                    vineyard::writePosition({"B" + std::to_string(block), row, vine, 0}));
            }
        }
    }
    return positions;
}

CivilDate pastToday() {
    return *readDate("2026-05-12");
}

std::int64_t stageOf(const std::string& position, CivilDate date) {
    constexpr std::array<std::int64_t, 16> kStages{
        1, 5, 9, 12, 14, 17, 53, 55, 57, 60, 61, 63, 65, 67, 69, 71};
    const int day = daysBetween(date.year() / std::chrono::January / 1, date);
    const auto lag = static_cast<int>(mixed(std::hash<std::string>{}(position)) % 5);
    const int step = std::clamp((day - 78) / 5 - lag + 1, 0, int(kStages.size()) - 1);
    return kStages[static_cast<std::size_t>(step)];
}

void fillWithPast(store::Database& database, std::size_t entries) {
    const std::vector<std::string> positions = pastPositions();
    OriginWriter office(database, {'s', 0x1, 1});
    writeBlocks(office);
    writePlantings(office, positions);
    writeAccessions(office);
    writeRounds(office);
    office.flush();
    std::size_t walked = 0;
    for (const DatedWalk& dated : allWalks()) {
        walked += positions.size() * std::max(1U, dated.walk->samples);
    }
    must(office.written() + walked >= entries, "a past of that many entries");
    std::array<OriginWriter, 3> tablets{
        {{database, {'t', 0x10, 1}}, {database, {'t', 0x11, 1}}, {database, {'t', 0x12, 1}}}};
    writeWalks(tablets, positions, office.written() + walked - entries);
    for (OriginWriter& tablet : tablets) {
        tablet.flush();
    }
    const auto counts = database.counts();
    must(counts && counts->entries == entries && counts->uncounted == 0, "the past as written");
}

} // namespace bullace::bench
