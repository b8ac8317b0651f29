// The console's commands. Each prints what it did and gives the program's status: 0 where all was
// done, 1 where something was not.
#pragma once

#include "console/terminal.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::console {

struct CreateOptions {
    std::string path;
    std::string station;
    std::string zone;
    bool isField = false; // a device's journal instead of a station's database
    std::string device;   // its 16 digits where they are known; random otherwise
};
int create(const CreateOptions& options, Terminal& terminal);

int importFiles(const std::string& path, const std::vector<std::string>& files, Terminal& terminal);
int exportEntries(const std::string& path, Terminal& terminal);
int backUp(const std::string& path, const std::string& target, Terminal& terminal);

int showState(const std::string& path, const std::string& under, Terminal& terminal);
int showConflicts(const std::string& path, const std::string& under, Terminal& terminal);
// JSON Lines with --json.
int showFindings(const std::string& path, Terminal& terminal);
int verify(const std::string& path, bool mend, Terminal& terminal);

// The office's commands: on the database itself, or through the server that holds it.
int askOffice(const std::string& path,
              const server::OfficeRequest& request,
              std::istream& in,
              Terminal& terminal);

struct ServeOptions {
    std::string path;
    std::string host; // addresses to listen on
    std::uint16_t port = 0;
};
int serve(const ServeOptions& options, Terminal& terminal);

struct PairOptions {
    std::string path;
    std::string at; // HOST:PORT
    std::string code;
    std::string name;
    bool isOffice = false;
};
int pair(const PairOptions& options, Terminal& terminal);

struct SyncOptions {
    std::string path;
    std::string at; // HOST:PORT where the station moved to; empty for the known address
    std::optional<std::uint64_t>
        stopAfter; // entries: breaks the line then, to show that the next sync goes on
};
int syncOnce(const SyncOptions& options, Terminal& terminal);

} // namespace bullace::console
