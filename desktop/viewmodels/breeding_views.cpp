#include "desk/breeding_views.hpp"

namespace bullace::desk {

std::vector<std::unique_ptr<StudyView>> makeBreedingViews() {
    std::vector<std::unique_ptr<StudyView>> views;
    views.push_back(makeTrialView());
    views.push_back(makePredictionView());
    views.push_back(makePedigreeView());
    views.push_back(makeCrossPlanView());
    views.push_back(makeCrossBookView());
    return views;
}

} // namespace bullace::desk
