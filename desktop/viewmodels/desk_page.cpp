#include "desk/desk_page.hpp"

#include <QDir>
#include <QStandardPaths>

#include <utility>

namespace bullace::desk {

DeskPage::DeskPage(DeskSession& session, QObject* parent) : QObject(parent), session_(session) {}

void DeskPage::setTyped(const QString& text) {
    if (text == typed_) {
        return;
    }
    typed_ = text;
    refusal_.clear();
    emit asking();
}

void DeskPage::run(const QString& id) {
    if (actions_.isEnabled(id)) {
        act(id);
    }
}

bool DeskPage::press(int key, int modifiers) {
    if (isAsking()) {
        if (key == Qt::Key_Escape) {
            dropQuestion();
            return true;
        }
        return false;
    }
    const QString id = actions_.idOf(key, modifiers);
    if (!id.isEmpty()) {
        act(id);
        return true;
    }
    return key == Qt::Key_Escape && back();
}

void DeskPage::type(int row, int column, const QString& text) {
    static_cast<void>(row);
    static_cast<void>(column);
    static_cast<void>(text);
}

void DeskPage::say(const QString& title, const QString& words) {
    title_ = title;
    words_ = words;
    emit worded();
}

void DeskPage::ask(const QString& prompt,
                   const QString& text,
                   std::function<QString(const QString&)> onAnswer) {
    prompt_ = prompt;
    typed_ = text;
    refusal_.clear();
    onAnswer_ = std::move(onAnswer);
    emit asking();
}

void DeskPage::answer() {
    if (!isAsking()) {
        return;
    }
    // The answer may put the next question.
    auto onAnswer = std::exchange(onAnswer_, nullptr);
    const QString refusal = onAnswer(typed_.trimmed());
    if (!refusal.isEmpty()) {
        onAnswer_ = std::move(onAnswer);
        refusal_ = refusal;
    }
    emit asking();
}

void DeskPage::dropQuestion() {
    if (!isAsking()) {
        return;
    }
    onAnswer_ = nullptr;
    emit asking();
}

bool DeskPage::isSomebodyThere() {
    if (session_.author().empty()) {
        emit session_.told(tr("Say first who sits at the desk: Ctrl+0."));
        return false;
    }
    return true;
}

void DeskPage::askPath(const QString& prompt,
                       const QString& name,
                       std::function<QString(const QString&)> write) {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    ask(prompt, QDir(folder).filePath(name), [write = std::move(write)](const QString& path) {
        return path.isEmpty() ? tr("A file needs a name.") : write(path);
    });
}

void DeskPage::askFile(const QString& prompt,
                       const QString& name,
                       std::function<QString(const QString&)> write) {
    askPath(prompt, name, [this, write = std::move(write)](const QString& path) {
        QString refusal = write(path);
        if (refusal.isEmpty()) {
            emit session_.told(tr("Written: %1").arg(path));
        }
        return refusal;
    });
}

void DeskPage::askWhy(std::function<QString(const std::string&)> then) {
    ask(tr("Why?"), {}, [then = std::move(then)](const QString& why) {
        return why.isEmpty() ? tr("A reason is needed; a word is enough.")
                             : then(why.toStdString());
    });
}

} // namespace bullace::desk
