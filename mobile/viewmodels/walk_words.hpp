// How the tablet says what a walk noted, and what looks wrong with it. The rest of its words are
// those of both apps.
#pragma once

#include "field/walk_sheet.hpp"

#include "quick/words.hpp"

#include <QString>

#include <vector>

namespace bullace::tablet {

using quick::dateWords;
using quick::decimalMark;
using quick::errorWords;
using quick::fromText;
using quick::labelFaultWords;
using quick::localNumber;
using quick::numberWords;
using quick::placeWords;
using quick::refusalWords;
using quick::rowWords;
using quick::sideWord;
using quick::stageCodeWords;
using quick::titleWords;
using quick::toText;
using quick::valueWords;
using quick::vineWords;

// The stops' values of one descriptor: the value, or how many samples.
[[nodiscard]] QString cellWords(const vineyard::Asked& asked,
                                const std::vector<const field::NotedValue*>& noted,
                                const UnitWishes& wishes);

// What looks wrong, as one sentence: "5 after 7 on 3 May 2026".
[[nodiscard]] QString
doubtWords(const vineyard::Asked& asked, const field::NotedValue& noted, const UnitWishes& wishes);
} // namespace bullace::tablet
