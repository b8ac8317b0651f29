// The page of one stop: where one stands, what is asked, and what the keys do.
#pragma once

#include "field/entry_pad.hpp"
#include "tablet/choice_model.hpp"
#include "tablet/session.hpp"

#include "quick/wire_model.hpp"

#include <QObject>
#include <QString>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

#include <memory>
#include <optional>

namespace bullace::tablet {

class StopViewModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")

    // Where one stands.
    Q_PROPERTY(QString place READ place NOTIFY changed)
    Q_PROPERTY(QString identity READ identity NOTIFY changed) // accession, side, day
    Q_PROPERTY(bullace::quick::WireModel* wire READ wire CONSTANT)
    Q_PROPERTY(int direction READ direction NOTIFY changed)
    Q_PROPERTY(int side READ side NOTIFY changed)
    Q_PROPERTY(bool hasFirstPost READ hasFirstPost NOTIFY changed)
    Q_PROPERTY(bool hasLastPost READ hasLastPost NOTIFY changed)
    Q_PROPERTY(QString history READ history NOTIFY changed) // on rounds for decisions only

    // What is asked.
    Q_PROPERTY(QString question READ question NOTIFY changed)
    Q_PROPERTY(QString progress READ progress NOTIFY changed)
    Q_PROPERTY(Panel panel READ panel NOTIFY changed)
    Q_PROPERTY(bullace::tablet::ChoiceModel* choices READ choices CONSTANT)
    Q_PROPERTY(QString typed READ typed NOTIFY changed)
    Q_PROPERTY(QString unit READ unit NOTIFY changed)
    Q_PROPERTY(QString refusal READ refusal NOTIFY changed)
    Q_PROPERTY(bool canCommit READ canCommit NOTIFY changed)
    Q_PROPERTY(bool hasPoint READ hasPoint NOTIFY changed)
    Q_PROPERTY(bool canLeaveOut READ canLeaveOut NOTIFY changed)
    Q_PROPERTY(bool canTally READ canTally NOTIFY changed)
    Q_PROPERTY(QStringList boxes READ boxes NOTIFY changed) // samples; empty where there are none
    Q_PROPERTY(QString nextText READ nextText NOTIFY changed)

    // What looks wrong, or is worth saying.
    Q_PROPERTY(QString mark READ mark NOTIFY changed)
    Q_PROPERTY(QString markFirst READ markFirst NOTIFY changed)
    Q_PROPERTY(QString markSecond READ markSecond NOTIFY changed)

public:
    // What the lower part of the page shows.
    enum Panel { Keys, Number, Why, Beside, Note, Tally, Words, Unknown, Lot };
    Q_ENUM(Panel)

    explicit StopViewModel(Session& session, QObject* parent = nullptr);

    [[nodiscard]] QString place() const { return place_; }
    [[nodiscard]] QString identity() const { return identity_; }
    [[nodiscard]] quick::WireModel* wire() { return &wire_; }
    [[nodiscard]] int direction() const { return direction_; }
    [[nodiscard]] int side() const { return side_; }
    [[nodiscard]] bool hasFirstPost() const { return hasFirstPost_; }
    [[nodiscard]] bool hasLastPost() const { return hasLastPost_; }
    [[nodiscard]] QString history() const { return history_; }
    [[nodiscard]] QString question() const;
    [[nodiscard]] QString progress() const { return progress_; }
    [[nodiscard]] Panel panel() const { return panel_; }
    [[nodiscard]] ChoiceModel* choices() { return &choices_; }
    [[nodiscard]] QString typed() const;
    [[nodiscard]] QString unit() const;
    [[nodiscard]] QString refusal() const;
    [[nodiscard]] bool canCommit() const;
    [[nodiscard]] bool hasPoint() const;
    [[nodiscard]] bool canLeaveOut() const;
    [[nodiscard]] bool canTally() const;
    [[nodiscard]] QStringList boxes() const { return boxes_; }
    [[nodiscard]] QString nextText() const;
    [[nodiscard]] QString mark() const { return mark_.words; }
    [[nodiscard]] QString markFirst() const { return mark_.first; }
    [[nodiscard]] QString markSecond() const { return mark_.second; }

