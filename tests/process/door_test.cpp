// Who is let in, and who gets nothing.
#include "process/programs.hpp"

#include <doctest/doctest.h>

#include <cstdio>
#include <filesystem>

using namespace bullace::test;

namespace {

struct Pair {
    Folder folder;
    std::string station = folder.file("station.db");
    std::string tablet = folder.file("tablet.db");
    LineMaker maker{0xA1};

    Pair() {
        REQUIRE(console({"create", station, "--station", "Invented", "--zone", "UTC"}).status == 0);
        REQUIRE(console({"create", tablet, "--field", "--device", maker.device()}).status == 0);
        REQUIRE(console({"import", tablet, "-"}, maker.next(20)).status == 0);
    }
    [[nodiscard]] Ran pair(const std::string& at, const std::string& code) const {
        return console({"pair", tablet, "--at", at, "--code", code, "--name", "tablet"});
    }
    [[nodiscard]] std::string held() const { return console({"export", station}).out; }
};

bool says(const Ran& ran, const std::string& words) {
    return ran.err.find(words) != std::string::npos;
}

// A key and a certificate of its own in one file, made by Debian's openssl.
void makeKey(const std::string& path) {
    const Ran made = runProgram({"openssl",
                                 "req",
                                 "-x509",
                                 "-newkey",
                                 "ec",
                                 "-pkeyopt",
                                 "ec_paramgen_curve:prime256v1",
                                 "-nodes",
                                 "-keyout",
                                 path,
                                 "-out",
                                 path + "-cert",
                                 "-subj",
                                 "/CN=x"});
    REQUIRE_MESSAGE(made.status == 0, made.err);
    writeFile(path, readFile(path) + readFile(path + "-cert"));
}

// Debian's TLS client, which says a word that is no message of a sync.
Ran openssl(const Server& server, const std::vector<std::string>& more) {
    std::vector<std::string> words{"openssl",
                                   "s_client",
                                   "-connect",
                                   server.address(),
                                   "-tls1_3",
                                   "-alpn",
                                   "bullace/1",
                                   "-ign_eof"};
    words.insert(words.end(), more.begin(), more.end());
    return runProgram(words, "hello\n");
}

} // namespace

TEST_CASE("a device that was never paired, one with another key, and a revoked one get nothing and "
          "give nothing") {
    Pair pair;
    Server server(pair.station);
    const Ran unpaired = console({"sync", pair.tablet});
    CHECK(unpaired.status == 1);
    CHECK(says(unpaired, "not paired"));

    REQUIRE(pair.pair(server.address(), server.code(pair.station)).status == 0);
    const std::string key = readFile(pair.tablet + "-key");
    std::filesystem::remove(pair.tablet + "-key");
    makeKey(pair.tablet + "-key");
    const Ran wronglyKeyed = console({"sync", pair.tablet});
    CHECK(wronglyKeyed.status == 1);
    CHECK(pair.held().empty());

    writeFile(pair.tablet + "-key", key);
    REQUIRE(console({"devices", pair.station, "--revoke", "tablet"}).status == 0);
    const Ran revoked = console({"sync", pair.tablet});
    CHECK(revoked.status == 1);
    CHECK(says(revoked, "paired anew"));
    CHECK(pair.held().empty());
    CHECK(server.stop().status == 0);
}

TEST_CASE(
    "a client of Debian's openssl without a certificate, or with one nobody knows, is refused") {
    Pair pair;
    Server server(pair.station);
    REQUIRE(pair.pair(server.address(), server.code(pair.station)).status == 0);
    const std::string unknown = pair.folder.file("unknown");
    makeKey(unknown);
    // In TLS 1.3 the client has said all of its part before the server judges: the refusal is the
    // alert that follows.
    const Ran bare = openssl(server, {});
    CHECK(says(bare, "alert certificate required"));
    const Ran stranger = openssl(server, {"-cert", unknown, "-key", unknown});
    CHECK(says(stranger, "alert bad certificate"));
    for (const Ran* refused : {&bare, &stranger}) {
        CHECK(refused->status == 1);
        CHECK(refused->out.find("no message of a sync") == std::string::npos);
    }
    // The same words with the key of a paired device are heard, and answered.
    const std::string known = pair.tablet + "-key";
    const Ran heard = openssl(server, {"-cert", known, "-key", known});
    CHECK_FALSE(says(heard, "alert"));
    CHECK(heard.out.find("no message of a sync") != std::string::npos);
    CHECK(pair.held().empty());
    CHECK(server.stop().status == 0);
}

