// What every screen takes its colours, sizes and letters from. Sizes are millimetres on the glass,
// turned into pixels here and nowhere else. It decides nothing and holds no data of the station.
#pragma once

#include "quick/palette.hpp"

#include <QColor>
#include <QFont>
#include <QList>
#include <QObject>
#include <QString>
#include <QtQml/qqmlregistration.h>

QT_BEGIN_NAMESPACE
class QQmlEngine;
QT_END_NAMESPACE

namespace bullace::quick {

class Theme : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_SINGLETON

    Q_PROPERTY(qreal pxPerMm READ pxPerMm WRITE setPxPerMm NOTIFY changed)
    Q_PROPERTY(qreal textScale READ textScale WRITE setTextScale NOTIFY changed)
    Q_PROPERTY(bool isDusk READ isDusk WRITE setDusk NOTIFY changed)
    Q_PROPERTY(bool isLeftHanded READ isLeftHanded WRITE setLeftHanded NOTIFY changed)
    Q_PROPERTY(bool isSmallGlass READ isSmallGlass WRITE setSmallGlass NOTIFY changed)
    Q_PROPERTY(Layout layout READ layout WRITE setLayout NOTIFY changed)
    // Whether keys show which hardware key does the same: where there is no keyboard, the room is
    // for words.
    Q_PROPERTY(bool showsHints READ showsHints WRITE setShowsHints NOTIFY changed)

    Q_PROPERTY(QColor ink READ ink NOTIFY changed)
    Q_PROPERTY(QColor paper READ paper NOTIFY changed)
    Q_PROPERTY(QColor keyInk READ keyInk NOTIFY changed)
    Q_PROPERTY(QColor keyFill READ keyFill NOTIFY changed)
    Q_PROPERTY(QColor chosenInk READ chosenInk NOTIFY changed)
    Q_PROPERTY(QColor chosenFill READ chosenFill NOTIFY changed)
    Q_PROPERTY(QColor line READ line NOTIFY changed)
    Q_PROPERTY(QColor focus READ focus NOTIFY changed)
    Q_PROPERTY(QList<QColor> categoryFills READ categoryFillList CONSTANT)
    Q_PROPERTY(QList<QColor> stageFills READ stageFillList CONSTANT)

    Q_PROPERTY(qreal keyWidth READ keyWidth NOTIFY changed)
    Q_PROPERTY(qreal keyHeight READ keyHeight NOTIFY changed)
    Q_PROPERTY(qreal secondary READ secondary NOTIFY changed)
    Q_PROPERTY(qreal least READ least NOTIFY changed)
    Q_PROPERTY(qreal gap READ gap NOTIFY changed)
    Q_PROPERTY(qreal edge READ edge NOTIFY changed)
    Q_PROPERTY(qreal undoDistance READ undoDistance NOTIFY changed)
    Q_PROPERTY(qreal frame READ frame NOTIFY changed)

    Q_PROPERTY(QString family READ family CONSTANT)
    Q_PROPERTY(QString deskFamily READ deskFamily CONSTANT)
    Q_PROPERTY(int labelPx READ labelPx NOTIFY changed)
    Q_PROPERTY(int leastLabelPx READ leastLabelPx NOTIFY changed)
    Q_PROPERTY(int smallPx READ smallPx NOTIFY changed)
    Q_PROPERTY(int leastSmallPx READ leastSmallPx NOTIFY changed)
    Q_PROPERTY(int echoPx READ echoPx NOTIFY changed)
    Q_PROPERTY(int leastEchoPx READ leastEchoPx NOTIFY changed)
    Q_PROPERTY(int placePx READ placePx NOTIFY changed)
    Q_PROPERTY(int leastPlacePx READ leastPlacePx NOTIFY changed)
    Q_PROPERTY(int deskPx READ deskPx NOTIFY changed)
    Q_PROPERTY(int deskSmallPx READ deskSmallPx NOTIFY changed)
    Q_PROPERTY(int deskHeadPx READ deskHeadPx NOTIFY changed)
    Q_PROPERTY(int deskValuePx READ deskValuePx NOTIFY changed)

public:
    // How keys are laid out: for bare fingers, for gloves, for wet glass (few and huge).
    enum Layout { Bare, Glove, Rain };
    Q_ENUM(Layout)

    explicit Theme(QObject* parent = nullptr);

    // Pixels per millimetre of glass, as the primary screen says until somebody has held a ruler to
    // it. Values that no glass has (below 1 or above 40) are not taken.
    [[nodiscard]] qreal pxPerMm() const { return pxPerMm_; }
    void setPxPerMm(qreal value);

    // 1.0 to 2.0; what lies outside becomes the nearest. Words grow by it, and keys where their
    // words need it.
    [[nodiscard]] qreal textScale() const { return textScale_; }
    void setTextScale(qreal value);

    [[nodiscard]] bool isDusk() const { return light_ == Light::Dusk; }
    void setDusk(bool value);
    [[nodiscard]] bool isLeftHanded() const { return isLeftHanded_; }
    void setLeftHanded(bool value);
    // Whether the glass is about 8 inches: keys may then be 18 x 15 mm.
    [[nodiscard]] bool isSmallGlass() const { return isSmallGlass_; }
    void setSmallGlass(bool value);
    [[nodiscard]] Layout layout() const { return layout_; }
    void setLayout(Layout value);
    [[nodiscard]] bool showsHints() const { return showsHints_; }
    void setShowsHints(bool value);

