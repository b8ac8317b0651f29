#include "bench/measure.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <unistd.h>

namespace bullace::bench {

double secondsNow() {
    return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch())
        .count();
}

double secondsOf(const std::function<void()>& work) {
    const double start = secondsNow();
    work();
    return secondsNow() - start;
}

double percentile(std::vector<double> values, double share) {
    std::sort(values.begin(), values.end());
    const auto at = static_cast<std::size_t>(share * static_cast<double>(values.size()));
    return values.at(std::min(at, values.size() - 1));
}

double memoryMiB(int process, const std::string& figure) {
    std::ifstream status("/proc/" + (process == kThisProcess ? "self" : std::to_string(process)) +
                         "/status");
    for (std::string line; std::getline(status, line);) {
        if (line.starts_with(figure + ":")) {
            return std::atof(line.c_str() + figure.size() + 1) / 1024;
        }
    }
    return 0;
}

Folder::Folder() {
    std::string path = std::filesystem::temp_directory_path().string() + "/bullace-bench-XXXXXX";
    must(::mkdtemp(path.data()) != nullptr, "making a folder");
    path_ = path;
}

Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

void tell(const std::string& what,
          double value,
          const std::string& unit,
          const std::string& target,
          bool isReached,
          const std::string& more) {
    std::printf(
        "{\"what\":\"%s\",\"value\":%.4g,\"unit\":\"%s\",\"target\":\"%s\",\"reached\":%s%s%s}\n",
        what.c_str(),
        value,
        unit.c_str(),
        target.c_str(),
        isReached ? "true" : "false",
        more.empty() ? "" : ",",
        more.c_str());
    std::fflush(stdout);
}

void must(bool isRight, const std::string& what) {
    if (!isRight) {
        std::fprintf(stderr, "benchmark: this failed: %s\n", what.c_str());
        std::exit(1);
    }
}

} // namespace bullace::bench
