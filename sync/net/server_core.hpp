// What runs behind Server: one network thread with all connections, one database thread. Inside
// sync/net only.
#pragma once

#include "sync/net/asio.hpp"
#include "sync/net/door.hpp"
#include "sync/net/link.hpp"
#include "sync/net/server.hpp"
#include "sync/net/tls.hpp"
#include "sync/net/worker.hpp"

#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <thread>

namespace bullace::sync::net {

// One connection, from being accepted until it is closed.
struct Visit {
    Visit(tcp::socket socket, asio::ssl::context& context, std::string from)
        : stream(std::move(socket), context),
          address(std::move(from)) {}

    Meeting meeting; // before the stream, which looks into it
    TlsStream stream;
    std::string address;
    Millis closeAt = 0; // it is closed then; 0: its link has deadlines of its own
    KnownDevice device;
    std::shared_ptr<Link> link;
    std::deque<Ask> asks; // not yet handed to the database thread
};

class Server::Core {
public:
    Core(const ServerOptions& options,
         StationHost& host,
         std::unique_ptr<asio::ssl::context> context);
    ~Core();
    Core(const Core&) = delete;
    Core& operator=(const Core&) = delete;

    Status listen();
    void run();
    void stop();

    [[nodiscard]] std::uint16_t port() const { return port_; }
    Result<Armed> arm(char letter);
    void onDatabase(const std::function<void()>& job);
    // Does a job on the network thread and waits for it; false where the server has been stopped.
    bool onNetwork(const std::function<void()>& job);

    // The following are for jobs on the network thread.
    void disarm() { arming_.disarm(); }
    [[nodiscard]] Millis armedFor() const { return arming_.left(monotonicNow()); }
    void dismiss(const Digest& key);
    [[nodiscard]] std::size_t connections() const { return door_.connections(); }

private:
    using VisitPtr = std::shared_ptr<Visit>;

    Status open(const std::string& address);
    void serve();
    awaitable<void> accepting();
    awaitable<void> ticking();
    awaitable<void> visiting(VisitPtr visit);
    awaitable<bool> shakeHands(VisitPtr visit);
    awaitable<void> syncing(VisitPtr visit);
    awaitable<void> pairing(VisitPtr visit);
    awaitable<void> carryOut(VisitPtr visit, PairingStation& station, PairActions actions);
    awaitable<Result<HistoryId>> written(NewDevice device);

    void take(tcp::socket socket);
    [[nodiscard]] Verdict judge(Purpose purpose, const Digest& key);
    void turnedAway(const Visit& visit, std::string why);
    void tick();
    void ask(const VisitPtr& visit, Ask ask);
    void feedDatabase();
    void beginStop();
    void closeAll();
    [[nodiscard]] std::vector<std::string> addresses() const;

    ServerOptions options_;
    StationHost& host_;
    std::unique_ptr<asio::ssl::context> context_;
    asio::io_context io_{1};
    tcp::acceptor acceptor_{io_};
    asio::steady_timer ticker_{io_};
    asio::steady_timer doorGate_{io_};
    std::uint16_t port_ = 0;

    Door door_;
    Arming arming_;
    std::set<VisitPtr> visits_;
    std::map<Digest, std::weak_ptr<Visit>> sessions_; // the going one of each key
    std::deque<VisitPtr> ready_;                      // have asks waiting, each once
    std::size_t inDatabase_ = 0;
    bool isStopping_ = false;
    Millis stopAt_ = 0;

    std::unique_ptr<Worker> worker_;
    std::thread network_;
    std::mutex control_; // one caller of the public functions at a time
    bool isStopped_ = false;
};

} // namespace bullace::sync::net
