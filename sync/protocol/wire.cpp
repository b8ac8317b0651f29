#include "sync/protocol/wire.hpp"

#include "sync/protocol/limits.hpp"

#include <algorithm>

namespace bullace::sync {

void WireWriter::count(std::uint64_t value) {
    while (value >= 0x80U) {
        byte(static_cast<std::uint8_t>(value | 0x80U));
        value >>= 7U;
    }
    byte(static_cast<std::uint8_t>(value));
}

void WireWriter::fixed64(std::uint64_t value) {
    for (int shift = 56; shift >= 0; shift -= 8) {
        byte(static_cast<std::uint8_t>(value >> static_cast<unsigned>(shift)));
    }
}

void WireWriter::history(const HistoryId& id) {
    raw({reinterpret_cast<const char*>(id.data()), id.size()});
}

void WireWriter::text(std::string_view text) {
    count(text.size());
    raw(text);
}

void WireWriter::origin(const journal::Origin& origin) {
    byte(static_cast<std::uint8_t>(origin.letter));
    fixed64(origin.device);
    count(origin.epoch);
}

void WireWriter::end(const journal::BranchEnd& end) {
    origin(end.origin);
    count(end.seq);
    digest(end.digest);
}

BytesView WireReader::raw(std::size_t size) {
    if (failed_ || left() < size) {
        failed_ = true;
        return {};
    }
    const BytesView view = bytes_.substr(at_, size);
    at_ += size;
    return view;
}

std::uint8_t WireReader::byte() {
    const BytesView view = raw(1);
    return view.empty() ? std::uint8_t{0} : static_cast<std::uint8_t>(view[0]);
}

std::uint64_t WireReader::count(std::uint64_t greatest) {
    std::uint64_t value = 0;
    for (unsigned shift = 0; shift < 63; shift += 7) {
        const std::uint64_t part = byte();
        value |= (part & 0x7FU) << shift;
        if ((part & 0x80U) == 0) {
            const bool isShortest = part != 0 || shift == 0;
            if (!isShortest || value > greatest) {
                break;
            }
            return failed_ ? 0 : value;
        }
    }
    failed_ = true;
    return 0;
}

std::size_t WireReader::items(std::size_t greatest, std::size_t leastBytes) {
    const auto number = static_cast<std::size_t>(count(greatest));
    if (number > left() / leastBytes) {
        failed_ = true;
    }
    return failed_ ? 0 : number;
}

std::uint64_t WireReader::fixed64() {
    std::uint64_t value = 0;
    for (const char c : raw(8)) {
        value = value << 8U | static_cast<std::uint8_t>(c);
    }
    return value;
}

Digest WireReader::digest() {
    return Digest::fromBytes(raw(32)).value_or(Digest{});
}

HistoryId WireReader::history() {
    HistoryId id{};
    const BytesView view = raw(id.size());
    std::transform(
        view.begin(), view.end(), id.begin(), [](char c) { return static_cast<std::uint8_t>(c); });
    return id;
}

std::string_view WireReader::text(std::size_t greatestBytes) {
    const std::string_view text = raw(static_cast<std::size_t>(count(greatestBytes)));
    if (!isCleanUtf8(text)) {
        failed_ = true;
    }
    return failed_ ? std::string_view{} : text;
}

journal::Origin WireReader::origin() {
    journal::Origin origin;
    origin.letter = static_cast<char>(byte());
    origin.device = fixed64();
    origin.epoch = static_cast<std::uint32_t>(count(journal::kGreatestEpoch));
    if (origin.letter < 'a' || origin.letter > 'z' || origin.epoch == 0) {
        failed_ = true;
    }
    return failed_ ? journal::Origin{} : origin;
}

journal::BranchEnd WireReader::end() {
    journal::BranchEnd end;
    end.origin = origin();
    end.seq = count(kGreatestSeq);
    end.digest = digest();
    if (end.seq == 0) {
        failed_ = true;
    }
    return end;
}

} // namespace bullace::sync
