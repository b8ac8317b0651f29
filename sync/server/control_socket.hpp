// The local socket through which the console reaches the server that holds a database: PATH-socket
// beside PATH, for the same user only.
//
// Chunks both ways: a letter, the length of the bytes (4 bytes, big-endian, at most 64 KiB), the
// bytes. The console sends R (the request: a CBOR map of verb, json and options), I (input) as
// often as it likes, Z (end of input). The server sends O (for standard output) and E (for standard
// error) as they come, and at last S (one byte, the status).
#pragma once

#include "core/base/result.hpp"
#include "sync/server/office.hpp"

#include <functional>
#include <memory>
#include <string>
#include <thread>

namespace bullace::server {

class ControlSocket {
public:
    using Handler = std::function<int(const OfficeRequest&, OfficeStreams)>;

    // Serves one console after the other on a thread of its own until destroyed.
    [[nodiscard]] static Result<std::unique_ptr<ControlSocket>>
    listen(const std::string& databasePath, Handler handler);
    ~ControlSocket();
    ControlSocket(const ControlSocket&) = delete;
    ControlSocket& operator=(const ControlSocket&) = delete;
    ControlSocket(ControlSocket&&) = delete;
    ControlSocket& operator=(ControlSocket&&) = delete;

private:
    ControlSocket(int socket, int wake, int stop, std::string path, Handler handler);
    void run();
    void serve(int connection);

    int socket_;
    int wakeRead_;
    int wakeWrite_;
    std::string path_;
    Handler handler_;
    std::thread thread_;
};

// Asks the server that holds the database. Errors: NotFound where none listens.
[[nodiscard]] Result<int>
askServer(const std::string& databasePath, const OfficeRequest& request, OfficeStreams streams);

} // namespace bullace::server
