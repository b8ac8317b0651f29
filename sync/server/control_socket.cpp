#include "sync/server/control_socket.hpp"

#include "core/journal/json_value.hpp"
#include "sync/server/control_chunks.hpp"

#include <algorithm>
#include <array>
#include <cstring>
#include <fcntl.h>
#include <istream>
#include <ostream>
#include <poll.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/time.h>
#include <sys/un.h>
#include <unistd.h>

namespace bullace::server {

namespace {

constexpr int kPatienceSeconds = 10;

// A socket's address may have 107 bytes only; paths are longer. So it is reached through its
// folder, opened beforehand.
class SocketAddress {
public:
    explicit SocketAddress(const std::string& path) {
        const std::size_t slash = path.rfind('/');
        const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
        const std::string name = slash == std::string::npos ? path : path.substr(slash + 1);
        folder_ = ::open(folder.c_str(), O_PATH | O_DIRECTORY | O_CLOEXEC);
        const std::string through = "/proc/self/fd/" + std::to_string(folder_) + "/" + name;
        address_.sun_family = AF_UNIX;
        isUsable_ = folder_ >= 0 && through.size() < sizeof(address_.sun_path);
        if (isUsable_) {
            std::memcpy(address_.sun_path, through.c_str(), through.size() + 1);
        }
    }
    ~SocketAddress() {
        if (folder_ >= 0) {
            ::close(folder_);
        }
    }
    SocketAddress(const SocketAddress&) = delete;
    SocketAddress& operator=(const SocketAddress&) = delete;
    SocketAddress(SocketAddress&&) = delete;
    SocketAddress& operator=(SocketAddress&&) = delete;

