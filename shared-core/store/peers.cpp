#include "store/peers.hpp"

#include "store/sqlite.hpp"

namespace bullace::store {

namespace {

std::optional<std::int64_t> optionalInteger(const Statement& row, int column) {
    return row.isNull(column) ? std::nullopt : std::optional(row.integer(column));
}

DeviceRow deviceFrom(const Statement& row) {
    const auto origin =
        journal::readOrigin(std::string(row.text(1)) + std::string(row.text(2)) + ".1");
    DeviceRow device;
    device.keyHash = row.text(0);
    device.letter = origin ? origin->letter : '?';
    device.device = origin ? origin->device : 0;
    device.name = row.text(3);
    device.pairedAtMs = row.integer(4);
    device.revokedAtMs = optionalInteger(row, 5);
    device.lastSyncMs = optionalInteger(row, 6);
    device.clockAheadMs = optionalInteger(row, 7);
    return device;
}

} // namespace

Result<std::vector<DeviceRow>> devices(Database& database) {
    Result<Statement> rows =
        database.connection().prepare("SELECT key_hash, letter, device, name, paired_at, "
                                      "revoked_at, last_sync, clock_ahead_ms FROM devices "
                                      "ORDER BY paired_at, key_hash");
    if (!rows) {
        return rows.error();
    }
    std::vector<DeviceRow> all;
    while (true) {
        const Result<bool> row = rows->step();
        if (!row) {
            return row.error();
        }
        if (!*row) {
            return all;
        }
        all.push_back(deviceFrom(*rows));
    }
}

Status addDevice(Database& database, const DeviceRow& device) {
    const Result<std::vector<DeviceRow>> known = devices(database);
    if (!known) {
        return known.error();
    }
    for (const DeviceRow& other : *known) {
        if (other.device == device.device && other.keyHash != device.keyHash &&
            !other.revokedAtMs) {
            return Error{
                ErrorCode::AlreadyThere,
                "\"" + other.name +
                    "\" is paired under the same number with another key. Revoke that one first.",
                {}};
        }
    }
    Result<Statement> insert = database.connection().prepare(
        "INSERT INTO devices(key_hash, letter, device, name, paired_at) VALUES(?1, ?2, ?3, ?4, ?5) "
        "ON CONFLICT(key_hash) "
        "DO UPDATE SET letter = ?2, device = ?3, name = ?4, paired_at = ?5, revoked_at = NULL");
    if (!insert) {
        return insert.error();
    }
    const std::string letter(1, device.letter);
    const std::string digits = journal::deviceText(device.letter, device.device).substr(1);
    insert->bindText(1, device.keyHash)
        .bindText(2, letter)
        .bindText(3, digits)
        .bindText(4, device.name);
    return insert->bind(5, device.pairedAtMs).execute();
}

Result<DeviceRow> revokeDevice(Database& database, const std::string& which, std::int64_t nowMs) {
    const Result<std::vector<DeviceRow>> known = devices(database);
    if (!known) {
        return known.error();
    }
    std::optional<DeviceRow> found;
    for (const DeviceRow& device : *known) {
        if (journal::deviceText(device.letter, device.device) != which && device.name != which) {
            continue;
        }
        if (found && !found->revokedAtMs && !device.revokedAtMs) {
            return Error{ErrorCode::InvalidInput,
                         "Several devices are called \"" + which +
                             "\". Name the one meant by its letter and digits.",
                         {}};
        }
        found = !found || found->revokedAtMs ? device : *found;
    }
    if (!found) {
        return Error{ErrorCode::NotFound,
                     "No device called \"" + which + "\" is paired. `bullace devices` lists them.",
                     {}};
    }
    Result<Statement> update = database.connection().prepare(
        "UPDATE devices SET revoked_at = ifnull(revoked_at, ?2) WHERE key_hash = ?1");
    if (!update) {
        return update.error();
    }
    if (Status revoked = update->bindText(1, found->keyHash).bind(2, nowMs).execute(); !revoked) {
        return revoked.error();
    }
    found->revokedAtMs = found->revokedAtMs.value_or(nowMs);
    return *found;
}

Status noteDeviceSync(Database& database,
                      const std::string& keyHash,
                      std::int64_t nowMs,
                      std::optional<std::int64_t> clockAheadMs) {
    Result<Statement> update =
        database.connection().prepare("UPDATE devices SET last_sync = ?2, clock_ahead_ms = "
                                      "ifnull(?3, clock_ahead_ms) WHERE key_hash = ?1");
    if (!update) {
        return update.error();
    }
    update->bindText(1, keyHash).bind(2, nowMs);
    clockAheadMs ? update->bind(3, *clockAheadMs) : update->bindNull(3);
    return update->execute();
}

Result<std::optional<StationRow>> station(Database& database) {
    Result<Statement> rows = database.connection().prepare(
        "SELECT key_hash, name, address, history, last_sync FROM stations LIMIT 1");
    if (!rows) {
        return rows.error();
    }
    const Result<bool> row = rows->step();
    if (!row) {
        return row.error();
    }
    if (!*row) {
        return std::optional<StationRow>{};
    }
    return std::optional(StationRow{std::string(rows->text(0)),
                                    std::string(rows->text(1)),
                                    std::string(rows->text(2)),
                                    Bytes(rows->bytes(3)),
                                    optionalInteger(*rows, 4)});
}

Status setStation(Database& database, const StationRow& station) {
    Result<Transaction> transaction = Transaction::begin(database.connection());
    if (!transaction) {
        return transaction.error();
    }
    if (Status emptied = database.connection().run("DELETE FROM stations"); !emptied) {
        return emptied;
    }
    Result<Statement> insert =
        database.connection().prepare("INSERT INTO stations(key_hash, name, address, history, "
                                      "last_sync) VALUES(?1, ?2, ?3, ?4, ?5)");
    if (!insert) {
        return insert.error();
    }
    insert->bindText(1, station.keyHash).bindText(2, station.name).bindText(3, station.address);
    insert->bindBytes(4, station.history);
    station.lastSyncMs ? insert->bind(5, *station.lastSyncMs) : insert->bindNull(5);
    if (Status put = insert->execute(); !put) {
        return put;
    }
    return transaction->commit();
}

} // namespace bullace::store
