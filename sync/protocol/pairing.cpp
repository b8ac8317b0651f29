#include "sync/protocol/pairing.hpp"

#include "core/journal/origin.hpp"
#include "sync/protocol/frames.hpp"

#include <algorithm>

namespace bullace::sync {

namespace {

constexpr std::string_view kBase32 = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
constexpr std::string_view kQrMark = "bullace1";
constexpr std::size_t kMostAddresses = 8;

std::string toBase32(BytesView bytes) {
    std::string text;
    unsigned held = 0;
    unsigned bits = 0;
    for (const char c : bytes) {
        held = (held << 8U | static_cast<unsigned char>(c)) & 0xFFFFU;
        bits += 8;
        while (bits >= 5) {
            bits -= 5;
            text.push_back(kBase32[held >> bits & 31U]);
        }
    }
    if (bits > 0) {
        text.push_back(kBase32[held << (5 - bits) & 31U]);
    }
    return text;
}

// Exactly `size` bytes; the bits of the last character that are too many must be 0.
std::optional<Bytes> fromBase32(std::string_view text, std::size_t size) {
    if (text.size() != (size * 8 + 4) / 5) {
        return std::nullopt;
    }
    Bytes bytes;
    unsigned held = 0;
    unsigned bits = 0;
    for (const char c : text) {
        const std::size_t value = kBase32.find(c);
        if (value == std::string_view::npos) {
            return std::nullopt;
        }
        held = (held << 5U | static_cast<unsigned>(value)) & 0xFFFFU;
        bits += 5;
        if (bits >= 8) {
            bits -= 8;
            bytes.push_back(static_cast<char>(static_cast<std::uint8_t>(held >> bits)));
        }
    }
    const bool isRestZero = (held & ((1U << bits) - 1U)) == 0;
    return isRestZero ? std::optional<Bytes>(std::move(bytes)) : std::nullopt;
}

char asMeant(char c) {
    if (c >= 'a' && c <= 'z') {
        return static_cast<char>(c - 'a' + 'A');
    }
    return c == '0' ? 'O' : c == '1' ? 'I' : c == '8' ? 'B' : c;
}

std::vector<std::string_view> split(std::string_view text, char separator) {
    std::vector<std::string_view> parts;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(separator, at), text.size());
        parts.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    return parts;
}

bool isAddress(std::string_view text) {
    return !text.empty() && text.size() <= kNameBytes &&
           std::all_of(text.begin(), text.end(), [](char c) {
               return c > ' ' && c < 0x7F && c != '|' && c != ',';
           });
}

Digest proof(std::string_view label,
             BytesView secret,
             const Binding& binding,
             char letter,
             std::uint64_t device) {
    const std::string name = journal::deviceText(letter, device);
    return hmacSha256(secret,
                      {label,
                       binding.exporter.view(),
                       name,
                       binding.deviceKey.view(),
                       binding.stationKey.view()});
}

bool isLetter(char letter) {
    return letter == 't' || letter == 's';
}

} // namespace

std::string spellTypedCode(BytesView secret) {
    std::string text = toBase32(secret);
    for (const std::size_t at : {12U, 8U, 4U}) {
        text.insert(std::min<std::size_t>(at, text.size()), "-");
    }
    return text;
}

std::optional<Bytes> readTypedCode(std::string_view text) {
    std::string letters;
    for (const char c : text) {
        if (c != '-' && c != ' ') {
            letters.push_back(asMeant(c));
        }
    }
    return fromBase32(letters, kTypedSecretBytes);
}

std::string QrOffer::text() const {
    std::string text(kQrMark);
    char separator = '|';
    for (const std::string& address : addresses) {
        text += separator + address;
        separator = ',';
    }
    return text + '|' + stationKey.hex() + '|' + toBase32(secret);
}

std::optional<QrOffer> readQrOffer(std::string_view text) {
    const auto parts = split(text, '|');
    if (text.size() > 2048 || parts.size() != 4 || parts[0] != kQrMark) {
        return std::nullopt;
    }
    QrOffer offer;
    for (const std::string_view address : split(parts[1], ',')) {
        if (!isAddress(address) || offer.addresses.size() == kMostAddresses) {
            return std::nullopt;
        }
        offer.addresses.emplace_back(address);
    }
    const auto keyBytes = fromHex(parts[2]);
    const auto key = keyBytes ? Digest::fromBytes(*keyBytes) : std::nullopt;
    auto secret = fromBase32(parts[3], kQrSecretBytes);
    if (!key || !secret) {
        return std::nullopt;
    }
    offer.stationKey = *key;
    offer.secret = std::move(*secret);
    return offer;
}

Digest deviceProof(BytesView secret, const Binding& binding, char letter, std::uint64_t device) {
    return proof("bullace pair device 1", secret, binding, letter, device);
}

Digest stationProof(BytesView secret, const Binding& binding, char letter, std::uint64_t device) {
    return proof("bullace pair station 1", secret, binding, letter, device);
}

Bytes encode(const PairHello& message) {
    Bytes payload;
    WireWriter out(payload);
    out.byte(message.leastVersion);
    out.byte(message.greatestVersion);
    out.byte(static_cast<std::uint8_t>(message.letter));
    out.fixed64(message.device);
    out.byte(static_cast<std::uint8_t>(message.kind));
    out.digest(message.proof);
    out.text(message.name);
    return frame(FrameType::PairHello, payload);
}

std::optional<PairHello> decodePairHello(BytesView payload) {
    WireReader in(payload);
    PairHello hello;
    hello.leastVersion = in.byte();
    hello.greatestVersion = in.byte();
    if (in.failed() || hello.leastVersion > hello.greatestVersion) {
        return std::nullopt;
    }
    if (hello.leastVersion > kGreatestVersion || hello.greatestVersion < kLeastVersion) {
        return hello;
    }
    hello.letter = static_cast<char>(in.byte());
    hello.device = in.fixed64();
    const std::uint8_t kind = in.byte();
    hello.kind = static_cast<SecretKind>(kind);
    hello.proof = in.digest();
    hello.name = in.text(kNameBytes);
    const bool isGood = in.isWhole() && isLetter(hello.letter) && (kind == 1 || kind == 2);
    return isGood ? std::optional<PairHello>(std::move(hello)) : std::nullopt;
}

Bytes encode(const PairOk& message) {
    Bytes payload;
    WireWriter out(payload);
    out.byte(message.version);
    out.byte(static_cast<std::uint8_t>(message.letter));
    out.history(message.history);
    out.digest(message.proof);
    out.text(message.stationName);
    return frame(FrameType::PairOk, payload);
}

std::optional<PairOk> decodePairOk(BytesView payload) {
    WireReader in(payload);
    PairOk ok;
    ok.version = in.byte();
    ok.letter = static_cast<char>(in.byte());
    ok.history = in.history();
    ok.proof = in.digest();
    ok.stationName = in.text(kNameBytes);
    const bool isGood = in.isWhole() && isLetter(ok.letter) && ok.version >= kLeastVersion &&
                        ok.version <= kGreatestVersion;
    return isGood ? std::optional<PairOk>(std::move(ok)) : std::nullopt;
}

Bytes encode(const PairNo& message) {
    Bytes payload;
    WireWriter out(payload);
    out.byte(message.refusal);
    out.byte(message.triesLeft);
    return frame(FrameType::PairNo, payload);
}

std::optional<PairNo> decodePairNo(BytesView payload) {
    WireReader in(payload);
    PairNo no;
    no.refusal = in.byte();
    no.triesLeft = in.byte();
    return in.isWhole() ? std::optional<PairNo>(no) : std::nullopt;
}

} // namespace bullace::sync
