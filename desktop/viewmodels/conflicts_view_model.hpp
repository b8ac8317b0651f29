// Settling conflicts: the list of what waits, one conflict with everything that helps to decide it,
// and one key for each way to settle it. Nothing is chosen before a person chooses, and Enter alone
// decides nothing.
#pragma once

#include "desk/desk_page.hpp"
#include "desk/side_model.hpp"
#include "office/bulk.hpp"
#include "office/overruled.hpp"
#include "office/settling.hpp"
#include "office/typed_value.hpp"
#include "plots/plot_item.hpp"

#include "quick/picture_item.hpp"
#include "quick/wire_model.hpp"

#include <QtQml/qqmlregistration.h>

#include <map>
#include <optional>
#include <variant>
#include <vector>

namespace bullace::desk {

class ConflictsViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

    Q_PROPERTY(bullace::desk::SideModel* sides READ sides CONSTANT)
    Q_PROPERTY(bullace::plots::PlotSource* plot READ plot CONSTANT)
    Q_PROPERTY(bool hasPlot READ hasPlot NOTIFY caseChanged)
    Q_PROPERTY(bullace::quick::PictureSource* photos READ photos CONSTANT)
    Q_PROPERTY(bullace::quick::WireModel* wire READ wire CONSTANT)
    Q_PROPERTY(QString subjectText READ subjectText NOTIFY caseChanged)
    Q_PROPERTY(QString accessionText READ accessionText NOTIFY caseChanged)
    Q_PROPERTY(QString choiceText READ choiceText NOTIFY caseChanged)
    Q_PROPERTY(QString outcomeText READ outcomeText NOTIFY caseChanged)
    Q_PROPERTY(bool hasCase READ hasCase NOTIFY caseChanged)
    Q_PROPERTY(bool hasWire READ hasWire NOTIFY caseChanged)

public:
    explicit ConflictsViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    [[nodiscard]] SideModel* sides() { return &sides_; }
    // Of the vine's season, with the values of the conflict.
    [[nodiscard]] plots::PlotSource* plot() { return &plot_; }
    [[nodiscard]] bool hasPlot() const { return hasPlot_; }
    // Of the vine and day.
    [[nodiscard]] quick::PictureSource* photos() { return &photos_; }
    [[nodiscard]] quick::WireModel* wire() { return &wire_; }
    [[nodiscard]] QString subjectText() const;
    [[nodiscard]] QString accessionText() const;
    // What was chosen, while its reason is asked for.
    [[nodiscard]] QString choiceText() const { return choiceText_; }
    // How the conflict was settled, where it is.
    [[nodiscard]] QString outcomeText() const;
    [[nodiscard]] bool hasCase() const { return file_.has_value(); }
    [[nodiscard]] bool hasWire() const { return file_ && !file_->row.empty(); }
    [[nodiscard]] const std::optional<office::CaseFile>& file() const { return file_; }
    // Conflicts of the list that are open now.
    [[nodiscard]] int openCount() const;

    void refresh() override;
    void leave() override;
    void speakAgain() override;
    void open(int row) override;

signals:
    void caseChanged();

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    // One line of the list; it keeps its place as long as the list is on the screen.
    struct Item {
        office::Waiting waiting;
        bool isOpen = true;
        bool isNew = false; // came in while the list was open
        QString outcome;    // what it was settled as here
    };
    struct TakeSide {
        std::size_t side = 0;
    };
    struct TakeValue {
        office::Typed typed;
    };
    struct KeepAll {};
    struct LookAgain {};
    struct MoveSide {
        std::size_t side = 0;
        std::string position;
    };
    struct Settling;
    using Choice = std::variant<TakeSide, TakeValue, KeepAll, LookAgain, MoveSide>;

    void takeList(std::vector<office::Waiting> waiting);
    void showList();
    void showCase();
    void showCurrent();
    void readCurrent();
    void readPhotos();
    void offer();
    void offerDeciding(std::vector<Action>& actions) const;
    class ListWords;
    [[nodiscard]] GridRow rowOf(const Item& item, ListWords& words) const;
    [[nodiscard]] std::vector<GridRow> factRows() const;
    void addFact(std::vector<GridRow>& rows, const QString& label, const QString& text) const;
    [[nodiscard]] QString datedWords(const office::Dated& dated) const;
    [[nodiscard]] QString valueWords(BytesView value) const;
    void showWire();
    void showPlot();
    [[nodiscard]] QString waitWords() const;
    [[nodiscard]] QString wireTag(const office::Dated& dated) const;

    void choose(Choice choice);
    [[nodiscard]] QString wordsOf(const Choice& choice) const;
    void decide(const QString& why);
    void onDecided(const std::string& subject,
                   const QString& outcome,
                   Result<std::vector<journal::Place>> written);
    void goToNextOpen();
    void goToGroup(int by);
    void askValue();
    void askVine();
    void askReason();
    [[nodiscard]] Item* item(const std::string& subject);
    [[nodiscard]] Item* currentItem();

    std::vector<Item> items_;
    SideModel sides_;
    quick::WireModel wire_;
    quick::PictureSource photos_;
    plots::PlotSource plot_;
    bool hasPlot_ = false;
    std::vector<std::int64_t> decidedMs_;                   // when, since the list was opened
    std::map<office::RuleOf, office::Overruled> overruled_; // by all rules
    std::optional<office::CaseFile> file_;
    std::optional<Choice> choice_;
    QString choiceText_;
    bool areNamesShown_ = true;
    bool isShownAgain_ = false; // of the list: the first reading builds it, later ones only mark it
    office::Token listToken_;
    office::Token caseToken_;
};

} // namespace bullace::desk
