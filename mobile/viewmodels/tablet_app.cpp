#include "tablet/tablet_app.hpp"

#include "camera/camera.hpp"
#include "tablet/walk_words.hpp"

#include "core/journal/subject.hpp"

#include <QDir>
#include <QFile>

#include <sstream>

namespace bullace::tablet {

namespace {

constexpr const char* kJournal = "journal.db";
constexpr const char* kDemo = "demo.db";

} // namespace

TabletApp::TabletApp(TabletParts parts, QObject* parent)
    : QObject(parent),
      parts_(std::move(parts)),
      start_(session_),
      choose_(session_),
      stop_(session_),
      rowEnd_(session_),
      where_(session_),
      sync_(session_),
      settingsPage_(session_),
      crosses_(session_),
      label_(session_) {
    connectPages();
}

TabletApp::~TabletApp() {
    sync_.stop();
    setCamera(false);
}

void TabletApp::connectPages() {
    connect(&session_, &Session::walked, this, &TabletApp::onWalked);
    connect(&session_, &Session::told, this, &TabletApp::tell);
    connect(&session_, &Session::failed, this, &TabletApp::onFailed);
    connect(&session_, &Session::settingsChanged, this, &TabletApp::settingsChanged);
    connect(&start_, &StartViewModel::demoWanted, this, &TabletApp::openDemo);
    connect(&start_, &StartViewModel::done, this, &TabletApp::home);
    connect(&start_, &StartViewModel::pairingWanted, this, [this] {
        setPage(Sync);
        sync_.openPairing();
    });
    connect(&choose_, &ChooseViewModel::begun, this, [this] {
        emit session_.bookChanged();
        home();
    });
    connect(&choose_, &ChooseViewModel::othersWanted, this, [this] { go(Crosses); });
    connect(&stop_, &StopViewModel::pictureWanted, this, &TabletApp::wantPhoto);
    connect(&stop_, &StopViewModel::viewWanted, this, [this](bool isOn) {
        if (page_ == Stop && parts_.photoCamera != nullptr) {
            setCamera(isOn);
        }
    });
    connect(&stop_, &StopViewModel::labelWanted, this, [this] { go(Where); });
    connect(&stop_, &StopViewModel::crossesWanted, this, [this] { go(Crosses); });
    connect(&stop_,
            &StopViewModel::lotOpened,
            this,
            [this](const QString& label, const QString& kind, const QString& lot) {
                label_.tell(label, kind, lot);
                go(Label);
            });
    connect(&label_, &LabelViewModel::closed, this, &TabletApp::home);
    connect(&where_, &WhereViewModel::closed, this, &TabletApp::home);
    connect(&where_, &WhereViewModel::cameraWanted, this, &TabletApp::setCamera);
    connect(&sync_, &SyncViewModel::closed, this, &TabletApp::home);
    connect(&sync_, &SyncViewModel::cameraWanted, this, &TabletApp::setCamera);
    connect(&settingsPage_, &SettingsViewModel::closed, this, &TabletApp::home);
    connect(&settingsPage_, &SettingsViewModel::demoLeft, this, &TabletApp::leaveDemo);
    connect(&crosses_, &CrossesViewModel::closed, this, &TabletApp::home);
    for (camera::Camera* each : {parts_.codeCamera, parts_.photoCamera}) {
        if (each != nullptr) {
            connect(each, &camera::Camera::frame, this, &TabletApp::onFrame);
            connect(each, &camera::Camera::failed, this, [this](const QString& words) {
                if (page_ != Stop) { // where it only offered itself
                    tell(words);
                }
            });
        }
    }
}

const field::Settings& TabletApp::settings() const {
    return book_ == nullptr ? noSettings_ : book_->settings();
}

QString TabletApp::demoPath() const {
    return QDir(parts_.folder).filePath(QString::fromLatin1(kDemo));
}

bool TabletApp::openBook(const QString& name, const Clock& clock) {
    sync_.stop();
    session_.setBook(nullptr);
    book_.reset();
    auto opened =
        field::FieldBook::open(toText(QDir(parts_.folder).filePath(name)), parts_.zone, clock);
    if (!opened) {
        trouble_ = errorWords(opened.error()) + QStringLiteral("\n") +
                   tr("Every note that was shown as recorded is in the journal's file. Nothing was "
                      "changed. If this does not help, take the tablet to the office.");
        emit troubleChanged();
        setPage(Trouble);
        return false;
    }
    book_ = std::move(*opened);
    trouble_.clear();
    emit troubleChanged();
    session_.setBook(book_.get());
    settingsPage_.setDemo(isDemo_);
    sync_.setDemo(isDemo_);
    emit settingsChanged();
    countWaiting();
    return true;
}

void TabletApp::open() {
    QDir().mkpath(parts_.folder);
    isDemo_ = QFile::exists(demoPath()) && parts_.demoClock != nullptr;
    const bool isOpen = openBook(QString::fromLatin1(isDemo_ ? kDemo : kJournal),
                                 isDemo_ ? *parts_.demoClock : *parts_.clock);
    if (isOpen) {
        home();
    }
}

// The demo has a journal of its own: invented notes never get among real ones.
void TabletApp::openDemo() {
    field::Settings settings = book_->settings();
    settings.ownBlocks.clear();
    isDemo_ = true;
    if (!openBook(QString::fromLatin1(kDemo), *parts_.demoClock)) {
        return;
    }
    if (!session_.accept(book_->change(std::move(settings)))) {
        return;
    }
    std::istringstream lines(parts_.demoLines());
    const auto report = book_->database().importLines(lines, "demo", {});
    if (!report) {
        onFailed(report.error());
        return;
    }
    if (session_.accept(book_->reload())) {
        home();
    }
}

void TabletApp::leaveDemo() {
    sync_.stop();
    session_.setBook(nullptr);
    book_.reset();
    for (const QString& left : QDir(parts_.folder).entryList({QStringLiteral("demo.db*")})) {
        QFile::remove(QDir(parts_.folder).filePath(left));
    }
    open();
}

SheetViewModel* TabletApp::sheet() {
    switch (page_) {
    case Start:
        return &start_;
    case Choose:
        return &choose_;
    case RowEnd:
        return &rowEnd_;
    case Where:
        return &where_;
    case Sync:
        return &sync_;
    case Settings:
        return &settingsPage_;
    case Crosses:
        return &crosses_;
    case Label:
        return &label_;
    default:
        return nullptr;
    }
}

void TabletApp::setPage(Page page) {
    if (page_ == page) {
        return;
    }
    if (page_ == Photo || page_ == Stop) {
        setCamera(false);
    }
    page_ = page;
    emit pageChanged();
}

void TabletApp::go(Page page) {
    if (book_ == nullptr || (page == Photo && book_->walk() == nullptr)) {
        return;
    }
    putNoticeAway();
    setPage(page);
    if (SheetViewModel* shown = sheet()) {
        shown->open();
    }
    if (page == Photo) {
        setCamera(true);
    }
}

// Where the person is: at a stop, at the end of a row, or before a walk.
void TabletApp::home() {
    if (book_ == nullptr) {
        return;
    }
    const field::Walk* walk = book_->walk();
    if (walk == nullptr) {
        setPage(settings().isSetUp ? Choose : Start);
        sheet()->open();
    } else if (walk->footing().isAtRowEnd) {
        setPage(RowEnd);
        rowEnd_.open();
    } else {
        setPage(Stop);
        stop_.refresh();
    }
}

void TabletApp::onWalked() {
    countWaiting();
    if (page_ == Stop || page_ == RowEnd) {
        putNoticeAway();
        home();
    }
}

void TabletApp::countWaiting() {
    const auto waiting = book_ == nullptr ? 0 : static_cast<int>(book_->waiting());
    const QString words = tr("%n wait", nullptr, waiting);
    if (words != waitingText_) {
        waitingText_ = words;
        emit waitingChanged();
    }
}

// What cannot be written at all is the one thing that blocks; all else is a line of words.
void TabletApp::onFailed(const Error& error) {
    const bool blocks = error.code == ErrorCode::DiskFull || error.code == ErrorCode::Io ||
                        error.code == ErrorCode::Damaged;
    if (!blocks) {
        tell(errorWords(error));
        return;
    }
    trouble_ = errorWords(error) + QStringLiteral("\n") +
               tr("What was shown as recorded is safe; the last tap is not.");
    emit troubleChanged();
    setPage(Trouble);
}

void TabletApp::tell(const QString& words) {
    notice_ = words;
    emit noticeChanged();
}

void TabletApp::putNoticeAway() {
    if (!notice_.isEmpty()) {
        tell({});
    }
}

void TabletApp::tryAgain() {
    if (book_ == nullptr) {
        open();
        return;
    }
    const Status ready = book_->database().ready();
    const Status loaded = ready ? book_->reload() : ready;
    if (loaded) {
        trouble_.clear();
        emit troubleChanged();
        home();
    } else {
        onFailed(loaded.error());
    }
}

void TabletApp::leaveWalk() {
    if (book_ != nullptr && session_.accept(book_->endWalk())) {
        home();
    }
}

void TabletApp::speakAgain() {
    countWaiting();
    stop_.speakAgain();
    if (sheet() != nullptr && page_ != Settings) { // which shows itself again after each choice
        sheet()->open();
    }
}

void TabletApp::undo() {
    if (book_ == nullptr) {
        return;
    }
    if (page_ == Stop && stop_.back()) {
        return;
    }
    const auto taken = book_->undo();
    if (!taken) {
        onFailed(taken.error());
        return;
    }
    if (!*taken) {
        tell(tr("Nothing was written here yet."));
        return;
    }
    const std::string first = (*taken)->subjects.front();
    const journal::Subject subject = journal::readSubject(first);
    const vineyard::Asked* asked = book_->catalogue().descriptor(subject.descriptor);
    const int count = static_cast<int>((*taken)->subjects.size());
    emit session_.walked();
    if (page_ != Stop && page_ != RowEnd && sheet() != nullptr) {
        session_.accept(book_->reload());
        sheet()->open();
    }
    tell(count > 2 || asked == nullptr
             ? tr("Taken back: %n note(s).", nullptr, count)
             : tr("Taken back: %1, %2 %3.")
                   .arg(placeWords(subject.id),
                        titleWords(*asked),
                        valueWords(*asked, (*taken)->value, session_.wishes())));
}

// A picture that is on the glass already is kept at once; else the camera gets a page of its own.
void TabletApp::wantPhoto() {
    const QImage seen = page_ == Stop ? picture_ : QImage();
    if (stop_.panel() == StopViewModel::Beside) {
        stop_.back();
    }
    if (seen.isNull()) {
        go(Photo);
    } else {
        keepPhoto(seen);
    }
}

void TabletApp::keepPhoto(const QImage& picture) {
    const QByteArray bytes = parts_.photoBytes ? parts_.photoBytes(picture) : QByteArray();
    const Status kept =
        book_->notePhoto(BytesView(bytes.constData(), static_cast<std::size_t>(bytes.size())));
    setPage(Stop);
    if (session_.accept(kept)) {
        emit session_.walked();
        tell(tr("The photo is kept."));
    }
}

} // namespace bullace::tablet
