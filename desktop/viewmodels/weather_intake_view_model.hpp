// A file of weather before it is taken in: its first days, what is lacking and what was left out;
// then all of it.
#pragma once

#include "desk/desk_page.hpp"
#include "office/weather_import.hpp"

#include <QByteArray>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <memory>
#include <optional>
#include <string>

namespace bullace::desk {

class WeatherIntakeViewModel : public bullace::desk::DeskPage {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the desk")

public:
    explicit WeatherIntakeViewModel(DeskSession& session, QObject* parent = nullptr);

    [[nodiscard]] QString help() const override;
    void begin();
    void refresh() override;
    void leave() override;
    void open(int row) override;
    // Takes a file up, then asks what it does not say. Why it cannot be; empty where it can.
    [[nodiscard]] QString takeFile(const QString& path);
    [[nodiscard]] const std::optional<office::WeatherPlan>& plan() const { return plan_; }

protected:
    void act(const QString& id) override;
    bool back() override;

private:
    void showFiles();
    void askNext();
    void askUnit();
    void askOrder();
    void readFile();
    void askSite();
    void planAgain();
    void show();
    void showDays();
    void showFacts();
    void take();
    [[nodiscard]] QString formWords() const;
    [[nodiscard]] QString unitWords() const;

    QString path_;
    std::shared_ptr<const QByteArray> file_; // none while files are listed
    office::WeatherLook look_;
    office::WeatherWish wish_;
    bool hasUnit_ = false;
    std::shared_ptr<const office::WeatherIntake> intake_;
    std::string site_;
    std::optional<office::WeatherPlan> plan_;
    office::Token token_;
};

} // namespace bullace::desk
