// The pages of the desk, each with its key.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Desk

Item {
    id: root

    required property DeskApp app
    property int renewals: 0 // of the pages' names, when the language changes

    Connections {
        target: root.app.rail
        function onDataChanged(): void {
            root.renewals += 1;
        }
        function onCountChanged(): void {
            root.renewals += 1;
        }
    }
    Column {
        x: Theme.mm(2.5)
        y: Theme.mm(2.5)
        width: parent.width - 2 * x
        spacing: Theme.mm(1.2)
        DeskLabel {
            objectName: "stationName"
            width: parent.width
            text: root.app.stationText
            font.bold: true
            bottomPadding: Theme.mm(1.5)
        }
        Repeater {
            model: root.app.rail.count
            DeskKey {
                id: key
                required property int index
                objectName: "railKey" + key.index
                width: parent.width
                text: root.renewals >= 0 ? root.app.rail.textAt(key.index, 0) : ""
                keyText: root.renewals >= 0 ? root.app.rail.textAt(key.index, 1) : ""
                isChosen: root.app.rail.current === key.index
                onTapped: root.app.goToRail(key.index)
            }
        }
    }
    Rectangle {
        anchors.right: parent.right
        width: Theme.frame
        height: parent.height
        color: Theme.line
    }
}
