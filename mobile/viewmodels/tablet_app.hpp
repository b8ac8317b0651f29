// The whole tablet: which page is on the glass, which journal is open, what the stripe says. It
// makes the pages' view-models and carries keys and pictures to them.
#pragma once

#include "tablet/choose_view_model.hpp"
#include "tablet/crosses_view_model.hpp"
#include "tablet/label_view_model.hpp"
#include "tablet/row_end_view_model.hpp"
#include "tablet/session.hpp"
#include "tablet/settings_view_model.hpp"
#include "tablet/start_view_model.hpp"
#include "tablet/stop_view_model.hpp"
#include "tablet/sync_view_model.hpp"
#include "tablet/where_view_model.hpp"

#include <QImage>
#include <QObject>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <functional>
#include <memory>
#include <string>

namespace bullace::camera {
class Camera;
}

namespace bullace::tablet {

// What the program around the screens gives it.
struct TabletParts {
    QString folder;   // where the journals lie
    std::string zone; // of the tablet, IANA
    const Clock* clock = nullptr;
    const Clock* demoClock = nullptr;       // on the demo station it is its third spring
    camera::Camera* codeCamera = nullptr;   // null: none
    camera::Camera* photoCamera = nullptr;  // the same device, asked for larger pictures
    std::function<std::string()> demoLines; // the demo station's journals, as JSON Lines
    // What a QR code in the picture says; empty where there is none.
    std::function<QString(const QImage&)> readCode;
    std::function<QByteArray(const QImage&)> photoBytes;
};

class TabletApp : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the program")

    Q_PROPERTY(Page page READ page NOTIFY pageChanged)
    Q_PROPERTY(QString waitingText READ waitingText NOTIFY waitingChanged)
    Q_PROPERTY(QString notice READ notice NOTIFY noticeChanged)
    Q_PROPERTY(QString trouble READ trouble NOTIFY troubleChanged)
    Q_PROPERTY(bool isDemo READ isDemo NOTIFY pageChanged)
    Q_PROPERTY(bullace::tablet::SheetViewModel* sheet READ sheet NOTIFY pageChanged)
    Q_PROPERTY(bullace::tablet::StopViewModel* stop READ stop CONSTANT)
    Q_PROPERTY(qreal textScale READ textScale NOTIFY settingsChanged)
    Q_PROPERTY(qreal glassFactor READ glassFactor NOTIFY settingsChanged)
    Q_PROPERTY(bool isLeftHanded READ isLeftHanded NOTIFY settingsChanged)
    Q_PROPERTY(bool isDusk READ isDusk NOTIFY settingsChanged)
    Q_PROPERTY(int layout READ layout NOTIFY settingsChanged)
    Q_PROPERTY(bool hasPicture READ hasPicture NOTIFY pictureChanged)

public:
    enum Page {
        Trouble,
        Start,
        Choose,
        Stop,
        RowEnd,
        Where,
        Sync,
        Settings,
        Crosses,
        Photo,
        Label
    };
    Q_ENUM(Page)

    explicit TabletApp(TabletParts parts, QObject* parent = nullptr);
    ~TabletApp() override;
    TabletApp(const TabletApp&) = delete;
    TabletApp& operator=(const TabletApp&) = delete;
    TabletApp(TabletApp&&) = delete;
    TabletApp& operator=(TabletApp&&) = delete;

    // Opens the journal and shows the page where the person was. A journal that cannot be opened is
    // the one thing that blocks.
    Q_INVOKABLE void open();
    // The demo station's journal in place of the tablet's own, which must be open.
    void openDemo();

    [[nodiscard]] Page page() const { return page_; }
    [[nodiscard]] QString waitingText() const { return waitingText_; }
    [[nodiscard]] QString notice() const { return notice_; }
    [[nodiscard]] QString trouble() const { return trouble_; }
    [[nodiscard]] bool isDemo() const { return isDemo_; }
    [[nodiscard]] SheetViewModel* sheet();
    [[nodiscard]] StopViewModel* stop() { return &stop_; }
    [[nodiscard]] SyncViewModel& syncPage() { return sync_; }
    [[nodiscard]] field::FieldBook* book() const { return book_.get(); }
    [[nodiscard]] qreal textScale() const { return settings().textScale; }
    [[nodiscard]] qreal glassFactor() const { return settings().glassFactor; }
    [[nodiscard]] bool isLeftHanded() const { return settings().isLeftHanded; }
    [[nodiscard]] bool isDusk() const { return settings().isDusk; }
    [[nodiscard]] int layout() const { return static_cast<int>(settings().layout); }
    [[nodiscard]] QImage picture() const { return picture_; }
    [[nodiscard]] bool hasPicture() const { return !picture_.isNull(); }
    [[nodiscard]] std::string language() const { return settings().language; }

    Q_INVOKABLE void go(bullace::tablet::TabletApp::Page page);
    Q_INVOKABLE void undo();
    Q_INVOKABLE void takePhoto();
    Q_INVOKABLE void leavePhoto();
    Q_INVOKABLE void putNoticeAway();
    Q_INVOKABLE void tryAgain(); // after the one blocking message
    Q_INVOKABLE void leaveWalk();
    // Everything that is said, in the language that holds now.
    void speakAgain();
    // A hardware key; true where it was one of ours.
    Q_INVOKABLE bool press(int key, const QString& text);

signals:
    void pageChanged();
    void waitingChanged();
    void noticeChanged();
    void troubleChanged();
    void settingsChanged();
    void pictureChanged();

private:
    [[nodiscard]] const field::Settings& settings() const;
    void connectPages();
    void leaveDemo();
    bool openBook(const QString& name, const Clock& clock);
    void setPage(Page page);
    void home();
    void onWalked();
    void onFailed(const Error& error);
    void tell(const QString& words);
    void setCamera(bool isOn);
    void onFrame(const QImage& frame);
    void countWaiting();
    void wantPhoto();
    void keepPhoto(const QImage& picture);
    [[nodiscard]] QString demoPath() const;

    TabletParts parts_;
    field::Settings noSettings_;
    std::unique_ptr<field::FieldBook> book_;
    Session session_;
    StartViewModel start_;
    ChooseViewModel choose_;
    StopViewModel stop_;
    RowEndViewModel rowEnd_;
    WhereViewModel where_;
    SyncViewModel sync_;
    SettingsViewModel settingsPage_;
    CrossesViewModel crosses_;
    LabelViewModel label_;
    Page page_ = Trouble;
    QString waitingText_;
    QString notice_;
    QString trouble_;
    QImage picture_;
    bool isDemo_ = false;
    camera::Camera* openCamera_ = nullptr;
};

} // namespace bullace::tablet
