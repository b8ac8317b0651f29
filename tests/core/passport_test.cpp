// The passport fields against the standard's own examples: FAO/Bioversity Multi-Crop Passport
// Descriptors (v2.1, Alercia, Diulgheroff & Mackay 2015; the examples also stand in the edition of
// 2001).
#include "core/vineyard/passport.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::vineyard;

namespace {

bool takes(const char* field, const char* text) {
    const PassportField* known = findPassportField(field);
    REQUIRE(known != nullptr);
    return checkPassport(*known, text).ok();
}

} // namespace

TEST_CASE("dates whose day or month nobody knows, as the standard writes them") {
    CHECK(passportDate(1975, 6, 0) == "197506--");
    CHECK(passportDate(1975, 0, 0) == "1975----");
    CHECK(passportDate(1975, 0, 12) == "1975----");
    CHECK(takes("ACQDATE", "197506--"));
    CHECK(takes("ACQDATE", "1975----"));
    CHECK(takes("COLLDATE", "19750600"));
    CHECK(takes("COLLDATE", "20260514"));
    CHECK_FALSE(takes("COLLDATE", "20260230"));
    CHECK_FALSE(takes("COLLDATE", "2026-05-14"));
    CHECK_FALSE(takes("COLLDATE", "1975--12"));
}

TEST_CASE("coordinates in degrees, minutes and seconds, as the standard writes them") {
    CHECK(passportLatitude(-(10 + 30 / 60.0 + 20 / 3600.0)) == "103020S");
    CHECK(passportLongitude(-(76 + 25 / 60.0 + 10 / 3600.0)) == "0762510W");
    CHECK(takes("DECLATITUDE", "-10.50556"));
    CHECK_FALSE(takes("DECLATITUDE", "90.1"));
    CHECK(takes("DECLONGITUDE", "-76.41944"));
    CHECK_FALSE(takes("DECLONGITUDE", "west"));
}

TEST_CASE("codes outside of the standard's lists are refused") {
    CHECK(takes("SAMPSTAT", "416"));
    CHECK_FALSE(takes("SAMPSTAT", "425"));
    CHECK(takes("COLLSRC", "61"));
    CHECK_FALSE(takes("COLLSRC", "29"));
    CHECK(takes("STORAGE", "20;40"));
    CHECK_FALSE(takes("STORAGE", "14"));
    CHECK(passportFields().size() == 39);
    CHECK(findPassportField("SAMPSTAT")->codes.size() == 21);
    CHECK(findPassportField("COLLSRC")->codes.size() == 22);
}

TEST_CASE("several names stand in one field with semicolons and no spaces") {
    CHECK(takes("ACCENAME", "Rheinische Vorgebirgstrauben;Emma;Avlon"));
    CHECK_FALSE(takes("ACCENAME", "Emma; Avlon"));
    CHECK(findPassportField("accename")->field == "name");
    CHECK(takes("REMARKS", "COLLSRC:riverside"));
    CHECK(takes("ORIGCTY", "COL"));
    CHECK_FALSE(takes("ORIGCTY", "Colombia"));
    CHECK(takes("INSTCODE", "COL001"));
    CHECK_FALSE(takes("INSTCODE", "C001"));
    CHECK(findPassportField("no such field") == nullptr);
}
