#include "process/programs.hpp"

#include "core/journal/entry_line.hpp"
#include "core/journal/json_value.hpp"
#include "core/vineyard/position.hpp"

#include <doctest/doctest.h>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace bullace::test {

namespace {

std::string binary(const std::string& name) {
    return std::string(BULLACE_BIN) + "/" + name;
}

} // namespace

Folder::Folder() {
    std::string path = std::filesystem::temp_directory_path().string() + "/bullace-test-XXXXXX";
    REQUIRE(::mkdtemp(path.data()) != nullptr);
    path_ = path;
}

Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

void writeFile(const std::string& path, const std::string& text) {
    std::ofstream out(path, std::ios::binary);
    out << text;
    REQUIRE(out.good());
}

std::string readFile(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

Process::Process(const std::vector<std::string>& words, const std::string& input) {
    writeFile(folder_.file("in"), input);
    std::vector<std::string> copy = words;
    std::vector<char*> arguments;
    for (std::string& word : copy) {
        arguments.push_back(word.data());
    }
    arguments.push_back(nullptr);
    pid_ = ::fork();
    if (pid_ == 0) {
        const int in = ::open(folder_.file("in").c_str(), O_RDONLY);
        const int out = ::open(folder_.file("out").c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
        const int err = ::open(folder_.file("err").c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
        ::dup2(in, 0);
        ::dup2(out, 1);
        ::dup2(err, 2);
        ::execvp(arguments[0], arguments.data());
        ::_exit(127);
    }
    REQUIRE(pid_ > 0);
}

Process::~Process() {
    if (!isOver_) {
        ::kill(pid_, SIGKILL);
        ::waitpid(pid_, nullptr, 0);
    }
}

void Process::signal(int number) const {
    ::kill(pid_, number);
}

bool Process::isRunning() {
    if (!isOver_) {
        isOver_ = ::waitpid(pid_, &status_, WNOHANG) == pid_;
    }
    return !isOver_;
}

Ran Process::wait() {
    if (!isOver_) {
        ::waitpid(pid_, &status_, 0);
        isOver_ = true;
    }
    return {WIFEXITED(status_) ? WEXITSTATUS(status_) : -1,
            readFile(folder_.file("out")),
            readFile(folder_.file("err"))};
}

Ran runProgram(const std::vector<std::string>& words, const std::string& input) {
    return Process(words, input).wait();
}

Ran console(const std::vector<std::string>& words, const std::string& input) {
    std::vector<std::string> all{binary("bullace")};
    all.insert(all.end(), words.begin(), words.end());
    return runProgram(all, input);
}

Server::Server(const std::string& database, std::uint16_t port)
    : process_({binary("bullace-syncd"),
                database,
                "--address",
                "127.0.0.1",
                "--port",
                std::to_string(port)}) {
    const std::string mark = " on port ";
    for (int tries = 0; tries < 1000 && port_ == 0; ++tries) {
        const std::string said = process_.outSoFar();
        const std::size_t at = said.find(mark);
        if (at != std::string::npos && said.find(".\n", at) != std::string::npos) {
            port_ = static_cast<std::uint16_t>(std::atoi(said.c_str() + at + mark.size()));
        } else if (!process_.isRunning()) {
            const Ran ran = process_.wait();
            FAIL("the server did not start: " << ran.err);
        } else {
            std::this_thread::sleep_for(std::chrono::milliseconds(10));
        }
    }
    REQUIRE(port_ != 0);
}

void Server::killAtOnce() {
    process_.signal(SIGKILL);
    process_.wait();
}

Ran Server::stop() {
    process_.signal(SIGTERM);
    return process_.wait();
}

std::string Server::code(const std::string& database) const {
    const Ran armed = console({"arm", database, "--json"});
    REQUIRE_MESSAGE(armed.status == 0, armed.err);
    const std::string start = "\"code\":\"";
    const std::size_t at = armed.out.find(start) + start.size();
    return armed.out.substr(at, armed.out.find('"', at) - at);
}

std::string LineMaker::device() const {
    return journal::deviceText('t', device_).substr(1);
}

std::string LineMaker::next(std::size_t count) {
    std::string lines;
    Digest digest = Digest::fromBytes(before_).value_or(Digest{});
    for (std::size_t i = 0; i < count; ++i) {
        ++seq_;
        const auto number = static_cast<unsigned>(seq_ + device_ * 7);
        const vineyard::Position position{"B1", number / 40 % 90 + 1, number % 40 + 1, 0};
        const journal::Entry entry{
            {'t', device_, 1},
            seq_,
            seq_,
            journal::Wall{1'780'000'000'000 + static_cast<std::int64_t>(seq_) * 1000, 0},
            "mk",
            "observe",
            "obs/" + vineyard::writePosition(position) + "/2026-05-12/vigour",
            journal::integerValue(static_cast<std::int64_t>((seq_ + device_) % 9 + 1)),
            {},
            {},
            {},
            {},
            {}};
        const Bytes bytes = entry.encode();
        digest = journal::chainDigest(digest, bytes);
        journal::appendEntryLine(lines, *journal::readEntry(bytes), digest);
    }
    before_ = Bytes(digest.view());
    return lines;
}

} // namespace bullace::test
