#include "sync/net/tls_keys.hpp"

#include <array>
#include <openssl/crypto.h>
#include <openssl/obj_mac.h>
#include <openssl/pem.h>

namespace bullace::sync::net {

namespace {

BioPtr reading(const std::string& text) {
    return BioPtr(BIO_new_mem_buf(text.data(), static_cast<int>(text.size())));
}

} // namespace

KeyPtr keyOf(const std::string& pem) {
    const BioPtr memory = reading(pem);
    // An encrypted key must not make OpenSSL ask at the terminal: the answer is an empty word.
    char noWord[] = "";
    return KeyPtr(PEM_read_bio_PrivateKey(memory.get(), nullptr, nullptr, noWord));
}

X509Ptr certificateOf(const std::string& pem) {
    const BioPtr memory = reading(pem);
    return X509Ptr(PEM_read_bio_X509(memory.get(), nullptr, nullptr, nullptr));
}

bool isP256(EVP_PKEY* key) {
    std::array<char, 64> name{};
    std::size_t size = 0;
    return EVP_PKEY_is_a(key, "EC") == 1 &&
           EVP_PKEY_get_group_name(key, name.data(), name.size(), &size) == 1 &&
           std::string(name.data(), size) == SN_X9_62_prime256v1;
}

Digest keyHashOf(X509* certificate) {
    unsigned char* der = nullptr;
    const int size = i2d_X509_PUBKEY(X509_get_X509_PUBKEY(certificate), &der);
    if (size <= 0) {
        return {}; // the hash of no key: nobody is paired with it
    }
    const Digest hash =
        sha256(BytesView(reinterpret_cast<const char*>(der), static_cast<std::size_t>(size)));
    OPENSSL_free(der);
    return hash;
}

} // namespace bullace::sync::net
