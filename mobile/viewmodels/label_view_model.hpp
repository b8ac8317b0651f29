// The label of a lot that was just opened: to be written on the bag or vial, or held before another
// camera.
#pragma once

#include "tablet/sheet_view_model.hpp"

namespace bullace::tablet {

class LabelViewModel : public SheetViewModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")

public:
    using SheetViewModel::SheetViewModel;

    // `kind` in words; the label is a code with its check character.
    void tell(const QString& label, const QString& kind, const QString& lot);
    void open() override;
    void choose(int index) override;
    void back() override;

signals:
    void closed();

private:
    QString label_;
    QString kind_;
    QString lot_;
};

} // namespace bullace::tablet
