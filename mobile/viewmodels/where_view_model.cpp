#include "tablet/where_view_model.hpp"

#include "tablet/walk_words.hpp"

#include "core/vineyard/label_code.hpp"
#include "core/vineyard/position.hpp"

namespace bullace::tablet {

void WhereViewModel::open() {
    showAsking({});
}

void WhereViewModel::showAsking(const QString& why) {
    clear();
    isScanning_ = false;
    emit cameraWanted(false);
    title_ = tr("What does the label say?");
    words_ = why;
    backText_ = tr("Back");
    ask(Letters, tr("Label, or block-row-vine"), QStringLiteral("-"));
    offer({{tr("Scan it"), {}, {}, false, {}, QStringLiteral("scan")}});
    emit changed();
}

void WhereViewModel::back() {
    if (isScanning_) {
        showAsking({});
        return;
    }
    emit cameraWanted(false);
    emit closed();
}

std::optional<std::size_t> WhereViewModel::stopAt(const std::string& position) const {
    const field::Walk* walk = session_.walk();
    for (std::size_t i = 0; walk != nullptr && i < walk->plan().stops.size(); ++i) {
        if (walk->plan().stops[i].position == position) {
            return i;
        }
    }
    return {};
}

void WhereViewModel::showFound(const std::string& position) {
    const auto stop = stopAt(position);
    clear();
    emit cameraWanted(false);
    isScanning_ = false;
    title_ = placeWords(position);
    backText_ = tr("Back");
    std::vector<Choice> choices;
    if (session_.walk() != nullptr && session_.walk()->here().position == position) {
        words_ = tr("You stand where the tablet thinks you do.");
        choices.push_back({tr("Go on"), {}, {}, false, {}, QStringLiteral("close")});
    } else if (stop) {
        words_ = tr("The walk stands at %1.").arg(placeWords(session_.walk()->here().position));
        choices.push_back({tr("Go on from here"),
                           placeWords(position),
                           {},
                           false,
                           {},
                           QStringLiteral("to:%1").arg(*stop)});
        choices.push_back({tr("Move notes along"),
                           tr("they are off by one"),
                           {},
                           false,
                           {},
                           QStringLiteral("shift:%1").arg(*stop)});
    } else {
        words_ = tr("This vine is not on the walk.");
        choices.push_back({tr("Another label"), {}, {}, false, {}, QStringLiteral("again")});
    }
    offer(std::move(choices));
    emit changed();
}

void WhereViewModel::choose(int index) {
    if (!choices_.holds(index)) {
        return;
    }
    const QString value = choices_.at(index).value;
    if (value == QStringLiteral("scan")) {
        clear();
        isScanning_ = true;
        title_ = tr("Hold the label before the camera");
        backText_ = tr("Back");
        picture_ = CameraView;
        emit changed();
        emit cameraWanted(true);
    } else if (value == QStringLiteral("again")) {
        showAsking({});
    } else if (value == QStringLiteral("close")) {
        emit closed();
    } else if (value.startsWith(QStringLiteral("to:"))) {
        if (session_.accept(session_.walk()->goTo(value.mid(3).toULongLong()))) {
            emit session_.walked();
            emit closed();
        }
    } else if (value.startsWith(QStringLiteral("shift:"))) {
        // One vine too far or one too few: the notes of the row go the way from here to the tag.
        const std::size_t tag = value.mid(6).toULongLong();
        field::Walk& walk = *session_.walk();
        const std::size_t here = walk.footing().stop;
        const int by = tag > here ? 1 : -1;
        const bool isOneOff = tag + 1 == here || tag == here + 1;
        std::size_t first = walk.legOf(here).first;
        while (first < here && walk.sheet().all(first).empty()) {
            ++first;
        }
        if (!isOneOff) {
            emit session_.told(tr("The label is more than one vine away: use the end of the row."));
        } else if (session_.accept(walk.shiftRun(by < 0 ? first + 1 : first, by)) &&
                   session_.accept(walk.goTo(tag))) {
            emit session_.walked();
            emit closed();
        }
    }
}

void WhereViewModel::commit() {
    seen(typed_);
}

void WhereViewModel::seen(const QString& code) {
    const std::string text = toText(code.trimmed().toUpper());
    const auto& catalogue = session_.book()->catalogue();
    const auto position = vineyard::readPosition(text);
    if (position && catalogue.block(position->block) != nullptr &&
        vineyard::isOnPlan(*catalogue.block(position->block), *position)) {
        showFound(text);
        return;
    }
    const auto label = vineyard::readLabelCode(text);
    if (!label) {
        const QString why = position ? tr("This station's plan has no %1.").arg(fromText(text))
                                     : labelFaultWords(vineyard::labelFaultOf(text));
        showAsking(why);
        return;
    }
    const auto at = catalogue.labelled(*label);
    if (at) {
        showFound(*at);
    } else {
        showAsking(tr("%1 is no label of this station's vines.").arg(fromText(*label)));
    }
}

} // namespace bullace::tablet