    Q_INVOKABLE void choose(int index);
    Q_INVOKABLE void digit(const QString& character);
    Q_INVOKABLE void point();
    Q_INVOKABLE void erase();
    Q_INVOKABLE void nudge(int by);
    Q_INVOKABLE void next();   // records what is typed; where nothing is, walks on
    Q_INVOKABLE void walkOn(); // leaves what is open here as it is
    Q_INVOKABLE void leaveOut();
    Q_INVOKABLE void noVine();
    Q_INVOKABLE void tapWire(int index);
    Q_INVOKABLE void show(bullace::tablet::StopViewModel::Panel panel);
    Q_INVOKABLE void character(const QString& text); // of a note
    Q_INVOKABLE void tally(int by);
    Q_INVOKABLE void commitTally();
    Q_INVOKABLE void acceptMark(); // the first key of the stripe
    Q_INVOKABLE void answerMark(); // the second one

    // A hardware key of the page; false where it means nothing here.
    bool press(int key, const QString& text);
    // Back to what is asked, where a panel lay over it; false where none did.
    Q_INVOKABLE bool back();
    // Everything anew from the walk.
    void refresh();
    void speakAgain();
    // The looks at a value that came in; after it is on the screen.
    void weigh();

signals:
    void changed();
    void pictureWanted();
    void viewWanted(bool isOn); // of the camera, while something beside is looked for
    void labelWanted();
    void lotOpened(const QString& label, const QString& kind, const QString& lot);
    void crossesWanted();

private:
    enum class MarkKind { None, Doubt, Slip, More, Check, Told };
    struct Mark {
        MarkKind kind = MarkKind::None;
        QString words;
        QString first;
        QString second;
        std::string subject;
        std::size_t stop = 0;
        std::size_t ask = 0;
        int by = 0;
    };

    [[nodiscard]] field::Walk* walk() const { return session_.walk(); }
    [[nodiscard]] const vineyard::Asked* asked() const;
    void refreshPlace();
    void refreshWire();
    void refreshQuestion();
    void refreshBoxes();
    void setPanel(Panel panel);
    [[nodiscard]] Panel answerPanel() const;
    [[nodiscard]] std::vector<Choice> answerChoices() const;
    [[nodiscard]] static std::vector<Choice> whyChoices();
    [[nodiscard]] std::vector<Choice> besideChoices() const;
    [[nodiscard]] std::vector<Choice> noteChoices() const;
    [[nodiscard]] static std::vector<Choice> lotChoices();
    void record(const Bytes& value);
    void after(const Status& status, std::size_t stop, std::size_t ask);
    void chooseWhy(const Choice& choice);
    void chooseBeside(const Choice& choice);
    void openLot(const Choice& choice);
    void commitWords();
    bool pressDigit(const QString& text);
    [[nodiscard]] Mark moreMark(std::size_t stop, std::size_t ask) const;
    void addMore(const std::vector<double>& numbers, const field::Ask& asks, Mark& mark) const;
    // How far clusters and berries speak for each taxon; empty for other descriptors.
    [[nodiscard]] QString evidenceWords(std::size_t stop, const std::string& descriptor) const;
    [[nodiscard]] Mark slipMark() const;
    [[nodiscard]] Mark checkMark() const;
    [[nodiscard]] QString tagAt(std::size_t stop, bool& isMarked, int& kind) const;

    Session& session_;
    quick::WireModel wire_;
    ChoiceModel choices_;
    std::unique_ptr<field::EntryPad> entry_;
    std::string entryFor_; // the stop and ask that it answers
    QString place_;
    QString identity_;
    QString history_;
    QString question_;
    QString progress_;
    QString typedWords_; // a note, or a label's number
    QString typedCode_;  // digits of a stage, on a keyboard
    QStringList boxes_;
    Mark mark_;
    Panel panel_ = Keys;
    int direction_ = 1;
    int side_ = 0;
    int tally_ = 0;
    bool hasFirstPost_ = false;
    bool hasLastPost_ = false;
    std::size_t lastStop_ = 0; // where the last value was noted
    std::size_t lastAsk_ = 0;
};

} // namespace bullace::tablet
