#include "sync/server/serving.hpp"

#include "core/base/civil_date.hpp"
#include "core/base/numbers.hpp"

#include <chrono>
#include <csignal>
#include <ctime>
#include <mutex>
#include <unistd.h>

namespace bullace::server {

namespace {

sigset_t stopSignals() {
    sigset_t signals;
    sigemptyset(&signals);
    sigaddset(&signals, SIGTERM);
    sigaddset(&signals, SIGINT);
    return signals;
}

void endAtOnce(int /*signal*/) {
    ::_exit(1);
}

} // namespace

bool readPort(const std::string& text, std::uint16_t& port) {
    const auto number = readCount(text, 65535);
    port = number ? static_cast<std::uint16_t>(*number) : port;
    return number.has_value();
}

journal::Wall wallNow() {
    const auto now = std::chrono::system_clock::now();
    const std::time_t whole = std::chrono::system_clock::to_time_t(now);
    std::tm local{};
    localtime_r(&whole, &local);
    return {std::chrono::duration_cast<std::chrono::milliseconds>(now.time_since_epoch()).count(),
            local.tm_gmtoff / 60};
}

int serveUntilStopped(const StationOptions& options, OfficeStreams streams) {
    // Blocked before any thread is made, so that all inherit it and the signal waits for the call
    // below.
    const sigset_t signals = stopSignals();
    pthread_sigmask(SIG_BLOCK, &signals, nullptr);
    std::mutex outMutex;
    const LogLine log = [&](const std::string& line) {
        const std::lock_guard lock(outMutex);
        const journal::Wall now = wallNow();
        streams.out << writeInstant(now.ms, now.minutes).substr(0, 19).replace(10, 1, " ") << "  "
                    << line << std::endl;
    };
    auto station = Station::start(options, wallNow, log);
    if (!station) {
        return tellFailure(streams.err, station.error());
    }
    log("Serving " + (*station)->about().station + " on port " +
        std::to_string((*station)->port()) + ".");
    int signal = 0;
    sigwait(&signals, &signal);
    std::signal(SIGTERM, endAtOnce);
    std::signal(SIGINT, endAtOnce);
    pthread_sigmask(SIG_UNBLOCK, &signals, nullptr);
    log("Stopping: what is in hand is finished first.");
    station->reset();
    log("Stopped.");
    return 0;
}

} // namespace bullace::server
