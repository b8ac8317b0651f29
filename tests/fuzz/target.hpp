// What a fuzz target is: a function that must neither crash nor break its promises, whatever bytes
// it gets.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

// NOLINTNEXTLINE(readability-identifier-naming): libFuzzer's name
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace bullace::fuzz {

// Ends the run, with the input kept by the fuzzer, where a promise is broken.
inline void promise(bool isKept, const char* what) {
    if (!isKept) {
        std::fprintf(stderr, "broken promise: %s\n", what);
        std::abort();
    }
}

} // namespace bullace::fuzz
