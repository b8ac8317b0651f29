// What the desk's views of the sciences are made of: a view says what can be chosen, and makes a
// picture, a table and its words from the station's notes. A page shows whichever is chosen.
#pragma once

#include "desk/grid_model.hpp"
#include "office/act.hpp"

#include "core/base/remark.hpp"
#include "core/base/units.hpp"
#include "core/report/drawing.hpp"
#include "core/report/plot.hpp"
#include "core/season/station_notes.hpp"
#include "core/statistics/estimate.hpp"
#include "core/vineyard/catalogue.hpp"

#include <QString>
#include <QStringList>

#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::desk {

// What all views are made from; nothing in it changes once it is read.
struct StudyGround {
    season::StationNotes notes;
    std::shared_ptr<const vineyard::Catalogue> catalogue;
    UnitWishes units;
    CivilDate today;
    std::string author; // who sits at the desk; empty where nobody has said
};

// What was chosen, by the key of its group; of a group of many with commas between.
using Chosen = std::map<QString, QString>;

struct ChoiceLine {
    QString key; // without a comma
    QString text;
};
struct ChoiceGroup {
    QString key; // one word
    QString title;
    bool isMany = false; // several lines can be chosen; none chosen stands for all
    std::vector<ChoiceLine> lines;
};

// A remark that holds of some lines of the table only.
struct RemarkOfSome {
    QStringList of; // their accessions
    Remark remark;
};

// What can be written from an answer, as one act that can be undone.
struct StudyDeed {
    QString text; // a verb and what it works on
    QString keyText;
    QString done; // one sentence, once it is written
    std::shared_ptr<const office::Act> act;
};

// One answer: what is drawn, what stands in its table, and what has to be told with it.
struct Study {
    QString title; // "Flowering of 2025"
    QString words; // one sentence: the answer, or why there is none
    std::optional<report::Plot> plot;
    std::optional<report::Drawing> drawing; // in the plot's place
    QString tableName;
    std::vector<GridColumn> columns;
    std::vector<GridRow> rows;
    QString method;
    Remarks remarks;
    std::vector<RemarkOfSome> ofSome;
    QStringList cautions;       // that concern what is shown
    std::size_t openLeft = 0;   // conflicts that were left out
    std::size_t missedLeft = 0; // "not observed" and the like that were left out
    std::optional<StudyDeed> deed;
};

// Something else that can be done from a view: it leads to the page of that name.
struct StudyAction {
    QString page;
    QString text; // a verb and what it works on
    QString keyText;
};

class StudyView {
public:
    virtual ~StudyView() = default;
    [[nodiscard]] virtual QString key() const = 0; // one word
    [[nodiscard]] virtual QString title() const = 0;
    [[nodiscard]] virtual QString help() const = 0;
    [[nodiscard]] virtual std::vector<StudyAction> actions() const { return {}; }
    // The groups of choices, the chosen lines put right where they do not exist (any more).
    [[nodiscard]] virtual std::vector<ChoiceGroup> choices(const StudyGround& ground,
                                                           Chosen& chosen) const = 0;
    // Made on a thread of its own; `chosen` has gone through choices().
    [[nodiscard]] virtual Study make(const StudyGround& ground, const Chosen& chosen) const = 0;
};

// All views of the page Season, in the order in which they are offered.
[[nodiscard]] std::vector<std::unique_ptr<StudyView>> makeStudyViews();

// Whether a line of a group is chosen; in a group of many also where none is.
[[nodiscard]] bool isChosen(const Chosen& chosen, const ChoiceGroup& group, const QString& line);
// Puts a group of one right: the chosen line where it exists, else the first; of many, lines that
// do not exist are taken away.
void settleChoice(Chosen& chosen, const ChoiceGroup& group);

// A remark in the language of the screen, numbers and days as they are written there.
[[nodiscard]] QString remarkWords(const Remark& remark);

// Told with the accession's name before it, once for all that it holds of.
void tellOf(const QString& accession, const Remark& remark, Study& study);
// "A001, A018: …"; without names where it holds of all of the study's lines.
[[nodiscard]] QString remarkWords(const RemarkOfSome& remark, const Study& study);

// Numbers as they are written here, with so many decimals.
[[nodiscard]] QString numberText(double value, int decimals);
// "9.2 (6.1 to 12.4)"; without an interval the number alone; an unbounded side is said.
[[nodiscard]] QString estimateText(const statistics::Estimate& estimate, int decimals);
[[nodiscard]] QString intervalText(const statistics::Interval& interval, int decimals);

[[nodiscard]] ChoiceGroup seasonChoice(const std::vector<int>& seasons);
// Accessions that have any note of these descriptors, by their words.
[[nodiscard]] ChoiceGroup accessionChoice(const StudyGround& ground,
                                          std::span<const std::string_view> descriptors,
                                          bool isMany);
// What is open or was missed of a descriptor in a season (0: all), added to what a study left out.
void countLeftOut(const season::DescriptorNotes& notes, int season, Study& study);

} // namespace bullace::desk
