#include "console/terminal.hpp"

namespace bullace::console {

namespace {

using std::chrono::milliseconds;
using std::chrono::seconds;
using std::chrono::steady_clock;

} // namespace

Ticker::Ticker(Terminal& terminal, std::string what)
    : terminal_(terminal),
      what_(std::move(what)),
      next_(steady_clock::now() + seconds(1)) {}

Ticker::~Ticker() {
    if (hasDrawn_ && terminal_.isInteractive) {
        terminal_.err << "\r\033[K" << std::flush;
    }
}

store::Progress Ticker::progress() {
    return [this](std::uint64_t done, std::uint64_t total) {
        if (steady_clock::now() >= next_) {
            tell(done, total);
        }
        return true;
    };
}

void Ticker::tell(std::uint64_t done, std::uint64_t total) {
    next_ =
        steady_clock::now() + (terminal_.isInteractive ? milliseconds(200) : milliseconds(5000));
    hasDrawn_ = true;
    terminal_.err << (terminal_.isInteractive ? "\r\033[K" : "") << what_ << ": " << done;
    if (total > 0) {
        terminal_.err << " of " << total << " (" << done * 100 / total << " %)";
    }
    terminal_.err << (terminal_.isInteractive ? "" : "\n") << std::flush;
}

Result<std::unique_ptr<store::Database>> openForReading(const std::string& path) {
    return store::Database::open(path, false, store::fileSurroundings());
}

Result<std::unique_ptr<store::Database>> openForWriting(const std::string& path,
                                                        Terminal& terminal) {
    auto database = store::Database::open(path, true, store::fileSurroundings());
    if (database && (*database)->about().tookNewEpoch) {
        terminal.err
            << "bullace: \"" << path
            << "\" is a copy or an older state of itself, so it goes on under a new number ("
            << (*database)->about().own.text() << "). Nothing in it was changed.\n";
    }
    return database;
}

} // namespace bullace::console
