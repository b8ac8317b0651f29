// The whole area is one key that counts; below it one less, and done.
import QtQuick
import Bullace.Controls

Item {
    id: root

    property string counted

    signal count(int by)
    signal done()

    TouchKey {
        id: glass
        objectName: "tallyGlass"
        width: root.width
        height: root.height - foot.height - Theme.gap
        onTapped: root.count(1)
        Accessible.role: Accessible.Button
        Accessible.name: qsTr("One more; %1 so far").arg(root.counted)
        Accessible.focusable: true
        Accessible.onPressAction: glass.tap()
        Rectangle {
            anchors.fill: parent
            color: glass.isDown ? Theme.chosenFill : Theme.keyFill
            border.width: glass.activeFocus ? 2 * Theme.frame : Theme.frame
            border.color: Theme.line
            Text {
                objectName: "tallyCount"
                anchors.centerIn: parent
                text: root.counted
                color: glass.isDown ? Theme.chosenInk : Theme.ink
                font.family: Theme.family
                font.bold: true
                font.pixelSize: Theme.echoPx
                Accessible.ignored: true
            }
        }
    }
    Row {
        id: foot
        anchors.bottom: parent.bottom
        anchors.right: Theme.isLeftHanded ? undefined : parent.right
        spacing: Theme.gap
        FieldKey {
            objectName: "tallyLess"
            text: "−"
            name: qsTr("One less")
            onTapped: root.count(-1)
        }
        FieldKey {
            objectName: "tallyDone"
            text: qsTr("Next")
            name: qsTr("Next: record and go on")
            isStrong: true
            guardsRepeat: true
            onTapped: root.done()
        }
    }
}
