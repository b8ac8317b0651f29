// Many conflicts at once: a condition in words, what it would do to each, five at random decided by
// hand first without its answer, then one act.
#pragma once

#include "desk/desk_page.hpp"
#include "office/bulk.hpp"
#include "office/typed_value.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>
#include <string>
#include <vector>

namespace bullace::desk {

class BulkViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit BulkViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    // Of conflicts like this one.
    void begin(const QString& subject);
    void refresh() override;
    void leave() override;
    [[nodiscard]] bool isByHand() const { return step_ == Step::ByHand; }
    [[nodiscard]] const std::vector<office::BulkOutcome>& outcomes() const { return outcomes_; }

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    enum class Step { Condition, ByHand, Ready };
    struct Answer {
        std::size_t outcome = 0; // index
        Bytes value;             // what the person took
    };

    void readCase();
    void preview();
    void showPreview();
    void showByHand();
    void showReady();
    void offerConditions();
    void answerByHand(std::size_t side);
    void apply();
    [[nodiscard]] QString conditionWords() const;
    [[nodiscard]] QString pickWords(office::Pick pick) const;
    [[nodiscard]] QString valueWords(const office::BulkOutcome& outcome, BytesView value) const;
    [[nodiscard]] std::size_t decidedCount() const;
    [[nodiscard]] std::size_t differingCount() const;

    std::string subject_;
    std::optional<office::CaseFile> like_;
    office::Condition condition_;
    std::vector<office::BulkOutcome> outcomes_;
    std::vector<std::size_t> byHand_;
    std::vector<Answer> answers_;
    Step step_ = Step::Condition;
    office::Token token_;
};

} // namespace bullace::desk
