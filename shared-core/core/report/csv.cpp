#include "core/report/csv.hpp"

#include <algorithm>
#include <array>

namespace bullace::report {

namespace {

constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF";

// Windows-1252 from 0x80 to 0x9F; 0 where it has no letter (Unicode's best fit table, cp1252).
constexpr std::array<char32_t, 32> kWindows{
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

void appendUtf8(std::string& out, char32_t code) {
    if (code < 0x80) {
        out += static_cast<char>(code);
    } else if (code < 0x800) {
        out += static_cast<char>(0xC0U | (code >> 6U));
        out += static_cast<char>(0x80U | (code & 0x3FU));
    } else if (code < 0x10000) {
        out += static_cast<char>(0xE0U | (code >> 12U));
        out += static_cast<char>(0x80U | ((code >> 6U) & 0x3FU));
        out += static_cast<char>(0x80U | (code & 0x3FU));
    } else {
        out += static_cast<char>(0xF0U | (code >> 18U));
        out += static_cast<char>(0x80U | ((code >> 12U) & 0x3FU));
        out += static_cast<char>(0x80U | ((code >> 6U) & 0x3FU));
        out += static_cast<char>(0x80U | (code & 0x3FU));
    }
}

// How many bytes the character that begins here has; 0 where it is not UTF-8.
std::size_t utf8Length(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
    };
    const unsigned first = byte(at);
    const std::size_t length = first < 0x80                    ? 1U
                               : first >= 0xC2 && first < 0xE0 ? 2U
                               : first >= 0xE0 && first < 0xF0 ? 3U
                               : first >= 0xF0 && first < 0xF5 ? 4U
                                                               : 0U;
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(at + i) & 0xC0U) != 0x80U) {
            return 0;
        }
    }
    const bool isTooLong =
        (first == 0xE0 && byte(at + 1) < 0xA0) || (first == 0xF0 && byte(at + 1) < 0x90);
    const bool isNoCharacter =
        (first == 0xED && byte(at + 1) >= 0xA0) || (first == 0xF4 && byte(at + 1) >= 0x90);
    return isTooLong || isNoCharacter ? 0 : length;
}

bool isUtf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = utf8Length(text, at);
        if (length == 0) {
            return false;
        }
        at += length;
    }
    return true;
}

std::string fromWindows(std::string_view text) {
    std::string out;
    out.reserve(text.size() + text.size() / 8);
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        const bool isSpecial = byte >= 0x80 && byte < 0xA0;
        const char32_t code = isSpecial ? kWindows[byte - 0x80U] : char32_t{byte};
        appendUtf8(out, code == 0 ? char32_t{0xFFFD} : code);
    }
    return out;
}

std::string fromUtf16(std::string_view bytes, bool isLittle) {
    std::string out;
    const auto unit = [&](std::size_t at) {
        const auto low = static_cast<unsigned char>(bytes[at + (isLittle ? 0 : 1)]);
        const auto high = static_cast<unsigned char>(bytes[at + (isLittle ? 1 : 0)]);
        return static_cast<char32_t>(high << 8U | low);
    };
    for (std::size_t at = 0; at + 1 < bytes.size(); at += 2) {
        char32_t code = unit(at);
        if (code >= 0xD800 && code < 0xDC00 && at + 3 < bytes.size()) {
            const char32_t second = unit(at + 2);
            if (second >= 0xDC00 && second < 0xE000) {
                code = 0x10000 + ((code - 0xD800) << 10U) + (second - 0xDC00);
                at += 2;
            }
        }
        appendUtf8(out, code >= 0xD800 && code < 0xE000 ? char32_t{0xFFFD} : code);
    }
    return out;
}

std::string asUtf8(BytesView file, CsvDialect& dialect) {
    if (file.starts_with(kUtf8Mark)) {
        dialect.hasByteOrderMark = true;
        return std::string(file.substr(kUtf8Mark.size()));
    }
    if (file.starts_with("\xFF\xFE") || file.starts_with("\xFE\xFF")) {
        dialect.hasByteOrderMark = true;
        dialect.encoding = file[0] == '\xFF' ? CsvEncoding::Utf16Little : CsvEncoding::Utf16Big;
        return fromUtf16(file.substr(2), file[0] == '\xFF');
    }
    if (isUtf8(file)) {
        return std::string(file);
    }
    dialect.encoding = CsvEncoding::Windows1252;
    return fromWindows(file);
}

// The separator that stands most often outside of quotes in the first line that has any.
char separatorOf(std::string_view text) {
    std::array<std::size_t, 3> counts{};
    constexpr std::string_view kSeparators = ";,\t";
    bool isQuoted = false;
    for (const char c : text) {
        isQuoted = c == '"' ? !isQuoted : isQuoted;
        if (isQuoted) {
            continue;
        }
        if (const std::size_t which = kSeparators.find(c); which != std::string_view::npos) {
            ++counts[which];
        }
        if (c == '\n' && std::max({counts[0], counts[1], counts[2]}) > 0) {
            break;
        }
    }
    // A semicolon is what spreadsheets write where the comma is the decimal mark.
    const std::size_t best = counts[0] > 0 && counts[0] >= counts[2]   ? 0
                             : counts[2] > 0 && counts[2] >= counts[1] ? 2
                                                                       : 1;
    return kSeparators[best];
}

std::string trimmed(std::string text) {
    constexpr std::string_view kSpaces = " \t\r\n";
    text.erase(text.find_last_not_of(kSpaces) + 1);
    text.erase(0, std::min(text.find_first_not_of(kSpaces), text.size()));
    return text;
}

class Reader {
public:
    Reader(std::string_view text, CsvTable& table) : text_(text), table_(table) {}

