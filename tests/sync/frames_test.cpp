#include "sync/protocol/frames.hpp"

#include "model_replica.hpp"
#include "talk.hpp"

#include "sync/protocol/limits.hpp"
#include "sync/protocol/messages.hpp"
#include "sync/protocol/session.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

using namespace bullace;
using namespace bullace::test;
using sync::FrameReader;
using sync::FrameType;

namespace {

constexpr std::uint64_t kDevice = 0x00c5a91be2f0417d;

Digest digestOf(char c) {
    return sha256(std::string(1, c));
}

journal::Vector someEnds() {
    return {{origin('s', 1), 7, digestOf('a')},
            {origin('t', kDevice), 300, digestOf('b')},
            {origin('t', kDevice), 300, digestOf('c')}};
}

journal::Vector sorted(journal::Vector ends) {
    std::sort(ends.begin(), ends.end());
    return ends;
}

// One frame of every kind, as a session may meet it.
std::vector<Bytes> oneOfEach() {
    sync::Hello hello;
    hello.leastVersion = 1;
    hello.greatestVersion = 1;
    hello.device = kDevice;
    hello.ends = sorted(someEnds());
    sync::StationWord word;
    word.version = 1;
    word.wallMs = 1'700'000'000'000;
    journal::Run run{origin('t', kDevice), 1, {"abc", "defg"}, digestOf('d')};
    return {sync::encode(hello),
            sync::encode(sync::Equal{word}),
            sync::encode(sync::HelloReply{word, true, {true, false, true}, sorted(someEnds())}),
            sync::encode(sync::Want{{0, 2}}),
            sync::encodeBatch(1, {run}),
            sync::encode(sync::Ack{1, {{journal::RunOutcome::Taken, 2, true}}}),
            sync::encode(sync::End{1, 2}),
            sync::encodeDone(),
            sync::encode(sync::PieceWant{digestOf('p'), 65536}),
            sync::encode(sync::Piece{digestOf('p'), 10, 4, "abcdef"}),
            sync::encode(sync::Goodbye{1, "Bye."})};
}

BytesView payloadOf(const Bytes& frame) {
    return BytesView(frame).substr(5);
}

// A station that is as far as a device can bring it: it waits for a WANT.
struct Meeting {
    ModelReplica device;
    ModelReplica station;
    std::unique_ptr<Talk> talk;

    Meeting() {
        device.write(origin('t', kDevice), 3);
        station.write(origin('t', kDevice + 1), 3);
        talk = std::make_unique<Talk>(device, station, setupOf('t', kDevice));
        talk->client.take(talk->client.session->start(talk->now));
        talk->client.answerOne(talk->now);
        give(std::exchange(talk->client.outbox, {}));
        REQUIRE_FALSE(talk->station.outbox.empty());
    }

    void give(BytesView bytes) {
        talk->station.take(talk->station.session->onBytes(bytes, talk->now));
        while (talk->station.answerOne(talk->now)) {
        }
    }
};

} // namespace

TEST_CASE("frames come out whole however the line cuts them") {
    Bytes stream;
    for (const Bytes& frame : oneOfEach()) {
        stream += frame;
    }
    for (const std::size_t piece : {1U, 2U, 3U, 7U, 4096U}) {
        FrameReader reader(sync::kFrameBytes);
        Bytes again;
        for (std::size_t at = 0; at < stream.size(); at += piece) {
            reader.append(BytesView(stream).substr(at, piece));
            while (const auto frame = reader.next()) {
                again += sync::frame(static_cast<FrameType>(frame->type), frame->payload);
            }
        }
        CHECK(again == stream);
        CHECK_FALSE(reader.isOpen());
    }
}

TEST_CASE("a length of nothing or beyond the limit is refused before memory is taken") {
    for (const Bytes& start : {Bytes("\0\0\0\0", 4),
                               Bytes("\xFF\xFF\xFF\xFF", 4),
                               Bytes("\x00\x00\x10\x01", 4),
                               Bytes("\x80\x00\x00\x00", 4)}) {
        FrameReader reader(sync::kFrameBytesUnpaired);
        reader.append(start);
        CHECK_FALSE(reader.next());
        CHECK(reader.isBroken());
        CHECK(reader.heldBytes() < 1024);
    }
}

TEST_CASE("a frame that announces much and brings little takes little memory") {
    FrameReader reader(sync::kFrameBytes);
    reader.append(Bytes("\x00\x07\xFF\xFF\x14", 5));
    CHECK_FALSE(reader.next());
    CHECK_FALSE(reader.isBroken());
    CHECK(reader.heldBytes() < 1024);
}

