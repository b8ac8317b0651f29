#include "desk/desk_app.hpp"

#include "desk/breeding_views.hpp"

#include "quick/words.hpp"

#include <QKeySequence>

#include <utility>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

DeskApp::DeskApp(DeskParts parts, QObject* parent)
    : QObject(parent),
      parts_(std::move(parts)),
      session_(*parts_.clock),
      trouble_(session_),
      arrivals_(session_),
      conflicts_(session_),
      bulk_(session_),
      settings_(session_),
      findings_(session_),
      rulebook_(session_),
      vine_(session_),
      search_(session_),
      bench_(session_),
      map_(session_),
      collection_(session_),
      import_(session_),
      print_(session_),
      observations_(session_),
      study_(session_, reading_, {[] { return tr("Season"); }, makeStudyViews}),
      breeding_(session_, reading_, {[] { return tr("Breeding"); }, makeBreedingViews}),
      selection_(session_),
      weatherIntake_(session_),
      plantingPlan_(session_) {
    connect(&session_, &DeskSession::told, this, &DeskApp::tell);
    connect(&session_, &DeskSession::deskChanged, this, &DeskApp::onDesk);
    connect(&session_, &DeskSession::settingsChanged, this, &DeskApp::settingsChanged);
    connect(&session_, &DeskSession::asked, this, &DeskApp::onAsked);
    const auto renew = [this] {
        if (DeskPage* page = current()) {
            page->refresh();
        }
    };
    connect(&session_, &DeskSession::changed, this, renew);
    connect(&session_, &DeskSession::catalogueChanged, this, renew);
    connect(&trouble_, &TroubleViewModel::openWanted, this, [this](const QString& path) {
        open(toText(path));
    });
    showRail();
}

DeskApp::~DeskApp() {
    backupToken_.cancel();
    session_.setDesk(nullptr);
}

void DeskApp::open(const std::string& path) {
    backupToken_.cancel();
    session_.setDesk(nullptr);
    const auto log = [this](const std::string& line) {
        session_.post([this, line] {
            tell(fromText(line));
            session_.announce(DeskSession::Touches::Collection);
        });
    };
    auto desk = office::Desk::open({path, parts_.address, parts_.port}, *parts_.clock, log);
    if (!desk) {
        trouble_.show(path, desk.error());
        page_ = Trouble;
        before_.clear();
        emit pageChanged();
        return;
    }
    session_.setDesk(std::move(*desk));
}

void DeskApp::onDesk() {
    before_.clear();
    if (session_.desk() != nullptr) {
        page_ = Trouble;
        go(Arrivals);
        backUp();
    }
    emit stationChanged();
}

// Today's backup, where there is none yet: read beside everything else, and told only where it
// fails. A desk that is closed does not wait for it; the next one makes it.
void DeskApp::backUp() {
    if (session_.isReadOnly()) {
        return;
    }
    backupToken_ = {};
    session_.read(
        this,
        office::Lane::Backup,
        backupToken_,
        [today = session_.today(), token = backupToken_](store::Database& database) {
            return office::backUpDaily(database, today, [token](std::uint64_t, std::uint64_t) {
                return !token.isCancelled();
            });
        },
        [](const office::BackedUp&) {});
}

DeskPage* DeskApp::pageOf(int page) {
    switch (page) {
    case Trouble:
        return &trouble_;
    case Arrivals:
        return &arrivals_;
    case Conflicts:
        return &conflicts_;
    case Settings:
        return &settings_;
    case Bulk:
        return &bulk_;
    case Findings:
        return &findings_;
    case Rulebook:
        return &rulebook_;
    case Vine:
        return &vine_;
    case Search:
        return &search_;
    case Bench:
        return &bench_;
    case Map:
        return &map_;
    case Collection:
        return &collection_;
    case Import:
        return &import_;
    case Print:
        return &print_;
    case Observations:
        return &observations_;
    case Study:
        return &study_;
    case Breeding:
        return &breeding_;
    case Selection:
        return &selection_;
    case PlantingPlan:
        return &plantingPlan_;
    case WeatherIntake:
        return &weatherIntake_;
    default:
        return nullptr;
    }
}

DeskPage* DeskApp::current() {
    return pageOf(page_);
}

QString DeskApp::stationText() const {
    const office::Desk* desk = session_.desk();
    if (desk == nullptr) {
        return {};
    }
    const QString name = fromText(desk->about().station);
    return desk->isReadOnly() ? tr("%1, for reading only").arg(name) : name;
}

