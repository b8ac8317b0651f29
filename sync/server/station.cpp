#include "sync/server/station.hpp"

#include "sync/server/arrivals.hpp"
#include "sync/server/summary_words.hpp"

#include <algorithm>
#include <utility>

namespace bullace::server {

using sync::net::KnownDevice;

namespace {

std::optional<Digest> keyFrom(const std::string& hex) {
    const auto bytes = fromHex(hex);
    return bytes ? Digest::fromBytes(*bytes) : std::nullopt;
}

} // namespace

Station::Station(StationOptions options,
                 std::unique_ptr<store::Database> database,
                 WallClock clock,
                 LogLine log)
    : options_(std::move(options)),
      database_(std::move(database)),
      clock_(std::move(clock)),
      log_(std::move(log)),
      replica_(*database_) {}

Result<std::unique_ptr<Station>>
Station::open(const StationOptions& options, WallClock clock, LogLine log) {
    auto database = store::Database::open(options.path, true, store::fileSurroundings());
    if (!database) {
        return database.error();
    }
    if ((*database)->about().role != store::Role::Station) {
        return Error{
            ErrorCode::InvalidInput,
            "\"" + options.path +
                "\" is the journal of a field device. Only a station's database is served.",
            {}};
    }
    auto identity = sync::net::loadOrMakeIdentity(options.path + "-key");
    if (!identity) {
        return identity.error();
    }
    std::unique_ptr<Station> station(
        new Station(options, std::move(*database), std::move(clock), std::move(log)));
    station->identity_ = std::move(*identity);
    if (station->about().tookNewEpoch) {
        station->log_("This database is a copy or an older state of itself: the devices are asked "
                      "for what it may have lost.");
    }
    if (Status loaded = station->loadDevices(); !loaded) {
        return loaded.error();
    }
    station->office_ =
        std::make_unique<Office>(*station->database_, station->clock_, station->serving());
    Station* self = station.get();
    auto socket = ControlSocket::listen(
        options.path, [self](const OfficeRequest& request, OfficeStreams streams) {
            return self->answerConsole(request, streams);
        });
    if (!socket) {
        return socket.error();
    }
    station->socket_ = std::move(*socket);
    return station;
}

Result<std::unique_ptr<Station>>
Station::start(const StationOptions& options, WallClock clock, LogLine log) {
    auto station = open(options, std::move(clock), std::move(log));
    if (!station) {
        return station.error();
    }
    if (Status listening = (*station)->listen(); !listening) {
        return listening.error();
    }
    return station;
}

Station::~Station() {
    socket_.reset();
    server_.reset();
}

Status Station::listen() {
    const std::lock_guard turn(turn_);
    if (server_ != nullptr) {
        return {};
    }
    const sync::net::ServerOptions network{
        options_.address, options_.port, identity_, about().station, {}};
    auto server = sync::net::Server::start(network, *this);
    if (!server) {
        return server.error();
    }
    server_ = std::move(*server);
    return {};
}

void Station::fallSilent() {
    const std::lock_guard turn(turn_);
    server_.reset();
}

Result<sync::net::Armed> Station::arm(char letter) {
    const std::lock_guard turn(turn_);
    if (server_ == nullptr) {
        return Error{ErrorCode::Refused,
                     "Tablets are not let in now. Let tablets sync first, then pair.",
                     {}};
    }
    return server_->arm(letter);
}

sync::Millis Station::armedFor() {
    const std::lock_guard turn(turn_);
    return server_ == nullptr ? 0 : server_->armedFor();
}

void Station::disarm() {
    const std::lock_guard turn(turn_);
    if (server_ != nullptr) {
        server_->disarm();
    }
}

Status Station::revoke(const std::string& which) {
    Status revoked;
    onDatabase([&](store::Database& database) {
        const auto row = store::revokeDevice(database, which, clock_().ms);
        if (!row) {
            revoked = row.error();
        } else {
            serving().dropDevice(row->keyHash);
        }
    });
    return revoked;
}

void Station::onDatabase(const std::function<void(store::Database&)>& job) {
    const std::lock_guard turn(turn_);
    if (server_ == nullptr) {
        job(*database_);
        return;
    }
    server_->onDatabase([&] { job(*database_); });
    // Only now: the database's thread must not wait for the network's.
    for (const Digest& key : std::exchange(revoked_, {})) {
        server_->dismiss(key);
    }
}

int Station::answerConsole(const OfficeRequest& request, OfficeStreams streams) {
    // `arm` asks the server's network thread, everything else the database's.
    if (request.verb == "arm") {
        return office_->run(request, streams);
    }
    int status = 1;
    onDatabase([&](store::Database&) { status = office_->run(request, streams); });
    return status;
}

Serving Station::serving() {
    Serving serving;
    serving.arm = [this](char letter) -> Result<std::pair<std::string, std::string>> {
        const auto armed = arm(letter);
        if (!armed) {
            return armed.error();
        }
        return std::pair(armed->typedCode, armed->qrText);
    };
    serving.dropDevice = [this](const std::string& keyHash) {
        const auto key = keyFrom(keyHash);
        if (!key) {
            return;
        }
        revoked_.push_back(*key);
        const std::lock_guard lock(devicesMutex_);
        const auto known = devices_.find(*key);
        if (known != devices_.end()) {
            known->second.isRevoked = true;
        }
    };
    return serving;
}

Status Station::loadDevices() {
    const auto all = store::devices(*database_);
    if (!all) {
        return all.error();
    }
    for (const store::DeviceRow& row : *all) {
        if (const auto key = keyFrom(row.keyHash)) {
            devices_[*key] = {row.letter, row.device, row.name, row.revokedAtMs.has_value()};
        }
    }
    return {};
}

std::optional<KnownDevice> Station::find(const Digest& key) {
    const std::lock_guard lock(devicesMutex_);
    const auto known = devices_.find(key);
    return known == devices_.end() ? std::nullopt : std::optional(known->second);
}

Status Station::registerDevice(const sync::NewDevice& device) {
    store::DeviceRow row;
    row.keyHash = device.key.hex();
    row.letter = device.letter;
    row.device = device.device;
    row.name = device.name;
    row.pairedAtMs = clock_().ms;
    if (Status added = store::addDevice(*database_, row); !added) {
        return added;
    }
    const std::lock_guard lock(devicesMutex_);
    devices_[device.key] = {device.letter, device.device, device.name, false};
    log_("Paired: " + device.name + " (" + journal::deviceText(device.letter, device.device) +
         ").");
    return {};
}

void Station::onSessionOver(const KnownDevice& device,
                            const sync::Summary& summary,
                            const Status& status) {
    std::string key;
    {
        const std::lock_guard lock(devicesMutex_);
        const auto known =
            std::find_if(devices_.begin(), devices_.end(), [&device](const auto& row) {
                return row.second.device == device.device && !row.second.isRevoked;
            });
        key = known == devices_.end() ? std::string{} : known->first.hex();
    }
    if (summary.isComplete && !key.empty()) {
        const Status noted =
            store::noteDeviceSync(*database_, key, clock_().ms, summary.clockDifferenceMs);
        if (!noted) {
            log_(noted.error().message);
        }
    }
    const std::string trouble = status ? std::string{} : status.error().message;
    if (Status kept = keepArrival(*database_, arrivalOf(device, summary, trouble, clock_().ms));
        !kept) {
        log_(kept.error().message);
    }
    log_(device.name + ": " + summaryWords(summary) + (status ? "" : " " + trouble));
}

void Station::onTurnedAway(const std::string& address, const std::string& why) {
    log_("Turned away " + address + ": " + why);
}

} // namespace bullace::server