    [[nodiscard]] QColor ink() const { return palette_.ink; }
    [[nodiscard]] QColor paper() const { return palette_.paper; }
    [[nodiscard]] QColor keyInk() const { return palette_.keyInk; }
    [[nodiscard]] QColor keyFill() const { return palette_.keyFill; }
    [[nodiscard]] QColor chosenInk() const { return palette_.chosenInk; }
    [[nodiscard]] QColor chosenFill() const { return palette_.chosenFill; }
    [[nodiscard]] QColor line() const { return palette_.line; }
    [[nodiscard]] QColor focus() const { return palette_.focus; }
    [[nodiscard]] QList<QColor> categoryFillList() const { return categoryFills(); }
    [[nodiscard]] QList<QColor> stageFillList() const { return stageFills(); }

    // Sizes in pixels. A primary key is keyWidth x keyHeight; `secondary` and `least` are both
    // sides of a square.
    [[nodiscard]] qreal keyWidth() const;
    [[nodiscard]] qreal keyHeight() const;
    [[nodiscard]] qreal secondary() const { return mm(14); }
    [[nodiscard]] qreal least() const { return mm(9); }
    [[nodiscard]] qreal gap() const { return mm(2); }
    [[nodiscard]] qreal edge() const { return mm(3); } // nothing alive nearer to the glass's edge
    [[nodiscard]] qreal undoDistance() const { return mm(8); } // between Undo and the digits
    [[nodiscard]] qreal frame() const;                         // width of a key's frame

    // Letters. The sizes are pixel sizes of a font whose capitals are 4, 2.9, 12 and 8 mm high
    // times textScale; those that begin with `least` are the same at 100 %, below which nothing is
    // drawn.
    [[nodiscard]] QString family() const { return family_; }
    [[nodiscard]] QString deskFamily() const { return deskFamily_; }
    [[nodiscard]] int labelPx() const { return pxOfCapitals(4.0 * textScale_); }
    [[nodiscard]] int leastLabelPx() const { return pxOfCapitals(4.0); }
    [[nodiscard]] int smallPx() const { return pxOfCapitals(2.9 * textScale_); }
    [[nodiscard]] int leastSmallPx() const { return pxOfCapitals(2.9); }
    [[nodiscard]] int echoPx() const { return pxOfCapitals(12.0 * textScale_); }
    [[nodiscard]] int leastEchoPx() const { return pxOfCapitals(12.0); }
    [[nodiscard]] int placePx() const { return pxOfCapitals(8.0 * textScale_); }
    [[nodiscard]] int leastPlacePx() const { return pxOfCapitals(8.0); }

    // The desk's letters, read from half a metre: capitals of 2.3, 2.0, 3.2 and 7 mm.
    [[nodiscard]] int deskPx() const { return pxOfCapitals(2.3 * textScale_); }
    [[nodiscard]] int deskSmallPx() const { return pxOfCapitals(2.0 * textScale_); }
    [[nodiscard]] int deskHeadPx() const { return pxOfCapitals(3.2 * textScale_); }
    [[nodiscard]] int deskValuePx() const { return pxOfCapitals(7.0 * textScale_); }

    // Pixels of `length` millimetres.
    Q_INVOKABLE [[nodiscard]] qreal mm(qreal length) const { return length * pxPerMm_; }
    // Black or white, whichever stands out more on `fill`.
    Q_INVOKABLE [[nodiscard]] QColor inkOn(const QColor& fill) const { return quick::inkOn(fill); }

    // For words that must all be seen. All sizes in pixels; words are wrapped between words only.
    // The greatest font size from leastPx to mostPx at which `text` fits into width x height;
    // leastPx where none does.
    Q_INVOKABLE [[nodiscard]] int
    fit(const QString& text, int leastPx, int mostPx, qreal width, qreal height) const;
    // The width that the longest single word of `text` takes.
    Q_INVOKABLE [[nodiscard]] qreal widestWord(const QString& text, int fontPx) const;
    // The height that `text` takes when wrapped at `width`; 0 where there is no text.
    Q_INVOKABLE [[nodiscard]] qreal
    wrappedHeight(const QString& text, int fontPx, qreal width) const;

    // The face all words are drawn in, bold, at this pixel size.
    [[nodiscard]] QFont fontOf(int fontPx) const;

signals:
    void changed();

private:
    [[nodiscard]] int pxOfCapitals(qreal capitalsMm) const;

    qreal pxPerMm_;
    qreal textScale_ = 1;
    Light light_ = Light::Day;
    bool isLeftHanded_ = false;
    bool isSmallGlass_ = false;
    Layout layout_ = Bare;
    bool showsHints_ = true;
    Palette palette_;
    QString family_;
    QString deskFamily_;
    qreal capitalsShare_; // height of a capital, as a share of the font's pixel size
};

// The one theme of an engine's screens; owned by the engine. registerControls must have been
// called.
[[nodiscard]] Theme& themeOf(QQmlEngine& engine);

// Makes `import Bullace.Controls` work in this engine, and the typeface known. To be called once
// for each engine, before anything is loaded.
void registerControls(QQmlEngine& engine);

} // namespace bullace::quick
