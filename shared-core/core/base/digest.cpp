#include "core/base/digest.hpp"

#include <algorithm>
#include <cstdlib>
#include <memory>

// The low-level SHA256_* calls are marked deprecated in OpenSSL 3, and are an order of magnitude
// quicker for the hundred-byte messages here than fetching a method for each: the chain of every
// entry runs through this.
#define OPENSSL_SUPPRESS_DEPRECATED
#include <openssl/crypto.h>
#include <openssl/evp.h>
#include <openssl/hmac.h>
#include <openssl/sha.h>

namespace bullace {

std::optional<Digest> Digest::fromBytes(BytesView view) {
    Digest digest;
    if (view.size() != digest.bytes.size()) {
        return std::nullopt;
    }
    std::copy_n(
        reinterpret_cast<const std::uint8_t*>(view.data()), view.size(), digest.bytes.begin());
    return digest;
}

Digest sha256(std::initializer_list<BytesView> parts) {
    SHA256_CTX context;
    SHA256_Init(&context);
    for (const BytesView part : parts) {
        SHA256_Update(&context, part.data(), part.size());
    }
    Digest digest;
    SHA256_Final(digest.bytes.data(), &context);
    return digest;
}

Digest hmacSha256(BytesView key, std::initializer_list<BytesView> parts) {
    Bytes message;
    for (const BytesView part : parts) {
        message.append(part);
    }
    Digest digest;
    unsigned int size = 0;
    const unsigned char* made = HMAC(EVP_sha256(),
                                     key.data(),
                                     static_cast<int>(key.size()),
                                     reinterpret_cast<const unsigned char*>(message.data()),
                                     message.size(),
                                     digest.bytes.data(),
                                     &size);
    if (made == nullptr) {
        std::abort(); // only a broken OpenSSL gets here; going on would accept a wrong key
    }
    return digest;
}

bool sameInConstantTime(const Digest& a, const Digest& b) {
    return CRYPTO_memcmp(a.bytes.data(), b.bytes.data(), a.bytes.size()) == 0;
}

} // namespace bullace
