#include "office/overview.hpp"

#include "core/journal/json_value.hpp"

namespace bullace::office {

namespace {

RoundLine lineOf(const store::RoundProgress& progress) {
    return {
        progress.round->id, progress.round->title, progress.stops, progress.done, progress.isLate};
}

} // namespace

Result<Overview> readOverview(store::Database& database,
                              const vineyard::Catalogue& catalogue,
                              CivilDate today,
                              const Token& token) {
    Overview overview;
    const auto counts = database.counts();
    auto devices = store::devices(database);
    auto arrivals = server::arrivals(database);
    if (!counts || !devices || !arrivals) {
        return !counts ? counts.error() : !devices ? devices.error() : arrivals.error();
    }
    overview.counts = *counts;
    overview.devices = std::move(*devices);
    overview.arrivals = std::move(*arrivals);
    Status read = database.eachApart([&overview](const store::ApartRow& row) {
        overview.apart.push_back(row);
        return overview.apart.size() < kMostListed;
    });
    read = read ? database.eachUncounted([&overview](const store::UncountedRow& row) {
        overview.uncounted.push_back(row);
        return overview.uncounted.size() < kMostListed;
    })
                : std::move(read);
    if (!read) {
        return read.error();
    }
    if (token.isCancelled()) {
        return Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}};
    }
    const auto rounds = store::roundsOn(database, catalogue, today);
    if (!rounds) {
        return rounds.error();
    }
    for (const store::RoundProgress& progress : *rounds) {
        overview.rounds.push_back(lineOf(progress));
    }
    return overview;
}

} // namespace bullace::office
