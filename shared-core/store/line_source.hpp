// Lines of a stream, one after the other, in bounded memory.
#pragma once

#include <cstdint>
#include <istream>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::store {

class LineSource {
public:
    // A longer line is cut off at `mostBytes`, which isCut() tells, and its rest is passed over.
    LineSource(std::istream& in, std::size_t mostBytes)
        : in_(in),
          mostBytes_(mostBytes),
          buffer_(kBlock) {}

    // The next line without its line feed (and without a carriage return before it); false at the
    // end. The view lives until the next call.
    bool next(std::string_view& line);
    [[nodiscard]] bool isCut() const { return isCut_; }
    [[nodiscard]] std::uint64_t number() const { return number_; } // of the line last given, from 1
    [[nodiscard]] std::uint64_t bytesRead() const { return bytesRead_; }
    [[nodiscard]] bool failed() const { return in_.bad(); }

private:
    static constexpr std::size_t kBlock = std::size_t{256} * 1024;
    bool fill();

    std::istream& in_;
    std::size_t mostBytes_;
    std::vector<char> buffer_;
    std::size_t at_ = 0;
    std::size_t end_ = 0;
    std::string line_;
    bool isCut_ = false;
    std::uint64_t number_ = 0;
    std::uint64_t bytesRead_ = 0;
};

} // namespace bullace::store
