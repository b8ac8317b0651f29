// A device's journal and its station: pairing once, syncing from then on.
#pragma once

#include "store/database.hpp"
#include "sync/net/client.hpp"
#include "sync/server/elsewhere.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

namespace bullace::server {

struct PairingWish {
    std::string at;   // HOST:PORT; not needed with a QR code's text
    std::string code; // the typed code, or the text of the QR code
    std::string name; // of the device, for people
    char letter = 't';
    RunThere runThere = {}; // where the journal belongs to another thread; nothing: to the caller's
};

// Pairs the device with the station that is armed, and remembers it in the journal. The key is made
// beside the journal where there is none (PATH-key). Returns the station's name. Errors:
// InvalidInput (the code or the address is misspelt), those of sync::net::pair() and of the disk.
[[nodiscard]] Result<std::string>
pairDevice(store::Database& journal, const PairingWish& wish, const sync::net::Cancel& cancel);

struct SyncWish {
    std::string at; // HOST:PORT where the station is now; empty for where it was last found
    std::int64_t nowMs = 0;
    std::function<void(const sync::Summary&)> progress; // on the caller's thread
    RunThere runThere = {};
};

// Syncs with the station that the journal is paired with; takes a new epoch where that is needed.
// The outcome's summary is of use also where it failed.
[[nodiscard]] sync::net::SyncOutcome
syncDevice(store::Database& journal, const SyncWish& wish, const sync::net::Cancel& cancel);

} // namespace bullace::server
