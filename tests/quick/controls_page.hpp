// A page with every control on it, and the models that it shows; invented notes of an invented
// block.
#pragma once

#include <QByteArray>
#include <QStandardItemModel>

#include <memory>

namespace bullace::tests {

// Rows of named roles, for the controls that show a model.
class NamedRows : public QStandardItemModel {
public:
    explicit NamedRows(const QList<QByteArray>& names) {
        QHash<int, QByteArray> roles;
        for (int i = 0; i < names.size(); ++i) {
            roles.insert(Qt::UserRole + i, names[i]);
        }
        setItemRoleNames(roles);
    }
    void add(const QVariantList& values) {
        auto item = std::make_unique<QStandardItem>();
        for (int i = 0; i < values.size(); ++i) {
            item->setData(values[i], Qt::UserRole + i);
        }
        appendRow(item.release()); // the model owns it
    }
};

inline std::unique_ptr<NamedRows> stageKeys() {
    auto rows = std::make_unique<NamedRows>(
        QList<QByteArray>{"text", "detail", "keyHint", "isChosen", "name"});
    const QStringList words = {"Winter bud",
                               "Bud swell",
                               "Woolly",
                               "Green tip",
                               "First leaf",
                               "Five leaves",
                               "Bloom",
                               "Fruit set",
                               "Bunch closed"};
    for (int i = 0; i < words.size(); ++i) {
        rows->add(
            {words[i], QString::number(10 * i + 1), QString::number(i + 1), i == 3, words[i]});
    }
    return rows;
}

inline std::unique_ptr<NamedRows> wireVines() {
    auto rows = std::make_unique<NamedRows>(
        QList<QByteArray>{"place", "tag", "kind", "isMarked", "isHere"});
    rows->add({"30", "", 4, false, false});
    rows->add({"31", "24.5", 0, true, false});
    rows->add({"32", "no vine", 1, false, false});
    rows->add({"33", "not seen", 3, false, false});
    rows->add({"34", "", 0, false, true});
    rows->add({"35", "dead", 2, false, false});
    rows->add({"36", "", 0, false, false});
    rows->add({"37", "", 0, false, false});
    return rows;
}

inline const QByteArray kControlsPage = R"(
import QtQuick
import Bullace.Controls
Rectangle {
    id: page
    property QtObject stages
    property QtObject vines
    color: Theme.paper
    Column {
        x: Theme.edge
        y: Theme.edge
        width: page.width - 2 * Theme.edge
        spacing: Theme.mm(4)
        FieldLabel { width: parent.width; text: "Block B2, row 7 · bloom" }
        FieldWire {
            objectName: "wire"
            width: parent.width
            height: implicitHeight
            vines: page.vines
            hasLastPost: true
            side: WireItem.Left
        }
        NoticeStripe {
            width: parent.width
            text: "5 after 7 on 3 May at vine 31"
            firstText: "Keep"
            secondText: "Fix"
        }
        ChoiceKeys { width: parent.width; height: implicitHeight; model: page.stages }
        RowPicture { width: parent.width; height: implicitHeight; vineCount: 34; firstText: "Vine 1"; lastText: "Vine 34" }
    }
})";

inline const QByteArray kTypingPage = R"(
import QtQuick
import Bullace.Controls
Rectangle {
    id: page
    color: Theme.paper
    Column {
        x: Theme.edge
        y: Theme.edge
        width: page.width - 2 * Theme.edge
        spacing: Theme.mm(6)
        EchoField { width: parent.width; room: Theme.mm(24); text: "24.5"; unit: "mm"; refusal: "At most 60 mm: no more digits fit." }
        NumberKeys { objectName: "pad"; hasPoint: true; width: parent.width; height: implicitHeight }
        Row {
            spacing: Theme.gap
            FieldKey { objectName: "undo"; text: "Undo"; keyHint: "Del"; isPrimary: false }
            FieldKey { text: "No vine"; detail: "missing"; keyHint: "-" }
            FieldKey { text: "Marked"; isMarked: true; focus: true; objectName: "focused" }
            FieldKey { text: "Off"; enabled: false }
        }
        LetterKeys { objectName: "letters"; width: parent.width; height: implicitHeight; others: "-" }
    }
})";

} // namespace bullace::tests