    [[nodiscard]] bool isUsable() const { return isUsable_; }
    [[nodiscard]] const sockaddr* get() const {
        const void* generic = &address_;
        return static_cast<const sockaddr*>(generic);
    }

private:
    int folder_ = -1;
    sockaddr_un address_{};
    bool isUsable_ = false;
};

std::string socketPath(const std::string& databasePath) {
    return databasePath + "-socket";
}

Bytes encodeRequest(const OfficeRequest& request) {
    journal::MapValue options;
    for (const auto& [name, value] : request.options) {
        options.add(name, journal::textValue(value));
    }
    return journal::MapValue()
        .add("verb", journal::textValue(request.verb))
        .add("json", journal::booleanValue(request.wantsJson))
        .add("options", options.bytes())
        .bytes();
}

std::optional<OfficeRequest> decodeRequest(BytesView bytes) {
    BytesView whole;
    CborReader check(bytes);
    if (!check.any(whole) || !check.atEnd()) {
        return std::nullopt;
    }
    OfficeRequest request;
    const auto verb = journal::memberOf(bytes, "verb");
    const auto json = journal::memberOf(bytes, "json");
    const auto options = journal::memberOf(bytes, "options");
    const auto text = verb ? journal::textOf(*verb) : std::nullopt;
    if (!text || !json || !options) {
        return std::nullopt;
    }
    request.verb = *text;
    request.wantsJson = *json == journal::booleanValue(true);
    CborReader in(*options);
    std::size_t count = 0;
    std::string_view name;
    std::string_view value;
    for (bool more = in.map(count); more && request.options.size() < count;) {
        more = in.text(name) && in.text(value);
        if (more) {
            request.options.emplace_back(name, value);
        }
    }
    return in.failed() ? std::nullopt : std::optional(request);
}

void setPatience(int socket) {
    const timeval patience{kPatienceSeconds, 0};
    ::setsockopt(socket, SOL_SOCKET, SO_SNDTIMEO, &patience, sizeof(patience));
    ::setsockopt(socket, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof(patience));
}

Error cannotListen(const std::string& path) {
    return {ErrorCode::ReadOnly,
            "The socket \"" + path + "\" cannot be made. Check the rights of its folder.",
            std::strerror(errno)};
}

} // namespace

Result<std::unique_ptr<ControlSocket>> ControlSocket::listen(const std::string& databasePath,
                                                             Handler handler) {
    const std::string path = socketPath(databasePath);
    const SocketAddress address(path);
    // The database's lock is ours: a socket that is there was left over by a server that was
    // killed.
    ::unlink(path.c_str());
    const int socket = ::socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
    std::array<int, 2> wake{-1, -1};
    const bool isListening = socket >= 0 && address.isUsable() &&
                             ::bind(socket, address.get(), sizeof(sockaddr_un)) == 0 &&
                             ::chmod(path.c_str(), S_IRUSR | S_IWUSR) == 0 &&
                             ::listen(socket, 8) == 0 && ::pipe2(wake.data(), O_CLOEXEC) == 0;
    if (!isListening) {
        const Error error = cannotListen(path);
        if (socket >= 0) {
            ::close(socket);
        }
        return error;
    }
    return std::unique_ptr<ControlSocket>(
        new ControlSocket(socket, wake[0], wake[1], path, std::move(handler)));
}

ControlSocket::ControlSocket(int socket, int wake, int stop, std::string path, Handler handler)
    : socket_(socket),
      wakeRead_(wake),
      wakeWrite_(stop),
      path_(std::move(path)),
      handler_(std::move(handler)),
      thread_([this] { run(); }) {}

ControlSocket::~ControlSocket() {
    ::close(wakeWrite_);
    thread_.join();
    ::close(socket_);
    ::close(wakeRead_);
    ::unlink(path_.c_str());
}

void ControlSocket::run() {
    while (true) {
        std::array<pollfd, 2> waits{{{socket_, POLLIN, 0}, {wakeRead_, POLLIN, 0}}};
        if (::poll(waits.data(), waits.size(), -1) < 0 && errno != EINTR) {
            return;
        }
        if (waits[1].revents != 0) {
            return;
        }
        if (waits[0].revents == 0) {
            continue;
        }
        const int connection = ::accept4(socket_, nullptr, nullptr, SOCK_CLOEXEC);
        if (connection >= 0) {
            setPatience(connection);
            serve(connection);
            ::close(connection);
        }
    }
}

void ControlSocket::serve(int connection) {
    const auto first = readChunk(connection);
    const auto request = first && first->letter == 'R' ? decodeRequest(first->bytes) : std::nullopt;
    if (!request) {
        return;
    }
    int status = 1;
    {
        ChunkReader input(connection);
        ChunkWriter output(connection, 'O');
        ChunkWriter errors(connection, 'E');
        std::istream in(&input);
        std::ostream out(&output);
        std::ostream err(&errors);
        status = handler_(*request, {in, out, err});
    }
    const char byte = static_cast<char>(status);
    static_cast<void>(
        writeChunk(connection, 'S', BytesView(&byte, 1))); // a console that is gone needs no status
}

Result<int>
askServer(const std::string& databasePath, const OfficeRequest& request, OfficeStreams streams) {
    const SocketAddress address(socketPath(databasePath));
    const int socket = ::socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
    if (socket < 0 || !address.isUsable() ||
        ::connect(socket, address.get(), sizeof(sockaddr_un)) != 0) {
        if (socket >= 0) {
            ::close(socket);
        }
        return Error{ErrorCode::NotFound, "No server answers for \"" + databasePath + "\".", {}};
    }
    bool isSent = writeChunk(socket, 'R', encodeRequest(request));
    if (request.verb == "import") {
        Bytes block(kGreatestChunk, '\0');
        std::uint64_t lines = 0;
        while (isSent && (streams.in.read(block.data(), kGreatestChunk), streams.in.gcount() > 0)) {
            const BytesView part =
                BytesView(block).substr(0, static_cast<std::size_t>(streams.in.gcount()));
            isSent = writeChunk(socket, 'I', part);
            lines += static_cast<std::uint64_t>(std::count(part.begin(), part.end(), '\n'));
            if (streams.progress) {
                isSent = isSent && streams.progress(lines, 0);
            }
        }
    }
    static_cast<void>(
        isSent &&
        writeChunk(socket, 'Z', {})); // what the server says of a broken request is read below
    std::optional<int> status;
    while (const auto chunk = readChunk(socket)) {
        if (chunk->letter == 'S' && chunk->bytes.size() == 1) {
            status = chunk->bytes[0];
            break;
        }
        (chunk->letter == 'O' ? streams.out : streams.err) << chunk->bytes;
    }
    ::close(socket);
    if (!status) {
        return Error{
            ErrorCode::Network,
            "The server stopped before it had answered. Look at the state before you do it again.",
            {}};
    }
    return *status;
}

} // namespace bullace::server
