// The rulebook: ordered rules in words, one of them opened as fields, and what a change would do
// before it is saved.
#pragma once

#include "desk/desk_page.hpp"
#include "office/rule_desk.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>
#include <vector>

namespace bullace::desk {

class RulebookViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit RulebookViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    void refresh() override;
    void leave() override;
    void open(int row) override;
    void type(int row, int column, const QString& text) override;
    [[nodiscard]] const std::optional<office::RulePreview>& preview() const { return preview_; }

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    enum class Step { List, Edit, Preview };

    void showList();
    void showEdit();
    void showPreview();
    void offer();
    void edit(std::size_t line);
    void addRule();
    void askField(int row);
    void readPreview();
    void move(int by);
    void takeAway();
    void save();
    [[nodiscard]] QString lineWords(const office::RuleDraft& draft) const;
    [[nodiscard]] std::optional<std::size_t> currentLine() const;
    [[nodiscard]] std::string* field(int row);

    std::vector<office::RuleLine> lines_;
    std::vector<office::RuleChange> changes_; // that are previewed
    office::RuleDraft draft_;
    std::uint64_t number_ = 0;          // of the rule that is edited
    std::vector<journal::Place> heads_; // of it
    std::optional<office::RulePreview> preview_;
    Step step_ = Step::List;
    office::Token token_;
};

} // namespace bullace::desk
