// Entries and their bytes, the chain, and every shape that is refused.
#include "core/journal/entry.hpp"

#include "core/journal/entry_line.hpp"
#include "support/random_values.hpp"

#include <doctest/doctest.h>

#include <rapidcheck.h>

using namespace bullace;
using namespace bullace::journal;
using namespace bullace::test;

namespace {

// The items of a good entry, in the order of the fields, to be changed one at a time.
std::vector<Bytes> goodItems() {
    return {textValue("t0000000000000001.1"),
            integerValue(2),
            integerValue(9),
            listValue({integerValue(1'778'572'860'000), integerValue(-300)}),
            textValue("mk"),
            textValue("observe"),
            textValue("obs/B2-07-14/2026-05-12/stage"),
            integerValue(65),
            listValue({listValue({textValue("s0000000000000002.1"), integerValue(7)})}),
            listValue({integerValue(2), integerValue(3)}),
            textValue("misread"),
            textValue("65")};
}

bool isRead(const std::vector<Bytes>& items) {
    return readEntry(listValue(items)).ok();
}

bool isReadWith(std::size_t item, const Bytes& value) {
    std::vector<Bytes> items = goodItems();
    items[item] = value;
    return isRead(items);
}

} // namespace

TEST_CASE("the example beside the code is written byte for byte") {
    const Entry entry =
        entryOf({.subject = "obs/B2-07-14/2026-05-12/stage", .value = integerValue(65)});
    CHECK(toHex(entry.encode()) == "8c73" + toHex("t0000000000000001.1") + "0101f662" +
                                       toHex("mk") + "67" + toHex("observe") + "781d" +
                                       toHex("obs/B2-07-14/2026-05-12/stage") + "184180f6f6f6");
}

TEST_CASE("an entry with all its fields reads back as it was written") {
    const Bytes bytes = listValue(goodItems());
    const auto entry = readEntry(bytes);
    REQUIRE(entry.ok());
    CHECK(entry->origin == Origin{'t', 1, 1});
    CHECK(entry->seq == 2);
    CHECK(entry->count == 9);
    CHECK(entry->wall == Wall{1'778'572'860'000, -300});
    CHECK(entry->author == "mk");
    CHECK(entry->kind == Kind::Observe);
    CHECK(entry->subject == "obs/B2-07-14/2026-05-12/stage");
    CHECK(wholeNumberOf(entry->value) == 65);
    CHECK(entry->edges() == std::vector<Place>{{Origin{'s', 2, 1}, 7}});
    CHECK(entry->group == Group{2, 3});
    CHECK(entry->why == "misread");
    CHECK(entry->as == "65");
    CHECK(entry->extra.empty());
    CHECK(entry->owned().encode() == bytes);
}

TEST_CASE("fields that this version does not know are kept in a thirteenth item") {
    std::vector<Bytes> items = goodItems();
    items.push_back(record({{"mood", floatValue(7)}}));
    const Bytes bytes = listValue(items);
    const auto entry = readEntry(bytes);
    REQUIRE(entry.ok());
    CHECK(valueToJson(entry->extra) == R"({"mood":7.0})");
    CHECK(entry->owned().encode() == bytes);
    items.back() = MapValue().bytes();
    CHECK_FALSE(isRead(items)); // an empty one would be a second way to write the same entry
    items.back() = integerValue(1);
    CHECK_FALSE(isRead(items));
    items.push_back(integerValue(1));
    CHECK_FALSE(isRead(items));
}

TEST_CASE("each field of a wrong type makes the entry unreadable, with a plain reason") {
    const Bytes number = integerValue(1);
    const Bytes text = textValue("x");
    const Bytes pairOfTexts = listValue({text, text});
    const Bytes three = listValue({number, number, number});
    const struct {
        std::size_t item;
        Bytes value;
    } wrong[] = {
        {0, number},
        {0, textValue("t1.1")},
        {1, text},
        {1, integerValue(0)},
        {1, integerValue(-1)},
        {1, floatValue(2)},
        {1, nullValue()},
        {2, text},
        {2, integerValue(-1)},
        {2, floatValue(9)},
        {3, number},
        {3, pairOfTexts},
        {3, three},
        {3, listValue({floatValue(1), number})},
        {4, number},
        {4, nullValue()},
        {5, number},
        {6, number},
        {6, nullValue()},
        {8, nullValue()},
        {8, number},
        {8, listValue({number})},
        {8, listValue({pairOfTexts})},
        {8, listValue({listValue({textValue("t0000000000000001.1"), integerValue(0)})})},
        {8, listValue({listValue({textValue("t0000000000000001.1")})})},
        {9, number},
        {9, three},
        {9, listValue({integerValue(-1), number})},
        {10, number},
        {11, number},
    };
    REQUIRE(isRead(goodItems()));
    for (const auto& [item, value] : wrong) {
        CAPTURE(item);
        CAPTURE(valueToJson(value));
        CHECK_FALSE(isReadWith(item, value));
    }
    for (const std::size_t item :
         {std::size_t{3}, std::size_t{9}, std::size_t{10}, std::size_t{11}}) {
        CAPTURE(item);
        CHECK(isReadWith(item, nullValue()));
    }
    const auto misspelt = readEntry(integerValue(1));
    REQUIRE_FALSE(misspelt.ok());
    CHECK(misspelt.error().code == ErrorCode::Damaged);
    CHECK(misspelt.error().message == "The entry cannot be read: a list was expected.");
}

