// Before a walk: who walks, which round, which row, at which end one stands. Four taps at most.
#pragma once

#include "field/rounds.hpp"
#include "tablet/sheet_view_model.hpp"

#include <optional>
#include <vector>

namespace bullace::tablet {

class ChooseViewModel : public SheetViewModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")

public:
    using SheetViewModel::SheetViewModel;

    void open() override;
    void choose(int index) override;
    void commit() override;
    void firstEnd() override;
    void lastEnd() override;
    void back() override;
    bool press(int key, const QString& text) override;

signals:
    void begun();
    void othersWanted(const QString& page); // "crosses", "sync", "settings"

private:
    enum class Step { Who, NewName, Round, Descriptor, Row, End, Share };

    void show(Step step);
    void showWho();
    void showRounds();
    void showDescriptors();
    void showRows();
    void showEnd();
    void showShare();
    void chooseRound(const QString& value);
    void begin(walk::End end);
    [[nodiscard]] QString cautionWords() const;

    Step step_ = Step::Who;
    std::string author_;
    walk::Round round_;
    std::string block_; // of a walk without a round
    std::vector<store::RowProgress> rows_;
    std::optional<std::size_t> row_;
    walk::Share share_;
    QString shareText_;
};

} // namespace bullace::tablet
