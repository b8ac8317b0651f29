// SHA-256 and HMAC-SHA-256 against the published examples.
#include "core/base/digest.hpp"

#include "support/entries.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;

TEST_CASE("SHA-256 gives the digests of the examples to FIPS 180-4") {
    CHECK(sha256("abc").hex() ==
          "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256(BytesView{}).hex() ==
          "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq").hex() ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(sha256("abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmn"
                 "hijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu")
              .hex() == "cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1");
    CHECK(sha256(std::string(1'000'000, 'a')).hex() ==
          "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("the digest of parts is that of all of them in one") {
    CHECK(sha256({"a", "", "bc"}) == sha256("abc"));
    CHECK(sha256({}) == sha256(BytesView{}));
}

TEST_CASE("HMAC-SHA-256 gives the values of RFC 4231, cases 1, 2 and 6") {
    CHECK(hmacSha256(Bytes(20, '\x0b'), {"Hi There"}).hex() ==
          "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7");
    CHECK(hmacSha256("Jefe", {"what do ya want ", "for nothing?"}).hex() ==
          "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843");
    CHECK(hmacSha256(Bytes(131, '\xaa'), {"Test Using Larger Than Block-Size Key - Hash Key First"})
              .hex() == "60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54");
}

TEST_CASE("a digest is 32 bytes or none, and its hex is lower case") {
    const Digest digest = sha256("abc");
    CHECK(Digest::fromBytes(digest.view()) == digest);
    CHECK_FALSE(Digest::fromBytes(digest.view().substr(1)));
    CHECK_FALSE(Digest::fromBytes(Bytes(digest.view()) + "x"));
    CHECK(fromHex(digest.hex()) == Bytes(digest.view()));
    CHECK_FALSE(fromHex("BA"));
    CHECK_FALSE(fromHex("b"));
    CHECK_FALSE(fromHex("bg"));
    CHECK(fromHex("") == Bytes{});
    CHECK(toHex(Bytes("\x00\xff", 2)) == "00ff");
}

TEST_CASE("two digests are the same only if every bit is") {
    const Digest digest = sha256("abc");
    CHECK(sameInConstantTime(digest, digest));
    for (std::size_t byte = 0; byte < digest.bytes.size(); ++byte) {
        Digest other = digest;
        other.bytes[byte] ^= 1U;
        CHECK_FALSE(sameInConstantTime(digest, other));
    }
}
