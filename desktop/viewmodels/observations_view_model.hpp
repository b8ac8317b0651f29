// All that was ever observed, in one list that is read page by page as it comes to the eye.
#pragma once

#include "desk/desk_page.hpp"
#include "office/observation_list.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

namespace bullace::desk {

class ObservationsViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit ObservationsViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    void refresh() override;
    void leave() override;
    void open(int row) override;

protected:
    void act(const QString& id) override;

private:
    void take(office::ObservationPages pages);
    void readPage(int page);
    [[nodiscard]] GridRow rowOf(const office::VineValue& line) const;
    void offer();
    [[nodiscard]] std::string currentSubject() const;

    office::ObservationWish wish_;
    office::ObservationPages pages_;
    office::Token token_;
};

} // namespace bullace::desk
