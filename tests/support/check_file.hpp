// The outside data sets, which lie in ../shared/checks beside the project and are never copied into
// it. A test that needs one says plainly that it was left out where that folder is absent.
#pragma once

#include <doctest/doctest.h>

#include <fstream>
#include <optional>
#include <source_location>
#include <sstream>
#include <string>

namespace bullace::test {

// The file's text; nothing, and a message, where it is not beside the project.
// The caller's own path leads there: this header is reached through a link in the build folder.
[[nodiscard]] inline std::optional<std::string>
checkFile(const std::string& name,
          const std::source_location& caller = std::source_location::current()) {
    const std::string source = caller.file_name();
    std::ifstream in(source.substr(0, source.rfind("/tests/")) + "/../shared/checks/" + name,
                     std::ios::binary);
    if (!in) {
        MESSAGE("left out: ../shared/checks/" << name << " is not beside the project");
        return {};
    }
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

} // namespace bullace::test
