// Serving from a program's beginning to its end: for bullace-syncd and for `bullace serve`.
#pragma once

#include "sync/server/office.hpp"
#include "sync/server/station.hpp"

#include <string>

namespace bullace::server {

// False where the text is no port number (0 to 65535; 0 takes any that is free).
[[nodiscard]] bool readPort(const std::string& text, std::uint16_t& port);

// The system's clock, and the local time's minutes from UTC at this moment.
[[nodiscard]] journal::Wall wallNow();

// Serves until SIGTERM or SIGINT, then ends within ten seconds; a second signal ends it at once.
// Says on `out` where it listens and what comes. The program's status.
int serveUntilStopped(const StationOptions& options, OfficeStreams streams);

} // namespace bullace::server
