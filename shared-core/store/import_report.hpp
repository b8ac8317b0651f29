// What became of the lines of an import.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace bullace::store {

struct ImportedLine {
    std::uint64_t line = 0; // 0 where it came in an earlier import and still waits
    std::string file;
    std::string message;
};
struct ImportReport {
    std::uint64_t lines = 0;
    std::uint64_t taken = 0;
    std::uint64_t there = 0;              // were held already
    std::uint64_t uncounted = 0;          // taken, and kept without counting
    std::uint64_t unknownSubjects = 0;    // entries whose subject fits no known form
    std::uint64_t unknownDescriptors = 0; // observations of a descriptor that nobody knows
    std::uint64_t unknownFields = 0;      // entries with fields that this version does not know
    std::vector<ImportedLine> refused;
    std::vector<ImportedLine> waiting;
    std::uint64_t refusedCount = 0; // the lists above end at 10,000 lines each; the numbers do not
    std::uint64_t waitingCount = 0;
};

// What becomes of one imported line.
struct LineFate {
    enum Fate { Taken, There, Waits, Refused };
    Fate fate = Refused;
    std::string message; // why it was refused
};

} // namespace bullace::store
