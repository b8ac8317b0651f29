// One line finds positions, accessions, labels, people, crosses, lots, rounds and the words of
// notes.
#pragma once

#include "desk/desk_page.hpp"
#include "office/search_index.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <memory>
#include <vector>

namespace bullace::desk {

class SearchViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit SearchViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    void search(const QString& query);
    [[nodiscard]] const std::vector<office::Found>& found() const { return found_; }
    [[nodiscard]] bool isReady() const { return index_ != nullptr; }

    void refresh() override;
    void open(int row) override;

protected:
    void act(const QString& id) override;

private:
    void build();
    void show();

    std::shared_ptr<const office::SearchIndex> index_;
    bool isStale_ = true;
    bool isBuilding_ = false;
    QString query_;
    std::vector<office::Found> found_;
    office::Token token_;
};

} // namespace bullace::desk
