#include "core/vineyard/passport.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace bullace::vineyard {

namespace {

using Kind = PassportKind;

constexpr std::array kSampstat{100, 110, 120, 130, 200, 300, 400, 410, 411, 412, 413,
                               414, 415, 416, 420, 421, 422, 423, 500, 600, 999};
constexpr std::array kCollsrc{10, 11, 12, 13, 14, 15, 20, 21, 22, 23, 24,
                              25, 26, 27, 28, 30, 40, 50, 60, 61, 62, 99};
constexpr std::array kStorage{10, 11, 12, 13, 20, 30, 40, 50, 99};
constexpr std::array kMlsstat{0, 1, 99};

constexpr std::array kFields{
    PassportField{"PUID", "puid", Kind::Text},
    PassportField{"INSTCODE", "instcode", Kind::Institute},
    PassportField{"COLLNUMB", "collnumb", Kind::Text},
    PassportField{"COLLCODE", "collcode", Kind::Texts},
    PassportField{"COLLNAME", "collname", Kind::Texts},
    PassportField{"COLLINSTADDRESS", "collinstaddress", Kind::Texts},
    PassportField{"COLLMISSID", "collmissid", Kind::Text},
    PassportField{"GENUS", "genus", Kind::Text},
    PassportField{"SPECIES", "species", Kind::Text},
    PassportField{"SPAUTHOR", "spauthor", Kind::Text},
    PassportField{"SUBTAXA", "subtaxa", Kind::Text},
    PassportField{"SUBTAUTHOR", "subtauthor", Kind::Text},
    PassportField{"CROPNAME", "cropname", Kind::Text},
    PassportField{"ACCENAME", "name", Kind::Texts},
    PassportField{"ACQDATE", "acqdate", Kind::Date},
    PassportField{"ORIGCTY", "origcty", Kind::Country},
    PassportField{"COLLSITE", "collsite", Kind::Text},
    PassportField{"DECLATITUDE", "declatitude", Kind::Latitude},
    PassportField{"DECLONGITUDE", "declongitude", Kind::Longitude},
    PassportField{"COORDUNCERT", "coorduncert", Kind::Number},
    PassportField{"COORDDATUM", "coorddatum", Kind::Text},
    PassportField{"GEOREFMETH", "georefmeth", Kind::Text},
    PassportField{"ELEVATION", "elevation", Kind::Number},
    PassportField{"COLLDATE", "colldate", Kind::Date},
    PassportField{"BREDCODE", "bredcode", Kind::Texts},
    PassportField{"BREDNAME", "bredname", Kind::Texts},
    PassportField{"SAMPSTAT", "sampstat", Kind::Code, kSampstat},
    PassportField{"ANCEST", "ancest", Kind::Text},
    PassportField{"COLLSRC", "collsrc", Kind::Code, kCollsrc},
    PassportField{"DONORCODE", "donorcode", Kind::Institute},
    PassportField{"DONORNAME", "donorname", Kind::Text},
    PassportField{"DONORNUMB", "donornumb", Kind::Text},
    PassportField{"OTHERNUMB", "othernumb", Kind::Texts},
    PassportField{"DUPLSITE", "duplsite", Kind::Texts},
    PassportField{"DUPLINSTNAME", "duplinstname", Kind::Texts},
    PassportField{"STORAGE", "storage", Kind::Codes, kStorage},
    PassportField{"MLSSTAT", "mlsstat", Kind::Code, kMlsstat},
    PassportField{"REMARKS", "remarks", Kind::Texts},
    PassportField{"ACCEURL", "acceurl", Kind::Text},
};

std::string lowered(std::string_view text) {
    std::string small(text);
    for (char& c : small) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return small;
}

Error notA(const PassportField& field, std::string_view text, const std::string& what) {
    return {ErrorCode::InvalidInput,
            std::string(field.mcpd) + ": \"" + std::string(text) + "\" is not " + what + ".",
            {}};
}

bool areDigits(std::string_view text) {
    return !text.empty() &&
           std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool areCapitals(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

bool isUnknown(std::string_view part) {
    return part == "--" || part == "00";
}

int numberIn(std::string_view digits) {
    int number = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), number);
    return number;
}

bool isDate(std::string_view text) {
    if (text.size() != 8 || !areDigits(text.substr(0, 4))) {
        return false;
    }
    const std::string_view month = text.substr(4, 2);
    const std::string_view day = text.substr(6, 2);
    if (isUnknown(month)) {
        return isUnknown(day);
    }
    if (!areDigits(month) || (!isUnknown(day) && !areDigits(day))) {
        return false;
    }
    const CivilDate date{
        std::chrono::year(numberIn(text.substr(0, 4))),
        std::chrono::month(static_cast<unsigned>(numberIn(month))),
        std::chrono::day(isUnknown(day) ? 1U : static_cast<unsigned>(numberIn(day)))};
    return date.ok();
}

bool isNumber(std::string_view text, double limit) {
    double number = 0;
    const char* begin = text.data() + (text.starts_with('+') ? 1 : 0);
    const auto [end, fault] = std::from_chars(begin, text.data() + text.size(), number);
    return fault == std::errc{} && end == text.data() + text.size() && std::isfinite(number) &&
           std::abs(number) <= limit;
}

bool isCode(const PassportField& field, std::string_view text) {
    return areDigits(text) && text.size() <= 4 &&
           std::find(field.codes.begin(), field.codes.end(), numberIn(text)) != field.codes.end();
}

// Each part between semicolons.
template<typename IsRight>
bool areAll(std::string_view text, IsRight isRight) {
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(';', at), text.size());
        if (!isRight(text.substr(at, end - at))) {
            return false;
        }
        at = end + 1;
    }
    return true;
}

