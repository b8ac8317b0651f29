// Answers as keys: what ChoiceKeys draws.
#pragma once

#include <QAbstractListModel>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include <vector>

namespace bullace::tablet {

struct Choice {
    QString text;
    QString detail;
    QString keyHint; // the hardware key that does the same
    bool isChosen = false;
    QString name;  // for those who hear the screen; empty: text and detail
    QString value; // what it stands for; not shown
    bool operator==(const Choice&) const = default;
};

class ChoiceModel : public QAbstractListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the page's view-model")
    Q_PROPERTY(int count READ count NOTIFY countChanged)

public:
    enum Role { TextRole = Qt::UserRole + 1, DetailRole, KeyHintRole, IsChosenRole, NameRole };

    explicit ChoiceModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

    [[nodiscard]] int count() const { return static_cast<int>(choices_.size()); }
    [[nodiscard]] const std::vector<Choice>& choices() const { return choices_; }
    [[nodiscard]] const Choice& at(int index) const {
        return choices_[static_cast<std::size_t>(index)];
    }
    [[nodiscard]] bool holds(int index) const { return index >= 0 && index < count(); }
    // Tells only of what changed: rows stay where the answers are the same.
    void set(std::vector<Choice> choices);
    // Numbers 1 to 9 as hardware keys for the first nine.
    static void number(std::vector<Choice>& choices);
    // The index that a typed digit means: the key with that hint; -1 for none.
    [[nodiscard]] int hinted(const QString& text) const;

signals:
    void countChanged();

private:
    std::vector<Choice> choices_;
};

} // namespace bullace::tablet
