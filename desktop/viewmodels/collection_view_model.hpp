// The collection: accessions, blocks, people, rounds, descriptors, lots and crosses as lists and
// cards of fields; runs of vines planted, taken out and renumbered; tables in and out.
#pragma once

#include "desk/desk_page.hpp"
#include "office/collection.hpp"
#include "office/table_export.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>
#include <string>

namespace bullace::desk {

class CollectionViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit CollectionViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    // The card of this ID, of whatever kind it is.
    void begin(const QString& id);
    void refresh() override;
    void leave() override;
    void open(int row) override;
    void type(int row, int column, const QString& text) override;
    [[nodiscard]] const std::optional<office::Card>& card() const { return card_; }

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    void showList();
    void showCard();
    void offer();
    void readTheCard(office::CardKind kind, const std::string& id);
    void askField(int row);
    // Why the text cannot be taken; empty where it is being written.
    [[nodiscard]] QString takeField(int row, const QString& text);
    void askNew();
    void askPlanting();
    void askRemoval();
    void askRenumbering();
    void askExport();
    void perform(Result<office::Act> (*make)(store::Database&,
                                             const vineyard::Catalogue&,
                                             const QStringList&,
                                             const std::string&),
                 const QStringList& words,
                 const QString& done);
    [[nodiscard]] QString kindWords(office::CardKind kind) const;

    office::CardKind kind_ = office::CardKind::Accession;
    std::optional<office::Card> card_;
    office::Token token_;
};

} // namespace bullace::desk
