// bullace-demo-station FOLDER [SEED]: writes the demo station's journals as JSON Lines, and the
// truth behind them as truth.json.
#include "demo/json_lines.hpp"
#include "demo/station.hpp"

#include "core/base/numbers.hpp"

#include <cstdio>
#include <exception>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>

namespace {

using namespace bullace;

constexpr int kFailed = 1;
constexpr int kWrongCall = 2;

bool writeFile(const std::filesystem::path& path, const std::string& text) {
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file << text;
    file.close();
    if (!file) {
        std::fprintf(stderr,
                     "%s could not be written. Is there room, and may you write there?\n",
                     path.c_str());
    }
    return static_cast<bool>(file);
}

int writeStation(const std::filesystem::path& folder, std::uint64_t seed) {
    std::error_code failure;
    std::filesystem::create_directories(folder, failure);
    const demo::DemoStation station = demo::makeStation(seed);
    std::printf("%s, an invented station (seed %llu):\n",
                demo::kStationName,
                static_cast<unsigned long long>(seed));
    for (const demo::Journal& journal : station.journals) {
        if (!writeFile(folder / journal.file, demo::journalLines(journal.entries))) {
            return kFailed;
        }
        std::printf("  %-22s %6zu entries, %s\n",
                    journal.file.c_str(),
                    journal.entries.size(),
                    journal.about.c_str());
    }
    if (!writeFile(folder / "truth.json", demo::truthDocument(station, seed))) {
        return kFailed;
    }
    std::printf("  %-22s what every vine was really like, and what was planted among the notes\n",
                "truth.json");
    return 0;
}

} // namespace

int main(int argc, char** argv) {
    try {
        const auto seed = argc == 3 ? readCount(argv[2]) : std::optional(demo::kDefaultSeed);
        if (argc < 2 || argc > 3 || !seed) {
            std::fprintf(stderr,
                         "Usage: bullace-demo-station FOLDER [SEED]\n"
                         "SEED is a whole number; the same number gives the same station.\n");
            return kWrongCall;
        }
        return writeStation(argv[1], *seed);
    } catch (const std::exception& failure) {
        std::fprintf(stderr, "The demo station could not be made: %s\n", failure.what());
        return kFailed;
    }
}
