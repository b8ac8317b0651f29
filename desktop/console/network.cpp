// Serving, pairing and syncing without a screen, and the office's commands with or without a
// server.
#include "console/commands.hpp"

#include "core/journal/json_out.hpp"
#include "sync/server/control_socket.hpp"
#include "sync/server/device.hpp"
#include "sync/server/serving.hpp"
#include "sync/server/summary_words.hpp"

#include <sys/stat.h>

namespace bullace::console {

using journal::JsonObject;

namespace {

std::string summaryJson(const sync::Summary& summary) {
    return JsonObject()
        .truth("complete", summary.isComplete)
        .count("sent", summary.sentEntries)
        .count("new_there", summary.newThere)
        .count("received", summary.receivedEntries)
        .count("new_here", summary.newHere)
        .count("photos_sent", summary.photosSent)
        .count("photos_received", summary.photosReceived)
        .count("bytes_sent", summary.bytesSent)
        .count("bytes_received", summary.bytesReceived)
        .number("clock_difference_ms", summary.clockDifferenceMs)
        .truth("took_new_epoch", summary.needsNewEpoch)
        .count("forked", summary.forked.size())
        .done();
}

bool isThere(const std::string& path) {
    struct stat status {};
    return ::stat(path.c_str(), &status) == 0;
}

} // namespace

int askOffice(const std::string& path,
              const server::OfficeRequest& request,
              std::istream& in,
              Terminal& terminal) {
    Ticker ticker(terminal, "Lines");
    const server::OfficeStreams streams{in, terminal.out, terminal.err, ticker.progress()};
    const auto database = openForWriting(path, terminal);
    if (database) {
        return server::Office(**database, server::wallNow, {}).run(request, streams);
    }
    if (database.error().code != ErrorCode::InUse) {
        return tellFailure(terminal.err, database.error());
    }
    const auto status = server::askServer(path, request, streams);
    if (status) {
        return *status;
    }
    // Held, but by no server: by a desk or another command.
    return tellFailure(terminal.err,
                       status.error().code == ErrorCode::NotFound ? database.error()
                                                                  : status.error());
}

int serve(const ServeOptions& options, Terminal& terminal) {
    return server::serveUntilStopped({options.path, options.host, options.port},
                                     {terminal.in, terminal.out, terminal.err});
}

int pair(const PairOptions& options, Terminal& terminal) {
    if (!isThere(options.path)) {
        const auto made = store::Database::create(
            options.path, {store::Role::Field, {}, {}, {}}, store::fileSurroundings());
        if (!made) {
            return tellFailure(terminal.err, made.error());
        }
    }
    const auto journal = openForWriting(options.path, terminal);
    if (!journal) {
        return tellFailure(terminal.err, journal.error());
    }
    const sync::net::Cancel cancel;
    const auto station = server::pairDevice(
        **journal, {options.at, options.code, options.name, options.isOffice ? 's' : 't'}, cancel);
    if (!station) {
        return tellFailure(terminal.err, station.error());
    }
    const std::string origin = (*journal)->about().own.text();
    if (terminal.wantsJson) {
        terminal.out << JsonObject().text("station", *station).text("origin", origin).done()
                     << "\n";
    } else {
        terminal.out << "Paired with " << *station << ". This device writes as " << origin << ".\n";
    }
    return 0;
}

int syncOnce(const SyncOptions& options, Terminal& terminal) {
    const auto journal = openForWriting(options.path, terminal);
    if (!journal) {
        return tellFailure(terminal.err, journal.error());
    }
    Ticker ticker(terminal, "Syncing");
    const store::Progress tell = ticker.progress();
    sync::net::Cancel cancel;
    const server::SyncWish wish{
        options.at, server::wallNow().ms, [&](const sync::Summary& summary) {
            const std::uint64_t done = summary.sentEntries + summary.receivedEntries;
            tell(done, 0);
            if (options.stopAfter && done >= *options.stopAfter) {
                cancel.cut();
            }
        }};
    const sync::net::SyncOutcome outcome = server::syncDevice(**journal, wish, cancel);
    if (terminal.wantsJson) {
        terminal.out << summaryJson(outcome.summary) << "\n";
    } else if (outcome.status ||
               outcome.summary.sentEntries + outcome.summary.receivedEntries > 0) {
        terminal.out << "Sync: " << server::summaryWords(outcome.summary) << "\n";
    }
    if (outcome.summary.needsNewEpoch) {
        terminal.err << "bullace: this journal was restored or copied; from now on it writes as "
                     << (*journal)->about().own.text() << ". All entries are kept.\n";
    }
    return outcome.status ? 0 : tellFailure(terminal.err, outcome.status.error());
}

} // namespace bullace::console
