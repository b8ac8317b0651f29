#include "desk/findings_view_model.hpp"

#include "desk/desk_words.hpp"

#include "core/journal/json_value.hpp"
#include "quick/field_sign.hpp"

#include <QLocale>

#include <cmath>
#include <optional>

namespace bullace::desk {

using merge::Finding;
using merge::FindingKind;
using quick::FieldSign;
using quick::fromText;
using quick::toText;

FindingsViewModel::FindingsViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent) {
    connect(&table_, &GridModel::currentChanged, this, [this] {
        showFacts();
        offer();
    });
}

QString FindingsViewModel::help() const {
    return tr(
        "Nothing here is changed by itself. Beside the list stand the evidence and, where there is "
        "one, the repair as it would be written. R repairs it in one act, which Ctrl+Z takes back. "
        "K says that it is right as it stands: it is not told again until somebody writes there. A "
        "clock is put right on the device itself; K then puts it away until the device notes by a "
        "wrong clock again.");
}

void FindingsViewModel::refresh() {
    token_.cancel();
    token_ = {};
    session_.read(
        this,
        office::Lane::Background,
        token_,
        [catalogue = session_.catalogue(), today = session_.today(), token = token_](
            store::Database& database) {
            return office::stationFindings(database, *catalogue, today, token);
        },
        [this](std::vector<Finding> found) {
            found_ = std::move(found);
            isRead_ = true;
            showList();
        });
    if (!isRead_) {
        say(tr("Findings"), tr("The station is being looked through …"));
        offer();
    }
}

void FindingsViewModel::leave() {
    token_.cancel();
}

QString FindingsViewModel::valueWords(const std::string& subject, BytesView value) const {
    return sayValue(*session_.catalogue(),
                    journal::readSubject(subject).descriptor,
                    value,
                    session_.settings().units);
}

QString FindingsViewModel::where(const Finding& finding) const {
    const bool isOfDevice = finding.kind == FindingKind::ClockOff;
    return isOfDevice && finding.deviceName.empty() ? fromText(finding.device)
           : isOfDevice ? tr("%1 (%2)").arg(fromText(finding.deviceName), fromText(finding.device))
                        : subjectWords(*session_.catalogue(), finding.subjects.front());
}

QString FindingsViewModel::sentence(const Finding& finding) const {
    const QString value =
        finding.subjects.empty() ? QString() : valueWords(finding.subjects.front(), finding.value);
    const QString other = finding.other ? QLocale().toString(*finding.other, 'g', 6) : QString();
    switch (finding.kind) {
    case FindingKind::ShiftedRow:
        return finding.run->along > 0
                   ? tr("%1 values, %n vine(s) too far", nullptr, finding.run->along)
                         .arg(finding.subjects.size())
                   : tr("%1 values, %n vine(s) too far back", nullptr, -finding.run->along)
                         .arg(finding.subjects.size());
    case FindingKind::TenTimes:
    case FindingKind::InchForMillimetre:
        return tr("%1; %2 would fit").arg(value, other);
    case FindingKind::StageBackwards:
        return finding.on ? tr("%1 after %2 on %3").arg(value, other, quick::dateWords(*finding.on))
                          : tr("%1 after %2").arg(value, other);
    case FindingKind::FarFromHistory:
    case FindingKind::FarFromNeighbours:
        return tr("%1; %2 there").arg(value, other);
    case FindingKind::ClockOff:
        return finding.off > 0 ? tr("%n day(s) ahead", nullptr, static_cast<int>(finding.off))
                               : tr("%n day(s) behind", nullptr, static_cast<int>(-finding.off));
    case FindingKind::FarApart:
        return tr("and %1").arg(subjectWords(*session_.catalogue(), finding.subjects.back()));
    default:
        return value;
    }
}

