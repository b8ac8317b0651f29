// A table on the desk's screen: rows of words, with what a person can do to them. One model serves
// all lists of the desk.
#pragma once

#include <QAbstractTableModel>
#include <QString>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

#include <functional>
#include <map>
#include <set>
#include <vector>

namespace bullace::desk {

struct GridRow {
    QStringList cells;
    int sign = -1;          // quick::FieldSign::Sign before the first cell; -1: none
    QString signWord;       // what the sign says, for those who hear the screen
    bool isHeading = false; // a heading over the rows that follow: its first cell spans all
    bool isStrong = false;
    std::vector<int> editable{}; // columns that can be typed into
    QString key;                 // what it stands for; not shown

    bool operator==(const GridRow&) const = default;
};
[[nodiscard]] inline GridRow headingRow(const QString& text, const QString& key) {
    GridRow row;
    row.cells = QStringList{text};
    row.isHeading = true;
    row.key = key;
    return row;
}

struct GridColumn {
    QString title;
    int letters = 12;       // how wide, in letters of the desk's size
    bool isNumber = false;  // stands on the right
    bool takesRest = false; // grows with the window
    bool operator==(const GridColumn&) const = default;
};

class GridModel : public QAbstractTableModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the page's view-model")
    Q_PROPERTY(int count READ count NOTIFY countChanged)
    Q_PROPERTY(int current READ current WRITE setCurrent NOTIFY currentChanged)
    Q_PROPERTY(QString name READ name NOTIFY columnsReset)

public:
    enum Role {
        TextRole = Qt::UserRole + 1,
        SignRole,
        SignWordRole,
        IsHeadingRole,
        IsStrongRole,
        IsNumberRole,
        IsEditableRole,
        SpokenRole
    };
    Q_ENUM(Role)

    explicit GridModel(QObject* parent = nullptr) : QAbstractTableModel(parent) {}

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant
    headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

    // What the table is called, for those who hear the screen.
    [[nodiscard]] QString name() const { return name_; }
    void setColumns(const QString& name, std::vector<GridColumn> columns);
    // Rows that stay the same are not told anew; the current row keeps its key where it is there.
    void setRows(std::vector<GridRow> rows);

    // A list that is too long to be held: `count` lines, none of them a heading. `want` is called
    // for a page of kPageRows lines when one of its lines comes to the eye, and givePage() answers;
    // of pages that are far from it nothing is kept. setRows() ends this.
    static constexpr int kPageRows = 200;
    void setPaged(int count, std::function<void(int page)> want);
    void givePage(int page, std::vector<GridRow> rows);

    [[nodiscard]] int count() const { return rowCount(); }
    [[nodiscard]] const GridRow& at(int row) const;
    [[nodiscard]] bool holds(int row) const { return row >= 0 && row < rowCount(); }
    // -1 where there is none; headings are never current.
    [[nodiscard]] int current() const { return current_; }
    void setCurrent(int row);
    [[nodiscard]] QString currentKey() const {
        return holds(current_) ? at(current_).key : QString();
    }
    [[nodiscard]] int rowOf(const QString& key) const; // -1 for none
    // The next row that is no heading in the direction (+1, -1); the same where there is none.
    Q_INVOKABLE [[nodiscard]] int next(int row, int by) const;

    // Empty where there is no such cell.
    Q_INVOKABLE [[nodiscard]] QString textAt(int row, int column) const {
        return holds(row) ? at(row).cells.value(column) : QString();
    }
    Q_INVOKABLE [[nodiscard]] QString columnTitle(int column) const;
    Q_INVOKABLE [[nodiscard]] int columnLetters(int column) const;
    Q_INVOKABLE [[nodiscard]] bool columnTakesRest(int column) const;
    Q_INVOKABLE [[nodiscard]] bool columnIsNumber(int column) const;

signals:
    void countChanged();
    void currentChanged();
    void columnsReset();

private:
    [[nodiscard]] QString spoken(const GridRow& row, int column) const;

    QString name_;
    std::vector<GridColumn> columns_;
    std::vector<GridRow> rows_;
    int current_ = -1;
    std::function<void(int)> want_; // of a paged list
    int pagedCount_ = 0;
    std::map<int, std::vector<GridRow>> pages_;
    mutable std::set<int> wanted_; // pages that were asked for and have not come
};

} // namespace bullace::desk
