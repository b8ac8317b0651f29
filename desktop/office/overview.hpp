// What the office sees first: which devices came, what waits for a person, how the rounds go.
#pragma once

#include "office/desk.hpp"

#include "core/vineyard/catalogue.hpp"
#include "store/peers.hpp"
#include "store/round_progress.hpp"
#include "sync/server/arrivals.hpp"

#include <string>
#include <vector>

namespace bullace::office {

struct RoundLine {
    std::string id;
    std::string title;
    std::size_t stops = 0;
    std::size_t done = 0;
    bool isLate = false;
};

struct Overview {
    store::Counts counts;
    std::vector<store::DeviceRow> devices;
    std::vector<server::Arrival> arrivals; // the newest first
    std::vector<store::ApartRow> apart;
    std::vector<store::UncountedRow> uncounted; // at most kMostListed
    std::vector<RoundLine> rounds;              // that are open today
};
inline constexpr std::size_t kMostListed = 50;

// Errors: those of reading; Cancelled.
[[nodiscard]] Result<Overview> readOverview(store::Database& database,
                                            const vineyard::Catalogue& catalogue,
                                            CivilDate today,
                                            const Token& token);

} // namespace bullace::office
