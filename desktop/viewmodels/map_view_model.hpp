// The block map: what to show is chosen from one list beside it; a vine on it leads to its page.
#pragma once

#include "desk/desk_page.hpp"
#include "desk/map_picture.hpp"
#include "office/block_values.hpp"

#include "quick/block_map_item.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <vector>

namespace bullace::desk {

class MapViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")
    Q_PROPERTY(bullace::quick::BlockMapSource* map READ map CONSTANT)

public:
    explicit MapViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    [[nodiscard]] quick::BlockMapSource* map() { return &map_; }
    [[nodiscard]] const office::BlockWish& wish() const { return wish_; }

    void refresh() override;
    void leave() override;
    void open(int row) override;
    // A vine was chosen on the map.
    Q_INVOKABLE void choose(const QString& position);
    // The map as a page of PDF. Why it could not be written; empty where it was.
    [[nodiscard]] QString writePdf(const QString& path) const;

protected:
    void act(const QString& id) override;

private:
    struct Read {
        office::BlockValues values;
        std::vector<merge::Finding> findings;
    };
    void begin();
    void show();
    void showChoices();
    void addChoice(std::vector<GridRow>& rows,
                   const QString& key,
                   const QString& text,
                   bool isChosen) const;
    void choose(const QString& kind, const QString& what);
    void offer();
    void askPdf();

    quick::BlockMapSource map_;
    office::BlockWish wish_;
    bool isOnFindings_ = false;
    bool hasBegun_ = false;
    Read read_;
    office::Token token_;
};

} // namespace bullace::desk
