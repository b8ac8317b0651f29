// A device's or a station's own key: P-256, made by itself, kept in one PEM file that only its
// owner can read. The self-signed certificate around it is there because TLS wants one; its names
// and dates mean nothing.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/digest.hpp"
#include "core/base/result.hpp"

#include <cstddef>
#include <string>

namespace bullace::sync::net {

struct Identity {
    std::string pem; // private key and certificate
    Digest keyHash;  // SHA-256 of the public key (SubjectPublicKeyInfo, DER): who this is
};

// A new key. Errors: Internal, where OpenSSL has no randomness.
[[nodiscard]] Result<Identity> makeIdentity();

// The key in this file. Errors: NotFound, Damaged (no key, not P-256, or a certificate of another),
// Io.
[[nodiscard]] Result<Identity> loadIdentity(const std::string& path);

// The key in this file, which is made (mode 0600, durable before this returns) where there is none.
// A file that is there is never replaced: others know the key in it.
[[nodiscard]] Result<Identity> loadOrMakeIdentity(const std::string& path);

// Bytes nobody can foresee, for secrets and history ids. Errors: Internal.
[[nodiscard]] Result<Bytes> randomBytes(std::size_t number);

} // namespace bullace::sync::net
