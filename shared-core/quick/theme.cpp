#include "quick/theme.hpp"

#include "quick/text_fit.hpp"

#include <QFontDatabase>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QGuiApplication>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QScreen>

#include <algorithm>
#include <cmath>
#include <initializer_list>

// Written by Qt for the module.
extern void qml_register_types_Bullace_Controls();

namespace bullace::quick {

namespace {

constexpr qreal kMmPerInch = 25.4;
constexpr int kMeasuredPx = 1000;

qreal pxPerMmOfScreen() {
    const QScreen* screen = QGuiApplication::primaryScreen();
    const qreal said = screen == nullptr ? 0 : screen->physicalDotsPerInch() / kMmPerInch;
    return said >= 1 && said <= 40 ? said : 96 / kMmPerInch;
}

// The compiled-in face, or the system's own where the build had none.
QString loadedFamily(std::initializer_list<const char*> faces) {
    QString family;
    for (const auto* face : faces) {
        const int id = QFontDatabase::addApplicationFont(QStringLiteral(":/bullace/typeface/") +
                                                         QLatin1String(face));
        const QStringList families =
            id < 0 ? QStringList() : QFontDatabase::applicationFontFamilies(id);
        family = families.isEmpty() ? family : families.first();
    }
    return family.isEmpty() ? QFontInfo(QFont()).family() : family;
}

} // namespace

Theme::Theme(QObject* parent)
    : QObject(parent),
      pxPerMm_(pxPerMmOfScreen()),
      palette_(paletteOf(Light::Day)),
      family_(loadedFamily({"B612-Regular.otf", "B612-Bold.otf"})),
      deskFamily_(loadedFamily({"DejaVuSans.ttf", "DejaVuSans-Bold.ttf"})),
      capitalsShare_(0.7) {
    const qreal capitals = QFontMetricsF(fontOf(kMeasuredPx)).capHeight() / kMeasuredPx;
    capitalsShare_ = capitals > 0.4 && capitals < 1 ? capitals : capitalsShare_;
}

void Theme::setPxPerMm(qreal value) {
    if (!(value >= 1 && value <= 40) || qFuzzyCompare(value, pxPerMm_)) {
        return;
    }
    pxPerMm_ = value;
    emit changed();
}

void Theme::setTextScale(qreal value) {
    const qreal inside = std::isfinite(value) ? std::clamp(value, 1.0, 2.0) : 1.0;
    if (qFuzzyCompare(inside, textScale_)) {
        return;
    }
    textScale_ = inside;
    emit changed();
}

void Theme::setDusk(bool value) {
    if (value == isDusk()) {
        return;
    }
    light_ = value ? Light::Dusk : Light::Day;
    palette_ = paletteOf(light_);
    emit changed();
}

void Theme::setLeftHanded(bool value) {
    if (value != isLeftHanded_) {
        isLeftHanded_ = value;
        emit changed();
    }
}

void Theme::setSmallGlass(bool value) {
    if (value != isSmallGlass_) {
        isSmallGlass_ = value;
        emit changed();
    }
}

void Theme::setLayout(Layout value) {
    if (value != layout_) {
        layout_ = value;
        emit changed();
    }
}

void Theme::setShowsHints(bool value) {
    if (value != showsHints_) {
        showsHints_ = value;
        emit changed();
    }
}

qreal Theme::keyWidth() const {
    switch (layout_) {
    case Rain:
        return mm(32);
    case Glove:
        return mm(22);
    case Bare:
        break;
    }
    return mm(isSmallGlass_ ? 18 : 20);
}

qreal Theme::keyHeight() const {
    switch (layout_) {
    case Rain:
        return mm(26);
    case Glove:
        return mm(22);
    case Bare:
        break;
    }
    return mm(isSmallGlass_ ? 15 : 16);
}

qreal Theme::frame() const {
    return std::max(2.0, std::round(mm(0.5)));
}

int Theme::fit(const QString& text, int leastPx, int mostPx, qreal width, qreal height) const {
    return fittingPx(text, fontOf(leastPx), leastPx, mostPx, {width, height});
}

qreal Theme::widestWord(const QString& text, int fontPx) const {
    return widestWordPx(text, fontOf(fontPx));
}

qreal Theme::wrappedHeight(const QString& text, int fontPx, qreal width) const {
    return wrappedSize(text, fontOf(fontPx), width).height();
}

QFont Theme::fontOf(int fontPx) const {
    QFont font(family_);
    font.setPixelSize(std::max(1, fontPx));
    font.setBold(true);
    return font;
}

int Theme::pxOfCapitals(qreal capitalsMm) const {
    return std::max(1, static_cast<int>(std::ceil(mm(capitalsMm) / capitalsShare_)));
}

Theme& themeOf(QQmlEngine& engine) {
    const int id = qmlTypeId("Bullace.Controls", 1, 0, "Theme");
    return *engine.singletonInstance<Theme*>(id);
}

void registerControls(QQmlEngine& engine) {
    // Named so that the linker keeps the file that it is in: that registers itself, once, when the
    // module is imported.
    [[maybe_unused]] static void (*const volatile kept)() = &qml_register_types_Bullace_Controls;
    engine.addImportPath(QStringLiteral("qrc:/qt/qml"));
    // Imports the module now, so that its theme can be reached before the first page.
    QQmlComponent import(&engine);
    import.setData("import QtQml\nimport Bullace.Controls\nQtObject {}", QUrl());
    if (import.isError()) {
        qWarning("%s", qPrintable(import.errorString()));
    }
}

} // namespace bullace::quick
