// A page of the sciences: a view is chosen from the list, and its choices below it; beside the
// list stands the picture or its table, and what has to be told with it. Season and Breeding are
// two of them.
#pragma once

#include "desk/desk_page.hpp"
#include "desk/study.hpp"
#include "plots/drawing_item.hpp"
#include "plots/plot_item.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <memory>
#include <vector>

namespace bullace::desk {

// Which views a page has, and what it is called.
struct StudyShelf {
    QString (*title)();
    std::vector<std::unique_ptr<StudyView>> (*views)();
};
// The station as it was read last: the pages of the sciences share it.
struct StudyReading {
    std::shared_ptr<const StudyGround> ground;
};

class StudyViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")
    Q_PROPERTY(bullace::plots::PlotSource* plot READ plot CONSTANT)
    Q_PROPERTY(bullace::plots::DrawingSource* drawing READ drawing CONSTANT)
    Q_PROPERTY(bullace::desk::GridModel* results READ results CONSTANT)
    Q_PROPERTY(bool hasPlot READ hasPlot NOTIFY shown)
    Q_PROPERTY(bool hasDrawing READ hasDrawing NOTIFY shown)
    Q_PROPERTY(bool isTableShown READ isTableShown NOTIFY shown)

public:
    // The reading outlives the page.
    StudyViewModel(DeskSession& session,
                   StudyReading& reading,
                   const StudyShelf& shelf,
                   QObject* parent = nullptr);
    ~StudyViewModel() override;
    StudyViewModel(const StudyViewModel&) = delete;
    StudyViewModel& operator=(const StudyViewModel&) = delete;
    StudyViewModel(StudyViewModel&&) = delete;
    StudyViewModel& operator=(StudyViewModel&&) = delete;

    [[nodiscard]] QString help() const override;
    [[nodiscard]] plots::PlotSource* plot() { return &plot_; }
    [[nodiscard]] plots::DrawingSource* drawing() { return &drawing_; }
    [[nodiscard]] GridModel* results() { return &results_; }
    [[nodiscard]] bool hasPlot() const { return study_.plot.has_value(); }
    [[nodiscard]] bool hasDrawing() const { return study_.drawing.has_value(); }
    [[nodiscard]] bool hasPicture() const { return hasPlot() || hasDrawing(); }
    // The table stands in the picture's place; always where there is no picture.
    [[nodiscard]] bool isTableShown() const { return isTableWanted_ || !hasPicture(); }
    [[nodiscard]] const Study& study() const { return study_; }
    // The groups of choices that the list holds below the views.
    [[nodiscard]] const std::vector<ChoiceGroup>& groups() const { return groups_; }

    void refresh() override;
    void leave() override;
    void open(int row) override;
    // A line of the table of results was chosen.
    Q_INVOKABLE void openResult(int row);
    // Chooses a view and lines of its groups, as a person would; for other pages that lead here.
    void choose(const QString& view, const Chosen& chosen);
    // As its name's end says: .pdf, .svg and .csv of the picture, .pdf and .csv of the table. Why
    // it could not be written; empty where it was.
    [[nodiscard]] QString writePicture(const QString& path) const;
    [[nodiscard]] QString writeTable(const QString& path) const;

signals:
    void shown();

protected:
    void act(const QString& id) override;

private:
    struct Made {
        std::shared_ptr<const StudyGround> ground;
        std::vector<ChoiceGroup> groups;
        Chosen chosen;
        Study study;
    };
    [[nodiscard]] const std::shared_ptr<const StudyView>& view() const { return views_[view_]; }
    void show(Made made);
    void showChoices();
    void showFacts();
    void offer();
    void doDeed();
    [[nodiscard]] QString fileName(const QString& end) const;

    QString (*pageTitle_)();
    StudyReading& reading_;
    std::vector<std::shared_ptr<const StudyView>> views_;
    std::size_t view_ = 0;
    std::map<QString, Chosen> chosen_; // of each view
    std::vector<ChoiceGroup> groups_;
    Study study_;
    plots::PlotSource plot_;
    plots::DrawingSource drawing_;
    GridModel results_;
    bool isTableWanted_ = false;
    office::Token token_;
};

} // namespace bullace::desk
