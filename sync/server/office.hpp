// The console's commands that write: done on the database itself, or, while a server holds it, by
// that server for the console that asks through the local socket. Either way the same code prints
// the same words.
#pragma once

#include "store/database.hpp"

#include <cstdint>
#include <functional>
#include <istream>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

namespace bullace::server {

// UTC milliseconds since 1970, and the local time's minutes from UTC.
using WallClock = std::function<journal::Wall()>;

// What a running server adds to the office; all empty where none runs.
struct Serving {
    // Opens pairing for five minutes to a device that gets this letter. Gives the typed code and
    // the text of the QR code.
    std::function<Result<std::pair<std::string, std::string>>(char letter)> arm;
    // A device was revoked: its session ends.
    std::function<void(const std::string& keyHash)> dropDevice;
};

struct OfficeRequest {
    std::string verb; // "import", "rule", "devices", "arm"
    std::vector<std::pair<std::string, std::string>> options;
    bool wantsJson = false;

    [[nodiscard]] std::string option(const std::string& name) const; // empty where it is not there
};

struct OfficeStreams {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
    store::Progress progress = {}; // told of lines while something long goes on
};

class Office {
public:
    Office(store::Database& database, WallClock clock, Serving serving)
        : database_(database),
          clock_(std::move(clock)),
          serving_(std::move(serving)) {}

    // The status of the command: 0 where all was done, 1 where something was not.
    int run(const OfficeRequest& request, OfficeStreams streams);

private:
    int importLines(const OfficeRequest& request, OfficeStreams& streams);
    int rule(const OfficeRequest& request, OfficeStreams& streams);
    int devices(const OfficeRequest& request, OfficeStreams& streams);
    int revoke(const OfficeRequest& request, OfficeStreams& streams);
    int takeIn(const OfficeRequest& request, OfficeStreams& streams);
    int arm(const OfficeRequest& request, OfficeStreams& streams);

    store::Database& database_;
    WallClock clock_;
    Serving serving_;
};

// Prints "bullace: …" and gives the status of a failed command, 1.
int tellFailure(std::ostream& err, const Error& error);

} // namespace bullace::server