TEST_CASE(
    "an entry with too few fields, one cut short and one with something behind it are refused") {
    std::vector<Bytes> items = goodItems();
    const Bytes whole = listValue(items);
    for (std::size_t length = 0; length < whole.size(); ++length) {
        CHECK_FALSE(readEntry(whole.substr(0, length)).ok());
    }
    CHECK_FALSE(readEntry(whole + "x").ok());
    items.pop_back();
    CHECK_FALSE(isRead(items));
}

TEST_CASE("an entry larger than 64 KiB is refused, whatever it says") {
    std::vector<Bytes> items = goodItems();
    items[7] = listValue(std::vector<Bytes>(4, textValue(std::string(16'000, 'a'))));
    CHECK(isRead(items));
    items[7] = listValue(std::vector<Bytes>(5, textValue(std::string(16'000, 'a'))));
    const auto big = readEntry(listValue(items));
    REQUIRE_FALSE(big.ok());
    CHECK(big.error().code == ErrorCode::BeyondLimit);
}

TEST_CASE("a kind that nobody knows is kept by its word") {
    const Bytes bytes = entryOf({.kind = "dream"}).encode();
    const auto entry = readEntry(bytes);
    REQUIRE(entry.ok());
    CHECK(entry->kind == Kind::Unknown);
    CHECK(entry->kindText == "dream");
    for (const Kind kind :
         {Kind::Observe, Kind::Retract, Kind::Ruling, Kind::Catalog, Kind::Undo, Kind::Remark}) {
        CHECK(kindOf(kindWord(kind)) == kind);
    }
    CHECK(kindOf("Observe") == Kind::Unknown);
    CHECK(kindOf("") == Kind::Unknown);
}

TEST_CASE("the digest of an entry hangs on every entry before it") {
    const Bytes first = entryOf({.seq = 1}).encode();
    const Bytes second = entryOf({.seq = 2, .count = 2}).encode();
    const Digest one = chainDigest({}, first);
    CHECK(one == sha256(Bytes(32, '\0') + first));
    CHECK(chainDigest(one, second) == sha256(Bytes(one.view()) + second));
    Bytes changed = first;
    changed.back() = static_cast<char>(changed.back() ^ 1);
    CHECK(chainDigest(chainDigest({}, changed), second) != chainDigest(one, second));
}

TEST_CASE("entries of chance read back byte for byte") {
    CHECK(rc::check([](std::uint64_t seed) {
        const Bytes bytes = randomEntry(seed).encode();
        const auto entry = readEntry(bytes);
        RC_ASSERT(entry.ok());
        RC_ASSERT(entry->owned().encode() == bytes);
    }));
}

TEST_CASE("a damaged entry is refused, or is one that would have been written so") {
    std::uint64_t taken = 0;
    CHECK(rc::check([&taken](std::uint64_t seed) {
        const Bytes bytes = randomEntry(seed).encode();
        for (std::uint64_t i = 0; i < 100; ++i) {
            const Bytes other = damaged(bytes, seed + i);
            const auto entry = readEntry(other);
            if (entry) {
                ++taken;
                RC_ASSERT(entry->owned().encode() == other);
            }
        }
    }));
    CHECK(taken > 100);
}

TEST_CASE("a line of an export has the fields by name and leaves out what is absent") {
    std::string line;
    Bytes bytes =
        entryOf({.subject = "obs/B2-07-14/2026-05-12/stage", .value = integerValue(65)}).encode();
    appendEntryLine(line, *readEntry(bytes), Digest{});
    CHECK(line == R"({"origin":"t0000000000000001.1","seq":1,"count":1,"author":"mk",)"
                  R"("kind":"observe","subject":"obs/B2-07-14/2026-05-12/stage","value":65,)"
                  R"("over":[],"digest":")" +
                      std::string(64, '0') + "\"}\n");
    std::vector<Bytes> items = goodItems();
    items[7] = floatValue(7);
    items[10] = textValue("said \"no\"\n\x01\\");
    items.push_back(record({{"mood", textValue("\u00fc")}, {"z", listValue({})}}));
    bytes = listValue(items);
    line.clear();
    appendEntryLine(line, *readEntry(bytes), sha256("abc"));
    CHECK(line ==
          R"({"origin":"t0000000000000001.1","seq":2,"count":9,"wall":[1778572860000,-300],)"
          R"("author":"mk","kind":"observe","subject":"obs/B2-07-14/2026-05-12/stage",)"
          R"("value":7.0,"over":[["s0000000000000002.1",7]],"group":[2,3],)"
          R"("why":"said \"no\"\n\u0001\\","as":"65","z":[],"mood":")"
          "\u00fc"
          R"(","digest":"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"})"
          "\n");
}
