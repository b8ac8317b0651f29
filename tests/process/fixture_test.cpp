// Databases of every schema since the first stay readable: tests/fixtures holds one of each, with
// what it must say.
//
// A fixture is made by the console of its time: `create`, `import` of schema-N.jsonl (edits, a
// retraction, an undo, groups whole and not, a fork, a ruling, samples, unknown kinds and fields,
// an entry without a right, a line that waits), `backup`.
#include "process/programs.hpp"

#include <doctest/doctest.h>

#include <filesystem>

using namespace bullace::test;

namespace {

const std::string kFixtures = std::string(BULLACE_SOURCE) + "/tests/fixtures/";

} // namespace

TEST_CASE("a database of each schema so far opens, checks, and says and exports what it did") {
    int count = 0;
    for (int schema = 1;
         std::filesystem::exists(kFixtures + "schema-" + std::to_string(schema) + ".db");
         ++schema) {
        CAPTURE(schema);
        const std::string name = "schema-" + std::to_string(schema);
        Folder folder;
        const std::string path = folder.file("station.db");
        std::filesystem::copy_file(kFixtures + name + ".db", path);
        std::filesystem::permissions(
            path, std::filesystem::perms::owner_write, std::filesystem::perm_options::add);
        const std::string state = readFile(kFixtures + name + ".state.jsonl");
        const std::string exported = readFile(kFixtures + name + ".export.jsonl");
        CHECK(console({"verify", path}).status == 0);
        CHECK(console({"state", path}).out == state);
        CHECK(console({"export", path}).out == exported);
        // Opened for writing it is a copy, so it goes on under another number; what waited is here
        // as well, and still waits.
        const Ran added = console({"import", path, "-"}, readFile(kFixtures + name + ".jsonl"));
        CHECK(added.err.find("goes on under a new number") != std::string::npos);
        CHECK(added.out.find("50 here already") != std::string::npos);
        CHECK(added.err.find("waits for t4444444444444444.1 number 1") != std::string::npos);
        CHECK(console({"verify", path}).status == 0);
        CHECK(console({"state", path}).out == state);
        ++count;
    }
    CHECK(count >= 1);
}
