// A plan of crosses entered into the collection, in one act.
#include "office/cross_entry.hpp"

#include "store/read_catalogue.hpp"
#include "support/desk_stations.hpp"
#include "support/fixed_clock.hpp"

#include <doctest/doctest.h>

#include <span>

using namespace bullace;
using namespace bullace::office;
using namespace bullace::test;

namespace {

struct Office {
    TempFolder folder;
    std::unique_ptr<store::Database> database;
    FixedClock clock;

    Office() {
        const std::string path = folder.file("station.db");
        std::string lines;
        int seq = 0;
        const auto add = [&](const std::string& subject, const std::string& json) {
            lines += lineOf({"s0000000000000009.1", ++seq, "im", "catalog", subject, json});
        };
        add("accession/A1/name", R"("Rushlight")");
        add("accession/A2/name", R"("Sallow Ditch")");
        add("cross/X26-2/mother", R"("A1")");
        add("cross/7c19e4-x1/number", R"("26-6")"); // confirmed from a tablet
        add("cross/X25-9/mother", R"("A1")");
        makeStationFile(path, lines);
        auto opened = store::Database::open(path, true, store::fileSurroundings());
        REQUIRE(opened.ok());
        database = std::move(*opened);
    }
    [[nodiscard]] auto catalogue() const {
        auto read = store::readCatalogue(*database);
        REQUIRE(read.ok());
        return std::move(*read);
    }
    [[nodiscard]] std::string at(const std::string& subject) const {
        const auto row = database->state(subject);
        REQUIRE(row.ok());
        return *row ? (*row)->valueJson : std::string();
    }
};

const std::vector<CrossEntry> kTwo{{"A1", "A2"}, {"A2", "A1"}};

} // namespace

TEST_CASE("a plan of crosses gets the next free numbers of its year, and is taken back as one") {
    Office office;
    const auto catalogue = office.catalogue();
    CHECK(nextCrossIds(*catalogue, 2026, 2) == std::vector<std::string>{"X26-7", "X26-8"});
    CHECK(nextCrossIds(*catalogue, 2007, 1) == std::vector<std::string>{"X07-1"});
    const auto act = enterCrosses(*catalogue, kTwo, 2026, "hl");
    const auto written = perform(*office.database, act, office.clock);
    REQUIRE(written.ok());
    CHECK(written->size() == 6);
    CHECK(office.at("cross/X26-7/mother") == R"("A1")");
    CHECK(office.at("cross/X26-7/father") == R"("A2")");
    CHECK(office.at("cross/X26-8/number") == R"("26-8")");
    CHECK(office.catalogue()->crosses().size() == 5);

    std::vector<std::string> subjects;
    for (const store::Draft& draft : act->drafts) {
        subjects.push_back(draft.subject);
    }
    REQUIRE(perform(*office.database, takingBack(*written, subjects, "hl"), office.clock).ok());
    CHECK(office.catalogue()->crosses().size() == 3);
    CHECK(office.at("cross/X26-7/mother").empty());
}

TEST_CASE("a plan of crosses is not entered where somebody took one of the numbers meanwhile") {
    Office office;
    const auto seen = office.catalogue();
    const auto act = enterCrosses(*seen, kTwo, 2026, "hl");
    REQUIRE(perform(*office.database,
                    enterCrosses(*seen, std::span(kTwo).first(1), 2026, "im"),
                    office.clock)
                .ok());
    const auto refused = perform(*office.database, act, office.clock);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().code == ErrorCode::Outdated);
    CHECK(office.at("cross/X26-8/mother").empty()); // nothing of it
}

TEST_CASE("no cross, or one with a parent that is not in the collection, is no plan") {
    Office office;
    const auto catalogue = office.catalogue();
    CHECK_FALSE(enterCrosses(*catalogue, {}, 2026, "hl").ok());
    const std::vector<CrossEntry> unknown{{"A1", "Z9"}};
    const auto act = enterCrosses(*catalogue, unknown, 2026, "hl");
    REQUIRE_FALSE(act.ok());
    CHECK(act.error().message.find("Z9") != std::string::npos);
}
