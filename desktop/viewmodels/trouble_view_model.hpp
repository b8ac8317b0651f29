// Why no station is open, and what can be done about it. Nothing is repaired in silence.
#pragma once

#include "desk/desk_page.hpp"
#include "office/backups.hpp"

#include <QString>
#include <QtQml/qqmlregistration.h>

#include <string>
#include <vector>

namespace bullace::desk {

class TroubleViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit TroubleViewModel(DeskSession& session, QObject* parent = nullptr)
        : DeskPage(session, parent) {}

    void show(const std::string& path, const Error& error);
    void speakAgain() override { showAgain(); }
    void refresh() override { showAgain(); }
    void open(int row) override;

signals:
    void openWanted(const QString& path);

protected:
    void act(const QString& id) override;

private:
    void showAgain();
    void lookOnly();
    void takeBackup();

    std::string path_;
    Error error_;
    std::vector<office::BackupFile> backups_;
};

} // namespace bullace::desk
