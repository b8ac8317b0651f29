// How both apps say things: places, dates, values, errors, in the language of the screen.
#pragma once

#include "core/base/result.hpp"
#include "core/base/units.hpp"
#include "core/descriptors/number_pad.hpp"
#include "core/vineyard/catalogue.hpp"
#include "core/vineyard/label_code.hpp"
#include "core/walk/route.hpp"

#include <QString>

#include <cstdint>
#include <string>
#include <string_view>

namespace bullace::quick {

[[nodiscard]] QString fromText(std::string_view text);
[[nodiscard]] std::string toText(const QString& text);

// "14 May 2026": the month in letters, whatever the country.
[[nodiscard]] QString dateWords(CivilDate date);
// "B2 · row 7 · vine 14a"; what is no position as it is.
[[nodiscard]] QString placeWords(std::string_view position);
// "7" and "14a" of B2-07-14a.
[[nodiscard]] QString rowWords(std::string_view position);
[[nodiscard]] QString vineWords(std::string_view position);
[[nodiscard]] QString sideWord(walk::Side side); // empty for the whole vine

[[nodiscard]] QString titleWords(const vineyard::Asked& asked);
// A number as it is stored, in the person's unit and with the decimal mark of her language.
[[nodiscard]] QString
numberWords(const vineyard::Asked& asked, double stored, const UnitWishes& wishes);
// A value, short enough to hang on the wire.
[[nodiscard]] QString
valueWords(const vineyard::Asked& asked, BytesView value, const UnitWishes& wishes);
[[nodiscard]] QString refusalWords(const descriptors::NumberPad& pad);
[[nodiscard]] QString labelFaultWords(vineyard::LabelFault fault);

// An error for a person. English says what core says; other languages say it by its code.
[[nodiscard]] QString errorWords(const Error& error);

// A code of a stage: "05", "65".
[[nodiscard]] QString stageCodeWords(std::int64_t code);

// How a decimal point is written here: "." or ",".
[[nodiscard]] QString decimalMark();
[[nodiscard]] QString localNumber(const std::string& withPoint);

} // namespace bullace::quick
