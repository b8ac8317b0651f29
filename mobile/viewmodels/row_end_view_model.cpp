#include "tablet/row_end_view_model.hpp"

#include "tablet/walk_words.hpp"

namespace bullace::tablet {

void RowEndViewModel::open() {
    if (session_.walk() != nullptr) {
        show(Step::Report);
    }
}

void RowEndViewModel::show(Step step) {
    step_ = step;
    clear();
    switch (step) {
    case Step::Report:
        showReport();
        break;
    case Step::Passed:
        showPassed();
        break;
    case Step::Direction: {
        const auto& plan = session_.walk()->plan();
        title_ =
            tr("From vine %1 on, the notes belong …").arg(vineWords(plan.stops[first_].position));
        backText_ = tr("Back");
        offer(
            {{tr("one vine further on"), tr("I passed one"), {}, false, {}, QStringLiteral("1")},
             {tr("one vine back"), tr("I noted one twice"), {}, false, {}, QStringLiteral("-1")}});
        break;
    }
    }
    emit changed();
}

void RowEndViewModel::showReport() {
    const field::Walk& walk = *session_.walk();
    const field::LegReport report = walk.legReport(walk.footing().stop);
    const std::string& position = walk.here().position;
    title_ = walk.plan().isList ? tr("The end of the list")
                                : tr("The end of row %1").arg(rowWords(position));
    QStringList lines{tr("%1 of %2 stops are done.").arg(report.done).arg(report.stops)};
    const auto listed = [&](const std::vector<std::size_t>& stops) {
        QStringList vines;
        for (const std::size_t stop : stops) {
            if (vines.size() == 8) {
                //: behind a list of vines that is too long to be said whole
                vines << tr("%n more", nullptr, static_cast<int>(stops.size()) - 8);
                break;
            }
            vines << vineWords(walk.plan().stops[stop].position);
        }
        return vines.join(QStringLiteral(", "));
    };
    if (!report.leftOut.empty()) {
        lines << tr("Left open: vine %1. Which did you pass?").arg(listed(report.leftOut));
    }
    if (!report.marked.empty()) {
        lines << tr("Marked: vine %1.").arg(listed(report.marked));
    }
    words_ = lines.join(QStringLiteral("\n"));
    std::vector<Choice> choices;
    if (walk.hasNextLeg()) {
        const auto& next = walk.plan().stops[walk.legOf(walk.footing().stop).last + 1];
        choices.push_back({tr("Row %1").arg(rowWords(next.position)),
                           tr("from vine %1").arg(vineWords(next.position)),
                           {},
                           false,
                           {},
                           QStringLiteral("next")});
        choices.push_back({tr("Its other end"), {}, {}, false, {}, QStringLiteral("other")});
    } else {
        choices.push_back({tr("End of the walk"), {}, {}, false, {}, QStringLiteral("next")});
    }
    if (!report.leftOut.empty()) {
        choices.push_back(
            {tr("Go to vine %1").arg(vineWords(walk.plan().stops[report.leftOut.front()].position)),
             tr("left open"),
             {},
             false,
             {},
             QStringLiteral("to:%1").arg(report.leftOut.front())});
    }
    if (!report.marked.empty()) {
        choices.push_back({tr("Look at vine %1")
                               .arg(vineWords(walk.plan().stops[report.marked.front()].position)),
                           tr("marked"),
                           {},
                           false,
                           {},
                           QStringLiteral("to:%1").arg(report.marked.front())});
    }
    choices.push_back(
        {tr("Move notes along"), tr("by one vine"), {}, false, {}, QStringLiteral("shift")});
    offer(std::move(choices));
}

// The vines of the row that have notes: from which one on are they off?
void RowEndViewModel::showPassed() {
    const field::Walk& walk = *session_.walk();
    title_ = tr("Which is the first wrong vine?");
    backText_ = tr("Back");
    stops_.clear();
    std::vector<Choice> choices;
    const field::Leg leg = walk.legOf(walk.footing().stop);
    for (std::size_t stop = leg.first; stop <= leg.last; ++stop) {
        if (walk.sheet().all(stop).empty()) {
            continue;
        }
        stops_.push_back(stop);
        choices.push_back({vineWords(walk.plan().stops[stop].position), {}, {}, false, {}, {}});
    }
    choices_.set(std::move(choices));
}

void RowEndViewModel::goBackTo(std::size_t stop) {
    if (session_.accept(session_.walk()->goTo(stop))) {
        emit session_.walked();
    }
}

void RowEndViewModel::shift(std::size_t first, int by) {
    if (session_.accept(session_.walk()->shiftRun(first, by))) {
        emit session_.told(by > 0 ? tr("Moved one vine further on. Undo takes it back.")
                                  : tr("Moved one vine back. Undo takes it back."));
        emit session_.walked();
    }
    show(Step::Report);
}

void RowEndViewModel::choose(int index) {
    if (session_.walk() == nullptr || !choices_.holds(index)) {
        return;
    }
    const QString value = choices_.at(index).value;
    if (step_ == Step::Passed) {
        first_ = stops_[static_cast<std::size_t>(index)];
        show(Step::Direction);
    } else if (step_ == Step::Direction) {
        shift(first_, value.toInt());
    } else if (value == QStringLiteral("shift")) {
        show(Step::Passed);
    } else if (value.startsWith(QStringLiteral("to:"))) {
        goBackTo(value.mid(3).toULongLong());
    } else if (!session_.walk()->hasNextLeg()) {
        if (session_.accept(session_.book()->endWalk())) {
            emit session_.walked();
        }
    } else if (session_.accept(session_.walk()->nextLeg(value == QStringLiteral("other")))) {
        emit session_.walked();
    }
}

void RowEndViewModel::back() {
    show(step_ == Step::Direction ? Step::Passed : Step::Report);
}

} // namespace bullace::tablet
