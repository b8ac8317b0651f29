// SHA-256 (FIPS 180-4) and HMAC-SHA-256 (FIPS 198-1), by OpenSSL.
#pragma once

#include "core/base/bytes.hpp"

#include <array>
#include <cstdint>
#include <initializer_list>
#include <optional>

namespace bullace {

struct Digest {
    std::array<std::uint8_t, 32> bytes{};

    friend bool operator==(const Digest&, const Digest&) = default;
    friend auto operator<=>(const Digest&, const Digest&) = default;

    [[nodiscard]] BytesView view() const {
        return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
    }
    [[nodiscard]] std::string hex() const { return toHex(view()); }

    // Exactly 32 bytes, else nothing.
    [[nodiscard]] static std::optional<Digest> fromBytes(BytesView view);
};

// Of the parts one behind the other.
[[nodiscard]] Digest sha256(std::initializer_list<BytesView> parts);
[[nodiscard]] inline Digest sha256(BytesView bytes) {
    return sha256({bytes});
}

[[nodiscard]] Digest hmacSha256(BytesView key, std::initializer_list<BytesView> parts);

// Compares in a time that does not tell where they differ.
[[nodiscard]] bool sameInConstantTime(const Digest& a, const Digest& b);

} // namespace bullace
