#include "desk/study_views.hpp"

namespace bullace::desk {

std::vector<std::unique_ptr<StudyView>> makeStudyViews() {
    std::vector<std::unique_ptr<StudyView>> views;
    views.push_back(makeStageView());
    views.push_back(makeBloomView());
    views.push_back(makeForecastView());
    views.push_back(makeWeatherView());
    views.push_back(makeMeasureView());
    views.push_back(makeCropView());
    views.push_back(makeIdentityView());
    views.push_back(makeColdView());
    views.push_back(makeWinterView());
    views.push_back(makeGrowthView());
    views.push_back(makeColourView());
    views.push_back(makePeopleView());
    views.push_back(makeComparisonView());
    return views;
}

} // namespace bullace::desk
