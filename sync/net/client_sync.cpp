// syncOnce(): the network on a thread of its own, the database on the caller's.
#include "sync/net/client.hpp"
#include "sync/net/dialing.hpp"

#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>
#include <utility>

namespace bullace::sync::net {

namespace {

// What the network thread hands to the caller's: asks, with what has been done so far.
struct Request {
    Ask ask;
    Summary summary;
};

class Syncing {
public:
    Syncing(const SyncOptions& options,
            std::unique_ptr<asio::ssl::context> context,
            const Cancel& cancel)
        : options_(options),
          cancel_(cancel),
          dialing_(std::move(context), options.place, options.stationKey, Purpose::Sync, cancel) {}

    SyncOutcome run(Replica& replica, const std::function<void(const Summary&)>& progress);

private:
    static awaitable<void> talking(Syncing& self);
    void beginSession();
    void serveNetwork();
    std::optional<Request> next();
    void finish(Status status);

    const SyncOptions& options_;
    const Cancel& cancel_;
    Dialing dialing_;
    std::shared_ptr<Link> link_;
    SyncOutcome outcome_;

    std::mutex mutex_;
    std::condition_variable wake_;
    std::deque<Request> requests_;
    bool isOver_ = false;
};

SyncOutcome Syncing::run(Replica& replica, const std::function<void(const Summary&)>& progress) {
    auto& io = dialing_.io();
    asio::co_spawn(io, talking(*this), asio::detached);
    asio::co_spawn(io, dialing_.watch(), asio::detached);
    std::thread network([this] { serveNetwork(); });
    while (auto request = next()) {
        auto answer = std::make_shared<Answer>(performOnDevice(replica, request->ask));
        asio::post(io, [this, answer] { link_->answer(std::move(*answer)); });
        if (progress) {
            progress(request->summary);
        }
        if (cancel_.isCut()) {
            asio::post(io, [this] { link_->cut(); });
        }
    }
    network.join();
    return std::move(outcome_);
}

void Syncing::serveNetwork() {
    try {
        dialing_.io().run();
    } catch (const std::exception& failure) {
        finish(Error{ErrorCode::Internal,
                     "There is too little memory for a sync. Close other programs and sync again.",
                     failure.what()});
    }
}

std::optional<Request> Syncing::next() {
    std::unique_lock lock(mutex_);
    wake_.wait(lock, [this] { return isOver_ || !requests_.empty(); });
    if (requests_.empty() || isOver_) {
        return std::nullopt;
    }
    Request request = std::move(requests_.front());
    requests_.pop_front();
    return request;
}

void Syncing::finish(Status status) {
    const std::lock_guard lock(mutex_);
    if (!isOver_) {
        outcome_.status = std::move(status);
        isOver_ = true;
    }
    wake_.notify_one();
}

void Syncing::beginSession() {
    ClientSetup setup;
    setup.letter = options_.letter;
    setup.device = options_.device;
    setup.current = options_.current;
    setup.knownHistory = options_.knownHistory;
    setup.wallMs = wallNow();
    Link::Hooks hooks;
    hooks.ask = [this](Ask ask) {
        const std::lock_guard lock(mutex_);
        requests_.push_back({std::move(ask), link_->summary()});
        wake_.notify_one();
    };
    hooks.closed = [this](const Status& status) {
        outcome_.summary = link_->summary();
        outcome_.status = status;
    };
    hooks.describe = [this](const error_code& error) { return dialing_.describe(error); };
    link_ = std::make_shared<Link>(dialing_.stream(),
                                   std::make_unique<ClientSession>(setup, monotonicNow()),
                                   std::move(hooks));
    dialing_.onTick([this] {
        if (dialing_.isCancelled()) {
            link_->stop(Reason::Closing);
        }
        link_->tick();
    });
}

awaitable<void> Syncing::talking(Syncing& self) {
    Status status = co_await self.dialing_.connect();
    if (status) {
        self.beginSession();
        co_await self.link_->run(self.link_);
        status = self.outcome_.status;
    }
    self.dialing_.end();
    self.finish(std::move(status));
}

} // namespace

SyncOutcome syncOnce(const SyncOptions& options,
                     Replica& replica,
                     const std::function<void(const Summary&)>& progress,
                     const Cancel& cancel) {
    auto context = makeContext(options.identity);
    if (!context) {
        return {context.error(), {}};
    }
    Syncing syncing(options, std::move(*context), cancel);
    return syncing.run(replica, progress);
}

} // namespace bullace::sync::net