    void readAll() {
        while (at_ < text_.size()) {
            CsvRow row = readRow();
            const bool isEmpty = std::all_of(
                row.cells.begin(), row.cells.end(), [](const auto& cell) { return cell.empty(); });
            if (isEmpty) {
                continue;
            }
            if (table_.header.empty()) {
                while (!row.cells.empty() && row.cells.back().empty()) {
                    row.cells.pop_back();
                }
                table_.header = std::move(row.cells);
                continue;
            }
            takeRow(std::move(row));
        }
    }

private:
    void takeRow(CsvRow row) {
        const std::size_t columns = table_.header.size();
        while (row.cells.size() > columns && row.cells.back().empty()) {
            row.cells.pop_back();
        }
        if (row.cells.size() > columns) {
            table_.problems.push_back({row.line,
                                       "This line has " + std::to_string(row.cells.size()) +
                                           " cells, the header has " + std::to_string(columns) +
                                           ". A text with the separator in it needs quotes."});
            return;
        }
        row.cells.resize(columns);
        table_.rows.push_back(std::move(row));
    }

    CsvRow readRow() {
        CsvRow row{line_, {}};
        while (true) {
            row.cells.push_back(readCell());
            if (at_ >= text_.size()) {
                return row;
            }
            const char c = text_[at_++];
            if (c == '\n') {
                ++line_;
                return row;
            }
        }
    }

    // Up to the separator or the end of the line, which is left standing.
    std::string readCell() {
        std::size_t first = at_;
        while (first < text_.size() && text_[first] == ' ') {
            ++first;
        }
        if (first < text_.size() && text_[first] == '"') {
            at_ = first + 1;
            return readQuoted();
        }
        std::string cell;
        while (at_ < text_.size() && text_[at_] != table_.dialect.separator && text_[at_] != '\n') {
            cell += text_[at_++];
        }
        return trimmed(std::move(cell));
    }

    std::string readQuoted() {
        const std::size_t began = line_;
        std::string cell;
        while (at_ < text_.size()) {
            const char c = text_[at_++];
            if (c != '"') {
                line_ += c == '\n' ? 1U : 0U;
                cell += c;
            } else if (at_ < text_.size() && text_[at_] == '"') {
                cell += '"';
                ++at_;
            } else {
                // What stands between the quote and the separator belongs to the cell, too.
                while (at_ < text_.size() && text_[at_] != table_.dialect.separator &&
                       text_[at_] != '\n') {
                    cell += text_[at_++];
                }
                return trimmed(std::move(cell));
            }
        }
        table_.problems.push_back({began, "A text begins with a quote here and never ends."});
        return trimmed(std::move(cell));
    }

    std::string_view text_;
    CsvTable& table_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
};

// Old line ends become new ones.
std::string withLineFeeds(std::string text) {
    std::string out;
    out.reserve(text.size());
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\r') {
            out += '\n';
            i += i + 1 < text.size() && text[i + 1] == '\n' ? 1U : 0U;
        } else {
            out += text[i];
        }
    }
    return out;
}

bool isNumberWith(std::string_view cell, char mark) {
    std::size_t digits = 0;
    std::size_t marks = 0;
    for (std::size_t i = cell.starts_with('-') ? 1 : 0; i < cell.size(); ++i) {
        const bool isDigit = cell[i] >= '0' && cell[i] <= '9';
        digits += isDigit ? 1U : 0U;
        marks += cell[i] == mark ? 1U : 0U;
        if (!isDigit && cell[i] != mark) {
            return false;
        }
    }
    return digits > 0 && marks == 1;
}

} // namespace

Result<CsvTable> readCsv(BytesView file) {
    if (file.size() > kGreatestCsv) {
        return Error{ErrorCode::BeyondLimit, "The file is larger than 256 MB. Split it.", {}};
    }
    if (file.starts_with("PK\x03\x04")) {
        return Error{ErrorCode::InvalidInput,
                     "This is a spreadsheet's own file. Save it as CSV there and take that.",
                     {}};
    }
    CsvTable table;
    const std::string text = withLineFeeds(asUtf8(file, table.dialect));
    if (text.find('\0') != std::string::npos) {
        return Error{ErrorCode::InvalidInput, "This is no text. Take a CSV file.", {}};
    }
    table.dialect.separator = separatorOf(text);
    Reader(text, table).readAll();
    if (table.header.empty()) {
        return Error{ErrorCode::InvalidInput,
                     "The file is empty. Its first line should name the columns.",
                     {}};
    }
    if (table.header.size() > kMostCsvColumns) {
        return Error{ErrorCode::BeyondLimit, "The file has more than 1000 columns.", {}};
    }
    bool hasPoint = false;
    bool hasComma = false;
    for (const CsvRow& row : table.rows) {
        for (const std::string& cell : row.cells) {
            hasPoint = hasPoint || isNumberWith(cell, '.');
            hasComma = hasComma || isNumberWith(cell, ',');
        }
    }
    table.dialect.usesDecimalComma = hasComma && !hasPoint;
    return table;
}

void appendCsvRow(std::string& out, const std::vector<std::string>& cells) {
    bool isFirst = true;
    for (const std::string& cell : cells) {
        out += isFirst ? "" : ",";
        isFirst = false;
        const bool isBare = cell.find_first_of(",\"\n\r;\t") == std::string::npos &&
                            !cell.starts_with(' ') && !cell.ends_with(' ');
        if (isBare) {
            out += cell;
            continue;
        }
        out += '"';
        for (const char c : cell) {
            out += c == '"' ? "\"\"" : std::string(1, c);
        }
        out += '"';
    }
    out += '\n';
}

} // namespace bullace::report
