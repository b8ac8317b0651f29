#include "sync/protocol/messages.hpp"

#include "sync/protocol/frames.hpp"
#include "sync/protocol/limits.hpp"

#include <algorithm>

namespace bullace::sync {

namespace {

constexpr std::size_t kLeastEndBytes = 1 + 8 + 1 + 1 + 32;
constexpr std::size_t kLeastRunBytes = 1 + 8 + 1 + 1 + 1 + 32;
constexpr std::uint8_t kLacksPhotosFlag = 1;
constexpr std::uint8_t kRelayFlag = 2;
constexpr std::uint8_t kForkedFlag = 0x10;
constexpr std::uint64_t kMostBatches = std::uint64_t{1} << 48U;

std::uint8_t flag(bool isSet, std::uint8_t bit) {
    return isSet ? bit : std::uint8_t{0};
}

void writeEnds(WireWriter& out, const journal::Vector& ends) {
    out.count(ends.size());
    for (const journal::BranchEnd& end : ends) {
        out.end(end);
    }
}

journal::Vector readEnds(WireReader& in) {
    journal::Vector ends;
    const std::size_t number = in.items(kVectorEnds, kLeastEndBytes);
    ends.reserve(number);
    for (std::size_t i = 0; i < number && !in.failed(); ++i) {
        ends.push_back(in.end());
        if (i > 0 && !(ends[i - 1] < ends[i])) {
            in.fail();
        }
    }
    return ends;
}

void writeStation(WireWriter& out, const StationWord& word, std::uint8_t flags) {
    out.byte(word.version);
    out.history(word.history);
    out.moment(word.wallMs);
    out.count(word.greatestEpoch);
    out.byte(static_cast<std::uint8_t>(flags | flag(word.lacksPhotos, kLacksPhotosFlag)));
}

// `known` are the flags that the message may have.
std::uint8_t readStation(WireReader& in, StationWord& word, std::uint8_t known) {
    word.version = in.byte();
    word.history = in.history();
    word.wallMs = in.moment();
    word.greatestEpoch = static_cast<std::uint32_t>(in.count(journal::kGreatestEpoch));
    const std::uint8_t flags = in.byte();
    word.lacksPhotos = (flags & kLacksPhotosFlag) != 0;
    if ((flags & ~known) != 0 || word.version < kLeastVersion || word.version > kGreatestVersion) {
        in.fail();
    }
    return flags;
}

void writeBits(WireWriter& out, const std::vector<bool>& bits) {
    out.count(bits.size());
    for (std::size_t start = 0; start < bits.size(); start += 8) {
        unsigned byte = 0;
        for (std::size_t i = start; i < std::min(start + 8, bits.size()); ++i) {
            byte |= (bits[i] ? 1U : 0U) << (i - start);
        }
        out.byte(static_cast<std::uint8_t>(byte));
    }
}

std::vector<bool> readBits(WireReader& in) {
    const auto number = static_cast<std::size_t>(in.count(kVectorEnds));
    const BytesView bytes = in.raw((number + 7) / 8);
    if (in.failed()) {
        return {};
    }
    std::vector<bool> bits(number);
    for (std::size_t i = 0; i < bytes.size() * 8; ++i) {
        const bool isSet = (static_cast<unsigned char>(bytes[i / 8]) >> (i % 8) & 1U) != 0;
        if (i < number) {
            bits[i] = isSet;
        } else if (isSet) {
            in.fail(); // bits behind the last one are 0
        }
    }
    return bits;
}

template<typename T>
std::optional<T> whole(const WireReader& in, T message) {
    return in.isWhole() ? std::optional<T>(std::move(message)) : std::nullopt;
}

journal::Run readRun(WireReader& in, std::size_t entriesLeft) {
    journal::Run run;
    run.origin = in.origin();
    run.first = in.count(kGreatestSeq);
    const std::size_t number = in.items(entriesLeft, 2);
    run.lastDigest = in.digest();
    if (run.first == 0 || number == 0 || run.first + number - 1 > kGreatestSeq) {
        in.fail();
        return run;
    }
    run.entries.reserve(number);
    for (std::size_t i = 0; i < number && !in.failed(); ++i) {
        const auto size = static_cast<std::size_t>(in.count(journal::kGreatestEntryBytes));
        if (size == 0) {
            in.fail();
        }
        run.entries.emplace_back(in.raw(size));
    }
    return run;
}

} // namespace

Bytes encode(const Hello& message) {
    Bytes payload;
    WireWriter out(payload);
    out.byte(message.leastVersion);
    out.byte(message.greatestVersion);
    out.byte(static_cast<std::uint8_t>(message.letter));
    out.fixed64(message.device);
    out.history(message.knownHistory);
    out.moment(message.wallMs);
    out.byte(flag(message.lacksPhotos, kLacksPhotosFlag));
    writeEnds(out, message.ends);
    return frame(FrameType::Hello, payload);
}

std::optional<Hello> decodeHello(BytesView payload) {
    WireReader in(payload);
    Hello hello;
    hello.leastVersion = in.byte();
    hello.greatestVersion = in.byte();
    if (hello.leastVersion > hello.greatestVersion || in.failed()) {
        return std::nullopt;
    }
    if (hello.leastVersion > kGreatestVersion || hello.greatestVersion < kLeastVersion) {
        return hello;
    }
    hello.letter = static_cast<char>(in.byte());
    hello.device = in.fixed64();
    hello.knownHistory = in.history();
    hello.wallMs = in.moment();
    const std::uint8_t flags = in.byte();
    hello.lacksPhotos = flags == kLacksPhotosFlag;
    if ((flags & ~kLacksPhotosFlag) != 0) {
        in.fail();
    }
    hello.ends = readEnds(in);
    return whole(in, std::move(hello));
}

Bytes encode(const Equal& message) {
    Bytes payload;
    WireWriter out(payload);
    writeStation(out, message.station, 0);
    return frame(FrameType::Equal, payload);
}

std::optional<Equal> decodeEqual(BytesView payload) {
    WireReader in(payload);
    Equal equal;
    readStation(in, equal.station, kLacksPhotosFlag);
    return whole(in, equal);
}

Bytes encode(const HelloReply& message) {
    Bytes payload;
    WireWriter out(payload);
    writeStation(out, message.station, flag(message.isRelay, kRelayFlag));
    writeBits(out, message.held);
    writeEnds(out, message.ends);
    return frame(FrameType::HelloReply, payload);
}

std::optional<HelloReply> decodeHelloReply(BytesView payload) {
    WireReader in(payload);
    HelloReply reply;
    const std::uint8_t flags = readStation(in, reply.station, kLacksPhotosFlag | kRelayFlag);
    reply.isRelay = (flags & kRelayFlag) != 0;
    reply.held = readBits(in);
    reply.ends = readEnds(in);
    return whole(in, std::move(reply));
}

Bytes encode(const Want& message) {
    Bytes payload;
    WireWriter out(payload);
    out.count(message.ends.size());
    for (const std::uint32_t number : message.ends) {
        out.count(number);
    }
    return frame(FrameType::Want, payload);
}

std::optional<Want> decodeWant(BytesView payload) {
    WireReader in(payload);
    Want want;
    const std::size_t number = in.items(kVectorEnds, 1);
    want.ends.reserve(number);
    for (std::size_t i = 0; i < number && !in.failed(); ++i) {
        want.ends.push_back(static_cast<std::uint32_t>(in.count(kVectorEnds - 1)));
        if (i > 0 && want.ends[i - 1] >= want.ends[i]) {
            in.fail();
        }
    }
    return whole(in, std::move(want));
}

Bytes encodeBatch(std::uint64_t number, const journal::Batch& batch) {
    std::size_t size = 64;
    for (const journal::Run& run : batch) {
        size += 64;
        for (const Bytes& entry : run.entries) {
            size += entry.size() + 3;
        }
    }
    Bytes payload;
    payload.reserve(size);
    WireWriter out(payload);
    out.count(number);
    out.count(batch.size());
    for (const journal::Run& run : batch) {
        out.origin(run.origin);
        out.count(run.first);
        out.count(run.entries.size());
        out.digest(run.lastDigest);
        for (const Bytes& entry : run.entries) {
            out.text(entry);
        }
    }
    return frame(FrameType::Batch, payload);
}

std::optional<NumberedBatch> decodeBatch(BytesView payload) {
    if (payload.size() >= kBatchBytes) {
        return std::nullopt;
    }
    WireReader in(payload);
    NumberedBatch batch;
    batch.number = in.count(kMostBatches);
    const std::size_t runs = in.items(kBatchRuns, kLeastRunBytes);
    batch.runs.reserve(runs);
    for (std::size_t i = 0; i < runs && !in.failed(); ++i) {
        batch.runs.push_back(readRun(in, kBatchEntries - static_cast<std::size_t>(batch.entries)));
        batch.entries += batch.runs.back().entries.size();
    }
    return runs == 0 ? std::nullopt : whole(in, std::move(batch));
}

Bytes encode(const Ack& message) {
    Bytes payload;
    WireWriter out(payload);
    out.count(message.number);
    out.count(message.runs.size());
    for (const journal::RunReport& run : message.runs) {
        out.byte(static_cast<std::uint8_t>(static_cast<std::uint8_t>(run.outcome) |
                                           flag(run.isForked, kForkedFlag)));
        out.count(run.added);
    }
    return frame(FrameType::Ack, payload);
}

std::optional<Ack> decodeAck(BytesView payload) {
    WireReader in(payload);
    Ack ack;
    ack.number = in.count(kMostBatches);
    const std::size_t runs = in.items(kBatchRuns, 2);
    ack.runs.reserve(runs);
    for (std::size_t i = 0; i < runs && !in.failed(); ++i) {
        const std::uint8_t byte = in.byte();
        const auto outcome = static_cast<std::uint8_t>(byte & ~kForkedFlag);
        if (outcome > static_cast<std::uint8_t>(journal::RunOutcome::Apart)) {
            in.fail();
        }
        ack.runs.push_back({static_cast<journal::RunOutcome>(outcome),
                            in.count(kBatchEntries),
                            (byte & kForkedFlag) != 0});
    }
    return whole(in, std::move(ack));
}

Bytes encode(const End& message) {
    Bytes payload;
    WireWriter out(payload);
    out.count(message.batches);
    out.count(message.entries);
    return frame(FrameType::End, payload);
}

std::optional<End> decodeEnd(BytesView payload) {
    WireReader in(payload);
    End end;
    end.batches = in.count(kMostBatches);
    end.entries = in.count(kMostBatches);
    return whole(in, end);
}

Bytes encodeDone() {
    return frame(FrameType::Done, {});
}

Bytes encode(const PieceWant& message) {
    Bytes payload;
    WireWriter out(payload);
    out.digest(message.photo);
    out.count(message.offset);
    return frame(FrameType::PieceWant, payload);
}

std::optional<PieceWant> decodePieceWant(BytesView payload) {
    WireReader in(payload);
    PieceWant want;
    want.photo = in.digest();
    want.offset = in.count(kGreatestPhotoBytes);
    return whole(in, want);
}

Bytes encode(const Piece& message) {
    Bytes payload;
    WireWriter out(payload);
    out.digest(message.photo);
    out.count(message.total);
    out.count(message.offset);
    out.text(message.bytes);
    return frame(FrameType::Piece, payload);
}

std::optional<Piece> decodePiece(BytesView payload) {
    WireReader in(payload);
    Piece piece;
    piece.photo = in.digest();
    piece.total = in.count(kGreatestPhotoBytes);
    piece.offset = in.count(kGreatestPhotoBytes);
    piece.bytes = in.raw(static_cast<std::size_t>(in.count(kPieceBytes)));
    if (piece.offset + piece.bytes.size() > piece.total ||
        (piece.total > 0 && piece.bytes.empty())) {
        in.fail();
    }
    return whole(in, std::move(piece));
}

Bytes encode(const Goodbye& message) {
    Bytes payload;
    WireWriter out(payload);
    out.byte(message.reason);
    out.text(message.text);
    return frame(FrameType::Goodbye, payload);
}

std::optional<Goodbye> decodeGoodbye(BytesView payload) {
    WireReader in(payload);
    Goodbye goodbye;
    goodbye.reason = in.byte();
    goodbye.text = in.text(kReasonBytes);
    return in.failed() ? std::nullopt : std::optional<Goodbye>(std::move(goodbye));
}

} // namespace bullace::sync
