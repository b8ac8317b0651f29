// A page with a title, some words, a picture, and keys or letters to answer with: all pages but the
// one of a stop are such sheets.
#pragma once

#include "tablet/choice_model.hpp"
#include "tablet/session.hpp"

#include <QObject>
#include <QString>
#include <QtQml/qqmlregistration.h>

namespace bullace::tablet {

class SheetViewModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")

    Q_PROPERTY(QString title READ title NOTIFY changed)
    Q_PROPERTY(QString words READ words NOTIFY changed)
    Q_PROPERTY(QString caution READ caution NOTIFY changed)
    Q_PROPERTY(bullace::tablet::ChoiceModel* choices READ choices CONSTANT)
    Q_PROPERTY(Typing typing READ typing NOTIFY changed)
    Q_PROPERTY(QString typed READ typed NOTIFY changed)
    Q_PROPERTY(QString typedName READ typedName NOTIFY changed)
    Q_PROPERTY(QString others READ others NOTIFY changed) // characters beside letters and digits
    Q_PROPERTY(Picture picture READ picture NOTIFY changed)
    Q_PROPERTY(int vineCount READ vineCount NOTIFY changed)
    Q_PROPERTY(QString codeText READ codeText NOTIFY changed)
    Q_PROPERTY(QString firstText READ firstText NOTIFY changed)
    Q_PROPERTY(QString lastText READ lastText NOTIFY changed)
    Q_PROPERTY(QString backText READ backText NOTIFY changed) // empty: there is no way back

public:
    enum Typing { Nothing, Letters, Digits };
    Q_ENUM(Typing)
    enum Picture { None, RowEnds, Ruler, CameraView, Code };
    Q_ENUM(Picture)

    explicit SheetViewModel(Session& session, QObject* parent = nullptr)
        : QObject(parent),
          session_(session) {}

    [[nodiscard]] QString title() const { return title_; }
    [[nodiscard]] QString words() const { return words_; }
    [[nodiscard]] QString caution() const { return caution_; }
    [[nodiscard]] ChoiceModel* choices() { return &choices_; }
    [[nodiscard]] Typing typing() const { return typing_; }
    [[nodiscard]] QString typed() const { return typed_; }
    [[nodiscard]] QString typedName() const { return typedName_; }
    [[nodiscard]] QString others() const { return others_; }
    [[nodiscard]] Picture picture() const { return picture_; }
    [[nodiscard]] int vineCount() const { return vineCount_; }
    [[nodiscard]] QString codeText() const { return codeText_; }
    [[nodiscard]] QString firstText() const { return firstText_; }
    [[nodiscard]] QString lastText() const { return lastText_; }
    [[nodiscard]] QString backText() const { return backText_; }

    Q_INVOKABLE virtual void choose(int index) = 0;
    Q_INVOKABLE virtual void commit() {}
    Q_INVOKABLE virtual void firstEnd() {}
    Q_INVOKABLE virtual void lastEnd() {}
    Q_INVOKABLE virtual void back() {}
    Q_INVOKABLE void character(const QString& text);
    Q_INVOKABLE void erase();

    // What the page shows, from the beginning.
    virtual void open() = 0;
    // A hardware key; false where it means nothing here.
    virtual bool press(int key, const QString& text);

signals:
    void changed();

protected:
    // Everything that is not set anew is empty afterwards.
    void clear();
    void ask(Typing typing, const QString& name, const QString& others = {});
    void offer(std::vector<Choice> choices);

    Session& session_;
    ChoiceModel choices_;
    QString title_;
    QString words_;
    QString caution_;
    QString typed_;
    QString typedName_;
    QString others_;
    QString codeText_;
    QString firstText_;
    QString lastText_;
    QString backText_;
    Typing typing_ = Nothing;
    Picture picture_ = None;
    int vineCount_ = 0;
};

} // namespace bullace::tablet
