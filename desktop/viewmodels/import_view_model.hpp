// A spreadsheet's table before it is taken in: its first ten rows, what each column is for, every
// line that cannot be taken; then all of it or nothing.
#pragma once

#include "desk/desk_page.hpp"
#include "office/table_import.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>

namespace bullace::desk {

class ImportViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit ImportViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    void begin();
    void refresh() override;
    void open(int row) override;
    // Takes a file up: reads it and looks at it. Why it cannot be; empty where it can.
    [[nodiscard]] QString takeFile(const QString& path);
    [[nodiscard]] const std::optional<office::TablePlan>& plan() const { return plan_; }

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    enum class View { Files, Rows, Columns, Problems };

    void showFiles();
    void show();
    void showRows();
    void showColumns();
    void showProblems();
    void offer();
    void planAgain();
    void askField(int column);
    void import();
    [[nodiscard]] QString kindWords(office::TableKind kind) const;

    QString path_;
    std::optional<report::CsvTable> csv_;
    office::TableWish wish_;
    std::optional<office::TablePlan> plan_;
    View view_ = View::Files;
    office::Token token_;
};

} // namespace bullace::desk
