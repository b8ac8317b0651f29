// What every page of the desk is: a title, a sentence, a table, facts beside it, what can be done
// with its keys, and at times one question with a line to type into. Pages differ in what they fill
// in.
#pragma once

#include "desk/action_model.hpp"
#include "desk/desk_session.hpp"
#include "desk/grid_model.hpp"

#include <QObject>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <functional>
#include <string>
#include <vector>

namespace bullace::desk {

class DeskPage : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

    Q_PROPERTY(QString title READ title NOTIFY worded)
    Q_PROPERTY(QString words READ words NOTIFY worded)
    Q_PROPERTY(QString help READ help NOTIFY worded)
    Q_PROPERTY(bullace::desk::ActionModel* actions READ actions CONSTANT)
    Q_PROPERTY(bullace::desk::GridModel* table READ table CONSTANT)
    Q_PROPERTY(bullace::desk::GridModel* facts READ facts CONSTANT)
    Q_PROPERTY(bool isAsking READ isAsking NOTIFY asking)
    Q_PROPERTY(QString prompt READ prompt NOTIFY asking)
    Q_PROPERTY(QString typed READ typed WRITE setTyped NOTIFY asking)
    Q_PROPERTY(QString refusal READ refusal NOTIFY asking)

public:
    explicit DeskPage(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString title() const { return title_; }
    [[nodiscard]] QString words() const { return words_; }
    [[nodiscard]] virtual QString help() const { return {}; }
    [[nodiscard]] ActionModel* actions() { return &actions_; }
    [[nodiscard]] GridModel* table() { return &table_; }
    [[nodiscard]] GridModel* facts() { return &facts_; }
    [[nodiscard]] bool isAsking() const { return onAnswer_ != nullptr; }
    [[nodiscard]] QString prompt() const { return prompt_; }
    [[nodiscard]] QString typed() const { return typed_; }
    void setTyped(const QString& text);
    [[nodiscard]] QString refusal() const { return refusal_; }

    // The page comes onto the screen, or what it shows was written anew.
    virtual void refresh() {}
    // It leaves the screen: readings that nobody waits for any more end.
    virtual void leave() {}
    // Everything that is said, in the language that holds now.
    virtual void speakAgain() { refresh(); }

    // Does the action; nothing where it is not offered now.
    Q_INVOKABLE void run(const QString& id);
    // A key that nothing else took; true where it was one of ours.
    Q_INVOKABLE bool press(int key, int modifiers);
    // The row of the table was chosen by Enter or a double click.
    Q_INVOKABLE virtual void open(int row) { static_cast<void>(row); }
    // A cell was typed into. The page puts the cell right if it does not take the text.
    Q_INVOKABLE virtual void type(int row, int column, const QString& text);
    Q_INVOKABLE void answer();
    Q_INVOKABLE void dropQuestion();

signals:
    void worded();
    void asking();

protected:
    // What an action does.
    virtual void act(const QString& id) = 0;
    // Escape, where no question stands.
    virtual bool back() { return false; }

    void say(const QString& title, const QString& words);
    // One line is typed; `onAnswer` returns why it cannot be taken, or an empty text and is done.
    void ask(const QString& prompt,
             const QString& text,
             std::function<QString(const QString&)> onAnswer);
    // False, and told, where nobody has said who sits at the desk: nothing is written for nobody.
    [[nodiscard]] bool isSomebodyThere();
    // Asks where a file goes, first offered as `name` among the documents; `write` returns why it
    // could not be written. askFile() tells the file's name where it could.
    void askPath(const QString& prompt,
                 const QString& name,
                 std::function<QString(const QString&)> write);
    void askFile(const QString& prompt,
                 const QString& name,
                 std::function<QString(const QString&)> write);
    // Asks for a reason; `then` gets it, and may refuse it as ask() does.
    void askWhy(std::function<QString(const std::string&)> then);

    DeskSession& session_;
    ActionModel actions_;
    GridModel table_;
    GridModel facts_;

private:
    QString title_;
    QString words_;
    QString prompt_;
    QString typed_;
    QString refusal_;
    std::function<QString(const QString&)> onAnswer_;
};

} // namespace bullace::desk
