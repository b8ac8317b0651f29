// The views of the page Breeding, each made in a file of its own.
#pragma once

#include "desk/study.hpp"

#include <memory>
#include <vector>

namespace bullace::desk {

// All of them, in the order in which they are offered.
[[nodiscard]] std::vector<std::unique_ptr<StudyView>> makeBreedingViews();

[[nodiscard]] std::unique_ptr<StudyView> makeTrialView();
[[nodiscard]] std::unique_ptr<StudyView> makePredictionView();
[[nodiscard]] std::unique_ptr<StudyView> makePedigreeView();
[[nodiscard]] std::unique_ptr<StudyView> makeCrossPlanView();
[[nodiscard]] std::unique_ptr<StudyView> makeCrossBookView();

} // namespace bullace::desk
