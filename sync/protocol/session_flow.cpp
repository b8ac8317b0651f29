// The part of a session in which entries, and behind them photos, go both ways at once.
#include "core/base/planted.hpp"
#include "sync/protocol/session.hpp"

#include <utility>

namespace bullace::sync {

void Session::beginFlow(std::vector<Part> parts) {
    for (const Part& part : parts) {
        summary_.toSend += part.segment.last - part.from + 1;
    }
    outgoing_.begin(std::move(parts));
    isFlowing_ = true;
}

void Session::beginPhotosOnly() {
    outgoing_.begin({});
    isFlowing_ = true;
    isEndSent_ = true;
    isEndReceived_ = true;
}

bool Session::hasReceivedAll() const {
    return isEndReceived_ && storing_.empty();
}

// Starts whatever can be started now.
void Session::pump() {
    if (isClosed_) {
        return;
    }
    if (stopReason_ != 0) {
        if (storing_.empty()) {
            quit(static_cast<Reason>(stopReason_));
        }
        return;
    }
    if (!isFlowing_) {
        return;
    }
    if (auto next = outgoing_.nextRead()) {
        ask(std::move(*next));
    }
    if (outgoing_.isExhausted() && !isEndSent_) {
        isEndSent_ = true;
        send(encode(outgoing_.end()));
    }
    if (hasReceivedAll()) {
        pumpPhotos();
    }
    pumpDone();
}

void Session::pumpPhotos() {
    if (auto list = photos_.nextList()) {
        ask(std::move(*list));
    }
    while (const auto want = photos_.nextWant()) {
        send(encode(*want));
    }
}

void Session::pumpDone() {
    if (!isDoneSent_ && outgoing_.isAcknowledged() && hasReceivedAll() && photos_.isOver()) {
        isDoneSent_ = true;
        send(encodeDone());
    }
    if (isDoneSent_ && isDoneReceived_ && piecesToSend_ == 0) {
        finish();
    }
}

void Session::onFlowFrame(const FrameView& frame) {
    if (isDoneReceived_ && !frame.is(FrameType::Piece)) {
        quit(Reason::BrokenFrame); // behind DONE the other side only answers
    } else if (frame.is(FrameType::Batch)) {
        onBatch(frame.payload);
    } else if (frame.is(FrameType::Ack)) {
        onAck(frame.payload);
    } else if (frame.is(FrameType::End)) {
        onEnd(frame.payload);
    } else if (frame.is(FrameType::PieceWant)) {
        onPieceWant(frame.payload);
    } else if (frame.is(FrameType::Piece)) {
        onPiece(frame.payload);
    } else if (frame.is(FrameType::Done) && frame.payload.empty() && hasReceivedAll()) {
        isDoneReceived_ = true;
    } else {
        quit(Reason::BrokenFrame);
    }
}

void Session::onBatch(BytesView payload) {
    auto batch = decodeBatch(payload);
    if (!batch || isEndReceived_ || batch->number != received_.batches + 1) {
        quit(Reason::BrokenFrame);
        return;
    }
    Storing storing{batch->number, {}, batch->entries, false};
    for (const journal::Run& run : batch->runs) {
        if (!accepts(run.origin)) {
            quit(Reason::NotYours);
            return;
        }
        storing.origins.push_back(run.origin);
    }
    ++received_.batches;
    received_.entries += batch->entries;
    storing_.push_back(std::move(storing));
    if (planted(Bug::AckBeforeCommit)) {
        acknowledge(std::vector<journal::RunReport>(
            batch->runs.size(), journal::RunReport{journal::RunOutcome::Taken, 0, false}));
        storing_.back().isAcknowledged = true;
    }
    ask(StoreAsk{std::move(batch->runs), sender()});
}

void Session::onAck(BytesView payload) {
    const auto ack = decodeAck(payload);
    if (!ack || !outgoing_.onAck(*ack, summary_)) {
        quit(Reason::BrokenFrame);
        return;
    }
    for (const journal::Origin& origin : summary_.forked) {
        noteForked(origin);
    }
}

void Session::onEnd(BytesView payload) {
    const auto end = decodeEnd(payload);
    if (!end || isEndReceived_ || end->batches != received_.batches ||
        end->entries != received_.entries) {
        quit(Reason::BrokenFrame);
        return;
    }
    isEndReceived_ = true;
}

void Session::onPieceWant(BytesView payload) {
    const auto want = decodePieceWant(payload);
    if (!want || piecesToSend_ >= kPiecesAtOnce) {
        quit(Reason::BrokenFrame);
        return;
    }
    ++piecesToSend_;
    ask(PieceReadAsk{want->photo, want->offset});
}

void Session::onPiece(BytesView payload) {
    auto piece = decodePiece(payload);
    bool isToStore = false;
    if (!piece || !photos_.onPiece(*piece, isToStore)) {
        quit(Reason::BrokenFrame);
        return;
    }
    if (isToStore) {
        ask(PieceStoreAsk{std::move(*piece)});
    }
}

void Session::onFlowAnswer(AnswerBody answer) {
    if (auto* read = std::get_if<ReadBatch>(&answer)) {
        if (auto batch = outgoing_.onRead(std::move(*read), summary_)) {
            send(std::move(*batch));
        }
    } else if (const auto* stored = std::get_if<Stored>(&answer)) {
        onStored(stored->runs);
    } else if (const auto* lacked = std::get_if<Lacked>(&answer)) {
        photos_.onList(*lacked);
    } else if (const auto* piece = std::get_if<Piece>(&answer)) {
        --piecesToSend_;
        if (piece->total > 0 && piece->offset + piece->bytes.size() == piece->total) {
            ++summary_.photosSent;
        }
        send(encode(*piece));
    } else if (const auto* pieceStored = std::get_if<PieceStored>(&answer)) {
        photos_.onStored(*pieceStored, summary_);
    }
}

void Session::onStored(const std::vector<journal::RunReport>& reports) {
    if (storing_.empty() || reports.size() != storing_.front().origins.size()) {
        quit(Reason::Failed);
        return;
    }
    const Storing& batch = storing_.front();
    summary_.receivedEntries += batch.entries;
    for (std::size_t i = 0; i < reports.size(); ++i) {
        const journal::RunReport& report = reports[i];
        summary_.newHere += report.added;
        if (report.isForked) {
            noteOnce(summary_.forked, batch.origins[i]);
            noteForked(batch.origins[i]);
        }
        if (report.outcome == journal::RunOutcome::Unlinked) {
            noteOnce(summary_.unlinkedHere, batch.origins[i]);
        } else if (report.outcome == journal::RunOutcome::Apart) {
            noteOnce(summary_.apartHere, batch.origins[i]);
        }
    }
    if (!batch.isAcknowledged) {
        acknowledge(reports);
    }
    storing_.pop_front();
}

void Session::acknowledge(const std::vector<journal::RunReport>& reports) {
    const Storing& batch = planted(Bug::AckBeforeCommit) ? storing_.back() : storing_.front();
    send(encode(Ack{batch.number, reports}));
}

// Our own database failed.
void Session::onFailedAnswer(const Error& error) {
    if (planted(Bug::VectorPastHole) && !storing_.empty()) {
        onStored(std::vector<journal::RunReport>(storing_.front().origins.size(),
                                                 {journal::RunOutcome::Taken, 0, false}));
        return;
    }
    const Reason reason = error.code == ErrorCode::DiskFull ? Reason::NoRoom : Reason::Failed;
    send(encode(Goodbye{static_cast<std::uint8_t>(reason),
                        goodbyeError(static_cast<std::uint8_t>(reason)).message}));
    fail(error);
}

} // namespace bullace::sync
