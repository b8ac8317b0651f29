// A small invented station in a tablet's folder, with a round of each kind: for tests of the pages.
#pragma once

#include "support/field_books.hpp"

#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace bullace::test {

using Says = std::vector<std::pair<std::string, std::string>>;

inline Says stationSays() {
    Says says{{"block/B2/rows", "[[1,12],[2,12],[3,12],[4,12]]"},
              {"block/B2/name", R"("Seedling wires")"},
              {"block/B3/rows", "[[1,8]]"},
              {"block/B3/closed-until", R"("2026-05-14")"},
              {"block/B2/no-tasting-until", R"("2026-05-20")"},
              {"block/B2/label-01-03", R"("A000002S")"},
              {"person/im/name", R"("Ida Pellworth")"},
              {"person/tq/name", R"("Tobias Quern")"},
              {"person/wo/name", R"("Wanda Ostrik")"},
              {"accession/A022/name", R"("Brindlecap")"},
              {"accession/A022/flower-sex", "4"},
              {"accession/A023/name", R"("Gloamberry")"},
              {"accession/A023/flower-sex", "3"}};
    const auto round = [&](const std::string& id,
                           const std::string& title,
                           const std::string& asks,
                           const Says& more = {}) {
        says.emplace_back("round/" + id + "/title", "\"" + title + "\"");
        says.emplace_back("round/" + id + "/where", R"(["B2-*","B3-*"])");
        says.emplace_back("round/" + id + "/descriptors", asks);
        says.insert(says.end(), more.size(), {});
        for (std::size_t i = 0; i < more.size(); ++i) {
            says[says.size() - more.size() + i] = {"round/" + id + "/" + more[i].first,
                                                   more[i].second};
        }
    };
    round("a-stage",
          "Spring stages",
          R"(["stage"])",
          {{"stages", "[53,57,61,65,69,73,81]"}, {"by", R"("2026-05-15")"}, {"least", "true"}});
    round("b-score", "Vigour", R"(["vigour"])");
    round("c-count", "Cluster counts", R"(["clusters"])");
    round("d-berry",
          "Berry diameters",
          R"(["berry-diameter"])",
          {{"samples", R"({"berry-diameter":3})"}, {"precision", R"({"berry-diameter":5})"}});
    round("e-buds", "Buds after the freeze", R"(["primary-buds"])");
    round("f-rot", "Rot, only what stands out", R"(["rot"])", {{"only-what-stands-out", "true"}});
    round("g-verdict", "Keep or pull", R"(["verdict"])", {{"decision", "true"}});
    round("h-note", "Words", R"(["note"])");
    round("i-new", "From a newer office", R"(["sap-flow"])");
    says.emplace_back("descriptor/sap-flow/kind", R"("spectrum")");
    says.emplace_back("descriptor/sap-flow/title", R"("Sap flow")");
    for (const int row : {1, 2, 3, 4}) {
        for (int vine = 1; vine <= 12; ++vine) {
            const std::string number = (vine < 10 ? "0" : "") + std::to_string(vine);
            says.emplace_back("planting/B2-0" + std::to_string(row) + "-" + number + "/2018-03-01",
                              row % 2 == 1 ? R"({"accession":"A022","until":null})"
                                           : R"({"accession":"A023","until":null})");
        }
    }
    says.emplace_back("cross/X26-1/number", R"("X26-1")");
    says.emplace_back("cross/X26-1/mother", R"("A022")");
    says.emplace_back("cross/X26-1/father", R"("A023")");
    says.emplace_back("cross/X26-1/mother-at", R"("B2-01-01")");
    return says;
}

// Makes the journal in the folder; a tablet that is opened there has all of it, and is set up.
inline void layStation(const std::string& folder, const Clock& clock) {
    auto book = field::FieldBook::open(folder + "/journal.db", "Etc/GMT+5", clock);
    REQUIRE_MESSAGE(book.ok(), (book ? "" : book.error().message));
    std::string lines;
    std::uint64_t seq = 0;
    for (const auto& [subject, json] : stationSays()) {
        lines += officeLine(++seq, subject, json);
    }
    std::istringstream in(lines);
    const auto report = (*book)->database().importLines(in, "station", {});
    REQUIRE_MESSAGE(report.ok(), (report ? "" : report.error().message));
    REQUIRE(report->refusedCount == 0);
    field::Settings settings = (*book)->settings();
    settings.isSetUp = true;
    REQUIRE((*book)->change(settings).ok());
}

// Begins a walk of the round from the first vine of row 1, without the pages before it.
inline void beginRound(field::FieldBook& book, const std::string& round) {
    const walk::Round* found = book.catalogue().round(round);
    REQUIRE(found != nullptr);
    field::WalkWish wish;
    wish.author = "im";
    wish.firstRow = 0;
    auto plan = field::planWalk(book.database(), book.catalogue(), *found, wish, book.today());
    REQUIRE_MESSAGE(plan.ok(), (plan ? "" : plan.error().message));
    REQUIRE(book.beginWalk(std::move(*plan)).ok());
}

} // namespace bullace::test
