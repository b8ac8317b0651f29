// What a session asks of its database, as values: the driver carries them to the thread that owns
// the database, performs them there in the order given, and brings the answers back in the same
// order.
#pragma once

#include "core/base/result.hpp"
#include "core/journal/exchange.hpp"
#include "sync/protocol/messages.hpp"
#include "sync/protocol/replica.hpp"

#include <cstdint>
#include <variant>
#include <vector>

namespace bullace::sync {

// Client: what do I hold?
struct GreetAsk {};
struct Greeting {
    HistoryId history{};
    bool lacksPhotos = false;
    journal::Vector ends;
};

// Station: how does what the client holds compare with what I hold?
struct CompareAsk {
    Hello hello;
};
struct Comparison {
    bool isEqual = false;
    HistoryId history{};
    std::uint32_t greatestEpoch = 0;
    bool lacksPhotos = false;
    std::vector<bool> held; // for each end of the client's
    journal::Vector ends;   // ours, of the origins that differ
};

// Client: what of the station's do I lack, and what have I to send?
struct ClientPlanAsk {
    char letter = 't';
    std::uint64_t device = 0;
    bool isRelay = false;
    journal::Vector mine;
    std::vector<bool> heldThere; // for each of mine
    journal::Vector theirs;
};

// Station: what of mine does the client lack?
struct StationPlanAsk {
    journal::Vector theirs;
    std::vector<bool> heldHere; // for each of theirs
    journal::Vector listed;     // ours, as the reply listed them
    std::vector<std::uint32_t> wanted;
};

struct Plan {
    std::vector<std::uint32_t> wanted; // client: numbers of the station's ends that it lacks
    std::vector<Part> parts;           // to be sent
};

struct ReadAsk {
    std::vector<Part> parts; // read one after the other until a batch is full
    std::size_t mostEntries = 0;
    std::size_t mostBytes = 0; // as they are sent, heads of the runs included
};
struct ReadBatch {
    journal::Batch runs;
    std::size_t partsRead = 0;            // of the ask's parts, wholly
    std::uint64_t nextFrom = 0;           // in the part behind them; 0: it was not begun
    std::vector<journal::Origin> damaged; // at most one: it could not be read, and ends here
};

struct StoreAsk {
    journal::Batch runs;
    Sender sender;
};
struct Stored {
    std::vector<journal::RunReport> runs;
};

struct LackedAsk {
    Digest after;
    std::size_t most = 0;
};
struct Lacked {
    std::vector<LackedPhoto> photos;
};

struct PieceReadAsk {
    Digest photo;
    std::uint64_t offset = 0;
};
struct PieceStoreAsk {
    Piece piece;
};
struct PieceStored {
    bool isDamaged = false; // the photo was not what its name says
};

using AskBody = std::variant<GreetAsk,
                             CompareAsk,
                             ClientPlanAsk,
                             StationPlanAsk,
                             ReadAsk,
                             StoreAsk,
                             LackedAsk,
                             PieceReadAsk,
                             PieceStoreAsk>;
using AnswerBody =
    std::variant<Error, Greeting, Comparison, Plan, ReadBatch, Stored, Lacked, Piece, PieceStored>;

struct Ask {
    std::uint64_t ticket = 0;
    AskBody body;
};

// `ticket` is the ask's.
struct Answer {
    std::uint64_t ticket = 0;
    AnswerBody body;
};

// Whether an origin may be pushed by a device without being asked to relay: its own epochs; a
// device paired as `s` may also push what it wrote as `t`.
[[nodiscard]] bool isOwnOrigin(const journal::Origin& origin, char letter, std::uint64_t device);

// Does what is asked. Called on the thread that owns the database.
[[nodiscard]] Answer perform(Replica& replica, const Ask& ask);

} // namespace bullace::sync