TEST_CASE("every message reads back as it was written") {
    const auto frames = oneOfEach();
    CHECK(sync::encode(*sync::decodeHello(payloadOf(frames[0]))) == frames[0]);
    CHECK(sync::encode(*sync::decodeEqual(payloadOf(frames[1]))) == frames[1]);
    CHECK(sync::encode(*sync::decodeHelloReply(payloadOf(frames[2]))) == frames[2]);
    CHECK(sync::encode(*sync::decodeWant(payloadOf(frames[3]))) == frames[3]);
    CHECK(sync::encodeBatch(1, sync::decodeBatch(payloadOf(frames[4]))->runs) == frames[4]);
    CHECK(sync::encode(*sync::decodeAck(payloadOf(frames[5]))) == frames[5]);
    CHECK(sync::encode(*sync::decodeEnd(payloadOf(frames[6]))) == frames[6]);
    CHECK(sync::encode(*sync::decodePieceWant(payloadOf(frames[8]))) == frames[8]);
    CHECK(sync::encode(*sync::decodePiece(payloadOf(frames[9]))) == frames[9]);
    CHECK(sync::encode(*sync::decodeGoodbye(payloadOf(frames[10]))) == frames[10]);
}

TEST_CASE("a message that ends too early or goes on too long is refused") {
    const auto frames = oneOfEach();
    for (std::size_t i = 0; i < frames.size(); ++i) {
        if (i == 7 || i == 10) {
            continue; // DONE has no payload; GOODBYE may grow in later versions
        }
        const BytesView payload = payloadOf(frames[i]);
        const auto isRead = [i](BytesView bytes) {
            return i == 0   ? sync::decodeHello(bytes).has_value()
                   : i == 1 ? sync::decodeEqual(bytes).has_value()
                   : i == 2 ? sync::decodeHelloReply(bytes).has_value()
                   : i == 3 ? sync::decodeWant(bytes).has_value()
                   : i == 4 ? sync::decodeBatch(bytes).has_value()
                   : i == 5 ? sync::decodeAck(bytes).has_value()
                   : i == 6 ? sync::decodeEnd(bytes).has_value()
                   : i == 8 ? sync::decodePieceWant(bytes).has_value()
                            : sync::decodePiece(bytes).has_value();
        };
        for (std::size_t size = 0; size < payload.size(); ++size) {
            CHECK_FALSE(isRead(payload.substr(0, size)));
        }
        CHECK(isRead(payload));
        CHECK_FALSE(isRead(Bytes(payload) + '\0'));
    }
}

TEST_CASE("frames of any shape end that session alone, with a plain word") {
    std::mt19937_64 random(20260512);
    for (int round = 0; round < 400; ++round) {
        Meeting meeting;
        Bytes bytes;
        for (std::size_t i = random() % 200; i > 0; --i) {
            bytes.push_back(static_cast<char>(random()));
        }
        meeting.give(sync::frame(static_cast<FrameType>(random() % 0x20), bytes));
        meeting.give(bytes);
        CHECK(meeting.station.count() <= 6);
    }
}

TEST_CASE("a frame at the wrong moment is refused") {
    const auto frames = oneOfEach();
    for (const std::size_t i : {0U, 1U, 2U, 4U, 5U, 6U, 7U, 8U, 9U}) {
        Meeting meeting;
        meeting.give(frames[i]);
        REQUIRE(meeting.talk->station.closed);
        CHECK_FALSE(meeting.talk->station.closed->ok());
        CHECK(meeting.station.count() == 3);
    }
}

TEST_CASE("an unknown kind of frame is passed over where it may be, and refused where it may not") {
    Meeting meeting;
    meeting.give(sync::frame(static_cast<FrameType>(0x80), "from a later version"));
    CHECK_FALSE(meeting.talk->station.closed);
    meeting.give(sync::frame(static_cast<FrameType>(0x7F), "of no version"));
    CHECK(meeting.talk->station.closed);
}

