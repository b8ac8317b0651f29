#include "sync/net/server.hpp"

#include "sync/net/server_core.hpp"

namespace bullace::sync::net {

Result<std::unique_ptr<Server>> Server::start(const ServerOptions& options, StationHost& host) {
    auto context = makeContext(options.identity);
    if (!context) {
        return context.error();
    }
    auto core = std::make_unique<Core>(options, host, std::move(*context));
    const Status status = core->listen();
    if (!status) {
        return status.error();
    }
    core->run();
    return std::unique_ptr<Server>(new Server(std::move(core)));
}

Server::Server(std::unique_ptr<Core> core) : core_(std::move(core)) {}

Server::~Server() {
    stop();
}

std::uint16_t Server::port() const {
    return core_->port();
}

Result<Armed> Server::arm(char letter) {
    return core_->arm(letter);
}

void Server::disarm() {
    core_->onNetwork([this] { core_->disarm(); });
}

Millis Server::armedFor() {
    Millis left = 0;
    core_->onNetwork([this, &left] { left = core_->armedFor(); });
    return left;
}

void Server::dismiss(const Digest& key) {
    core_->onNetwork([this, &key] { core_->dismiss(key); });
}

std::size_t Server::connections() {
    std::size_t number = 0;
    core_->onNetwork([this, &number] { number = core_->connections(); });
    return number;
}

void Server::onDatabase(const std::function<void()>& job) {
    core_->onDatabase(job);
}

void Server::stop() {
    core_->stop();
}

} // namespace bullace::sync::net
