// Crosses in bloom: what is due at this vine, or today in the whole station; count and step in two
// taps and a number; and what nobody planned, opened on the spot.
#pragma once

#include "field/crosses.hpp"
#include "tablet/sheet_view_model.hpp"

#include "core/descriptors/number_pad.hpp"

#include <vector>

namespace bullace::tablet {

class CrossesViewModel : public SheetViewModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")

public:
    using SheetViewModel::SheetViewModel;

    void open() override; // at the vine where one stands; without a walk: all
    void choose(int index) override;
    void commit() override;
    void back() override;

signals:
    void closed();

private:
    enum class Step { List, Work, Count, Tag, New, Father, WildName, WildSite };

    void show(Step step);
    void showList();
    void showWork();
    [[nodiscard]] Status note();
    void openCross();
    void openWild();
    [[nodiscard]] std::string here() const;

    Step step_ = Step::List;
    std::vector<field::CrossDue> due_;
    std::size_t at_ = 0;
    std::string work_;
    QString count_;
    QString wildName_;
};

} // namespace bullace::tablet