TEST_CASE("a sync with a computer that has another key is a hard stop before anything is sent") {
    Pair pair;
    std::uint16_t port = 0;
    {
        Server server(pair.station);
        port = server.port();
        REQUIRE(pair.pair(server.address(), server.code(pair.station)).status == 0);
        CHECK(server.stop().status == 0);
    }
    const std::string stranger = pair.folder.file("stranger.db");
    REQUIRE(console({"create", stranger, "--station", "Another", "--zone", "UTC"}).status == 0);
    Server other(stranger, port);
    const Ran synced = console({"sync", pair.tablet});
    CHECK(synced.status == 1);
    CHECK(says(synced, "key"));
    CHECK(console({"export", stranger}).out.empty());
    CHECK(other.stop().status == 0);
}

TEST_CASE(
    "pairing asks for an armed station and the right code, and a code is good for one device") {
    Pair pair;
    Server server(pair.station);
    const std::string wrong = "AAAA-BBBB-CCCC-DDDD";
    CHECK(says(pair.pair(server.address(), wrong), "nobody armed it"));
    const std::string code = server.code(pair.station);
    const Ran misspelt = pair.pair(server.address(), "12");
    CHECK(misspelt.status == 1);
    CHECK(says(misspelt, "16 letters and digits"));
    CHECK(says(pair.pair(server.address(), wrong), "2 of three tries are left"));
    CHECK(says(pair.pair(server.address(), wrong), "1 of three tries"));
    const Ran third = pair.pair(server.address(), wrong);
    CHECK(third.status == 1);
    CHECK(says(third, "wrong three times"));
    const Ran dead = pair.pair(server.address(), code);
    CHECK(dead.status == 1);
    CHECK(says(dead, "Arm it again"));
    const std::string again = server.code(pair.station);
    CHECK(pair.pair(server.address(), again).status == 0);
    const std::string second = pair.folder.file("second.db");
    REQUIRE(console({"create", second, "--field"}).status == 0);
    const Ran used = console({"pair", second, "--at", server.address(), "--code", again});
    CHECK(used.status == 1);
    CHECK(says(used, "the code was used"));
    CHECK(console({"sync", pair.tablet}).status == 0);
    CHECK(console({"export", pair.tablet}).out == pair.held());
    CHECK(server.stop().status == 0);
}

TEST_CASE("a server that is not there is told in plain words, and entries stay where they are") {
    Pair pair;
    {
        Server server(pair.station);
        REQUIRE(pair.pair(server.address(), server.code(pair.station)).status == 0);
        CHECK(server.stop().status == 0);
    }
    const std::string before = console({"export", pair.tablet}).out;
    const Ran synced = console({"sync", pair.tablet});
    CHECK(synced.status == 1);
    CHECK(says(synced, "No station answers"));
    CHECK(console({"export", pair.tablet}).out == before);
}

TEST_CASE("while a server runs, ruling, importing, devices and backup go on, and a second writer "
          "is refused") {
    Folder folder;
    const std::string deep =
        folder.file(std::string(100, 'x')); // longer than the address of a socket may be
    std::filesystem::create_directory(deep);
    const std::string station = deep + "/station.db";
    REQUIRE(console({"create", station, "--station", "Invented", "--zone", "UTC"}).status == 0);
    Server server(station);
    const std::string head =
        R"({"seq":1,"author":"mk","kind":"observe","subject":"obs/B2-07-14/2026-05-12/clusters",)";
    const std::string lines = head + R"("origin":"t0000000000000001.1","count":1,"value":40})" +
                              "\n" + head +
                              R"("origin":"t0000000000000002.1","count":1,"value":60})" + "\n";
    const Ran imported = console({"import", station, "-"}, lines);
    CHECK_MESSAGE(imported.status == 0, imported.err);
    const Ran conflicts = console({"conflicts", station});
    CHECK(conflicts.out.find("1 conflict waits") != std::string::npos);
    const Ran ruled = console({"rule",
                               station,
                               "obs/B2-07-14/2026-05-12/clusters",
                               "--value",
                               "41",
                               "--why",
                               "counted again",
                               "--by",
                               "ed"});
    CHECK_MESSAGE(ruled.status == 0, ruled.err);
    CHECK(console({"conflicts", station}).out.find("No conflict") != std::string::npos);
    CHECK(console({"devices", station}).status == 0);
    CHECK(console({"verify", station}).status == 0);
    CHECK(console({"backup", station, folder.file("backup.db")}).status == 0);
    CHECK(console({"verify", folder.file("backup.db")}).status == 0);
    const Ran mended = console({"verify", station, "--mend"});
    CHECK(mended.status == 1);
    CHECK(says(mended, "open for writing in another program"));
    const Ran second =
        runProgram({std::string(BULLACE_BIN) + "/bullace-syncd", station, "--port", "0"});
    CHECK(second.status == 1);
    CHECK(says(second, "open for writing in another program"));
    CHECK(server.stop().status == 0);
    CHECK_FALSE(std::filesystem::exists(station + "-socket"));
}
