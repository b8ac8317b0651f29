// Who syncs with whom: on the station the devices that were paired with it, on a device the
// station.
#pragma once

#include "core/base/result.hpp"
#include "store/database.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::store {

struct DeviceRow {
    std::string keyHash; // SHA-256 of its public key, lower-case hex
    char letter = 't';
    std::uint64_t device = 0;
    std::string name;
    std::int64_t pairedAtMs =
        0; // UTC milliseconds since 1970, by the station's clock, as the others
    std::optional<std::int64_t> revokedAtMs;
    std::optional<std::int64_t> lastSyncMs;
    std::optional<std::int64_t>
        clockAheadMs; // the device's clock before the station's at the last sync
};

[[nodiscard]] Result<std::vector<DeviceRow>> devices(Database& database);
// Errors: AlreadyThere where the digits belong to another key.
[[nodiscard]] Status addDevice(Database& database, const DeviceRow& device);
// `which` is the device's letter and digits, or its name where only one has it. Errors: NotFound,
// InvalidInput (two have it).
[[nodiscard]] Result<DeviceRow>
revokeDevice(Database& database, const std::string& which, std::int64_t nowMs);
[[nodiscard]] Status noteDeviceSync(Database& database,
                                    const std::string& keyHash,
                                    std::int64_t nowMs,
                                    std::optional<std::int64_t> clockAheadMs);

struct StationRow {
    std::string keyHash;
    std::string name;
    std::string address; // HOST:PORT where it was last found
    Bytes history;       // of its database when a sync was last complete; empty before
    std::optional<std::int64_t> lastSyncMs;
};

// The station that the device is paired with; nothing before.
[[nodiscard]] Result<std::optional<StationRow>> station(Database& database);
// Puts it in the place of the one before.
[[nodiscard]] Status setStation(Database& database, const StationRow& station);

} // namespace bullace::store
