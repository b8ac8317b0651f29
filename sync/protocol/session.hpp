// One sync between a device (the client) and a station, as a state machine without socket, clock,
// thread or database: bytes, answers and ticks go in, actions come out.
//
// A driver keeps to this: it calls start() once; hands in what comes (onBytes) only while
// wantsInput(); carries each Ask to perform() and brings the answers back in the order of the asks;
// writes each Send in order and tells with onSent() how much was written; calls onTick() at least
// once a second; on Close writes what is still waiting, shuts the connection down in order, and
// calls nothing more. A connection that ends without a Close of ours is broken.
// After every session, also one that failed, a device looks at summary().needsNewEpoch; the history
// it remembers only where summary().mayRememberHistory().
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/result.hpp"
#include "sync/protocol/asks.hpp"
#include "sync/protocol/deadlines.hpp"
#include "sync/protocol/frames.hpp"
#include "sync/protocol/messages.hpp"
#include "sync/protocol/outgoing.hpp"
#include "sync/protocol/photo_fetch.hpp"
#include "sync/protocol/summary.hpp"

#include <cstdint>
#include <deque>
#include <variant>
#include <vector>

namespace bullace::sync {

// Bytes to be written to the other side.
struct Send {
    Bytes bytes;
};

// The session is over. ok(): all went through, see summary(). Otherwise the message is for a
// person.
struct Close {
    Status status;
};

using Action = std::variant<Send, Ask, Close>;
using Actions = std::vector<Action>;

class Session {
public:
    virtual ~Session() = default;
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;

    virtual Actions start(Millis now) = 0;
    Actions onBytes(BytesView bytes, Millis now);
    Actions onAnswer(Answer answer, Millis now);
    Actions onSent(std::size_t bytes, Millis now);
    Actions onTick(Millis now);

    // Ends the session soon: batches that are being stored are acknowledged first.
    Actions onStop(Reason reason, Millis now);
    // The connection broke (truncated TLS included). Gives a Close with this error.
    Actions onBroken(Error error, Millis now);

    // False while what was taken in has still to be worked off: the driver reads nothing then.
    [[nodiscard]] bool wantsInput() const;
    [[nodiscard]] bool isClosed() const { return isClosed_; }
    [[nodiscard]] const Summary& summary() const { return summary_; }

protected:
    Session(Millis now, Millis firstFrameMs);

    // What the roles do differently.
    virtual void onGreeting(const FrameView& frame) = 0; // before entries flow
    virtual void onPlanning(AnswerBody answer) = 0;      // answers before entries flow
    [[nodiscard]] virtual bool accepts(const journal::Origin& origin) const = 0;
    [[nodiscard]] virtual Sender sender() const = 0;
    virtual void noteForked(const journal::Origin& origin) = 0;

    void send(Bytes frame);
    void ask(AskBody body);
    // Entries flow from here on. Nothing flows (both ends are as if sent) where there are only
    // photos.
    void beginFlow(std::vector<Part> parts);
    void beginPhotosOnly();
    void finish();
    void fail(Error error);
    // Says goodbye with that reason and its standard text, and closes with an error of the same.
    void quit(Reason reason);
    void pump();
    [[nodiscard]] Millis now() const { return now_; }
    [[nodiscard]] Actions take();

    Summary summary_;

private:
    void drain();
    void onFlowFrame(const FrameView& frame);
    void onBatch(BytesView payload);
    void onAck(BytesView payload);
    void onEnd(BytesView payload);
    void onPieceWant(BytesView payload);
    void onPiece(BytesView payload);
    void onGoodbye(BytesView payload);
    void onFlowAnswer(AnswerBody answer);
    void onStored(const std::vector<journal::RunReport>& reports);
    void onFailedAnswer(const Error& error);
    void acknowledge(const std::vector<journal::RunReport>& reports);
    void pumpPhotos();
    void pumpDone();
    [[nodiscard]] bool hasReceivedAll() const;

    struct Storing {
        std::uint64_t number = 0;
        std::vector<journal::Origin> origins;
        std::uint64_t entries = 0;
        bool isAcknowledged = false; // only ever by a deliberate bug
    };

    FrameReader reader_{kFrameBytes};
    Deadlines deadlines_;
    Millis now_;
    Actions actions_;
    std::uint64_t nextTicket_ = 1;
    std::deque<std::uint64_t> tickets_; // asked, not yet answered
    std::size_t outbound_ = 0;

    Outgoing outgoing_;
    PhotoFetch photos_;
    std::deque<Storing> storing_;
    std::size_t piecesToSend_ = 0;
    End received_;
    bool isFlowing_ = false;
    bool isEndSent_ = false;
    bool isEndReceived_ = false;
    bool isDoneSent_ = false;
    bool isDoneReceived_ = false;
    bool isClosed_ = false;
    std::uint8_t stopReason_ = 0; // of Reason, once stopping
};

struct ClientSetup {
    char letter = 't'; // as paired
    std::uint64_t device = 0;
    journal::Origin current;  // what the device writes into now
    HistoryId knownHistory{}; // of the last complete sync with this station; zero: none
    std::int64_t wallMs = 0;  // the device's clock at start(), UTC
};

class ClientSession final : public Session {
public:
    ClientSession(const ClientSetup& setup, Millis now);
    Actions start(Millis now) override;

private:
    void onGreeting(const FrameView& frame) override;
    void onPlanning(AnswerBody answer) override;
    [[nodiscard]] bool accepts(const journal::Origin& origin) const override;
    [[nodiscard]] Sender sender() const override { return {Way::FromStation, 't', 0}; }
    void noteForked(const journal::Origin& origin) override;

    void greet(const Greeting& greeting);
    void onEqual(const Equal& equal);
    void onReply(HelloReply reply);
    void onPlan(Plan plan);
    void noteStation(const StationWord& word);
    void demandEpoch();

    enum class State { Asking, AwaitingReply, Planning, Flowing };
    State state_ = State::Asking;
    ClientSetup setup_;
    Millis helloAt_ = 0;
    bool lacksPhotos_ = false;
    journal::Vector mine_;
    journal::Vector theirs_;
    std::vector<journal::Origin> wanted_; // ascending
};

struct StationSetup {
    char letter = 't'; // of the device whose key it is, as paired
    std::uint64_t device = 0;
    std::int64_t wallMs = 0; // the station's clock at start(), UTC
};

class StationSession final : public Session {
public:
    StationSession(const StationSetup& setup, Millis now);
    Actions start(Millis now) override;

private:
    void onGreeting(const FrameView& frame) override;
    void onPlanning(AnswerBody answer) override;
    [[nodiscard]] bool accepts(const journal::Origin& origin) const override;
    [[nodiscard]] Sender sender() const override;
    void noteForked(const journal::Origin& /*origin*/) override {}

    void onHello(Hello hello);
    void onComparison(Comparison comparison);
    void onWant(const Want& want);

    enum class State { AwaitingHello, Comparing, AwaitingWant, Planning, Flowing };
    State state_ = State::AwaitingHello;
    StationSetup setup_;
    Millis startedAt_;
    HistoryId knownHistory_{};
    bool isRelay_ = false;
    bool clientLacksPhotos_ = false;
    journal::Vector theirs_;
    std::vector<bool> held_;
    journal::Vector listed_;
};

// What a goodbye with that reason says to a person, and the code it stands for.
[[nodiscard]] Error goodbyeError(std::uint8_t reason);

} // namespace bullace::sync