TEST_CASE("a changed bit anywhere in a batch gets no changed entry in") {
    const auto batch = [] {
        ModelReplica source;
        source.write(origin('t', kDevice), 3);
        const auto parts = source.missing(origin('t', kDevice), {});
        return sync::encodeBatch(
            1, {*source.readRun(parts->front().segment, 1, sync::kBatchEntries, 100'000)});
    }();
    ModelReplica right;
    right.write(origin('t', kDevice), 3);
    for (std::size_t bit = 0; bit < batch.size() * 8; ++bit) {
        Meeting meeting;
        meeting.give(sync::encode(sync::Want{{0}}));
        Bytes changed = batch;
        changed[bit / 8] =
            static_cast<char>(static_cast<unsigned char>(changed[bit / 8]) ^ 1U << bit % 8);
        meeting.give(changed);
        const auto expected = right.entries();
        for (const Bytes& entry : meeting.station.entries()) {
            const bool isOfStation = entry.find("t1122") != Bytes::npos ||
                                     entry.find("t00c5a91be2f0417e") != Bytes::npos;
            CHECK((isOfStation || expected.contains(entry)));
        }
    }
}

TEST_CASE("a device that pushes another device's entries unasked is turned away") {
    Meeting meeting;
    meeting.give(sync::encode(sync::Want{{0}}));
    journal::Run run{origin('t', kDevice + 7), 1, {"abc"}, digestOf('d')};
    meeting.give(sync::encodeBatch(1, {run}));
    REQUIRE(meeting.talk->station.closed);
    CHECK(meeting.talk->station.closed->error().code == ErrorCode::Refused);
    CHECK(meeting.station.count() == 3);
}

TEST_CASE("a run that follows on nothing held ends its origin, and the others go through") {
    ModelReplica tablet;
    tablet.write(origin('t', kDevice), 30);
    tablet.write(origin('t', kDevice, 2), 10);
    ModelReplica station;
    Talk talk(tablet, station, setupOf('t', kDevice, 2));
    // The tablet believes that the station holds what it does not: its first ten are left out.
    class Skipping final : public sync::Replica {
    public:
        explicit Skipping(ModelReplica& real) : real_(real) {}
        Result<sync::HistoryId> history() override { return real_.history(); }
        Result<journal::Vector> vector() override { return real_.vector(); }
        Result<bool> holds(const journal::BranchEnd& end) override { return real_.holds(end); }
        Result<std::uint32_t> greatestEpoch(std::uint64_t device) override {
            return real_.greatestEpoch(device);
        }
        Result<std::vector<sync::Part>> missing(const journal::Origin& of,
                                                std::span<const journal::BranchEnd> held) override {
            auto parts = real_.missing(of, held);
            if (of.epoch == 1) {
                parts->front().from = 11;
            }
            return parts;
        }
        Result<journal::Run> readRun(const journal::Segment& segment,
                                     std::uint64_t from,
                                     std::size_t entries,
                                     std::size_t bytes) override {
            return real_.readRun(segment, from, entries, bytes);
        }
        Result<std::vector<journal::RunReport>> store(const journal::Batch& batch,
                                                      const sync::Sender& sender) override {
            return real_.store(batch, sender);
        }
        Result<std::vector<sync::LackedPhoto>> lackedPhotos(const Digest& after,
                                                            std::size_t most) override {
            return real_.lackedPhotos(after, most);
        }
        Result<sync::PhotoPiece>
        readPiece(const Digest& photo, std::uint64_t offset, std::size_t most) override {
            return real_.readPiece(photo, offset, most);
        }
        Status storePiece(const Digest& photo,
                          std::uint64_t total,
                          std::uint64_t offset,
                          BytesView bytes) override {
            return real_.storePiece(photo, total, offset, bytes);
        }

    private:
        ModelReplica& real_;
    } skipping(tablet);
    talk.client.replica = &skipping;
    talk.run();
    REQUIRE(talk.isComplete());
    CHECK(station.count(origin('t', kDevice)) == 0);
    CHECK(station.count(origin('t', kDevice, 2)) == 10);
    REQUIRE(talk.summary().unlinkedThere.size() == 1);
    CHECK(talk.summary().unlinkedThere[0] == origin('t', kDevice));
    CHECK(talk.stationSummary().unlinkedHere == talk.summary().unlinkedThere);
}

TEST_CASE("a client of a version that we do not speak is told so") {
    for (const auto& [least, greatest] : {std::pair{2, 9}, std::pair{0, 0}}) {
        ModelReplica device;
        ModelReplica station;
        Talk talk(device, station, setupOf('t', kDevice));
        sync::Hello hello;
        hello.leastVersion = static_cast<std::uint8_t>(least);
        hello.greatestVersion = static_cast<std::uint8_t>(greatest);
        talk.station.take(talk.station.session->onBytes(sync::encode(hello), talk.now));
        REQUIRE(talk.station.closed);
        CHECK(talk.station.closed->error().code == ErrorCode::WrongVersion);
        CHECK(talk.station.outbox.size() > 5);
    }
}
