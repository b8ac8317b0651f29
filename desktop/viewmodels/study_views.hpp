// The views of the sciences, each made in a file of its own.
#pragma once

#include "desk/study.hpp"

#include <memory>

namespace bullace::desk {

[[nodiscard]] std::unique_ptr<StudyView> makeMeasureView();
[[nodiscard]] std::unique_ptr<StudyView> makeCropView();
[[nodiscard]] std::unique_ptr<StudyView> makeIdentityView();
[[nodiscard]] std::unique_ptr<StudyView> makeColdView();
[[nodiscard]] std::unique_ptr<StudyView> makeWinterView();
[[nodiscard]] std::unique_ptr<StudyView> makeGrowthView();
[[nodiscard]] std::unique_ptr<StudyView> makeColourView();
[[nodiscard]] std::unique_ptr<StudyView> makePeopleView();
[[nodiscard]] std::unique_ptr<StudyView> makeComparisonView();
[[nodiscard]] std::unique_ptr<StudyView> makeStageView();
[[nodiscard]] std::unique_ptr<StudyView> makeBloomView();
[[nodiscard]] std::unique_ptr<StudyView> makeForecastView();
[[nodiscard]] std::unique_ptr<StudyView> makeWeatherView();

} // namespace bullace::desk
