// OpenSSL's keys and certificates with owners, and the hash by which keys are known. Inside
// sync/net only.
#pragma once

#include "core/base/digest.hpp"

#include <memory>
#include <openssl/bio.h>
#include <openssl/evp.h>
#include <openssl/x509.h>
#include <string>

namespace bullace::sync::net {

struct OpensslFree {
    void operator()(EVP_PKEY* key) const { EVP_PKEY_free(key); }
    void operator()(X509* certificate) const { X509_free(certificate); }
    void operator()(BIO* bio) const { BIO_free(bio); }
};
using KeyPtr = std::unique_ptr<EVP_PKEY, OpensslFree>;
using X509Ptr = std::unique_ptr<X509, OpensslFree>;
using BioPtr = std::unique_ptr<BIO, OpensslFree>;

// Null where the text holds none.
[[nodiscard]] KeyPtr keyOf(const std::string& pem);
[[nodiscard]] X509Ptr certificateOf(const std::string& pem);

[[nodiscard]] bool isP256(EVP_PKEY* key);

// SHA-256 of the SubjectPublicKeyInfo in DER.
[[nodiscard]] Digest keyHashOf(X509* certificate);

} // namespace bullace::sync::net
