// Lines of a file, whatever ends them and however long they are.
#include "store/line_source.hpp"

#include <doctest/doctest.h>

#include <sstream>

using namespace bullace::store;

namespace {

std::vector<std::string> linesOf(const std::string& text, std::size_t most = 1000) {
    std::istringstream in(text);
    LineSource source(in, most);
    std::vector<std::string> lines;
    for (std::string_view line; source.next(line);) {
        lines.push_back(std::to_string(source.number()) + (source.isCut() ? "!" : ":") +
                        std::string(line));
    }
    CHECK_FALSE(source.failed());
    CHECK(source.bytesRead() == text.size());
    return lines;
}

using Lines = std::vector<std::string>;

} // namespace

TEST_CASE(
    "a line ends with a line feed, with a carriage return before it or not, or with the file") {
    CHECK(linesOf("a\nb\r\n\nc") == Lines{"1:a", "2:b", "3:", "4:c"});
    CHECK(linesOf("a\n") == Lines{"1:a"});
    CHECK(linesOf("\n\n") == Lines{"1:", "2:"});
    CHECK(linesOf("").empty());
    CHECK(linesOf("a\rb\n") == Lines{"1:a\rb"});
}

TEST_CASE("a line that is too long is cut off and told, and the next one is whole") {
    CHECK(linesOf("abc\nabcd\nabcde\nx\n", 4) == Lines{"1:abc", "2:abcd", "3!abcd", "4:x"});
    CHECK(linesOf("abcdefgh", 4) == Lines{"1!abcd"});
}

TEST_CASE("lines that lie across the blocks in which a file is read come out whole") {
    constexpr std::size_t kBlock = std::size_t{256} * 1024;
    for (std::size_t length = kBlock - 3; length <= kBlock + 3; ++length) {
        CAPTURE(length);
        const std::string first(length, 'a');
        const Lines lines = linesOf(first + "\r\nsecond\n", 2 * kBlock);
        REQUIRE(lines.size() == 2);
        CHECK(lines[0] == "1:" + first);
        CHECK(lines[1] == "2:second");
    }
    const Lines cut = linesOf(std::string(3 * kBlock, 'a') + "\nsecond\n", 10);
    REQUIRE(cut.size() == 2);
    CHECK(cut[0] == "1!aaaaaaaaaa");
    CHECK(cut[1] == "2:second");
}
