#include "tablet/settings_view_model.hpp"

#include "tablet/start_view_model.hpp"
#include "tablet/walk_words.hpp"

#include <algorithm>

namespace bullace::tablet {

void SettingsViewModel::open() {
    show(Step::All);
}

void SettingsViewModel::show(Step step) {
    step_ = step;
    clear();
    backText_ = tr("Back");
    switch (step) {
    case Step::All:
        title_ = tr("This tablet");
        offerAll();
        break;
    case Step::Glass:
        title_ = tr("Hold a ruler to the glass");
        words_ = tr("The bar is to be 50 mm long.");
        picture_ = Ruler;
        offer({{tr("Longer"), {}, {}, false, {}, QStringLiteral("longer")},
               {tr("Shorter"), {}, {}, false, {}, QStringLiteral("shorter")}});
        break;
    case Step::Units:
        title_ = tr("Your units");
        words_ = tr("They hold for %1. Values are kept as the station keeps them.")
                     .arg(fromText(session_.author()));
        offerUnits();
        break;
    case Step::Block:
        title_ = tr("A block of your own");
        words_ = tr("Type rows × vines, like 6 x 30. The office can make it a block later.");
        ask(Letters, tr("Rows × vines"), QStringLiteral("×"));
        break;
    }
    emit changed();
}

void SettingsViewModel::offerAll() {
    const field::Settings& now = session_.book()->settings();
    const QString layouts[] = {tr("bare hands"), tr("gloves"), tr("rain")};
    const QString language = now.language == "es"   ? QStringLiteral("Español")
                             : now.language == "en" ? QStringLiteral("English")
                                                    : tr("as the tablet");
    std::vector<Choice> choices{
        {tr("Tapping hand"),
         now.isLeftHanded ? tr("left") : tr("right"),
         {},
         false,
         {},
         QStringLiteral("hand")},
        {tr("Keys for"),
         layouts[static_cast<int>(now.layout)],
         {},
         false,
         {},
         QStringLiteral("layout")},
        {tr("Text"),
         tr("%1 %").arg(qRound(now.textScale * 100)),
         {},
         false,
         {},
         QStringLiteral("text")},
        {tr("Light"), now.isDusk ? tr("dusk") : tr("day"), {}, false, {}, QStringLiteral("light")},
        {tr("Language"), language, {}, false, {}, QStringLiteral("language")},
        {tr("Units"), {}, {}, false, {}, QStringLiteral("units")},
        {tr("Glass size"), {}, {}, false, {}, QStringLiteral("glass")},
        {tr("Own block"), tr("rows × vines"), {}, false, {}, QStringLiteral("block")}};
    if (isDemo_) {
        choices.push_back({tr("Leave the demo"), {}, {}, false, {}, QStringLiteral("demo")});
    }
    offer(std::move(choices));
}

void SettingsViewModel::offerUnits() {
    const UnitWishes now = session_.wishes();
    offer(
        {{tr("Temperature"),
          now.fahrenheit ? QStringLiteral("°F") : QStringLiteral("°C"),
          {},
          false,
          {},
          QStringLiteral("fahrenheit")},
         {tr("Berries, leaves"),
          now.inches ? tr("inch") : QStringLiteral("mm"),
          {},
          false,
          {},
          QStringLiteral("inches")},
         {tr("Lengths"), now.feet ? tr("ft") : tr("cm, m"), {}, false, {}, QStringLiteral("feet")},
         {tr("Weights"),
          now.pounds ? QStringLiteral("lb") : QStringLiteral("kg"),
          {},
          false,
          {},
          QStringLiteral("pounds")},
         {tr("Acid"),
          now.percent ? QStringLiteral("%") : QStringLiteral("g/L"),
          {},
          false,
          {},
          QStringLiteral("percent")}});
}

void SettingsViewModel::change(field::Settings settings) {
    if (session_.accept(session_.book()->change(std::move(settings)))) {
        emit session_.settingsChanged();
        show(step_);
    }
}

void SettingsViewModel::choose(int index) {
    if (!choices_.holds(index)) {
        return;
    }
    const QString value = choices_.at(index).value;
    field::Settings next = session_.book()->settings();
    UnitWishes& units = next.units[session_.author()];
    if (value == QStringLiteral("hand")) {
        next.isLeftHanded = !next.isLeftHanded;
    } else if (value == QStringLiteral("layout")) {
        next.layout = static_cast<field::KeyLayout>((static_cast<int>(next.layout) + 1) % 3);
    } else if (value == QStringLiteral("text")) {
        next.textScale = next.textScale >= 2 ? 1 : std::min(2.0, next.textScale + 0.25);
    } else if (value == QStringLiteral("light")) {
        next.isDusk = !next.isDusk;
    } else if (value == QStringLiteral("language")) {
        next.language = next.language.empty() ? "en" : next.language == "en" ? "es" : "";
    } else if (value == QStringLiteral("longer") || value == QStringLiteral("shorter")) {
        const double factor = value == QStringLiteral("longer") ? 1.02 : 1 / 1.02;
        next.glassFactor = std::clamp(next.glassFactor * factor, 0.2, 5.0);
    } else if (value == QStringLiteral("fahrenheit")) {
        units.fahrenheit = !units.fahrenheit;
    } else if (value == QStringLiteral("inches")) {
        units.inches = !units.inches;
    } else if (value == QStringLiteral("feet")) {
        units.feet = !units.feet;
    } else if (value == QStringLiteral("pounds")) {
        units.pounds = !units.pounds;
    } else if (value == QStringLiteral("percent")) {
        units.percent = !units.percent;
    } else if (value == QStringLiteral("demo")) {
        emit demoLeft();
        return;
    } else {
        show(value == QStringLiteral("units")   ? Step::Units
             : value == QStringLiteral("glass") ? Step::Glass
                                                : Step::Block);
        return;
    }
    change(std::move(next));
}

void SettingsViewModel::commit() {
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
    emit session_.told(tr("Block %1 can be walked.").arg(fromText(*added)));
    show(Step::All);
}

void SettingsViewModel::back() {
    if (step_ == Step::All) {
        emit closed();
    } else {
        show(Step::All);
    }
}

} // namespace bullace::tablet
