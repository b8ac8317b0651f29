// How a selection meeting words its candidates: lines of the list, of one candidate's page, and the
// facts beside it.
#pragma once

#include "desk/grid_model.hpp"
#include "desk/selection_ground.hpp"

#include <QString>
#include <QStringList>

#include <utility>
#include <vector>

namespace bullace::desk {

class SelectionWords {
public:
    SelectionWords(const MeetingGround& ground, const vineyard::Catalogue& catalogue)
        : ground_(ground),
          catalogue_(catalogue) {}

    [[nodiscard]] QString name(const season::Candidate& candidate) const;
    [[nodiscard]] std::vector<GridColumn> listColumns() const;
    [[nodiscard]] std::vector<GridRow> list() const;
    [[nodiscard]] std::vector<GridColumn> evidenceColumns() const;
    [[nodiscard]] std::vector<GridRow> evidence(const season::Candidate& candidate) const;
    // A name and its words, one after the other; the last decisions at the end.
    using Facts = std::vector<std::pair<QString, QString>>;
    [[nodiscard]] Facts facts(const season::Candidate& candidate) const;
    [[nodiscard]] QString words(const season::Candidate& candidate) const;
    [[nodiscard]] static QString verdictWords(const std::string& word);
    // Methods, what was left out, cautions.
    [[nodiscard]] QStringList notes() const;

private:
    [[nodiscard]] QString decidedText(const season::Candidate& candidate) const;
    void addOthers(const season::Candidate& candidate, std::vector<GridRow>& rows) const;
    void addDecisions(const season::Candidate& candidate, Facts& facts) const;

    const MeetingGround& ground_;
    const vineyard::Catalogue& catalogue_;
};

} // namespace bullace::desk
