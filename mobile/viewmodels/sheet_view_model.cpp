#include "tablet/sheet_view_model.hpp"

namespace bullace::tablet {

namespace {

constexpr qsizetype kMostTyped = 80;

} // namespace

void SheetViewModel::clear() {
    title_.clear();
    words_.clear();
    caution_.clear();
    typed_.clear();
    typedName_.clear();
    others_.clear();
    codeText_.clear();
    firstText_.clear();
    lastText_.clear();
    backText_.clear();
    typing_ = Nothing;
    picture_ = None;
    vineCount_ = 0;
    choices_.set({});
}

void SheetViewModel::ask(Typing typing, const QString& name, const QString& others) {
    typing_ = typing;
    typedName_ = name;
    others_ = others;
}

void SheetViewModel::offer(std::vector<Choice> choices) {
    if (typing_ == Nothing) {
        ChoiceModel::number(choices);
    }
    choices_.set(std::move(choices));
}

void SheetViewModel::character(const QString& text) {
    if (typed_.size() < kMostTyped) {
        typed_ += text;
        emit changed();
    }
}

void SheetViewModel::erase() {
    typed_.chop(1);
    emit changed();
}

bool SheetViewModel::press(int key, const QString& text) {
    if (key == Qt::Key_Escape && !backText_.isEmpty()) {
        back();
        return true;
    }
    if (typing_ != Nothing) {
        if (key == Qt::Key_Enter || key == Qt::Key_Return) {
            commit();
            return true;
        }
        if (key == Qt::Key_Backspace && !typed_.isEmpty()) {
            erase();
            return true;
        }
        const bool fits = text.size() == 1 &&
                          (typing_ == Digits ? text.front().isDigit() : text.front().isPrint());
        if (fits) {
            character(text);
        }
        return fits;
    }
    if (picture_ == RowEnds && (text == QStringLiteral("1") || text == QStringLiteral("2"))) {
        if (text == QStringLiteral("1")) {
            firstEnd();
        } else {
            lastEnd();
        }
        return true;
    }
    const int hinted = choices_.hinted(text);
    if (hinted >= 0) {
        choose(hinted);
    }
    return hinted >= 0;
}

} // namespace bullace::tablet
