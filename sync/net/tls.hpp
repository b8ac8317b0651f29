// TLS 1.3 between two keys that know each other. Inside sync/net only.
#pragma once

#include "core/base/digest.hpp"
#include "core/base/result.hpp"
#include "sync/net/asio.hpp"
#include "sync/net/identity.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace bullace::sync::net {

// What a connection is for; each has its own name in the handshake (ALPN).
enum class Purpose { None, Sync, Pairing };

inline constexpr const char* kSyncProtocol = "bullace/1";
inline constexpr const char* kPairingProtocol = "bullace-pair/1";

enum class Verdict { Welcome, Unknown, Revoked, OtherKey };

// What the handshake of one connection found out and decided. It outlives the stream it is tied to.
struct Meeting {
    Purpose purpose = Purpose::None;
    std::optional<Digest> peerKey;
    Verdict verdict = Verdict::Unknown;
    // Judges the other side's key; called inside the handshake.
    std::function<Verdict(Purpose, const Digest&)> judge;
};

// A context for either side: TLS 1.3 alone, our key, no tickets, no early data, no session kept;
// the other side must show a certificate, of which only the key is looked at. Errors: Damaged.
[[nodiscard]] Result<std::unique_ptr<asio::ssl::context>> makeContext(const Identity& identity);

// Before the handshake. On the client `purpose` is what is asked for; on the station it is found
// out.
void tie(TlsStream& stream, Meeting& meeting);
void askFor(TlsStream& stream, Purpose purpose);

// After it: what was agreed, Purpose::None where nothing was.
[[nodiscard]] Purpose agreedPurpose(TlsStream& stream);

// 32 bytes of the exporter that pairing proofs are bound to.
[[nodiscard]] std::optional<Digest> pairingExporter(TlsStream& stream);

// What a failed handshake, or a first reading that fails, means to the person at the client.
[[nodiscard]] Error
handshakeError(const error_code& error, const Meeting& meeting, const std::string& place);

} // namespace bullace::sync::net
