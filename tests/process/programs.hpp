// The built programs, run as a person runs them.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace bullace::test {

struct Ran {
    int status = -1; // -1 where a signal ended it
    std::string out;
    std::string err;
};

// A folder that goes away.
class Folder {
public:
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    Folder(Folder&&) = delete;
    Folder& operator=(Folder&&) = delete;
    [[nodiscard]] std::string file(const std::string& name) const { return path_ + "/" + name; }

private:
    std::string path_;
};

void writeFile(const std::string& path, const std::string& text);
[[nodiscard]] std::string readFile(const std::string& path);

// A program that is running.
class Process {
public:
    explicit Process(const std::vector<std::string>& words, const std::string& input = {});
    ~Process(); // kills it where it still runs
    Process(const Process&) = delete;
    Process& operator=(const Process&) = delete;
    Process(Process&&) = delete;
    Process& operator=(Process&&) = delete;

    void signal(int number) const;
    [[nodiscard]] bool isRunning();
    Ran wait();
    [[nodiscard]] std::string outSoFar() const { return readFile(folder_.file("out")); }

private:
    Folder folder_;
    int pid_ = -1;
    int status_ = -1;
    bool isOver_ = false;
};

// `bullace WORDS…`
Ran console(const std::vector<std::string>& words, const std::string& input = {});
Ran runProgram(const std::vector<std::string>& words, const std::string& input = {});

// `bullace-syncd` on the loopback.
class Server {
public:
    // Waits until it listens. port 0 takes any that is free.
    explicit Server(const std::string& database, std::uint16_t port = 0);
    [[nodiscard]] std::uint16_t port() const { return port_; }
    [[nodiscard]] std::string address() const { return "127.0.0.1:" + std::to_string(port_); }
    void killAtOnce();
    Ran stop(); // SIGTERM, and what it said
    [[nodiscard]] std::string
    code(const std::string& database) const; // arms, and gives the typed code

private:
    Process process_;
    std::uint16_t port_ = 0;
};

// Lines of one origin's observations, seq `first` on, with digests; each call goes on where the
// last ended.
class LineMaker {
public:
    explicit LineMaker(std::uint64_t device) : device_(device) {}
    [[nodiscard]] std::string device() const; // 16 hex digits
    std::string next(std::size_t count);

private:
    std::uint64_t device_;
    std::uint64_t seq_ = 0;
    std::string before_; // the digest's bytes
};

} // namespace bullace::test