void DeskApp::showRail() {
    struct Line {
        Page page;
        QString text;
        const char* key;
    };
    const Line lines[] = {
        {Arrivals, tr("Arrivals"), "Ctrl+1"},
        {Conflicts, tr("Conflicts"), "Ctrl+2"},
        {Findings, tr("Findings"), "Ctrl+3"},
        {Rulebook, tr("Rulebook"), "Ctrl+4"},
        {Bench, tr("Bench"), "Ctrl+5"},
        {Vine, tr("Vine"), "Ctrl+6"},
        {Map, tr("Map"), "Ctrl+7"},
        {Collection, tr("Collection"), "Ctrl+8"},
        {Study, tr("Season"), "Ctrl+9"},
        {Breeding, tr("Breeding"), "Ctrl+B"},
        {Selection, tr("Selection meeting"), "Ctrl+M"},
        {Settings, tr("This desk"), "Ctrl+0"},
    };
    std::vector<GridRow> rows;
    for (const Line& line : lines) {
        if (pageOf(line.page) == nullptr) {
            continue;
        }
        GridRow row;
        row.cells << line.text << QLatin1String(line.key);
        row.key = QString::number(line.page);
        rows.push_back(std::move(row));
    }
    rail_.setColumns(tr("Pages"), {{{}, 10, false, true}, {{}, 6}});
    rail_.setRows(std::move(rows));
    rail_.setCurrent(rail_.rowOf(QString::number(page_)));
}

void DeskApp::go(int page) {
    DeskPage* next = pageOf(page);
    if (next == nullptr || (page != Trouble && session_.desk() == nullptr)) {
        return;
    }
    if (DeskPage* last = current(); last != nullptr && page != page_) {
        last->dropQuestion();
        last->leave();
    }
    before_.clear();
    page_ = page;
    rail_.setCurrent(rail_.rowOf(QString::number(page_)));
    next->refresh();
    emit pageChanged();
}

void DeskApp::goToRail(int row) {
    if (rail_.holds(row)) {
        go(rail_.at(row).key.toInt());
    }
}

void DeskApp::back() {
    if (before_.empty()) {
        return;
    }
    const int page = before_.back();
    std::vector<int> rest(before_.begin(), before_.end() - 1);
    if (DeskPage* last = current()) {
        last->dropQuestion();
        last->leave();
    }
    page_ = page;
    before_ = std::move(rest);
    rail_.setCurrent(rail_.rowOf(QString::number(page_)));
    current()->refresh();
    emit pageChanged();
}

// A page that one comes back from with Escape.
void DeskApp::visit(int page) {
    if (DeskPage* last = current(); last != nullptr && page != page_) {
        last->dropQuestion();
        before_.push_back(page_);
    }
    page_ = page;
    rail_.setCurrent(rail_.rowOf(QString::number(page_)));
    current()->refresh();
    emit pageChanged();
}

void DeskApp::onAsked(const QString& page, const QString& about) {
    if (page == QStringLiteral("bulk")) {
        bulk_.begin(about);
        visit(Bulk);
    } else if (page == QStringLiteral("vine")) {
        vine_.begin(about);
        visit(Vine);
    } else if (page == QStringLiteral("collection")) {
        collection_.begin(about);
        visit(Collection);
    } else if (page == QStringLiteral("import")) {
        import_.begin();
        visit(Import);
    } else if (page == QStringLiteral("observations")) {
        visit(Observations);
    } else if (page == QStringLiteral("print")) {
        print_.begin(about);
        visit(Print);
    } else if (page == QStringLiteral("weather-intake")) {
        weatherIntake_.begin();
        visit(WeatherIntake);
    } else if (page == QStringLiteral("planting-plan")) {
        plantingPlan_.begin();
        visit(PlantingPlan);
    } else if (page == QStringLiteral("conflicts")) {
        go(Conflicts);
    } else if (page == QStringLiteral("back")) {
        back();
    }
}

void DeskApp::search(const QString& query) {
    if (session_.desk() == nullptr) {
        return;
    }
    search_.search(query);
    if (page_ != Search) {
        visit(Search);
    }
}

void DeskApp::toggleHelp() {
    isHelpShown_ = !isHelpShown_;
    emit helpChanged();
}

void DeskApp::tell(const QString& words) {
    notice_ = words;
    emit noticeChanged();
}

void DeskApp::putNoticeAway() {
    tell({});
}

bool DeskApp::press(int key, int modifiers) {
    const int plain = modifiers & ~static_cast<int>(Qt::KeypadModifier);
    if (key == Qt::Key_F1) {
        toggleHelp();
        return true;
    }
    if (key == Qt::Key_F6) {
        emit paneWanted();
        return true;
    }
    if (plain == Qt::ControlModifier) {
        const QString text = QKeySequence(plain | key).toString(QKeySequence::PortableText);
        for (int row = 0; row < rail_.count(); ++row) {
            if (rail_.at(row).cells.value(1) == text) {
                goToRail(row);
                return true;
            }
        }
    }
    if (plain == Qt::ControlModifier && key == Qt::Key_F) {
        emit searchWanted();
        return true;
    }
    DeskPage* page = current();
    if (page != nullptr && page->press(key, modifiers)) {
        return true;
    }
    if (plain == Qt::ControlModifier && (key == Qt::Key_Z || key == Qt::Key_Y) && isOpen()) {
        key == Qt::Key_Z ? session_.undo() : session_.redo();
        return true;
    }
    if (key == Qt::Key_Escape) {
        if (isHelpShown_) {
            toggleHelp();
        } else if (!notice_.isEmpty()) {
            putNoticeAway();
        } else {
            back();
        }
        return true;
    }
    return false;
}

void DeskApp::speakAgain() {
    showRail();
    if (DeskPage* page = current()) {
        page->speakAgain();
    }
    emit stationChanged();
}

} // namespace bullace::desk
