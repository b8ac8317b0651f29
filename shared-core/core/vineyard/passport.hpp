// The passport of an accession: the fields by which genebanks exchange what they hold.
// Source  Alercia, Diulgheroff & Mackay 2015, FAO/Bioversity Multi-Crop Passport Descriptors v2.1.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/result.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace bullace::vineyard {

enum class PassportKind {
    Text,
    Texts,     // several with ";" between them, no spaces behind it
    Date,      // YYYYMMDD; a month or day that nobody knows is "--" or "00"
    Code,      // one of `codes`
    Codes,     // several of them with ";" between
    Country,   // ISO 3166-1 alpha-3
    Institute, // FAO WIEWS: alpha-3 and digits, COL001
    Latitude,  // decimal degrees, -90 to 90
    Longitude, // decimal degrees, -180 to 180
    Number     // metres
};

struct PassportField {
    std::string_view mcpd; // "ORIGCTY"
    std::string_view
        field; // of accession/ID/FIELD: "name" for ACCENAME, else mcpd in small letters
    PassportKind kind = PassportKind::Text;
    std::span<const int> codes{};
};

// In the order of the standard. ACCENUMB is the accession's ID and no field.
[[nodiscard]] std::span<const PassportField> passportFields();
// By its MCPD name or by the field's; letters' size aside. Nothing where there is none.
[[nodiscard]] const PassportField* findPassportField(std::string_view name);

// Whether the text is what the field takes; an empty one always is. Errors: InvalidInput, which
// says what it takes.
[[nodiscard]] Status checkPassport(const PassportField& field, std::string_view text);

// 1975, 6 and no day are "197506--". `month` 0 and `day` 0: unknown.
[[nodiscard]] std::string passportDate(int year, unsigned month, unsigned day);
// 10°30'20" S is "103020S", 76°25'10" W is "0762510W"; rounded to seconds.
[[nodiscard]] std::string passportLatitude(double degrees);
[[nodiscard]] std::string passportLongitude(double degrees);

} // namespace bullace::vineyard
