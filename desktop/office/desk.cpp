#include "office/desk.hpp"

#include "sync/server/device.hpp"

#include <condition_variable>
#include <mutex>
#include <sys/resource.h>
#include <unistd.h>
#include <utility>

namespace bullace::office {

namespace {

// Of the thread that it is called on: the screen's goes first where both have something to do.
void goBehindTheScreen() {
    constexpr int kNice = 10;
    // As it was where that is not allowed.
    static_cast<void>(::setpriority(PRIO_PROCESS, static_cast<id_t>(::gettid()), kNice));
}

} // namespace

Desk::Desk(DeskOptions options, const Clock& clock) : options_(std::move(options)), clock_(clock) {
    for (Reader& reader : readers_) {
        reader.worker = std::make_unique<sync::net::Worker>();
    }
    for (const Lane lane : {Lane::Background, Lane::Backup}) {
        readers_[static_cast<std::size_t>(lane)].worker->post(goBehindTheScreen);
    }
    writer_ = std::make_unique<sync::net::Worker>();
}

Result<std::unique_ptr<Desk>>
Desk::open(DeskOptions options, const Clock& clock, server::LogLine log) {
    // Looked at first, for whose it is.
    auto look = openForReading(options, clock);
    if (!look) {
        return look.error();
    }
    std::unique_ptr<Desk> desk = std::move(*look);
    if (desk->about_.role == store::Role::Station) {
        const auto wall = [&clock] {
            const std::int64_t now = clock.nowMs();
            return journal::Wall{now, clock.minutesFromUtc(now)};
        };
        auto station = server::Station::open(
            {options.path, options.address, options.port}, wall, std::move(log));
        if (!station) {
            return station.error();
        }
        desk->station_ = std::move(*station);
        desk->about_ = desk->station_->about();
        return desk;
    }
    if (desk->about_.own.letter != 's') {
        return Error{ErrorCode::Refused,
                     "\"" + options.path +
                         "\" is a tablet's journal. The desk opens a station's database, or the "
                         "journal of a device that was paired as an office device.",
                     {}};
    }
    auto journal = store::Database::open(options.path, true, store::fileSurroundings());
    if (!journal) {
        return journal.error();
    }
    desk->journal_ = std::move(*journal);
    desk->dialer_ = std::make_unique<sync::net::Worker>();
    desk->about_ = desk->journal_->about();
    return desk;
}

Result<std::unique_ptr<Desk>> Desk::openForReading(DeskOptions options, const Clock& clock) {
    auto first = store::Database::open(options.path, false, store::fileSurroundings());
    if (!first) {
        return first.error();
    }
    std::unique_ptr<Desk> desk(new Desk(std::move(options), clock));
    desk->about_ = (*first)->about();
    (*first)->rest();
    desk->readers_[0].database = std::move(*first);
    return desk;
}

Desk::~Desk() {
    closing_.cancel();
    dialer_.reset(); // its steps are done by the writer
    writer_.reset();
    for (Reader& reader : readers_) {
        reader.worker.reset();
        reader.database.reset();
    }
}

void Desk::write(Task task) {
    writer_->post([this, task = std::move(task)] {
        if (station_ != nullptr) {
            station_->onDatabase(task);
        } else if (journal_ != nullptr) {
            task(*journal_);
        }
    });
}

void Desk::serve(std::function<void(server::Station&)> task) {
    writer_->post([this, task = std::move(task)] {
        if (station_ != nullptr) {
            task(*station_);
        }
    });
}

void Desk::doOnWriter(const std::function<void()>& task) {
    std::mutex mutex;
    std::condition_variable wake;
    bool isDone = false;
    writer_->post([&] {
        task();
        const std::lock_guard lock(mutex);
        isDone = true;
        wake.notify_all();
    });
    std::unique_lock lock(mutex);
    wake.wait(lock, [&isDone] { return isDone; });
}

void Desk::syncWithStation(std::function<void(const sync::net::SyncOutcome&)> then) {
    if (dialer_ == nullptr) {
        return;
    }
    dialer_->post([this, then = std::move(then)] {
        const server::SyncWish wish{
            {}, clock_.nowMs(), {}, [this](const std::function<void()>& task) {
                doOnWriter(task);
            }};
        then(server::syncDevice(*journal_, wish, closing_));
    });
}

Result<store::Database*> Desk::fresh(Reader& reader) const {
    if (reader.database == nullptr) {
        auto opened = store::Database::open(options_.path, false, store::fileSurroundings());
        if (!opened) {
            return opened.error();
        }
        reader.database = std::move(*opened);
        return reader.database.get();
    }
    const Result<bool> isNew = reader.database->refresh();
    if (!isNew) {
        reader.database.reset(); // the next reading opens it anew
        return isNew.error();
    }
    return reader.database.get();
}

void Desk::read(Lane lane, Token token, Reading reading) {
    Reader& reader = readers_[static_cast<std::size_t>(lane)];
    reader.worker->post([this, &reader, token = std::move(token), reading = std::move(reading)] {
        if (token.isCancelled()) {
            reading(Error{ErrorCode::Cancelled, "Nobody waits for this any more.", {}});
            return;
        }
        const Result<store::Database*> database = fresh(reader);
        reading(database);
        if (database) {
            (*database)->rest();
        }
    });
}

void Desk::finish() {
    std::mutex mutex;
    std::condition_variable wake;
    std::size_t done = 0;
    const auto tell = [&] {
        const std::lock_guard lock(mutex);
        ++done;
        wake.notify_one();
    };
    // Readings follow what was written: they are waited for behind it.
    writer_->post([&] {
        for (Reader& reader : readers_) {
            reader.worker->post(tell);
        }
    });
    std::unique_lock lock(mutex);
    wake.wait(lock, [&] { return done == kLanes; });
}

} // namespace bullace::office
