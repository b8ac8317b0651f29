// Facts, each with its label; all of the same weight.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Desk

Column {
    id: root

    required property GridModel model
    property int renewals: 0
    readonly property real labelWidth: Math.min(root.width * 0.4, Theme.mm(34) * Theme.textScale)

    spacing: Theme.mm(1.2)
    Accessible.role: Accessible.List
    Accessible.name: root.model.name

    Connections {
        target: root.model
        function onDataChanged(): void {
            root.renewals += 1;
        }
        function onCountChanged(): void {
            root.renewals += 1;
        }
    }
    Repeater {
        model: root.model.count
        Item {
            id: fact
            required property int index
            width: root.width
            height: Math.max(label.implicitHeight, text.implicitHeight)
            DeskLabel {
                id: label
                width: root.labelWidth
                text: root.renewals >= 0 ? root.model.textAt(fact.index, 0) : ""
            }
            DeskLabel {
                id: text
                x: root.labelWidth + Theme.mm(2)
                width: parent.width - x
                font.bold: true
                text: root.renewals >= 0 ? root.model.textAt(fact.index, 1) : ""
            }
        }
    }
}
