#include "sync/net/tls.hpp"

#include "sync/net/tls_keys.hpp"

#include <array>
#include <openssl/err.h>
#include <openssl/ssl.h>
#include <string_view>

namespace bullace::sync::net {

namespace {

constexpr std::string_view kExporterLabel = "EXPORTER-bullace-pairing";

// Asio uses the slot 0 of an SSL object for itself.
int meetingSlot() {
    static const int slot = SSL_get_ex_new_index(0, nullptr, nullptr, nullptr, nullptr);
    return slot;
}

Meeting* meetingOf(const SSL* ssl) {
    return static_cast<Meeting*>(SSL_get_ex_data(ssl, meetingSlot()));
}

// The names as they stand in the handshake: each behind its length.
std::string onWire(std::string_view protocol) {
    return std::string(1, static_cast<char>(protocol.size())) + std::string(protocol);
}

Purpose purposeOf(std::string_view protocol) {
    return protocol == kSyncProtocol      ? Purpose::Sync
           : protocol == kPairingProtocol ? Purpose::Pairing
                                          : Purpose::None;
}

int selectProtocol(SSL* ssl,
                   const unsigned char** out,
                   unsigned char* outSize,
                   const unsigned char* in,
                   unsigned int inSize,
                   void* /*context*/) {
    Meeting* meeting = meetingOf(ssl);
    for (unsigned int at = 0; at < inSize;) {
        const unsigned size = in[at];
        if (size > inSize - at - 1) {
            break;
        }
        const std::string_view name(reinterpret_cast<const char*>(in + at + 1), size);
        if (purposeOf(name) != Purpose::None && meeting != nullptr) {
            meeting->purpose = purposeOf(name);
            *out = in + at + 1;
            *outSize = static_cast<unsigned char>(size);
            return SSL_TLSEXT_ERR_OK;
        }
        at += size + 1;
    }
    return SSL_TLSEXT_ERR_ALERT_FATAL;
}

// Takes the place of OpenSSL's own checking: names, dates and authorities play no part. That the
// other side holds the key is proven by TLS itself.
int judgeCertificate(X509_STORE_CTX* store, void* /*context*/) {
    const auto* ssl = static_cast<const SSL*>(
        X509_STORE_CTX_get_ex_data(store, SSL_get_ex_data_X509_STORE_CTX_idx()));
    Meeting* meeting = ssl == nullptr ? nullptr : meetingOf(ssl);
    X509* certificate = X509_STORE_CTX_get0_cert(store);
    if (meeting == nullptr || certificate == nullptr || !meeting->judge) {
        X509_STORE_CTX_set_error(store, X509_V_ERR_UNSPECIFIED);
        return 0;
    }
    meeting->peerKey = keyHashOf(certificate);
    meeting->verdict = meeting->judge(meeting->purpose, *meeting->peerKey);
    // The error chooses the alert that the other side gets: PROTOCOL.md lists them.
    X509_STORE_CTX_set_error(store,
                             meeting->verdict == Verdict::Welcome   ? X509_V_OK
                             : meeting->verdict == Verdict::Revoked ? X509_V_ERR_CERT_REVOKED
                                                                    : X509_V_ERR_CERT_UNTRUSTED);
    return meeting->verdict == Verdict::Welcome ? 1 : 0;
}

bool configure(SSL_CTX* context, const Identity& identity) {
    const KeyPtr key = keyOf(identity.pem);
    const X509Ptr certificate = certificateOf(identity.pem);
    if (!key || !certificate || SSL_CTX_set_min_proto_version(context, TLS1_3_VERSION) != 1 ||
        SSL_CTX_set_max_proto_version(context, TLS1_3_VERSION) != 1 ||
        SSL_CTX_use_certificate(context, certificate.get()) != 1 ||
        SSL_CTX_use_PrivateKey(context, key.get()) != 1 ||
        SSL_CTX_set_num_tickets(context, 0) != 1 || SSL_CTX_set_max_early_data(context, 0) != 1) {
        return false;
    }
    SSL_CTX_set_options(context, SSL_OP_NO_TICKET | SSL_OP_NO_RENEGOTIATION);
    SSL_CTX_set_session_cache_mode(context, SSL_SESS_CACHE_OFF);
    SSL_CTX_set_verify(context, SSL_VERIFY_PEER | SSL_VERIFY_FAIL_IF_NO_PEER_CERT, nullptr);
    SSL_CTX_set_cert_verify_callback(context, judgeCertificate, nullptr);
    SSL_CTX_set_alpn_select_cb(context, selectProtocol, nullptr);
    SSL_CTX_set_mode(context, SSL_MODE_RELEASE_BUFFERS);
    return true;
}

bool isAlert(const error_code& error, int reason) {
    return error.category() == asio::error::get_ssl_category() &&
           ERR_GET_REASON(static_cast<unsigned long>(error.value())) == reason;
}

} // namespace

Result<std::unique_ptr<asio::ssl::context>> makeContext(const Identity& identity) {
    error_code error;
    auto context = std::make_unique<asio::ssl::context>(asio::ssl::context::tls);
    if (!configure(context->native_handle(), identity)) {
        return Error{ErrorCode::Damaged,
                     "The key of this program cannot be used. Restore the key file from a backup.",
                     {}};
    }
    return context;
}

void tie(TlsStream& stream, Meeting& meeting) {
    SSL_set_ex_data(stream.native_handle(), meetingSlot(), &meeting);
}

void askFor(TlsStream& stream, Purpose purpose) {
    const std::string name = onWire(purpose == Purpose::Pairing ? kPairingProtocol : kSyncProtocol);
    SSL_set_alpn_protos(stream.native_handle(),
                        reinterpret_cast<const unsigned char*>(name.data()),
                        static_cast<unsigned int>(name.size()));
}

Purpose agreedPurpose(TlsStream& stream) {
    const unsigned char* name = nullptr;
    unsigned int size = 0;
    SSL_get0_alpn_selected(stream.native_handle(), &name, &size);
    return name == nullptr ? Purpose::None : purposeOf({reinterpret_cast<const char*>(name), size});
}

std::optional<Digest> pairingExporter(TlsStream& stream) {
    Digest digest;
    if (SSL_export_keying_material(stream.native_handle(),
                                   digest.bytes.data(),
                                   digest.bytes.size(),
                                   kExporterLabel.data(),
                                   kExporterLabel.size(),
                                   nullptr,
                                   0,
                                   0) != 1) {
        return std::nullopt;
    }
    return digest;
}

Error handshakeError(const error_code& error, const Meeting& meeting, const std::string& place) {
    const std::string detail = error.message();
    if (meeting.peerKey && meeting.verdict == Verdict::OtherKey) {
        return {ErrorCode::WrongKey,
                "Another machine than your station answers at " + place +
                    ": it has another key. Nothing was sent. If the station was set up anew, pair "
                    "this device with it again.",
                detail};
    }
    if (isAlert(error, SSL_R_SSLV3_ALERT_CERTIFICATE_REVOKED)) {
        return {
            ErrorCode::Refused,
            "The office took this device off the station's list. What it sent before counts; to "
            "sync again it must be paired anew.",
            detail};
    }
    if (isAlert(error, SSL_R_SSLV3_ALERT_BAD_CERTIFICATE) ||
        isAlert(error, SSL_R_TLSV13_ALERT_CERTIFICATE_REQUIRED)) {
        return meeting.purpose == Purpose::Pairing
                   ? Error{ErrorCode::Refused,
                           "The station at " + place +
                               " is not waiting for a device: nobody armed it, or the code was "
                               "used "
                               "or is older than five minutes. Arm it again.",
                           detail}
                   : Error{ErrorCode::Refused,
                           "The station at " + place +
                               " does not know this device. Pair the device with it first.",
                           detail};
    }
    if (isAlert(error, SSL_R_TLSV1_ALERT_NO_APPLICATION_PROTOCOL) ||
        isAlert(error, SSL_R_TLSV1_ALERT_PROTOCOL_VERSION)) {
        return {ErrorCode::WrongVersion,
                "What answers at " + place +
                    " speaks another version of the sync. Update the older of the two programs.",
                detail};
    }
    if (error.category() == asio::error::get_ssl_category() && !meeting.peerKey) {
        return {ErrorCode::Network,
                "What answers at " + place +
                    " is no station of this program. Check the address and the network.",
                detail};
    }
    return {ErrorCode::Network,
            "The line to " + place +
                " broke. What came through is kept; sync again when the network is back.",
            detail};
}

} // namespace bullace::sync::net
