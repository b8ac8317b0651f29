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

} // namespace

Result<std::string>
pairDevice(store::Database& journal, const PairingWish& wish, const sync::net::Cancel& cancel) {
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
    options.device = journal.about().own.device;
    options.name = wish.name;
    const auto paired = sync::net::pair(options, cancel);
    if (!paired) {
        return paired.error();
    }
    const store::StationRow row{
        paired->stationKey.hex(), paired->stationName, textOf(options.place), {}, {}};
    if (Status kept = store::setStation(journal, row); !kept) {
        return kept.error();
    }
    if (Status adopted = journal.adopt(paired->letter, paired->stationName, journal.about().zone);
        !adopted) {
        return adopted.error();
    }
    return paired->stationName;
}

sync::net::SyncOutcome
syncDevice(store::Database& journal, const SyncWish& wish, const sync::net::Cancel& cancel) {
    const auto known = store::station(journal);
    if (!known) {
        return {known.error(), {}};
    }
    if (!*known) {
        return {Error{ErrorCode::NotFound,
                      "This device is not paired with a station yet. Ask the office to open "
                      "pairing, then pair.",
                      {}},
                {}};
    }
    store::StationRow row = **known;
    const std::string at = wish.at.empty() ? row.address : wish.at;
    const auto place = sync::net::readPlace(at);
    if (!place) {
        return {badAddress(at), {}};
    }
    const auto identity = sync::net::loadIdentity(journal.path() + "-key");
    const auto keyBytes = fromHex(row.keyHash);
    const auto key = keyBytes ? Digest::fromBytes(*keyBytes) : std::nullopt;
    if (!identity || !key) {
        return {identity
                    ? Error{ErrorCode::Damaged,
                            "The journal does not say which key its station has. Pair it anew.",
                            {}}
                    : identity.error(),
                {}};
    }
    sync::net::SyncOptions options;
    options.place = *place;
    options.identity = *identity;
    options.stationKey = *key;
    options.letter = journal.about().own.letter;
    options.device = journal.about().own.device;
    options.current = journal.about().own;
    std::copy_n(row.history.begin(),
                std::min(row.history.size(), options.knownHistory.size()),
                options.knownHistory.begin());
    StoreReplica replica(journal);
    sync::net::SyncOutcome outcome = sync::net::syncOnce(
        options, replica, wish.progress ? wish.progress : [](const sync::Summary&) {}, cancel);
    if (outcome.summary.needsNewEpoch) {
        if (Status taken = journal.takeNewEpoch(outcome.summary.greatestEpoch); !taken) {
            return {taken, outcome.summary};
        }
    }
    row.address = textOf(*place);
    if (outcome.summary.mayRememberHistory()) {
        row.history.assign(outcome.summary.stationHistory.begin(),
                           outcome.summary.stationHistory.end());
    }
    if (outcome.summary.isComplete) {
        row.lastSyncMs = wish.nowMs;
    }
    if (Status kept = outcome.status ? store::setStation(journal, row) : Status{}; !kept) {
        return {kept, outcome.summary};
    }
    return outcome;
}

} // namespace bullace::server
