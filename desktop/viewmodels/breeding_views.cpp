#include "desk/breeding_views.hpp"

namespace bullace::desk {

std::vector<std::unique_ptr<StudyView>> makeBreedingViews() {
    std::vector<std::unique_ptr<StudyView>> views;
    views.push_back(makeTrialView());
    views.push_back(makePredictionView());
    return views;
}

} // namespace bullace::desk
