#include "sync/protocol/frames.hpp"

namespace bullace::sync {

namespace {

constexpr std::size_t kLengthBytes = 4;

} // namespace

Bytes frame(FrameType type, BytesView payload) {
    const std::size_t length = payload.size() + 1;
    Bytes bytes;
    bytes.reserve(kLengthBytes + length);
    for (unsigned shift = 32; shift > 0;) {
        shift -= 8;
        bytes.push_back(static_cast<char>(static_cast<std::uint8_t>(length >> shift)));
    }
    bytes.push_back(static_cast<char>(type));
    bytes.append(payload);
    return bytes;
}

void FrameReader::append(BytesView bytes) {
    buffer_.erase(0, at_);
    at_ = 0;
    buffer_.append(bytes);
}

std::optional<FrameView> FrameReader::next() {
    if (isBroken_ || buffer_.size() - at_ < kLengthBytes) {
        return std::nullopt;
    }
    std::size_t length = 0;
    for (std::size_t i = 0; i < kLengthBytes; ++i) {
        length = length << 8U | static_cast<std::uint8_t>(buffer_[at_ + i]);
    }
    if (length == 0 || length > limit_) {
        isBroken_ = true;
        return std::nullopt;
    }
    if (buffer_.size() - at_ - kLengthBytes < length) {
        return std::nullopt;
    }
    const BytesView body = BytesView(buffer_).substr(at_ + kLengthBytes, length);
    at_ += kLengthBytes + length;
    return FrameView{static_cast<std::uint8_t>(body[0]), body.substr(1)};
}

} // namespace bullace::sync
