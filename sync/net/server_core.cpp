// The server's frame: listening, its threads, the queue to the database, its end.
#include "sync/net/server_core.hpp"

#include <cstring>
#include <future>
#include <ifaddrs.h>
#include <net/if.h>
#include <utility>

namespace bullace::sync::net {

namespace {

constexpr auto kToken = asio::use_awaitable;
constexpr auto kTick = std::chrono::milliseconds(200);

Answer performSafely(Replica& replica, const Ask& ask) {
    try {
        return perform(replica, ask);
    } catch (const std::exception& failure) {
        return {ask.ticket,
                Error{ErrorCode::Internal,
                      "The station's program ran into a mistake of its own. Restart it.",
                      failure.what()}};
    }
}

// Every IPv4 address of this computer that others may reach, as text.
std::vector<std::string> ownAddresses() {
    std::vector<std::string> found;
    ifaddrs* list = nullptr;
    if (::getifaddrs(&list) != 0) {
        return found;
    }
    for (const ifaddrs* at = list; at != nullptr; at = at->ifa_next) {
        const bool isUsable = at->ifa_addr != nullptr && at->ifa_addr->sa_family == AF_INET &&
                              (at->ifa_flags & IFF_UP) != 0 && (at->ifa_flags & IFF_LOOPBACK) == 0;
        if (isUsable) {
            sockaddr_in address{};
            std::memcpy(&address, at->ifa_addr, sizeof address);
            found.push_back(asio::ip::address_v4(ntohl(address.sin_addr.s_addr)).to_string());
        }
    }
    ::freeifaddrs(list);
    return found;
}

} // namespace

Server::Core::Core(const ServerOptions& options,
                   StationHost& host,
                   std::unique_ptr<asio::ssl::context> context)
    : options_(options),
      host_(host),
      context_(std::move(context)) {}

Server::Core::~Core() {
    stop();
}

Status Server::Core::open(const std::string& address) {
    error_code error;
    const auto parsed = asio::ip::make_address(address, error);
    const tcp::endpoint endpoint(parsed, options_.port);
    const auto step = [&error](auto&& action) {
        if (!error) {
            action();
        }
    };
    step([&] { acceptor_.open(endpoint.protocol(), error); });
    step([&] { acceptor_.set_option(tcp::acceptor::reuse_address(true), error); });
    step([&] {
        if (parsed.is_v6()) {
            acceptor_.set_option(asio::ip::v6_only(false), error);
        }
    });
    step([&] { acceptor_.bind(endpoint, error); });
    step([&] { acceptor_.listen(static_cast<int>(kConnections), error); });
    if (!error) {
        port_ = acceptor_.local_endpoint(error).port();
    }
    if (!error) {
        return {};
    }
    error_code ignored;
    acceptor_.close(ignored);
    const std::string where = address + ", port " + std::to_string(options_.port);
    return error == asio::error::address_in_use
               ? Error{ErrorCode::InUse,
                       "Another program already listens at " + where +
                           ". Is the station's server running twice? Otherwise choose another "
                           "port.",
                       error.message()}
               : Error{ErrorCode::Network,
                       "The station cannot listen at " + where +
                           ". Check the address and the port.",
                       error.message()};
}

Status Server::Core::listen() {
    Status status = open(options_.address);
    // A computer without IPv6 still has to serve.
    if (!status && options_.address == "::" && status.error().code != ErrorCode::InUse) {
        status = open("0.0.0.0");
    }
    return status;
}

void Server::Core::run() {
    worker_ = std::make_unique<Worker>();
    asio::co_spawn(io_, accepting(), asio::detached);
    asio::co_spawn(io_, ticking(), asio::detached);
    network_ = std::thread([this] { serve(); });
}

void Server::Core::serve() {
    for (bool isOver = false; !isOver;) {
        try {
            io_.run();
            isOver = true;
        } catch (const std::exception&) {
            // Memory ran out in one connection's step; its deadline ends it, the others go on.
            isOver = false;
        }
    }
}

awaitable<void> Server::Core::accepting() {
    while (!isStopping_) {
        error_code error;
        tcp::socket socket = co_await acceptor_.async_accept(asio::redirect_error(kToken, error));
        if (!error) {
            take(std::move(socket));
        } else if (error == asio::error::operation_aborted || !acceptor_.is_open()) {
            break;
        } else {
            // Out of descriptors or memory, or the caller is gone: others will still come.
            asio::steady_timer pause(io_, std::chrono::milliseconds(kAcceptPauseMs));
            co_await pause.async_wait(asio::redirect_error(kToken, error));
        }
    }
}

void Server::Core::take(tcp::socket socket) {
    error_code error;
    const tcp::endpoint from = socket.remote_endpoint(error);
    if (error || isStopping_) {
        return;
    }
    socket.set_option(tcp::no_delay(true), error);
    const std::string address = from.address().to_string();
    if (!door_.enter(address, monotonicNow())) {
        return;
    }
    const auto visit = std::make_shared<Visit>(std::move(socket), *context_, address);
    visit->closeAt = monotonicNow() + kHandshakeMs;
    visits_.insert(visit);
    asio::co_spawn(io_, visiting(visit), asio::detached);
}

awaitable<void> Server::Core::ticking() {
    while (!isStopping_ || !visits_.empty()) {
        error_code ignored;
        ticker_.expires_after(kTick);
        co_await ticker_.async_wait(asio::redirect_error(kToken, ignored));
        tick();
    }
}

void Server::Core::tick() {
    const Millis now = monotonicNow();
    // A tick can end a visit, which leaves the set.
    const std::vector<VisitPtr> visits(visits_.begin(), visits_.end());
    for (const VisitPtr& visit : visits) {
        if (visit->link) {
            visit->link->tick();
        } else if (visit->closeAt != 0 && now >= visit->closeAt) {
            error_code ignored;
            visit->stream.next_layer().close(ignored);
            doorGate_.cancel();
        }
    }
    if (isStopping_ && now >= stopAt_) {
        closeAll();
    }
}

void Server::Core::closeAll() {
    for (const VisitPtr& visit : visits_) {
        error_code ignored;
        visit->stream.next_layer().close(ignored);
    }
    doorGate_.cancel();
}

void Server::Core::ask(const VisitPtr& visit, Ask ask) {
    visit->asks.push_back(std::move(ask));
    if (visit->asks.size() == 1) {
        ready_.push_back(visit);
    }
    feedDatabase();
}

// One ask of each in turn, so that none waits for another's whole journal.
void Server::Core::feedDatabase() {
    while (inDatabase_ < kDatabaseQueue && !ready_.empty()) {
        const VisitPtr visit = ready_.front();
        ready_.pop_front();
        if (visit->link->isOver()) {
            visit->asks.clear();
            continue;
        }
        auto next = std::make_shared<Ask>(std::move(visit->asks.front()));
        visit->asks.pop_front();
        if (!visit->asks.empty()) {
            ready_.push_back(visit);
        }
        ++inDatabase_;
        worker_->post([this, visit, next] {
            auto answer = std::make_shared<Answer>(performSafely(host_.replica(), *next));
            asio::post(io_, [this, visit, answer] {
                --inDatabase_;
                visit->link->answer(std::move(*answer));
                feedDatabase();
            });
        });
    }
}

bool Server::Core::onNetwork(const std::function<void()>& job) {
    const std::lock_guard lock(control_);
    if (isStopped_) {
        return false;
    }
    std::promise<void> done;
    asio::post(io_, [&job, &done] {
        job();
        done.set_value();
    });
    done.get_future().wait();
    return true;
}

void Server::Core::onDatabase(const std::function<void()>& job) {
    const std::lock_guard lock(control_);
    if (isStopped_) {
        job(); // no thread but the caller's uses the database any more
        return;
    }
    std::promise<void> done;
    worker_->post([&job, &done] {
        job();
        done.set_value();
    });
    done.get_future().wait();
}

std::vector<std::string> Server::Core::addresses() const {
    if (!options_.advertised.empty()) {
        return options_.advertised;
    }
    std::vector<std::string> found = ownAddresses();
    if (found.empty()) {
        found.emplace_back("127.0.0.1");
    }
    if (found.size() > 8) {
        found.resize(8);
    }
    for (std::string& address : found) {
        address += ":" + std::to_string(port_);
    }
    return found;
}

Result<Armed> Server::Core::arm(char letter) {
    const auto typed = randomBytes(kTypedSecretBytes);
    const auto qr = randomBytes(kQrSecretBytes);
    if (!typed || !qr) {
        return typed ? qr.error() : typed.error();
    }
    const bool isDone = onNetwork([this, &typed, &qr, letter] {
        arming_.arm(monotonicNow(), PairingSecrets{*typed, *qr}, letter);
    });
    if (!isDone) {
        return Error{ErrorCode::Cancelled, "The station's server has been stopped.", {}};
    }
    const QrOffer offer{addresses(), options_.identity.keyHash, *qr};
    return Armed{spellTypedCode(*typed), offer.text(), kArmedMs};
}

void Server::Core::dismiss(const Digest& key) {
    const auto at = sessions_.find(key);
    const VisitPtr visit = at == sessions_.end() ? nullptr : at->second.lock();
    if (visit) {
        visit->link->stop(Reason::Revoked);
    }
}

void Server::Core::beginStop() {
    isStopping_ = true;
    stopAt_ = monotonicNow() + kStopMs - kShutdownMs;
    disarm();
    error_code ignored;
    acceptor_.close(ignored);
    const std::vector<VisitPtr> visits(visits_.begin(), visits_.end());
    for (const VisitPtr& visit : visits) {
        if (visit->link) {
            visit->link->stop(Reason::Closing);
        } else {
            visit->stream.next_layer().close(ignored);
        }
    }
    doorGate_.cancel();
    ticker_.cancel();
}

void Server::Core::stop() {
    const std::lock_guard lock(control_);
    if (isStopped_) {
        return;
    }
    isStopped_ = true;
    if (network_.joinable()) {
        asio::post(io_, [this] { beginStop(); });
        network_.join();
    }
    worker_.reset();
}

} // namespace bullace::sync::net
