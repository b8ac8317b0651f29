// A planting plan: a design laid out in the free places of a block, looked at place by place,
// printed for the planting, and entered as plantings in one act.
#pragma once

#include "desk/desk_page.hpp"
#include "office/planting_plan.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <optional>

namespace bullace::desk {

class PlantingPlanViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit PlantingPlanViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    // A plan of the first block with nothing in it yet.
    void begin();
    void refresh() override;
    void leave() override;
    [[nodiscard]] const std::optional<office::PlantingPlan>& plan() const { return plan_; }
    // Why the PDF could not be written; empty where it was.
    [[nodiscard]] QString writePlan(const QString& path) const;

protected:
    void act(const QString& id) override;

private:
    // The layout, or why there is none.
    struct Planned {
        std::optional<office::PlantingPlan> plan;
        std::optional<Error> fault;
    };
    void show(Planned planned);
    void showPlaces();
    void showFacts();
    void offer();
    void askNext(const QString& id);
    void askPlaces();
    void askAccessions(const QString& prompt, std::vector<std::string> office::PlanWish::*list);
    void askReplicates();
    void askSeed();
    void askDay();
    void plant();
    [[nodiscard]] QString answerWords() const;
    [[nodiscard]] QString designWords() const;
    [[nodiscard]] QString placeText() const;

    office::PlanWish wish_;
    std::optional<office::PlantingPlan> plan_;
    std::optional<Error> fault_; // of the layout
    office::Token token_;
};

} // namespace bullace::desk
