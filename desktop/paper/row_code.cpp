#include "paper/row_code.hpp"

#include "core/vineyard/position.hpp"

#include <charconv>
#include <vector>

namespace bullace::paper {

namespace {

constexpr std::string_view kHead = "ROW/";
constexpr unsigned kMostPages = 999;

// The first vine's position without its vine: "B2-07".
std::string rowText(const RowCode& code) {
    const std::string position = vineyard::writePosition({code.block, code.row, 1, 0});
    return position.substr(0, position.rfind('-'));
}

// Up to four parts; the round is the last, whatever it holds.
std::vector<std::string_view> partsOf(std::string_view text) {
    std::vector<std::string_view> parts;
    while (parts.size() < 3) {
        const auto slash = text.find('/');
        parts.push_back(text.substr(0, slash));
        if (slash == std::string_view::npos) {
            return parts;
        }
        text.remove_prefix(slash + 1);
    }
    parts.push_back(text);
    return parts;
}

bool readPage(std::string_view text, unsigned& page) {
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), page);
    return fault == std::errc() && end == text.data() + text.size() && text.front() != '0' &&
           page >= 1 && page <= kMostPages;
}

} // namespace

std::string writeRowCode(const RowCode& code) {
    std::string text = std::string(kHead) + rowText(code);
    if (code.page > 0) {
        text += code.isFromLast ? "/L/" : "/F/";
        text += std::to_string(code.page);
        text += code.round.empty() ? "" : "/" + code.round;
    }
    return text;
}

std::optional<RowCode> readRowCode(std::string_view text) {
    if (!text.starts_with(kHead)) {
        return std::nullopt;
    }
    const auto parts = partsOf(text.substr(kHead.size()));
    const std::string first = std::string(parts[0]) + "-01";
    const auto position = vineyard::readPosition(first);
    if (!position || position->vine != 1) {
        return std::nullopt;
    }
    RowCode code;
    code.block = position->block;
    code.row = position->row;
    if (parts.size() == 1) {
        return code;
    }
    if (parts.size() == 2 || (parts[1] != "F" && parts[1] != "L") || parts[2].empty() ||
        !readPage(parts[2], code.page)) {
        return std::nullopt;
    }
    code.isFromLast = parts[1] == "L";
    if (parts.size() == 4) {
        if (parts[3].empty() || parts[3].find('/') != std::string_view::npos) {
            return std::nullopt;
        }
        code.round = parts[3];
    }
    return code;
}

} // namespace bullace::paper
