// What the console's commands share: where they print, what time it is, and how long things take.
#pragma once

#include "core/base/result.hpp"
#include "store/database.hpp"
#include "sync/server/office.hpp"

#include <chrono>
#include <istream>
#include <ostream>
#include <string>

namespace bullace::console {

struct Terminal {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
    bool wantsJson = false;
    bool isInteractive = false; // the error stream is a screen: progress is drawn over itself
};

// Tells how far something is once it has taken more than a second: on a screen in place, elsewhere
// a line every five seconds. `what` reads like "Checking".
class Ticker {
public:
    Ticker(Terminal& terminal, std::string what);
    ~Ticker();
    Ticker(const Ticker&) = delete;
    Ticker& operator=(const Ticker&) = delete;
    Ticker(Ticker&&) = delete;
    Ticker& operator=(Ticker&&) = delete;

    [[nodiscard]] store::Progress progress();

private:
    void tell(std::uint64_t done, std::uint64_t total);

    Terminal& terminal_;
    std::string what_;
    std::chrono::steady_clock::time_point next_;
    bool hasDrawn_ = false;
};

// Opens for reading, which is for anyone at any time.
[[nodiscard]] Result<std::unique_ptr<store::Database>> openForReading(const std::string& path);
[[nodiscard]] Result<std::unique_ptr<store::Database>> openForWriting(const std::string& path,
                                                                      Terminal& terminal);

using server::tellFailure;

} // namespace bullace::console