std::string degreesText(double degrees, int width, char positive, char negative) {
    const auto seconds = static_cast<long>(std::llround(std::abs(degrees) * 3600));
    const auto padded = [](long number, int digits) {
        std::string text = std::to_string(number);
        return std::string(
                   static_cast<std::size_t>(std::max(0, digits - static_cast<int>(text.size()))),
                   '0') +
               text;
    };
    return padded(seconds / 3600, width) + padded(seconds / 60 % 60, 2) + padded(seconds % 60, 2) +
           (degrees < 0 ? negative : positive);
}

} // namespace

std::span<const PassportField> passportFields() {
    return kFields;
}

const PassportField* findPassportField(std::string_view name) {
    const std::string wanted = lowered(name);
    for (const PassportField& field : kFields) {
        if (lowered(field.mcpd) == wanted || field.field == wanted) {
            return &field;
        }
    }
    return nullptr;
}

Status checkPassport(const PassportField& field, std::string_view text) {
    if (text.empty()) {
        return {};
    }
    switch (field.kind) {
    case Kind::Text:
        return {};
    case Kind::Texts:
        return areAll(text, [](std::string_view part) { return !part.starts_with(' '); })
                   ? Status{}
                   : notA(field, text, "written with \";\" and no space between several");
    case Kind::Date:
        return isDate(text)
                   ? Status{}
                   : notA(field, text, "a date YYYYMMDD, -- for a month or day that nobody knows");
    case Kind::Code:
        return isCode(field, text) ? Status{} : notA(field, text, "a code of the standard's list");
    case Kind::Codes:
        return areAll(text, [&field](std::string_view part) { return isCode(field, part); })
                   ? Status{}
                   : notA(field, text, "codes of the standard's list with \";\" between them");
    case Kind::Country:
        return text.size() == 3 && areCapitals(text)
                   ? Status{}
                   : notA(field, text, "a country's three capital letters (ISO 3166-1)");
    case Kind::Institute:
        return text.size() >= 4 && areCapitals(text.substr(0, 3)) && areDigits(text.substr(3))
                   ? Status{}
                   : notA(field, text, "an institute's code, like COL001");
    case Kind::Latitude:
        return isNumber(text, 90) ? Status{}
                                  : notA(field, text, "a latitude in degrees, -90 to 90");
    case Kind::Longitude:
        return isNumber(text, 180) ? Status{}
                                   : notA(field, text, "a longitude in degrees, -180 to 180");
    case Kind::Number:
        return isNumber(text, 1e6) ? Status{} : notA(field, text, "a number of metres");
    }
    return {};
}

std::string passportDate(int year, unsigned month, unsigned day) {
    const auto two = [](unsigned number) {
        return number == 0 ? std::string("--") : (number < 10 ? "0" : "") + std::to_string(number);
    };
    const std::string digits = std::to_string(year);
    return std::string(4 - std::min<std::size_t>(4, digits.size()), '0') + digits + two(month) +
           (month == 0 ? "--" : two(day));
}

std::string passportLatitude(double degrees) {
    return degreesText(degrees, 2, 'N', 'S');
}

std::string passportLongitude(double degrees) {
    return degreesText(degrees, 3, 'E', 'W');
}

} // namespace bullace::vineyard
