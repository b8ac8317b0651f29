// The selection meeting: candidates ranked by what counts, and one of them at a time with all that
// is known of it, where it is decided.
#pragma once

#include "desk/desk_page.hpp"
#include "desk/selection_ground.hpp"
#include "paper/table_page.hpp"

#include "quick/picture_item.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <memory>
#include <optional>
#include <string>

namespace bullace::desk {

class SelectionViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")
    Q_PROPERTY(bullace::quick::PictureSource* photos READ photos CONSTANT)

public:
    explicit SelectionViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    [[nodiscard]] quick::PictureSource* photos() { return &photos_; }
    // Null until it was read.
    [[nodiscard]] const std::shared_ptr<const MeetingGround>& ground() const { return ground_; }
    [[nodiscard]] bool isOneShown() const { return isOneShown_; }

    void refresh() override;
    void leave() override;
    void speakAgain() override { show(); }
    void open(int row) override;
    // The list, or the page of one, as a file: .pdf, and the list as .csv too. Why it could not be
    // written; empty where it was.
    [[nodiscard]] QString writeList(const QString& path) const;
    [[nodiscard]] QString writePages(const QString& path) const;

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    void show();
    void showList();
    void showOne();
    void showFacts();
    void showPhotos();
    void offer();
    void step(int by);
    void decide(const std::string& word);
    void askWishes();
    void askBest();
    [[nodiscard]] const season::Candidate* current() const;
    [[nodiscard]] paper::TablePage pageOf(const season::Candidate& candidate) const;

    MeetingWish wish_;
    std::shared_ptr<const MeetingGround> ground_;
    bool isOneShown_ = false;
    std::string about_; // the accession whose page is shown, or whose line is current
    std::vector<std::string> shownPhotos_;
    quick::PictureSource photos_;
    office::Token token_;
};

} // namespace bullace::desk
