// What stands behind the desk's screen: the database that it writes, on a thread of its own, and
// readers on three more, so that the screen never waits for the disk.
#pragma once

#include "office/act.hpp"

#include "sync/net/client.hpp"
#include "sync/net/worker.hpp"
#include "sync/server/station.hpp"

#include <atomic>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace bullace::office {

struct DeskOptions {
    std::string path;
    std::string address = "::";
    std::uint16_t port = sync::kDefaultPort;
};

// Asked now and then by a long reading: true when nobody waits for its answer any more.
class Token {
public:
    Token() : isCancelled_(std::make_shared<std::atomic<bool>>(false)) {}
    void cancel() { *isCancelled_ = true; }
    [[nodiscard]] bool isCancelled() const { return *isCancelled_; }

private:
    std::shared_ptr<std::atomic<bool>> isCancelled_;
};

// A page is never read behind a pass over the whole station, and nothing behind a backup, which
// takes many seconds.
enum class Lane { Page, Background, Backup };
inline constexpr std::size_t kLanes = 3;

class Desk {
public:
    using Task = std::function<void(store::Database&)>;
    using Reading = std::function<void(Result<store::Database*>)>;

    // Opens a station's database, or the journal of an office device that is paired with a station
    // elsewhere. `log` is called from several threads. Errors: those of opening a file; Refused for
    // a field device's journal.
    [[nodiscard]] static Result<std::unique_ptr<Desk>>
    open(DeskOptions options, const Clock& clock, server::LogLine log);
    // A database that cannot be written is still looked at. Errors: those of opening for reading.
    [[nodiscard]] static Result<std::unique_ptr<Desk>> openForReading(DeskOptions options,
                                                                      const Clock& clock);
    // Batches in hand are stored first; at most ten seconds.
    ~Desk();
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;
    Desk(Desk&&) = delete;
    Desk& operator=(Desk&&) = delete;

    [[nodiscard]] const store::About& about() const { return about_; }
    [[nodiscard]] const std::string& path() const { return options_.path; }
    [[nodiscard]] const Clock& clock() const { return clock_; }
    [[nodiscard]] bool isStation() const { return station_ != nullptr; }
    [[nodiscard]] bool isReadOnly() const { return station_ == nullptr && journal_ == nullptr; }

    // Posts a task to the thread that writes; tasks are done in their order. Not where the desk is
    // read-only.
    void write(Task task);
    // Posts a task that has the server and may wait for it: listening, pairing, revoking.
    void serve(std::function<void(server::Station&)> task);
    // Of an office device: syncs with the station it is paired with, on a thread of its own; what
    // is written here meanwhile has its turn between the steps. `then` is called on that thread.
    // Not where the desk is a station's or read-only.
    void syncWithStation(std::function<void(const sync::net::SyncOutcome&)> then);
    // Posts a reading of the file as it is when its turn comes; what was written before is seen.
    // Where the token is cancelled by then it is told so (Cancelled), and nothing is read.
    void read(Lane lane, Token token, Reading reading);
    // Waits until all that was posted is done: for the end of a program, and for tests.
    void finish();

private:
    Desk(DeskOptions options, const Clock& clock);
    // Returns when the writer has done it.
    void doOnWriter(const std::function<void()>& task);
    struct Reader {
        std::unique_ptr<store::Database> database;
        std::unique_ptr<sync::net::Worker> worker;
    };
    [[nodiscard]] Result<store::Database*> fresh(Reader& reader) const;

    DeskOptions options_;
    const Clock& clock_;
    store::About about_;
    std::unique_ptr<server::Station> station_;
    std::unique_ptr<store::Database> journal_; // of an office device
    Reader readers_[kLanes];
    sync::net::Cancel closing_;                 // ends a sync when the desk is closed
    std::unique_ptr<sync::net::Worker> dialer_; // of an office device
    std::unique_ptr<sync::net::Worker> writer_; // last: its tasks use the others
};

} // namespace bullace::office
