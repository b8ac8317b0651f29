// What looks wrong though nothing conflicts: each finding with its evidence, its repair as a
// preview, and three ways on: repair it, call it right, look at the vine.
#pragma once

#include "desk/desk_page.hpp"
#include "office/station_findings.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <vector>

namespace bullace::desk {

class FindingsViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit FindingsViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    void refresh() override;
    void leave() override;
    void open(int row) override;
    [[nodiscard]] const std::vector<merge::Finding>& found() const { return found_; }

protected:
    void act(const QString& id) override;

private:
    void showList();
    void showFacts();
    void offer();
    void repair();
    void putAside();
    [[nodiscard]] const merge::Finding* current() const;
    [[nodiscard]] QString sentence(const merge::Finding& finding) const;
    [[nodiscard]] QString where(const merge::Finding& finding) const;
    [[nodiscard]] QString valueWords(const std::string& subject, BytesView value) const;

    std::vector<merge::Finding> found_;
    bool isRead_ = false;
    office::Token token_;
};

} // namespace bullace::desk
