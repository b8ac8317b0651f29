// The page of one stop by a keyboard: a cheap number pad in the rain does all of it.
#include "tablet/stop_view_model.hpp"

namespace bullace::tablet {

bool StopViewModel::back() {
    if (walk() == nullptr || panel_ == answerPanel()) {
        return false;
    }
    setPanel(answerPanel());
    emit changed();
    return true;
}

bool StopViewModel::pressDigit(const QString& text) {
    if (panel_ == Number) {
        digit(text);
        return true;
    }
    if (panel_ == Note || panel_ == Words) {
        character(text);
        return true;
    }
    const vineyard::Asked* known = asked();
    if (panel_ != Keys || known == nullptr) {
        const int hinted = choices_.hinted(text);
        choose(hinted);
        return hinted >= 0;
    }
    // Scores are their own key; stages are typed with two digits.
    const bool isStage = known->known.kind == descriptors::DescriptorKind::Stage;
    typedCode_ = isStage ? typedCode_ + text : text;
    if (isStage && typedCode_.size() < 2) {
        return true;
    }
    const QString code = isStage ? QString::number(typedCode_.toInt()) : typedCode_;
    typedCode_.clear();
    const bool isValue = isStage || known->known.kind == descriptors::DescriptorKind::Score;
    for (int i = 0; i < choices_.count(); ++i) {
        if ((isValue ? choices_.at(i).value : choices_.at(i).keyHint) == code) {
            choose(i);
            return true;
        }
    }
    emit session_.told(tr("%1 is not one of the keys.").arg(code));
    return true;
}

bool StopViewModel::press(int key, const QString& text) {
    if (walk() == nullptr) {
        return false;
    }
    const bool isTyping = panel_ == Note || panel_ == Words;
    if (text.size() == 1 && text.front().isDigit()) {
        return pressDigit(text);
    }
    switch (key) {
    case Qt::Key_Enter:
    case Qt::Key_Return:
        next();
        return true;
    case Qt::Key_Backspace: {
        const bool isSomethingTyped =
            isTyping ? !typedWords_.isEmpty()
                     : panel_ == Number && entry_ != nullptr &&
                           (!entry_->pad().isEmpty() || entry_->partIndex() > 0);
        if (isSomethingTyped) {
            erase();
        }
        return isSomethingTyped;
    }
    case Qt::Key_Escape:
        return back();
    default:
        break;
    }
    if (isTyping) {
        if (!text.isEmpty() && text.front().isPrint()) {
            character(text);
            return true;
        }
        return false;
    }
    if (text == QStringLiteral(".") || text == QStringLiteral(",")) {
        point();
        return true;
    }
    if (text == QStringLiteral("-")) {
        noVine();
        return true;
    }
    if (text == QStringLiteral("+")) {
        if (panel_ == Tally) {
            tally(1);
        } else {
            show(panel_ == Why ? answerPanel() : Why);
        }
        return true;
    }
    if (text == QStringLiteral(":")) {
        show(panel_ == Beside ? answerPanel() : Beside);
        return true;
    }
    if (text == QStringLiteral("*")) {
        emit pictureWanted();
        return true;
    }
    return false;
}

} // namespace bullace::tablet
