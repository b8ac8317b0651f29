// The whole desk: which station is open, which page is on the screen, what the stripe says.
#pragma once

#include "desk/arrivals_view_model.hpp"
#include "desk/bench_view_model.hpp"
#include "desk/bulk_view_model.hpp"
#include "desk/collection_view_model.hpp"
#include "desk/conflicts_view_model.hpp"
#include "desk/desk_settings_view_model.hpp"
#include "desk/findings_view_model.hpp"
#include "desk/import_view_model.hpp"
#include "desk/map_view_model.hpp"
#include "desk/observations_view_model.hpp"
#include "desk/planting_plan_view_model.hpp"
#include "desk/print_view_model.hpp"
#include "desk/rulebook_view_model.hpp"
#include "desk/search_view_model.hpp"
#include "desk/selection_view_model.hpp"
#include "desk/study_view_model.hpp"
#include "desk/trouble_view_model.hpp"
#include "desk/vine_view_model.hpp"
#include "desk/weather_intake_view_model.hpp"

#include <QObject>
#include <QString>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace bullace::desk {

struct DeskParts {
    const Clock* clock = nullptr;
    std::string address = "::";
    std::uint16_t port = sync::kDefaultPort;
};

class DeskApp : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the program")

    Q_PROPERTY(int page READ page NOTIFY pageChanged)
    Q_PROPERTY(bullace::desk::DeskPage* current READ current NOTIFY pageChanged)
    Q_PROPERTY(bullace::desk::ConflictsViewModel* conflicts READ conflicts CONSTANT)
    Q_PROPERTY(bullace::desk::ArrivalsViewModel* arrivals READ arrivals CONSTANT)
    Q_PROPERTY(bullace::desk::VineViewModel* vine READ vine CONSTANT)
    Q_PROPERTY(bullace::desk::BenchViewModel* bench READ bench CONSTANT)
    Q_PROPERTY(bullace::desk::MapViewModel* map READ map CONSTANT)
    Q_PROPERTY(bullace::desk::StudyViewModel* study READ study CONSTANT)
    Q_PROPERTY(bullace::desk::SelectionViewModel* selection READ selection CONSTANT)
    Q_PROPERTY(bullace::desk::StudyViewModel* breeding READ breeding CONSTANT)
    Q_PROPERTY(bullace::desk::GridModel* rail READ rail CONSTANT)
    Q_PROPERTY(QString notice READ notice NOTIFY noticeChanged)
    Q_PROPERTY(QString stationText READ stationText NOTIFY stationChanged)
    Q_PROPERTY(bool isOpen READ isOpen NOTIFY stationChanged)
    Q_PROPERTY(bool isHelpShown READ isHelpShown NOTIFY helpChanged)
    Q_PROPERTY(qreal textScale READ textScale NOTIFY settingsChanged)
    Q_PROPERTY(bool isDusk READ isDusk NOTIFY settingsChanged)

public:
    enum Page {
        Trouble,
        Arrivals,
        Conflicts,
        Findings,
        Rulebook,
        Bench,
        Vine,
        Map,
        Collection,
        Settings,
        Search,
        Bulk,
        Import,
        Print,
        Observations,
        Study,
        WeatherIntake,
        Breeding,
        Selection,
        PlantingPlan
    };
    Q_ENUM(Page)

    explicit DeskApp(DeskParts parts, QObject* parent = nullptr);
    ~DeskApp() override;
    DeskApp(const DeskApp&) = delete;
    DeskApp& operator=(const DeskApp&) = delete;
    DeskApp(DeskApp&&) = delete;
    DeskApp& operator=(DeskApp&&) = delete;

    // Opens the station; where that cannot be, the page Trouble says why and what can be done.
    void open(const std::string& path);

    [[nodiscard]] int page() const { return page_; }
    [[nodiscard]] DeskPage* current();
    [[nodiscard]] ConflictsViewModel* conflicts() { return &conflicts_; }
    [[nodiscard]] ArrivalsViewModel* arrivals() { return &arrivals_; }
    [[nodiscard]] BenchViewModel* bench() { return &bench_; }
    [[nodiscard]] MapViewModel* map() { return &map_; }
    [[nodiscard]] VineViewModel* vine() { return &vine_; }
    [[nodiscard]] StudyViewModel* study() { return &study_; }
    [[nodiscard]] SelectionViewModel* selection() { return &selection_; }
    [[nodiscard]] StudyViewModel* breeding() { return &breeding_; }
    [[nodiscard]] SearchViewModel& searchPage() { return search_; }
    [[nodiscard]] FindingsViewModel& findings() { return findings_; }
    [[nodiscard]] ImportViewModel& importPage() { return import_; }
    [[nodiscard]] PrintViewModel& printPage() { return print_; }
    [[nodiscard]] WeatherIntakeViewModel& weatherIntake() { return weatherIntake_; }
    [[nodiscard]] PlantingPlanViewModel& plantingPlan() { return plantingPlan_; }
    [[nodiscard]] GridModel* rail() { return &rail_; }
    [[nodiscard]] QString notice() const { return notice_; }
    [[nodiscard]] QString stationText() const;
    [[nodiscard]] bool isOpen() const { return session_.desk() != nullptr; }
    [[nodiscard]] bool isHelpShown() const { return isHelpShown_; }
    [[nodiscard]] qreal textScale() const { return session_.settings().textScale; }
    [[nodiscard]] bool isDusk() const { return session_.settings().isDusk; }
    [[nodiscard]] std::string language() const { return session_.settings().language; }
    [[nodiscard]] DeskSession& session() { return session_; }

    Q_INVOKABLE void go(int page);
    Q_INVOKABLE void goToRail(int row);
    Q_INVOKABLE void back();
    // The search line was typed into: its page comes onto the screen.
    Q_INVOKABLE void search(const QString& query);
    Q_INVOKABLE void toggleHelp();
    Q_INVOKABLE void putNoticeAway();
    // A key that no field took; true where it was one of ours.
    Q_INVOKABLE bool press(int key, int modifiers);
    // Everything that is said, in the language that holds now.
    void speakAgain();

signals:
    void pageChanged();
    void noticeChanged();
    void stationChanged();
    void helpChanged();
    void settingsChanged();
    void searchWanted(); // the search line takes the keyboard
    void paneWanted();   // the next pane of the page takes the keyboard

private:
    void tell(const QString& words);
    void showRail();
    void visit(int page);
    void onAsked(const QString& page, const QString& about);
    void onDesk();
    void backUp();
    [[nodiscard]] DeskPage* pageOf(int page);

    DeskParts parts_;
    DeskSession session_;
    office::Token backupToken_;
    TroubleViewModel trouble_;
    ArrivalsViewModel arrivals_;
    ConflictsViewModel conflicts_;
    BulkViewModel bulk_;
    DeskSettingsViewModel settings_;
    FindingsViewModel findings_;
    RulebookViewModel rulebook_;
    VineViewModel vine_;
    SearchViewModel search_;
    BenchViewModel bench_;
    MapViewModel map_;
    CollectionViewModel collection_;
    ImportViewModel import_;
    PrintViewModel print_;
    ObservationsViewModel observations_;
    StudyReading reading_;
    StudyViewModel study_;
    StudyViewModel breeding_;
    SelectionViewModel selection_;
    WeatherIntakeViewModel weatherIntake_;
    PlantingPlanViewModel plantingPlan_;
    GridModel rail_;
    int page_ = Trouble;
    std::vector<int> before_; // pages behind a visited one
    QString notice_;
    bool isHelpShown_ = false;
};

} // namespace bullace::desk