void FindingsViewModel::showList() {
    table_.setColumns(tr("Findings"),
                      {{tr("Where"), 40, false, true}, {tr("What looks wrong"), 30}});
    std::vector<GridRow> rows;
    std::optional<FindingKind> kind;
    for (std::size_t i = 0; i < found_.size(); ++i) {
        const Finding& finding = found_[i];
        if (kind != finding.kind) {
            kind = finding.kind;
            rows.push_back(
                headingRow(findingKindWords(finding.kind),
                           QStringLiteral("kind ") + fromText(merge::findingWord(finding.kind))));
        }
        GridRow row;
        row.key = QString::number(i);
        row.sign = FieldSign::Marked;
        row.signWord = tr("looks wrong");
        row.cells << where(finding) << sentence(finding);
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    const auto count = static_cast<int>(found_.size());
    say(tr("Findings"),
        count == 0 ? tr("Nothing looks wrong.") : tr("%n thing(s) look wrong.", nullptr, count));
    showFacts();
    offer();
}

const Finding* FindingsViewModel::current() const {
    bool isNumber = false;
    const auto index = table_.currentKey().toULongLong(&isNumber);
    return isNumber && index < found_.size() ? &found_[index] : nullptr;
}

void FindingsViewModel::showFacts() {
    facts_.setColumns(tr("Evidence and repair"), {{{}, 22}, {{}, 22, false, true}});
    std::vector<GridRow> rows;
    const auto add = [&rows](const QString& label, const QString& text) {
        GridRow row;
        row.cells << label << text;
        rows.push_back(std::move(row));
    };
    const Finding* finding = current();
    if (finding != nullptr && finding->run) {
        for (int shift = -merge::kFarthestShift; shift <= merge::kFarthestShift; ++shift) {
            const QString along = shift == 0 ? tr("in place")
                                             : tr("%1 along")
                                                   .arg(shift > 0 ? QStringLiteral("+%1").arg(shift)
                                                                  : QString::number(shift));
            add(along,
                tr("evidence %1").arg(QLocale().toString(finding->run->evidenceAt(shift), 'f', 1)));
        }
    }
    for (const merge::Repair& repair :
         finding == nullptr ? std::vector<merge::Repair>{} : finding->repair) {
        add(fromText(journal::readSubject(repair.subject).id),
            journal::isNullValue(repair.value) ? tr("taken back")
                                               : valueWords(repair.subject, repair.value));
    }
    facts_.setRows(std::move(rows));
}

void FindingsViewModel::offer() {
    const Finding* finding = current();
    const bool mayWrite = finding != nullptr && !session_.isReadOnly();
    const bool isAtVine = finding != nullptr && !finding->subjects.empty() &&
                          journal::readSubject(finding->subjects.front()).position.has_value();
    actions_.set(
        {{QStringLiteral("repair"),
          tr("Repair it"),
          QStringLiteral("R"),
          mayWrite && !finding->repair.empty()},
         {QStringLiteral("right"),
          tr("It is right"),
          QStringLiteral("K"),
          mayWrite && !finding->subjects.empty()},
         {QStringLiteral("vine"), tr("Everything on this vine"), QStringLiteral("V"), isAtVine}});
}

void FindingsViewModel::open(int row) {
    table_.setCurrent(row);
    act(QStringLiteral("vine"));
}

void FindingsViewModel::act(const QString& id) {
    const Finding* finding = current();
    if (finding == nullptr) {
        return;
    }
    if (id == QStringLiteral("vine") && !finding->subjects.empty()) {
        emit session_.asked(QStringLiteral("vine"),
                            fromText(journal::readSubject(finding->subjects.front()).id));
    } else if (!isSomebodyThere()) {
        return;
    } else if (id == QStringLiteral("repair")) {
        repair();
    } else if (id == QStringLiteral("right")) {
        putAside();
    }
}

void FindingsViewModel::repair() {
    askWhy([this, finding = *current()](const std::string& why) {
        session_.write(
            this,
            [finding, why, author = session_.author(), &clock = session_.clock()](
                store::Database& database) -> Result<std::vector<journal::Place>> {
                return office::perform(
                    database, office::repairAct(database, finding, author, why), clock);
            },
            [this](Result<std::vector<journal::Place>> written) {
                if (!written) {
                    session_.fail(written.error());
                } else {
                    emit session_.told(tr("Repaired, as one act. Ctrl+Z takes it back."));
                }
            },
            DeskSession::Touches::Observations);
        return QString();
    });
}

void FindingsViewModel::putAside() {
    session_.write(
        this,
        [finding = *current(), author = session_.author(), &clock = session_.clock()](
            store::Database& database) -> Result<std::vector<journal::Place>> {
            return office::perform(database, office::asideAct(database, finding, author), clock);
        },
        [this](Result<std::vector<journal::Place>> written) {
            if (!written) {
                session_.fail(written.error());
            }
        },
        DeskSession::Touches::Observations);
}

} // namespace bullace::desk
