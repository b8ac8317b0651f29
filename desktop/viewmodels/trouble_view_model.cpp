#include "desk/trouble_view_model.hpp"

#include "desk/desk_words.hpp"

namespace bullace::desk {

using quick::fromText;
using quick::toText;

void TroubleViewModel::show(const std::string& path, const Error& error) {
    path_ = path;
    error_ = error;
    backups_ = office::backupsOf(path);
    showAgain();
}

void TroubleViewModel::showAgain() {
    say(tr("The station cannot be opened"), quick::errorWords(error_));
    table_.setColumns(
        tr("Backups"),
        {{tr("Backup of"), 24}, {tr("Size"), 12, true}, {tr("File"), 30, false, true}});
    std::vector<GridRow> rows;
    for (const office::BackupFile& backup : backups_) {
        GridRow row;
        row.cells << whenWords(backup.madeMs, session_.clock())
                  << tr("%1 MB").arg(static_cast<double>(backup.bytes) / 1e6, 0, 'f', 1)
                  << fromText(backup.path);
        row.key = fromText(backup.path);
        rows.push_back(std::move(row));
    }
    table_.setRows(std::move(rows));
    const bool mayLook = error_.code == ErrorCode::InUse || error_.code == ErrorCode::ReadOnly ||
                         error_.code == ErrorCode::DiskFull ||
                         error_.code == ErrorCode::NewerVersion;
    const bool isDamaged = error_.code == ErrorCode::Damaged && !backups_.empty();
    actions_.set(
        {{QStringLiteral("again"), tr("Try again"), QStringLiteral("A")},
         {QStringLiteral("look"), tr("Open for reading only"), QStringLiteral("R"), mayLook},
         {QStringLiteral("restore"),
          tr("Go on with the chosen backup"),
          QStringLiteral("B"),
          isDamaged}});
}

void TroubleViewModel::open(int row) {
    table_.setCurrent(row);
}

void TroubleViewModel::act(const QString& id) {
    if (id == QStringLiteral("again")) {
        emit openWanted(fromText(path_));
    } else if (id == QStringLiteral("look")) {
        lookOnly();
    } else if (id == QStringLiteral("restore")) {
        takeBackup();
    }
}

void TroubleViewModel::lookOnly() {
    auto desk = office::Desk::openForReading({path_}, session_.clock());
    if (!desk) {
        show(path_, desk.error());
        return;
    }
    session_.setDesk(std::move(*desk));
}

// The damaged file is kept beside, under another name; devices give back what the backup lacks.
void TroubleViewModel::takeBackup() {
    const std::string backup = toText(table_.currentKey());
    const Result<std::string> kept = office::restoreBackup(path_, backup, session_.clock().nowMs());
    if (!kept) {
        show(path_, kept.error());
        return;
    }
    emit session_.told(tr("The damaged file is kept as %1. What the backup lacks comes back from "
                          "the tablets when they sync.")
                           .arg(fromText(*kept)));
    emit openWanted(fromText(path_));
}

} // namespace bullace::desk
