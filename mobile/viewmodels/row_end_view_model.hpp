// At the end of a row: what was done, what was left out, what looks wrong, and which vine was
// passed.
#pragma once

#include "field/walk.hpp"
#include "tablet/sheet_view_model.hpp"

#include <vector>

namespace bullace::tablet {

class RowEndViewModel : public SheetViewModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")

public:
    using SheetViewModel::SheetViewModel;

    void open() override;
    void choose(int index) override;
    void back() override;

private:
    enum class Step { Report, Passed, Direction };

    void show(Step step);
    void showReport();
    void showPassed();
    void goBackTo(std::size_t stop);
    void shift(std::size_t first, int by);

    Step step_ = Step::Report;
    std::size_t first_ = 0; // of the run that is to be moved
    std::vector<std::size_t> stops_;
};

} // namespace bullace::tablet
