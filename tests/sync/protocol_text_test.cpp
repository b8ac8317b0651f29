// sync/PROTOCOL.md against the program: every example and every limit in the text is what the code
// writes.
#include "core/base/bytes.hpp"
#include "core/journal/entry.hpp"
#include "sync/protocol/frames.hpp"
#include "sync/protocol/limits.hpp"
#include "sync/protocol/messages.hpp"
#include "sync/protocol/pairing.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

using namespace bullace;
using namespace bullace::sync;

namespace {

constexpr std::uint64_t kDevice = 0x00c5a91be2f0417d;
constexpr std::uint64_t kOther = 0x1122334455667788;
constexpr std::int64_t kWallMs = 1'778'591'100'000; // 2026-05-12 13:05 UTC
constexpr const char* kSubject = "obs/B2-07-14/2026-05-12/stage";

std::string protocolText() {
    const auto root = std::filesystem::path(__FILE__).parent_path().parent_path().parent_path();
    std::ifstream file(root / "sync" / "PROTOCOL.md");
    REQUIRE(file);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

// The hex blocks of the text, by name; what stands behind a # is for people.
std::map<std::string, std::string> examplesInText(const std::string& text) {
    std::map<std::string, std::string> examples;
    std::istringstream lines(text);
    std::string name;
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("```hex ")) {
            name = line.substr(7);
        } else if (line.starts_with("```")) {
            name.clear();
        } else if (!name.empty()) {
            for (const char c : line.substr(0, line.find('#'))) {
                if (c != ' ') {
                    examples[name].push_back(c);
                }
            }
        }
    }
    return examples;
}

HistoryId someHistory() {
    HistoryId id{};
    for (std::size_t i = 0; i < id.size(); ++i) {
        id[i] = static_cast<std::uint8_t>(i);
    }
    return id;
}

Bytes bytesFrom(unsigned first, std::size_t number) {
    Bytes bytes;
    for (std::size_t i = 0; i < number; ++i) {
        bytes.push_back(static_cast<char>(first + i));
    }
    return bytes;
}

Digest filled(std::uint8_t byte) {
    Digest digest;
    digest.bytes.fill(byte);
    return digest;
}

journal::Entry firstEntry() {
    journal::Entry entry;
    entry.origin = {'t', kDevice, 1};
    entry.seq = 1;
    entry.count = 1;
    entry.wall = journal::Wall{kWallMs, -240};
    entry.author = "mk";
    entry.kind = "observe";
    entry.subject = kSubject;
    entry.value = Bytes("\x18\x41");
    return entry;
}

journal::Entry secondEntry() {
    journal::Entry entry = firstEntry();
    entry.seq = 2;
    entry.count = 2;
    entry.wall.reset();
    entry.kind = "retract";
    entry.value = Bytes("\xF6");
    entry.over = {{entry.origin, 1}};
    entry.why = "wrong vine";
    return entry;
}

Digest otherDigest() {
    journal::Entry entry = firstEntry();
    entry.origin = {'t', kOther, 1};
    entry.wall.reset();
    entry.author = "rj";
    entry.subject = "obs/B2-07-15/2026-05-12/stage";
    entry.value = Bytes("\x18\x3D");
    return journal::chainDigest(Digest{}, entry.encode());
}

void addPairing(std::map<std::string, std::string>& examples) {
    const Bytes secret = bytesFrom(0x10, kTypedSecretBytes);
    const Binding binding{filled(0xA0), filled(0xD0), filled(0x50)};
    PairHello hello;
    hello.device = kDevice;
    hello.proof = deviceProof(secret, binding, 't', kDevice);
    hello.name = "tablet 2";
    PairOk ok;
    ok.history = someHistory();
    ok.proof = stationProof(secret, binding, 't', kDevice);
    ok.stationName = "Invented Station";
    examples["pair hello"] = toHex(encode(hello));
    examples["pair ok"] = toHex(encode(ok));
    examples["pair no"] = toHex(encode(PairNo{1, 2}));
}

void addPhotos(std::map<std::string, std::string>& examples) {
    const Bytes photo = "not a picture";
    const Digest name = sha256(photo);
    examples["piece want"] = toHex(encode(PieceWant{name, 4}));
    examples["piece"] = toHex(encode(Piece{name, photo.size(), 4, photo.substr(4)}));
    examples["no piece"] = toHex(encode(Piece{name, 0, 0, {}}));
}

