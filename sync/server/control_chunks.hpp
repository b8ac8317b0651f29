// The chunks of the control socket, and streams made of them.
#pragma once

#include "core/base/bytes.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <streambuf>
#include <string>

namespace bullace::server {

struct Chunk {
    char letter = 0;
    Bytes bytes;
};

inline constexpr std::size_t kGreatestChunk = 65536;

// False where the other side is gone or does not read for ten seconds.
[[nodiscard]] bool writeChunk(int socket, char letter, BytesView bytes);
// Nothing at the end, and where the other side sends no chunk.
[[nodiscard]] std::optional<Chunk> readChunk(int socket);

// Output that leaves as chunks of one letter.
class ChunkWriter : public std::streambuf {
public:
    ChunkWriter(int socket, char letter);
    ~ChunkWriter() override;
    ChunkWriter(const ChunkWriter&) = delete;
    ChunkWriter& operator=(const ChunkWriter&) = delete;
    ChunkWriter(ChunkWriter&&) = delete;
    ChunkWriter& operator=(ChunkWriter&&) = delete;

protected:
    int_type overflow(int_type c) override;
    int sync() override;

private:
    bool send();

    int socket_;
    char letter_;
    std::array<char, 32768> buffer_{};
};

// Input that comes as chunks `I` until `Z`.
class ChunkReader : public std::streambuf {
public:
    explicit ChunkReader(int socket) : socket_(socket) {}

protected:
    int_type underflow() override;

private:
    int socket_;
    bool isOver_ = false;
    Bytes chunk_;
};

} // namespace bullace::server
