// This desk: who sits at it, how large the letters are, day or dusk, the language, units.
#pragma once

#include "desk/desk_page.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

namespace bullace::desk {

class DeskSettingsViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit DeskSettingsViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    void refresh() override;
    void open(int row) override;

protected:
    void act(const QString& id) override;

private:
    void askAuthor();
    void change(const QString& key);
};

} // namespace bullace::desk
