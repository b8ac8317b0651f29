// bullace-syncd: serves one station's database until it is told to stop.
#include "sync/server/serving.hpp"

#include <cstdlib>
#include <iostream>
#include <string>

namespace {

constexpr const char* kHelp = "bullace-syncd DATABASE [--address ADDRESS] [--port PORT]\n"
                              "  Lets paired tablets sync with the station's database. It stops, "
                              "after finishing what is in hand,\n"
                              "  when it is sent SIGTERM or Ctrl-C is pressed. `bullace arm "
                              "DATABASE` opens pairing meanwhile.\n";

} // namespace

int main(int count, char** words) {
    bullace::server::StationOptions options;
    for (int i = 1; i < count; ++i) {
        const std::string word = words[i];
        const bool hasValue = i + 1 < count;
        if (word == "--help" || word == "-h") {
            std::cout << kHelp;
            return 0;
        }
        if (word == "--address" && hasValue) {
            options.address = words[++i];
        } else if (word == "--port" && hasValue &&
                   bullace::server::readPort(words[i + 1], options.port)) {
            ++i;
        } else if (options.path.empty() && !word.starts_with("--")) {
            options.path = word;
        } else {
            std::cerr << "bullace-syncd: \"" << word << "\" is not understood.\n" << kHelp;
            return 2;
        }
    }
    if (options.path.empty()) {
        std::cerr << kHelp;
        return 2;
    }
    return bullace::server::serveUntilStopped(options, {std::cin, std::cout, std::cerr});
}
