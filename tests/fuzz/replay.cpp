// Runs a fuzz target over all files of a folder: the kept inputs, as an ordinary test.
#include "fuzz/target.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

int main(int count, char** words) {
    std::size_t files = 0;
    for (int i = 1; i < count; ++i) {
        for (const auto& entry : std::filesystem::directory_iterator(words[i])) {
            std::ifstream in(entry.path(), std::ios::binary);
            const std::vector<char> bytes{std::istreambuf_iterator<char>(in), {}};
            LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()),
                                   bytes.size());
            ++files;
        }
    }
    std::printf("%zu kept inputs, none of them breaks a promise\n", files);
    return files == 0 ? 1 : 0;
}
