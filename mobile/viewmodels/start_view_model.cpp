#include "tablet/start_view_model.hpp"

#include "tablet/walk_words.hpp"

#include <QRegularExpression>

#include <algorithm>

namespace bullace::tablet {

std::optional<BlockSize> readBlockSize(const QString& text) {
    static const QRegularExpression form(
        QStringLiteral(R"(^\s*([1-9]\d{0,2})\s*[xX×*\s]\s*([1-9]\d{0,2})\s*$)"));
    const QRegularExpressionMatch match = form.match(text);
    if (!match.hasMatch()) {
        return {};
    }
    return BlockSize{match.captured(1).toUInt(), match.captured(2).toUInt()};
}

void StartViewModel::open() {
    show(Step::Hand);
}

void StartViewModel::show(Step step) {
    step_ = step;
    clear();
    switch (step) {
    case Step::Hand:
        title_ = tr("Which hand taps?");
        words_ = tr("Keys stand on its side. Nothing you need lies under the other one.");
        offer({{tr("The right hand"), {}, {}, false, {}, QStringLiteral("right")},
               {tr("The left hand"), {}, {}, false, {}, QStringLiteral("left")}});
        break;
    case Step::Glass:
        title_ = tr("Hold a ruler to the glass");
        words_ = tr("The bar is to be 50 mm long. Keys are as large as fingers then.");
        picture_ = Ruler;
        backText_ = tr("Back");
        offer({{tr("Longer"), {}, {}, false, {}, QStringLiteral("longer")},
               {tr("Shorter"), {}, {}, false, {}, QStringLiteral("shorter")},
               {tr("It is 50 mm"), {}, {}, false, {}, QStringLiteral("fits")}});
        break;
    case Step::Begin:
        title_ = tr("What do you begin with?");
        words_ = tr("Nothing leaves this tablet before it is paired.");
        backText_ = tr("Back");
        offer(
            {{tr("Pair with the office"),
              tr("receives blocks and rounds"),
              {},
              false,
              {},
              QStringLiteral("pair")},
             {tr("A block of my own"), tr("rows × vines"), {}, false, {}, QStringLiteral("block")},
             {tr("Try the demo station"),
              tr("invented notes"),
              {},
              false,
              {},
              QStringLiteral("demo")}});
        break;
    case Step::Block:
        title_ = tr("A block of your own");
        words_ = tr("Type rows × vines, like 6 x 30. The office can make it a block later.");
        backText_ = tr("Back");
        ask(Letters, tr("Rows × vines"), QStringLiteral("×"));
        break;
    }
    emit changed();
}

void StartViewModel::changeGlass(double factor) {
    field::Settings settings = session_.book()->settings();
    settings.glassFactor = std::clamp(settings.glassFactor * factor, 0.2, 5.0);
    if (session_.accept(session_.book()->change(std::move(settings)))) {
        emit session_.settingsChanged();
    }
}

void StartViewModel::finish() {
    field::Settings settings = session_.book()->settings();
    settings.isSetUp = true;
    session_.accept(session_.book()->change(std::move(settings)));
}

void StartViewModel::choose(int index) {
    if (!choices_.holds(index)) {
        return;
    }
    const QString value = choices_.at(index).value;
    if (step_ == Step::Hand) {
        field::Settings settings = session_.book()->settings();
        settings.isLeftHanded = value == QStringLiteral("left");
        if (session_.accept(session_.book()->change(std::move(settings)))) {
            emit session_.settingsChanged();
            show(Step::Glass);
        }
    } else if (value == QStringLiteral("longer")) {
        changeGlass(1.02);
    } else if (value == QStringLiteral("shorter")) {
        changeGlass(1 / 1.02);
    } else if (value == QStringLiteral("fits")) {
        show(Step::Begin);
    } else if (value == QStringLiteral("block")) {
        show(Step::Block);
    } else if (value == QStringLiteral("demo")) {
        finish();
        emit demoWanted();
    } else if (value == QStringLiteral("pair")) {
        finish();
        emit pairingWanted();
    }
}

void StartViewModel::commit() {
    const auto size = readBlockSize(typed_);
    if (!size) {
        emit session_.told(tr("Type two numbers from 1 to 999, like 6 x 30."));
        return;
    }
    const auto added = session_.book()->addOwnBlock({}, size->rows, size->vines);
    if (!added) {
        emit session_.failed(added.error());
        return;
    }
    finish();
    emit done();
}

void StartViewModel::back() {
    show(step_ == Step::Block ? Step::Begin : step_ == Step::Begin ? Step::Glass : Step::Hand);
}

} // namespace bullace::tablet
