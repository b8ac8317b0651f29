#include "sync/server/device.hpp"

#include "store/peers.hpp"
#include "sync/protocol/pairing.hpp"
#include "sync/server/store_replica.hpp"

#include <algorithm>

namespace bullace::server {

using sync::net::StationPlace;

namespace {

Error badAddress(const std::string& at) {
    return {ErrorCode::InvalidInput,
            "\"" + at +
                "\" is no address. Write HOST:PORT as the office shows it, like 192.168.1.20:" +
                std::to_string(sync::kDefaultPort) + ".",
            {}};
}

std::string textOf(const StationPlace& place) {
    const bool isIpv6 = place.host.find(':') != std::string::npos;
    return (isIpv6 ? "[" + place.host + "]" : place.host) + ":" + std::to_string(place.port);
}

// The station's address and what proves the code, from the typed code or the QR code's text.
Status readCode(const PairingWish& wish, sync::net::PairOptions& options) {
    std::string at = wish.at;
    if (const auto offer = sync::readQrOffer(wish.code)) {
        options.stationKey = offer->stationKey;
        options.kind = sync::SecretKind::Qr;
        options.secret = offer->secret;
        at = at.empty() ? offer->addresses.front() : at;
    } else if (const auto secret = sync::readTypedCode(wish.code)) {
        options.secret = *secret;
    } else {
        return Error{ErrorCode::InvalidInput,
                     "The code has 16 letters and digits in four groups, as the office shows it. "
                     "Check it and type it again.",
                     {}};
    }
    const auto place = sync::net::readPlace(at);
    if (!place) {
        return badAddress(at);
    }
    options.place = *place;
    return {};
}

// Where the journal belongs to the caller, a task runs at once.
RunThere orHere(const RunThere& runThere) {
    return runThere ? runThere : [](const std::function<void()>& task) { task(); };
}

struct Prepared {
    store::StationRow row;
    sync::net::SyncOptions options;
};

Result<Prepared> prepare(store::Database& journal, const std::string& wishedAt) {
    const auto known = store::station(journal);
    if (!known) {
        return known.error();
    }
    if (!*known) {
        return Error{ErrorCode::NotFound,
                     "This device is not paired with a station yet. Ask the office to open "
                     "pairing, then pair.",
                     {}};
    }
    Prepared made{**known, {}};
    const std::string at = wishedAt.empty() ? made.row.address : wishedAt;
    const auto place = sync::net::readPlace(at);
    if (!place) {
        return badAddress(at);
    }
    const auto identity = sync::net::loadIdentity(journal.path() + "-key");
    if (!identity) {
        return identity.error();
    }
    const auto keyBytes = fromHex(made.row.keyHash);
    const auto key = keyBytes ? Digest::fromBytes(*keyBytes) : std::nullopt;
    if (!key) {
        return Error{ErrorCode::Damaged,
                     "The journal does not say which key its station has. Pair it anew.",
                     {}};
    }
    made.row.address = textOf(*place);
    made.options.place = *place;
    made.options.identity = *identity;
    made.options.stationKey = *key;
    made.options.letter = journal.about().own.letter;
    made.options.device = journal.about().own.device;
    made.options.current = journal.about().own;
    std::copy_n(made.row.history.begin(),
                std::min(made.row.history.size(), made.options.knownHistory.size()),
                made.options.knownHistory.begin());
    return made;
}

// What the device has to remember of a sync, be it complete or not.
Status conclude(store::Database& journal,
                store::StationRow row,
                const sync::net::SyncOutcome& outcome,
                std::int64_t nowMs) {
    const sync::Summary& summary = outcome.summary;
    if (summary.needsNewEpoch) {
        if (Status taken = journal.takeNewEpoch(summary.greatestEpoch); !taken) {
            return taken;
        }
    }
    if (summary.mayRememberHistory()) {
        row.history.assign(summary.stationHistory.begin(), summary.stationHistory.end());
    }
    if (summary.isComplete) {
        row.lastSyncMs = nowMs;
    }
    return outcome.status ? store::setStation(journal, row) : Status{};
}

} // namespace

Result<std::string>
pairDevice(store::Database& journal, const PairingWish& wish, const sync::net::Cancel& cancel) {
    const RunThere there = orHere(wish.runThere);
    sync::net::PairOptions options;
    if (Status read = readCode(wish, options); !read) {
        return read.error();
    }
    const auto identity = sync::net::loadOrMakeIdentity(journal.path() + "-key");
    if (!identity) {
        return identity.error();
    }
    options.identity = *identity;
    options.letter = wish.letter;
    there([&] { options.device = journal.about().own.device; });
    options.name = wish.name;
    const auto paired = sync::net::pair(options, cancel);
    if (!paired) {
        return paired.error();
    }
    const store::StationRow row{
        paired->stationKey.hex(), paired->stationName, textOf(options.place), {}, {}};
    const Status kept = resultThere(there, [&]() -> Status {
        if (Status set = store::setStation(journal, row); !set) {
            return set;
        }
        return journal.adopt(paired->letter, paired->stationName, journal.about().zone);
    });
    if (!kept) {
        return kept.error();
    }
    return paired->stationName;
}

sync::net::SyncOutcome
syncDevice(store::Database& journal, const SyncWish& wish, const sync::net::Cancel& cancel) {
    const RunThere there = orHere(wish.runThere);
    const Result<Prepared> ready = resultThere(there, [&] { return prepare(journal, wish.at); });
    if (!ready) {
        return {ready.error(), {}};
    }
    StoreReplica replica(journal);
    ElsewhereReplica elsewhere(replica, there);
    sync::net::SyncOutcome outcome = sync::net::syncOnce(
        ready->options,
        elsewhere,
        wish.progress ? wish.progress : [](const sync::Summary&) {},
        cancel);
    const Status concluded =
        resultThere(there, [&] { return conclude(journal, ready->row, outcome, wish.nowMs); });
    if (!concluded) {
        return {concluded, outcome.summary};
    }
    return outcome;
}

} // namespace bullace::server
