#include "sync/server/control_chunks.hpp"

#include <sys/socket.h>

namespace bullace::server {

namespace {

bool writeAll(int socket, const char* bytes, std::size_t size) {
    while (size > 0) {
        const ssize_t sent = ::send(socket, bytes, size, MSG_NOSIGNAL);
        if (sent <= 0) {
            return false;
        }
        bytes += sent;
        size -= static_cast<std::size_t>(sent);
    }
    return true;
}

bool readAll(int socket, char* bytes, std::size_t size) {
    while (size > 0) {
        const ssize_t got = ::recv(socket, bytes, size, 0);
        if (got <= 0) {
            return false;
        }
        bytes += got;
        size -= static_cast<std::size_t>(got);
    }
    return true;
}

} // namespace

bool writeChunk(int socket, char letter, BytesView bytes) {
    std::array<char, 5> head{letter};
    for (std::size_t i = 0; i < 4; ++i) {
        head.at(i + 1) = static_cast<char>(bytes.size() >> (24U - 8U * i) & 0xFFU);
    }
    return writeAll(socket, head.data(), head.size()) &&
           writeAll(socket, bytes.data(), bytes.size());
}

std::optional<Chunk> readChunk(int socket) {
    std::array<char, 5> head{};
    if (!readAll(socket, head.data(), head.size())) {
        return std::nullopt;
    }
    std::size_t size = 0;
    for (std::size_t i = 1; i < head.size(); ++i) {
        size = size << 8U | static_cast<unsigned char>(head.at(i));
    }
    if (size > kGreatestChunk) {
        return std::nullopt;
    }
    Chunk chunk{head[0], Bytes(size, '\0')};
    if (!readAll(socket, chunk.bytes.data(), size)) {
        return std::nullopt;
    }
    return chunk;
}

ChunkWriter::ChunkWriter(int socket, char letter) : socket_(socket), letter_(letter) {
    setp(buffer_.data(), buffer_.data() + buffer_.size());
}

ChunkWriter::~ChunkWriter() {
    send();
}

bool ChunkWriter::send() {
    const auto size = static_cast<std::size_t>(pptr() - pbase());
    const bool isSent = size == 0 || writeChunk(socket_, letter_, BytesView(pbase(), size));
    setp(buffer_.data(), buffer_.data() + buffer_.size());
    return isSent;
}

ChunkWriter::int_type ChunkWriter::overflow(int_type c) {
    if (!send()) {
        return traits_type::eof();
    }
    if (!traits_type::eq_int_type(c, traits_type::eof())) {
        sputc(traits_type::to_char_type(c));
    }
    return traits_type::not_eof(c);
}

int ChunkWriter::sync() {
    return send() ? 0 : -1;
}

ChunkReader::int_type ChunkReader::underflow() {
    if (isOver_) {
        return traits_type::eof();
    }
    auto chunk = readChunk(socket_);
    if (!chunk || chunk->letter != 'I' || chunk->bytes.empty()) {
        isOver_ = true;
        return traits_type::eof();
    }
    chunk_ = std::move(chunk->bytes);
    setg(chunk_.data(), chunk_.data(), chunk_.data() + chunk_.size());
    return traits_type::to_int_type(*gptr());
}

} // namespace bullace::server
