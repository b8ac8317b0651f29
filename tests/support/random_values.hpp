// Values and entries of chance from a seed, damage to them, and a second way to write a value.
#pragma once

#include "core/base/cbor.hpp"
#include "support/entries.hpp"

#include <cmath>
#include <random>
#include <set>

namespace bullace::test {

using Chance = std::mt19937_64;

inline std::uint64_t below(Chance& chance, std::uint64_t bound) {
    return chance() % bound;
}

// A float of any of the three widths, subnormal ones among them.
inline double randomFloat(Chance& chance) {
    const std::uint64_t width = below(chance, 3);
    const double number = width == 0   ? halfToDouble(static_cast<std::uint16_t>(chance()))
                          : width == 1 ? std::ldexp(static_cast<double>(chance() & 0xFFFFFFU),
                                                    static_cast<int>(below(chance, 250)) - 149)
                                       : std::ldexp(static_cast<double>(chance() >> 11U),
                                                    static_cast<int>(below(chance, 2000)) - 1074);
    return std::isfinite(number) ? number : 0.25;
}

inline std::string randomText(Chance& chance) {
    static const char* const kPieces[] = {
        "a", "B", "7", " ", "/", "\"", "\\", "\n", "\x01", "\u00fc", "\u6c34", "\U00010151"};
    std::string text;
    for (std::uint64_t left = below(chance, 30); left > 0; --left) {
        text += kPieces[below(chance, std::size(kPieces))];
    }
    return text;
}

inline Bytes randomItem(Chance& chance, unsigned depth) {
    switch (below(chance, depth < 4 ? 8 : 6)) {
    case 0:
        return journal::integerValue(
            static_cast<std::int64_t>(chance() >> 11U >> below(chance, 53)));
    case 1:
        return journal::integerValue(
            -static_cast<std::int64_t>(chance() >> 11U >> below(chance, 53)));
    case 2:
        return journal::floatValue(randomFloat(chance));
    case 3:
        return journal::textValue(randomText(chance));
    case 4:
        return journal::booleanValue(chance() % 2 == 0);
    case 5:
        return journal::nullValue();
    case 6: {
        std::vector<Bytes> items;
        for (std::uint64_t left = below(chance, 6); left > 0; --left) {
            items.push_back(randomItem(chance, depth + 1));
        }
        return journal::listValue(items);
    }
    default: {
        std::set<std::string> keys;
        journal::MapValue map;
        for (std::uint64_t left = below(chance, 6); left > 0; --left) {
            const std::string key = randomText(chance);
            if (keys.insert(key).second) {
                map.add(key, randomItem(chance, depth + 1));
            }
        }
        return map.bytes();
    }
    }
}

inline Bytes randomValue(std::uint64_t seed) {
    Chance chance(seed);
    return randomItem(chance, 0);
}

inline journal::Origin randomOrigin(Chance& chance) {
    return {"tsx"[below(chance, 3)],
            chance(),
            static_cast<std::uint32_t>(1 + below(chance, journal::kGreatestEpoch))};
}

inline journal::Entry randomEntry(std::uint64_t seed) {
    static const char* const kKinds[] = {
        "observe", "retract", "ruling", "catalog", "undo", "remark", "dream"};
    Chance chance(seed);
    journal::Entry entry;
    entry.origin = randomOrigin(chance);
    entry.seq = 1 + below(chance, 1U << below(chance, 31));
    entry.count = below(chance, std::uint64_t{1} << below(chance, 53));
    if (chance() % 2 == 0) {
        entry.wall =
            journal::Wall{static_cast<std::int64_t>(below(chance, 1'900'000'000'000)), -300};
    }
    entry.author = randomText(chance);
    entry.kind = kKinds[below(chance, std::size(kKinds))];
    entry.subject = randomText(chance);
    entry.value = randomItem(chance, 1);
    for (std::uint64_t left = below(chance, 4); left > 0; --left) {
        entry.over.push_back({randomOrigin(chance), 1 + below(chance, 1000)});
    }
    if (chance() % 3 == 0) {
        entry.group = journal::Group{below(chance, 100), below(chance, 20000)};
    }
    if (chance() % 3 == 0) {
        entry.why = randomText(chance);
    }
    if (chance() % 3 == 0) {
        entry.as = randomText(chance);
    }
    if (chance() % 4 == 0) {
        entry.extra = journal::MapValue().add("mood", randomItem(chance, 1)).bytes();
    }
    return entry;
}

// One thing wrong: a bit, a byte more or less, or a stretch that stands twice.
inline Bytes damaged(Bytes bytes, std::uint64_t seed) {
    Chance chance(seed ^ 0x5EEDU);
    const auto at = static_cast<std::size_t>(below(chance, bytes.size()));
    switch (below(chance, 5)) {
    case 0:
        bytes[at] = static_cast<char>(bytes[at] ^ static_cast<char>(1U << below(chance, 8)));
        break;
    case 1:
        bytes.erase(at, 1);
        break;
    case 2:
        bytes.insert(at, 1, static_cast<char>(chance()));
        break;
    case 3:
        bytes[at] = static_cast<char>(chance());
        break;
    default:
        bytes.insert(at, bytes.substr(at, 1 + below(chance, 8)));
        break;
    }
    return bytes;
}

// The value read item by item and written again, by calls of the reader and the writer alone.
inline void rewrite(CborReader& in, CborWriter& out) {
    CborType type{};
    if (!in.peek(type)) {
        return;
    }
    std::int64_t whole = 0;
    double number = 0;
    std::string_view text;
    std::size_t count = 0;
    bool truth = false;
    switch (type) {
    case CborType::Integer:
        in.integer(whole) ? out.integer(whole) : out.null();
        return;
    case CborType::Float:
        in.number(number) ? out.number(number) : out.null();
        return;
    case CborType::Text:
        in.text(text) ? out.text(text) : out.null();
        return;
    case CborType::Null:
        in.null();
        out.null();
        return;
    case CborType::False:
    case CborType::True:
        in.boolean(truth) ? out.boolean(truth) : out.null();
        return;
    case CborType::Array:
        in.array(count) ? out.array(count) : out.null();
        break;
    case CborType::Map:
        in.map(count) ? out.map(count) : out.null();
        count *= 2;
        break;
    }
    for (std::size_t i = 0; i < count && !in.failed(); ++i) {
        rewrite(in, out);
    }
}

inline Bytes rewritten(BytesView value) {
    Bytes bytes;
    CborReader in(value);
    CborWriter out(bytes);
    rewrite(in, out);
    return in.failed() || !in.atEnd() ? Bytes("failed") : bytes;
}

} // namespace bullace::test
