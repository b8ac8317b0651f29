#include "bench/served.hpp"

#include "sync/server/control_socket.hpp"
#include "sync/server/station.hpp"

#include <array>
#include <cstdio>
#include <sstream>
#include <sys/wait.h>
#include <unistd.h>

namespace bullace::bench {

namespace {

// In the child: serves until the pipe is closed.
int serveInChild(const std::string& path, int tellPort, int stop) {
    auto station = server::Station::start(
        {path, "127.0.0.1", 0},
        [] {
            return journal::Wall{1'780'000'000'000, 0};
        },
        [](const std::string& /*line*/) {});
    if (!station) {
        std::fprintf(stderr, "benchmark: %s\n", station.error().message.c_str());
        return 1;
    }
    const std::uint16_t port = (*station)->port();
    if (::write(tellPort, &port, sizeof(port)) != sizeof(port)) {
        return 1;
    }
    char ignored = 0;
    while (::read(stop, &ignored, 1) > 0) {
    }
    station->reset();
    return 0;
}

std::string readCode(const std::string& json) {
    const std::string start = "\"code\":\"";
    const std::size_t at = json.find(start);
    must(at != std::string::npos, "arming");
    const std::size_t from = at + start.size();
    return json.substr(from, json.find('"', from) - from);
}

std::unique_ptr<store::Database> made(Result<std::unique_ptr<store::Database>> result) {
    must(result.ok(), result ? "" : result.error().message);
    return std::move(*result);
}

} // namespace

Served::Served(std::string path) : path_(std::move(path)) {
    std::array<int, 2> port{};
    std::array<int, 2> stop{};
    must(::pipe(port.data()) == 0 && ::pipe(stop.data()) == 0, "making pipes");
    process_ = ::fork();
    if (process_ == 0) {
        ::close(stop[1]);
        ::_exit(serveInChild(path_, port[1], stop[0]));
    }
    ::close(port[1]);
    ::close(stop[0]);
    stop_ = stop[1];
    must(::read(port[0], &port_, sizeof(port_)) == sizeof(port_), "starting the station");
    ::close(port[0]);
}

Served::~Served() {
    ::close(stop_);
    ::waitpid(process_, nullptr, 0);
}

std::string Served::address() const {
    return "127.0.0.1:" + std::to_string(port_);
}

void Served::pair(store::Database& journal, const std::string& name) const {
    std::istringstream in;
    std::ostringstream out;
    std::ostringstream err;
    const auto status = server::askServer(path_, {"arm", {{"letter", "t"}}, true}, {in, out, err});
    must(status && *status == 0, "arming: " + err.str());
    const sync::net::Cancel cancel;
    const auto paired =
        server::pairDevice(journal, {address(), readCode(out.str()), name, 't'}, cancel);
    must(paired.ok(), paired ? "" : paired.error().message);
}

std::unique_ptr<store::Database> makeStation(const std::string& path) {
    return made(store::Database::create(
        path, {store::Role::Station, "Bench", "UTC", {}}, store::fileSurroundings()));
}

std::unique_ptr<store::Database> makeJournal(const std::string& path, std::uint64_t device) {
    return made(store::Database::create(
        path, {store::Role::Field, {}, {}, device}, store::fileSurroundings()));
}

std::unique_ptr<store::Database> openJournal(const std::string& path) {
    return made(store::Database::open(path, true, store::fileSurroundings()));
}

sync::Summary syncNow(store::Database& journal, const std::string& at) {
    const sync::net::Cancel cancel;
    const auto outcome = server::syncDevice(journal, {at, 1'780'000'000'000, {}}, cancel);
    must(outcome.status.ok(), outcome.status ? "" : outcome.status.error().message);
    must(outcome.summary.isComplete, "a whole sync");
    return outcome.summary;
}

} // namespace bullace::bench
