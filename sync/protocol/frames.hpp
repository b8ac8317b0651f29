// Frames: how a stream of bytes is cut into messages. A frame is the length of what follows it (4
// bytes, most significant first), a type (1 byte) and a payload: 00 00 00 01 17 is DONE.
#pragma once

#include "core/base/bytes.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>

namespace bullace::sync {

enum class FrameType : std::uint8_t {
    PairHello = 0x01,
    PairOk = 0x02,
    PairNo = 0x03,
    Hello = 0x10,
    Equal = 0x11,
    HelloReply = 0x12,
    Want = 0x13,
    Batch = 0x14,
    Ack = 0x15,
    End = 0x16,
    Done = 0x17,
    PieceWant = 0x18,
    Piece = 0x19,
    Goodbye = 0x1A,
};

// Types from here on are passed over by who does not know them; smaller unknown ones are an error.
inline constexpr std::uint8_t kFirstOptionalType = 0x80;

// The whole frame. The payload is within the limits of its message.
[[nodiscard]] Bytes frame(FrameType type, BytesView payload);

struct FrameView {
    std::uint8_t type = 0;
    BytesView payload;

    [[nodiscard]] bool is(FrameType asked) const {
        return type == static_cast<std::uint8_t>(asked);
    }
};

// Puts the bytes of a connection together to frames. Memory grows with the bytes that came, never
// with the length that a frame announces.
class FrameReader {
public:
    // A frame's type and payload have at most `limit` bytes.
    explicit FrameReader(std::size_t limit) : limit_(limit) {}

    void append(BytesView bytes);

    // The next whole frame, or nothing. The view holds until append() is called again.
    [[nodiscard]] std::optional<FrameView> next();

    // A length was 0 or beyond the limit: nothing more can be read from this connection.
    [[nodiscard]] bool isBroken() const { return isBroken_; }
    // A frame was begun and is not whole.
    [[nodiscard]] bool isOpen() const { return at_ < buffer_.size(); }
    [[nodiscard]] std::size_t heldBytes() const { return buffer_.capacity(); }

private:
    std::size_t limit_;
    Bytes buffer_;
    std::size_t at_ = 0;
    bool isBroken_ = false;
};

} // namespace bullace::sync
