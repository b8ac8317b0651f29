// Everything about one vine's place, one accession or one lot as a time line; one step further the
// history of a single value, entry by entry; a value is put right in place, with a reason.
#pragma once

#include "desk/desk_page.hpp"
#include "office/typed_value.hpp"
#include "office/vine_file.hpp"
#include "plots/plot_item.hpp"

#include "quick/picture_item.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>
#include <string>

namespace bullace::desk {

class VineViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")
    // Of the one descriptor that is listed, where it has numbers.
    Q_PROPERTY(bullace::plots::PlotSource* plot READ plot CONSTANT)
    Q_PROPERTY(bool hasPlot READ hasPlot NOTIFY plotChanged)
    // Of the line.
    Q_PROPERTY(bullace::quick::PictureSource* photos READ photos CONSTANT)

public:
    explicit VineViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    // A position, "accession:ID" or "lot:ID"; with a subject behind "#", that value's history.
    void begin(const QString& about);
    [[nodiscard]] const std::optional<office::VineFile>& file() const { return file_; }
    [[nodiscard]] const std::optional<office::SubjectHistory>& history() const { return history_; }

    [[nodiscard]] plots::PlotSource* plot() { return &plot_; }
    [[nodiscard]] bool hasPlot() const { return hasPlot_; }
    [[nodiscard]] quick::PictureSource* photos() { return &photos_; }

    void refresh() override;
    void leave() override;
    void open(int row) override;

signals:
    void plotChanged();

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    void showList();
    void showHistory();
    void showFacts();
    void showPlot();
    void showPhotos();
    void askPlotFile();
    void offer();
    void readTheHistory(const std::string& subject);
    void askCorrection();
    void askReason(office::Typed typed);
    void write(const office::Typed& typed, const std::string& why);
    void nextTo(int by);
    [[nodiscard]] QString valueWords(const std::string& subject, BytesView value) const;
    [[nodiscard]] QString lineState(const office::HistoryLine& line) const;
    [[nodiscard]] bool isAccession() const { return about_.rfind("accession:", 0) == 0; }
    [[nodiscard]] std::string currentSubject() const;

    std::string about_;
    std::string wanted_; // the value whose history the page begins with
    QString filter_;     // a descriptor's code; empty: all
    std::optional<office::VineFile> file_;
    std::optional<office::SubjectHistory> history_;
    plots::PlotSource plot_;
    bool hasPlot_ = false;
    quick::PictureSource photos_;
    std::string photo_; // the digest of the one that is shown
    office::Token token_;
};

} // namespace bullace::desk
