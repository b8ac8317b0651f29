// Measuring: the clock, percentiles, memory, a folder that goes away, and one JSON line for each
// figure.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace bullace::bench {

[[nodiscard]] double secondsNow(); // monotonic
[[nodiscard]] double secondsOf(const std::function<void()>& work);

// The value below which `share` (0 to 1) of the values lie.
[[nodiscard]] double percentile(std::vector<double> values, double share);

// A memory figure of a process in MiB from its status: "VmHWM" is the most it ever had, "VmRSS"
// what it has.
[[nodiscard]] double memoryMiB(int process, const std::string& figure);
inline constexpr int kThisProcess = 0;

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

// One figure beside its target. `isReached` decides the "reached" of the line.
void tell(const std::string& what,
          double value,
          const std::string& unit,
          const std::string& target,
          bool isReached,
          const std::string& more = {});

// Ends the benchmark with a message where something that must work does not.
void must(bool isRight, const std::string& what);

} // namespace bullace::bench
