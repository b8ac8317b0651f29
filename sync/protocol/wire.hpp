// The small parts that frames are made of: numbers, digests, origins, texts; written and read
// within bounds.
#pragma once

#include "core/base/bytes.hpp"
#include "core/base/digest.hpp"
#include "core/journal/exchange.hpp"
#include "core/journal/origin.hpp"

#include <array>
#include <cstddef>
#include <cstdint>

namespace bullace::sync {

// One life of a station's database: 16 random bytes, others after every restore. All zero: none.
using HistoryId = std::array<std::uint8_t, 16>;

// Appends parts to a buffer.
//   count   unsigned, seven bits a byte, least first, the top bit on all but the last byte
//   moment  eight bytes, two's complement, most significant first
//   origin  letter (1 byte), device (8 bytes, most significant first), epoch (count)
//   text    its bytes' number (count), its bytes
class WireWriter {
public:
    explicit WireWriter(Bytes& out) : out_(out) {}

    void byte(std::uint8_t value) { out_.push_back(static_cast<char>(value)); }
    void count(std::uint64_t value);
    void fixed64(std::uint64_t value);
    void moment(std::int64_t ms) { fixed64(static_cast<std::uint64_t>(ms)); }
    void raw(BytesView bytes) { out_.append(bytes); }
    void digest(const Digest& digest) { raw(digest.view()); }
    void history(const HistoryId& id);
    void text(std::string_view text);
    void origin(const journal::Origin& origin);
    void end(const journal::BranchEnd& end); // origin, seq (count), digest

private:
    Bytes& out_;
};

// Reads parts one after the other. The first that is not there or not within its bounds makes the
// reader fail for good; values read after that are zero. A count must be written as short as can
// be. Views point into the bytes given.
class WireReader {
public:
    explicit WireReader(BytesView bytes) : bytes_(bytes) {}

    [[nodiscard]] bool failed() const { return failed_; }
    [[nodiscard]] bool atEnd() const { return at_ == bytes_.size(); }
    // Everything was read, and nothing was wrong.
    [[nodiscard]] bool isWhole() const { return !failed_ && atEnd(); }
    [[nodiscard]] std::size_t left() const { return bytes_.size() - at_; }

    std::uint8_t byte();
    std::uint64_t count(std::uint64_t greatest);
    // A number of items of at least `leastBytes` each: more than the bytes left can hold is refused
    // before anything is made of it.
    std::size_t items(std::size_t greatest, std::size_t leastBytes);
    std::uint64_t fixed64();
    std::int64_t moment() { return static_cast<std::int64_t>(fixed64()); }
    BytesView raw(std::size_t size);
    Digest digest();
    HistoryId history();
    std::string_view text(std::size_t greatestBytes); // clean UTF-8
    journal::Origin origin();
    journal::BranchEnd end();

    void fail() { failed_ = true; }

private:
    BytesView bytes_;
    std::size_t at_ = 0;
    bool failed_ = false;
};

} // namespace bullace::sync
