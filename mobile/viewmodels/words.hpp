// How the tablet says things: places, dates, values, doubts, errors, in the language of the screen.
#pragma once

#include "field/catalogue.hpp"
#include "field/walk_sheet.hpp"

#include "core/base/result.hpp"
#include "core/base/units.hpp"
#include "core/descriptors/number_pad.hpp"
#include "core/vineyard/label_code.hpp"
#include "core/walk/route.hpp"

#include <QString>

#include <string>
#include <string_view>

namespace bullace::tablet {

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

[[nodiscard]] QString titleWords(const field::Asked& asked);
// A number as it is stored, in the person's unit and with the decimal mark of her language.
[[nodiscard]] QString
numberWords(const field::Asked& asked, double stored, const UnitWishes& wishes);
// A value, short enough to hang on the wire.
[[nodiscard]] QString
valueWords(const field::Asked& asked, BytesView value, const UnitWishes& wishes);
// The stops' values of one descriptor: the value, or how many samples.
[[nodiscard]] QString cellWords(const field::Asked& asked,
                                const std::vector<const field::NotedValue*>& noted,
                                const UnitWishes& wishes);

// What looks wrong, as one sentence: "5 after 7 on 3 May 2026".
[[nodiscard]] QString
doubtWords(const field::Asked& asked, const field::NotedValue& noted, const UnitWishes& wishes);
[[nodiscard]] QString refusalWords(const descriptors::NumberPad& pad);
[[nodiscard]] QString labelFaultWords(vineyard::LabelFault fault);

// An error for a person. English says what core says; other languages say it by its code.
[[nodiscard]] QString errorWords(const Error& error);

// How a decimal point is written here: "." or ",".
[[nodiscard]] QString decimalMark();
[[nodiscard]] QString localNumber(const std::string& withPoint);

} // namespace bullace::tablet