std::map<std::string, std::string> examplesOfCode() {
    const Bytes first = firstEntry().encode();
    const Bytes second = secondEntry().encode();
    const Digest digest1 = journal::chainDigest(Digest{}, first);
    const Digest digest2 = journal::chainDigest(digest1, second);
    const journal::Origin origin{'t', kDevice, 1};
    Hello hello{kLeastVersion, kGreatestVersion, 't', kDevice, {}, kWallMs, false, {}};
    hello.ends = {{origin, 2, digest2}};
    StationWord word{1, someHistory(), kWallMs + 2'500, 1, false};
    std::map<std::string, std::string> examples;
    examples["entry 1"] = toHex(first);
    examples["entry 2"] = toHex(second);
    examples["digest 1"] = digest1.hex();
    examples["digest 2"] = digest2.hex();
    examples["hello"] = toHex(encode(hello));
    examples["equal"] = toHex(encode(Equal{word}));
    word.greatestEpoch = 0;
    examples["hello reply"] =
        toHex(encode(HelloReply{word, false, {false}, {{{'t', kOther, 1}, 1, otherDigest()}}}));
    examples["want"] = toHex(encode(Want{{0}}));
    examples["batch"] = toHex(encodeBatch(1, {{origin, 1, {first, second}, digest2}}));
    examples["ack"] = toHex(encode(Ack{1, {{journal::RunOutcome::Taken, 2, false}}}));
    examples["end"] = toHex(encode(End{1, 2}));
    examples["done"] = toHex(encodeDone());
    examples["goodbye"] = toHex(encode(Goodbye{1, "The station is closing."}));
    addPhotos(examples);
    addPairing(examples);
    return examples;
}

// The rows of the table of limits: a name in backticks, then a number with commas.
std::map<std::string, std::int64_t> limitsInText(const std::string& text) {
    std::map<std::string, std::int64_t> limits;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (!line.starts_with("| `k")) {
            continue;
        }
        const std::size_t end = line.find('`', 3);
        std::int64_t value = 0;
        for (std::size_t i = end + 4; i < line.size() && line[i] != ' '; ++i) {
            if (line[i] != ',') {
                value = value * 10 + (line[i] - '0');
            }
        }
        limits[line.substr(3, end - 3)] = value;
    }
    return limits;
}

std::map<std::string, std::int64_t> limitsOfCode() {
    const auto of = [](auto value) { return static_cast<std::int64_t>(value); };
    return {{"kFrameBytesUnpaired", of(kFrameBytesUnpaired)},
            {"kFrameBytes", of(kFrameBytes)},
            {"kBatchBytes", of(kBatchBytes)},
            {"kBatchEntries", of(kBatchEntries)},
            {"kBatchRuns", of(kBatchRuns)},
            {"kGreatestEntryBytes", of(journal::kGreatestEntryBytes)},
            {"kVectorEnds", of(kVectorEnds)},
            {"kPieceBytes", of(kPieceBytes)},
            {"kGreatestPhotoBytes", of(kGreatestPhotoBytes)},
            {"kNameBytes", of(kNameBytes)},
            {"kReasonBytes", of(kReasonBytes)},
            {"kWindow", of(kWindow)},
            {"kPiecesAtOnce", of(kPiecesAtOnce)},
            {"kOutboundBytes", of(kOutboundBytes)},
            {"kHandshakeMs", kHandshakeMs},
            {"kFirstFrameMs", kFirstFrameMs},
            {"kIdleMs", kIdleMs},
            {"kSlowFrameMs", kSlowFrameMs},
            {"kSlowFrameBytes", of(kSlowFrameBytes)},
            {"kProgressMs", kProgressMs},
            {"kShutdownMs", kShutdownMs},
            {"kStopMs", kStopMs},
            {"kConnections", of(kConnections)},
            {"kUnknownPerAddress", of(kUnknownPerAddress)},
            {"kDatabaseQueue", of(kDatabaseQueue)},
            {"kFailuresPerMinute", of(kFailuresPerMinute)},
            {"kSilenceMs", kSilenceMs},
            {"kArmedMs", kArmedMs},
            {"kPairingTries", of(kPairingTries)}};
}

} // namespace

TEST_CASE("every example in the protocol's description is what the program writes") {
    const auto inText = examplesInText(protocolText());
    const auto ofCode = examplesOfCode();
    CHECK(inText.size() == ofCode.size());
    for (const auto& [name, hex] : ofCode) {
        INFO("example: ", name);
        const auto at = inText.find(name);
        REQUIRE(at != inText.end());
        CHECK(at->second == hex);
    }
}

TEST_CASE("the codes in the protocol's description are what the program shows") {
    const std::string text = protocolText();
    CHECK(text.find("`" + spellTypedCode(bytesFrom(0x10, kTypedSecretBytes)) + "`") !=
          std::string::npos);
    const QrOffer offer{{"192.168.4.20:47180"}, filled(0x50), bytesFrom(0x10, kQrSecretBytes)};
    CHECK(text.find("\n" + offer.text() + "\n") != std::string::npos);
    CHECK(text.find("Port " + std::to_string(kDefaultPort)) != std::string::npos);
}

TEST_CASE("every limit in the protocol's description is the program's") {
    CHECK(limitsInText(protocolText()) == limitsOfCode());
}
