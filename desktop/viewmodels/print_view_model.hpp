// Labels and row sheets: what is to be printed is put together in one list, and written as a PDF.
#pragma once

#include "desk/desk_page.hpp"
#include "desk/print_pages.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

namespace bullace::desk {

class PrintViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit PrintViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    // Of what is printed: a row, a lot, a round …; empty leaves what was asked for before.
    void begin(const QString& of);
    [[nodiscard]] const PrintWish& wish() const { return wish_; }

    void refresh() override;
    void open(int row) override;

protected:
    void act(const QString& id) override;

private:
    void showList();
    void showFacts();
    void offer();
    void change(const QString& key);
    void askOf();
    void askColumns();
    void askFirstFree();
    void askOffset();
    void askPdf();
    void writeTest();
    // Gives labels their codes first, where some have none.
    void write(const QString& path);
    void writePages(const QString& path, Result<std::vector<paper::Page>> pages);
    [[nodiscard]] QString kindWords(const std::optional<paper::LabelKind>& kind) const;

    PrintWish wish_;
};

} // namespace bullace::desk
