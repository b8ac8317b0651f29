// A station that serves: its database, the network server and the local socket for the console,
// joined.
#pragma once

#include "store/database.hpp"
#include "store/peers.hpp"
#include "sync/net/identity.hpp"
#include "sync/net/server.hpp"
#include "sync/server/control_socket.hpp"
#include "sync/server/office.hpp"
#include "sync/server/store_replica.hpp"

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

namespace bullace::server {

struct StationOptions {
    std::string path;
    std::string address = "::";
    std::uint16_t port = sync::kDefaultPort;
};

// One line for the person who watches the server.
using LogLine = std::function<void(const std::string&)>;

class Station : private sync::net::StationHost {
public:
    // Opens the database for writing, and serves it at the address and through PATH-socket until
    // destroyed. Errors: those of opening a database and of listening.
    [[nodiscard]] static Result<std::unique_ptr<Station>>
    start(const StationOptions& options, WallClock clock, LogLine log);
    // The same without the network: devices are let in from listen() on. The console is answered
    // already.
    [[nodiscard]] static Result<std::unique_ptr<Station>>
    open(const StationOptions& options, WallClock clock, LogLine log);
    // Graceful: batches in hand are stored and acknowledged first; at most ten seconds.
    ~Station() override;
    Station(const Station&) = delete;
    Station& operator=(const Station&) = delete;
    Station(Station&&) = delete;
    Station& operator=(Station&&) = delete;

    // Lets devices sync, and no longer; as start() and the destructor do. Errors: of listening.
    [[nodiscard]] Status listen();
    void fallSilent();
    [[nodiscard]] bool isListening() const { return server_ != nullptr; }
    // 0 while it is silent.
    [[nodiscard]] std::uint16_t port() const { return server_ == nullptr ? 0 : server_->port(); }
    // Opens pairing for five minutes. Errors: Refused while it is silent; those of the server.
    [[nodiscard]] Result<sync::net::Armed> arm(char letter);
    // Milliseconds left of the code; 0: not armed.
    [[nodiscard]] sync::Millis armedFor();
    void disarm();
    // `which` as of store::revokeDevice; its session ends. Errors: those of it.
    [[nodiscard]] Status revoke(const std::string& which);

    // Does the job with the database, between the jobs of sessions and of the console, and returns
    // once it is done. From any thread but the server's own. listen() and fallSilent() wait for it.
    void onDatabase(const std::function<void(store::Database&)>& job);
    [[nodiscard]] const store::About& about() const { return database_->about(); }

private:
    Station(StationOptions options,
            std::unique_ptr<store::Database> database,
            WallClock clock,
            LogLine log);
    [[nodiscard]] Status loadDevices();
    [[nodiscard]] Serving serving();
    int answerConsole(const OfficeRequest& request, OfficeStreams streams);

    std::optional<sync::net::KnownDevice> find(const Digest& key) override;
    sync::Replica& replica() override { return replica_; }
    Status registerDevice(const sync::NewDevice& device) override;
    void onSessionOver(const sync::net::KnownDevice& device,
                       const sync::Summary& summary,
                       const Status& status) override;
    void onTurnedAway(const std::string& address, const std::string& why) override;

    StationOptions options_;
    sync::net::Identity identity_;
    std::unique_ptr<store::Database> database_;
    WallClock clock_;
    LogLine log_;
    StoreReplica replica_;
    std::mutex devicesMutex_; // find() is asked inside handshakes, on the network thread
    std::map<Digest, sync::net::KnownDevice> devices_;
    std::vector<Digest> revoked_; // by the console's command at hand; their sessions are to end
    std::mutex turn_;             // of what is done with the database from outside the server
    std::unique_ptr<sync::net::Server> server_;
    std::unique_ptr<Office> office_;
    std::unique_ptr<ControlSocket> socket_;
};

} // namespace bullace::server
