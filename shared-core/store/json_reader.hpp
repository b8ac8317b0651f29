// JSON text into the bytes of values, strictly: no tree is built, nothing recurses.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/digest.hpp"
#include "core/base/result.hpp"
#include "core/journal/entry.hpp"

#include <optional>
#include <string_view>

namespace bullace::store {

// One JSON value as CBOR. A number without point or exponent within ±(2^53-1) is an integer, any
// other a float. Errors: InvalidInput (no JSON, a key twice, text that is not clean UTF-8, NaN or
// infinity), BeyondLimit.
[[nodiscard]] Result<Bytes> readJson(std::string_view text);

// One line of an export: an entry, and its digest where it says one.
struct EntryLine {
    journal::Entry entry;
    std::optional<Digest> digest;
    bool hasUnknownFields = false;
};

// Errors: InvalidInput, BeyondLimit; the message says which field is wrong.
[[nodiscard]] Result<EntryLine> readEntryLine(std::string_view text);

} // namespace bullace::store
