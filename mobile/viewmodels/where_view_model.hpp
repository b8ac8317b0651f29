// Where am I: the label on the vine, scanned or typed. A wrong code is never another vine.
#pragma once

#include "tablet/sheet_view_model.hpp"

#include <optional>
#include <string>

namespace bullace::tablet {

class WhereViewModel : public SheetViewModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the app")

public:
    using SheetViewModel::SheetViewModel;

    void open() override;
    void choose(int index) override;
    void commit() override;
    void back() override;
    // What the camera read.
    void seen(const QString& code);

signals:
    void closed();
    void cameraWanted(bool isOn);

private:
    void showAsking(const QString& why);
    void showFound(const std::string& position);
    [[nodiscard]] std::optional<std::size_t> stopAt(const std::string& position) const;

    bool isScanning_ = false;
};

} // namespace bullace::tablet
