// What the tablet and the person like: each key shows what holds, and a tap takes the next.
#pragma once

#include "tablet/sheet_view_model.hpp"

namespace bullace::tablet {

class SettingsViewModel : public SheetViewModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")

public:
    using SheetViewModel::SheetViewModel;

    void open() override;
    void choose(int index) override;
    void commit() override;
    void back() override;
    void setDemo(bool isDemo) { isDemo_ = isDemo; }

signals:
    void closed();
    void demoLeft();

private:
    enum class Step { All, Glass, Units, Block };
    void show(Step step);
    void offerAll();
    void offerUnits();
    void change(field::Settings settings);

    Step step_ = Step::All;
    bool isDemo_ = false;
};

} // namespace bullace::tablet
