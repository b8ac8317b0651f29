// Bytes as frames: every message, and whole sessions of both roles over a small replica.
#include "fuzz/target.hpp"
#include "sync_tests/model_replica.hpp"

#include "sync/protocol/pairing.hpp"
#include "sync/protocol/session.hpp"

#include <deque>
#include <memory>

using namespace bullace;
using namespace bullace::sync;

namespace {

// A payload that is read as a message is what that message would be sent as.
template<typename Message>
void checkMessage(FrameType type, BytesView payload, std::optional<Message> (*decode)(BytesView)) {
    if (const std::optional<Message> message = decode(payload)) {
        fuzz::promise(encode(*message) == frame(type, payload),
                      "a message read and sent again is the same bytes");
    }
}

// Some messages may grow: what stands behind what we know is passed over.
template<typename Message>
void checkGrowingMessage(FrameType type,
                         BytesView payload,
                         std::optional<Message> (*decode)(BytesView)) {
    if (const std::optional<Message> message = decode(payload)) {
        const Bytes sent = encode(*message);
        fuzz::promise(frame(type, payload).substr(5).starts_with(BytesView(sent).substr(5)),
                      "a message read and sent again is the beginning of what came");
    }
}

void checkMessages(BytesView payload) {
    // Of a greeting in another version only the two bytes of the versions are read.
    const bool isOurs = payload.size() > 1 && payload[0] <= kGreatestVersion && payload[0] > 0 &&
                        static_cast<std::uint8_t>(payload[1]) >= kLeastVersion;
    if (isOurs) {
        checkMessage<Hello>(FrameType::Hello, payload, decodeHello);
        checkMessage<PairHello>(FrameType::PairHello, payload, decodePairHello);
    } else {
        static_cast<void>(decodeHello(payload));
        static_cast<void>(decodePairHello(payload));
    }
    checkMessage<Equal>(FrameType::Equal, payload, decodeEqual);
    checkMessage<HelloReply>(FrameType::HelloReply, payload, decodeHelloReply);
    checkMessage<Want>(FrameType::Want, payload, decodeWant);
    checkMessage<Ack>(FrameType::Ack, payload, decodeAck);
    checkMessage<End>(FrameType::End, payload, decodeEnd);
    checkMessage<PieceWant>(FrameType::PieceWant, payload, decodePieceWant);
    checkMessage<Piece>(FrameType::Piece, payload, decodePiece);
    checkGrowingMessage<Goodbye>(FrameType::Goodbye, payload, decodeGoodbye);
    checkMessage<PairOk>(FrameType::PairOk, payload, decodePairOk);
    checkMessage<PairNo>(FrameType::PairNo, payload, decodePairNo);
    if (const auto batch = decodeBatch(payload)) {
        fuzz::promise(encodeBatch(batch->number, batch->runs) == frame(FrameType::Batch, payload),
                      "a batch read and sent again is the same bytes");
    }
}

constexpr journal::Origin kOwn{'t', 7, 1};

// Drives a session with the bytes that came, and does what it asks.
class Driver {
public:
    explicit Driver(std::unique_ptr<Session> session) : session_(std::move(session)) {
        replica_.write(kOwn, 3);
        replica_.write({'s', 9, 1}, 2);
    }

    void run(BytesView bytes) {
        take(session_->start(0));
        while (!isClosed_ && !bytes.empty()) {
            settle();
            if (!session_->wantsInput()) {
                break;
            }
            const std::size_t part = std::min<std::size_t>(bytes.size(), 700);
            take(session_->onBytes(bytes.substr(0, part), 1));
            bytes.remove_prefix(part);
        }
        settle();
        if (!isClosed_) {
            take(session_->onBroken({ErrorCode::Network, "The line broke.", {}}, 2));
        }
        fuzz::promise(isClosed_, "a session whose line broke is over");
    }

private:
    void settle() {
        while (!isClosed_ && !asks_.empty()) {
            const Ask ask = std::move(asks_.front());
            asks_.pop_front();
            take(session_->onAnswer(perform(replica_, ask), 1));
        }
    }

    void take(Actions actions) {
        for (Action& action : actions) {
            if (auto* ask = std::get_if<Ask>(&action)) {
                asks_.push_back(std::move(*ask));
            } else if (std::holds_alternative<Close>(action)) {
                isClosed_ = true;
            } else if (!isClosed_) {
                take(session_->onSent(std::get<Send>(action).bytes.size(), 1));
            }
        }
    }

    test::ModelReplica replica_;
    std::unique_ptr<Session> session_;
    std::deque<Ask> asks_;
    bool isClosed_ = false;
};

} // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) {
        return 0;
    }
    const BytesView bytes(reinterpret_cast<const char*>(data + 1), size - 1);
    if (data[0] % 3 == 0) {
        checkMessages(bytes);
    } else if (data[0] % 3 == 1) {
        Driver(std::make_unique<StationSession>(StationSetup{'t', 7, 0}, 0)).run(bytes);
    } else {
        Driver(std::make_unique<ClientSession>(ClientSetup{'t', 7, kOwn, {}, 0}, 0)).run(bytes);
    }
    return 0;
}
