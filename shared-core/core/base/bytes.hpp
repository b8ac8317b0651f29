// Bytes as they are stored, hashed and sent, and their spelling in lower-case hex.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bullace {

// std::string holds bytes here: it keeps short ones in place and compares as unsigned bytes.
using Bytes = std::string;
using BytesView = std::string_view;

[[nodiscard]] std::string toHex(BytesView bytes);

// Lower-case hex only, an even number of digits; anything else is nothing.
[[nodiscard]] std::optional<Bytes> fromHex(std::string_view hex);

// Well-formed UTF-8 (RFC 3629: no overlong form, no surrogate, at most U+10FFFF) without U+0000.
[[nodiscard]] bool isCleanUtf8(std::string_view text);

} // namespace bullace
