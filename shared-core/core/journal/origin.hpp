// The identity of one journal: which device, and which of its lives.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bullace::journal {

inline constexpr std::uint32_t kGreatestEpoch = 2'000'000'000;

// Written as a letter, 16 lower-case hex digits, a point and the epoch: "t00c5a91be2f0417d.1".
struct Origin {
    char letter = 't'; // 't' field device, 's' office; any other lower-case letter has no rights
    std::uint64_t device = 0; // the 16 digits
    std::uint32_t epoch = 1;  // from 1; a new one whenever the device's past is in doubt

    friend bool operator==(const Origin&, const Origin&) = default;
    // The order of their texts as bytes: ".10" stands before ".2".
    friend std::strong_ordering operator<=>(const Origin& a, const Origin& b);

    [[nodiscard]] bool isSameDevice(const Origin& other) const {
        return letter == other.letter && device == other.device;
    }
    [[nodiscard]] std::string text() const;
    void appendTo(std::string& out) const;
};

[[nodiscard]] std::optional<Origin> readOrigin(std::string_view text);

// "t00c5a91be2f0417d": the origin without its epoch, as devices are named at pairing.
[[nodiscard]] std::string deviceText(char letter, std::uint64_t device);

// One entry's place: its journal and its number in it. Several branches of a fork may hold that
// place.
struct Place {
    Origin origin;
    std::uint64_t seq = 0;

    friend bool operator==(const Place&, const Place&) = default;
    friend auto operator<=>(const Place&, const Place&) = default;
};

} // namespace bullace::journal
