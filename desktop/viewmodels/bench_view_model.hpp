// The bench: what was measured of lots and vines, typed into a grid; row sheets from paper, typed
// twice; and what the field opened, which gets its number here.
#pragma once

#include "desk/desk_page.hpp"
#include "office/bench.hpp"
#include "office/paper_typing.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>
#include <vector>

namespace bullace::desk {

class BenchViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")
    // What the grid shows: rows, day, columns, each a line that Enter changes.
    Q_PROPERTY(bullace::desk::GridModel* choices READ choices CONSTANT)

public:
    explicit BenchViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    [[nodiscard]] GridModel* choices() { return &choices_; }
    [[nodiscard]] const office::BenchPlan& plan() const { return plan_; }
    [[nodiscard]] const std::optional<office::PaperTyping>& sheet() const { return sheet_; }

    void refresh() override;
    void leave() override;
    void open(int row) override;
    void type(int row, int column, const QString& text) override;
    // A line of the choices was taken.
    Q_INVOKABLE void choose(int row);

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    enum class View { Grid, Sheet, Opened };

    // The grid
    void begin();
    void showChoices();
    void readGrid();
    void showGrid();
    void askRows();
    void askDay();
    void askSamples();
    void askPlace();
    void setRows(const QString& kind, std::vector<std::string> places);
    void toggle(const std::string& descriptor);
    void note(int row, int column, const QString& text);
    void
    write(std::size_t row, std::size_t column, const office::Typed& typed, const std::string& why);
    void offer();

    // A row sheet from paper, in bench_sheet.cpp
    void askSheet();
    void askObserver(office::PaperTyping typing);
    void askSheetDay(office::PaperTyping typing);
    [[nodiscard]] QString sheetFor(const QString& code, office::PaperTyping& typing) const;
    void beginSheet(office::PaperTyping typing);
    void showSheet();
    void showPass();
    void showDifferences();
    void typeSheet(int row, int column, const QString& text);
    void takeDifference(int which);
    void keepSheet();
    void nextPass();
    void writeSheet();
    void dropSheet();
    void offerSheet();

    // What the field opened
    void showOpened();
    void confirm(int row, const QString& number);

    [[nodiscard]] std::vector<GridColumn>
    columnsFor(const std::vector<office::BenchColumn>& columns) const;
    [[nodiscard]] QString whatStands(const std::string& place, CivilDate day) const;
    [[nodiscard]] const vineyard::Asked* asked(std::size_t column) const;

    static constexpr int kPlaceColumns = 2; // place and what stands there, before the values

    GridModel choices_;
    View view_ = View::Grid;
    office::BenchPlan plan_;
    QString rowsKind_; // the line of the choices that the rows came from
    office::BenchGrid grid_;
    std::optional<office::PaperTyping> sheet_;
    std::vector<office::PaperDifference> differences_;
    std::vector<office::FieldOpened> opened_;
    bool hasBegun_ = false;
    office::Token token_;
};

} // namespace bullace::desk
