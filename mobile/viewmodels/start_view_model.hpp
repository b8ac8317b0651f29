// The first start: the hand that taps, the size of the glass, and what to begin with. Asked once.
#pragma once

#include "tablet/sheet_view_model.hpp"

namespace bullace::tablet {

class StartViewModel : public SheetViewModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")

public:
    using SheetViewModel::SheetViewModel;

    void open() override;
    void choose(int index) override;
    void commit() override;
    void back() override;

signals:
    void demoWanted();
    void pairingWanted();
    void done();

private:
    enum class Step { Hand, Glass, Begin, Block };
    void show(Step step);
    void changeGlass(double factor);
    void finish();

    Step step_ = Step::Hand;
};

// "12 x 30": rows and vines in a row; nothing where it is not two numbers from 1 to 999.
struct BlockSize {
    unsigned rows = 0;
    unsigned vines = 0;
};
[[nodiscard]] std::optional<BlockSize> readBlockSize(const QString& text);

} // namespace bullace::tablet
