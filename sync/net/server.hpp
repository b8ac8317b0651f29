// The station's side of the network: takes in devices, keeps the limits, carries their sessions.
#pragma once

#include "core/base/result.hpp"
#include "sync/net/identity.hpp"
#include "sync/protocol/pairing_session.hpp"
#include "sync/protocol/replica.hpp"
#include "sync/protocol/summary.hpp"

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace bullace::sync::net {

struct KnownDevice {
    char letter = 't';
    std::uint64_t device = 0;
    std::string name;
    bool isRevoked = false;
};

// What the server needs of the program around it. It outlives the server.
class StationHost {
public:
    virtual ~StationHost() = default;
    StationHost() = default;
    StationHost(const StationHost&) = delete;
    StationHost& operator=(const StationHost&) = delete;
    StationHost(StationHost&&) = delete;
    StationHost& operator=(StationHost&&) = delete;

    // The device with this key; nothing where none was paired. Called on the network thread, inside
    // handshakes: from memory, not from the database.
    virtual std::optional<KnownDevice> find(const Digest& key) = 0;

    // The rest is called on the database thread only.
    virtual Replica& replica() = 0;
    // Writes a paired device down, durably; find() knows it from then on. Error AlreadyThere where
    // another key has its digits.
    virtual Status registerDevice(const NewDevice& device) = 0;
    // A session is over, in one way or another.
    virtual void
    onSessionOver(const KnownDevice& device, const Summary& summary, const Status& status) = 0;
    // Somebody was turned away (a log line; at most one a minute for an address).
    virtual void onTurnedAway(const std::string& address, const std::string& why) = 0;
};

struct ServerOptions {
    std::string address = "::";        // to listen at: a numeric address; "::" takes IPv4 too
    std::uint16_t port = kDefaultPort; // 0: any that is free
    Identity identity;
    std::string stationName; // at most 128 bytes
    std::vector<std::string>
        advertised; // HOST:PORT for the QR code; empty: this computer's addresses
};

// What a person carries to the device.
struct Armed {
    std::string typedCode;
    std::string qrText;
    Millis forMs = 0;
};

class Server {
public:
    // Listens, on threads of its own. Errors: InUse (the port), Network, Damaged (the key).
    [[nodiscard]] static Result<std::unique_ptr<Server>> start(const ServerOptions& options,
                                                               StationHost& host);
    // As stop().
    ~Server();
    Server(const Server&) = delete;
    Server& operator=(const Server&) = delete;
    Server(Server&&) = delete;
    Server& operator=(Server&&) = delete;

    [[nodiscard]] std::uint16_t port() const;

    // The following may be called from any thread but the server's own two.

    // Lets in one device within five minutes. What was armed before is void. Errors: Internal.
    [[nodiscard]] Result<Armed> arm(char letter);
    void disarm();
    // Milliseconds left of the code; 0: not armed.
    [[nodiscard]] Millis armedFor();

    // Ends the session of a device that is going on now, if there is one (after it was revoked).
    void dismiss(const Digest& key);
    // Connections at the moment, in whatever state.
    [[nodiscard]] std::size_t connections();

    // Does the job on the database thread, between the sessions' jobs, and returns once it is done.
    void onDatabase(const std::function<void()>& job);

    // Takes in nobody any more, lets the batches in hand be stored and acknowledged, says goodbye;
    // returns within ten seconds and what the database takes for the jobs it has.
    void stop();

private:
    class Core;
    explicit Server(std::unique_ptr<Core> core);
    std::unique_ptr<Core> core_;
};

} // namespace bullace::sync::net
