// What came and what waits; while pairing is open, the picture that a tablet scans and the code it may type.
import QtQuick
import Bullace.Controls
import Bullace.Desk

FocusScope {
    id: root

    required property ArrivalsViewModel page
    readonly property bool isPairing: root.page.pairingCode !== ""

    DeskTable {
        id: table
        objectName: "pageTable"
        focus: true
        model: root.page.table
        width: root.isPairing ? parent.width - pairing.width - Theme.mm(3) : parent.width
        height: parent.height
        onOpened: (row) => root.page.open(row)
    }
    Column {
        id: pairing
        visible: root.isPairing
        anchors.right: parent.right
        width: Theme.mm(70)
        spacing: Theme.mm(2)
        CodeItem {
            objectName: "pairingPicture"
            text: root.page.pairingPicture
            width: parent.width
            height: width
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("The pairing code as a picture")
        }
        DeskLabel {
            objectName: "pairingCode"
            width: parent.width
            isHead: true
            text: root.page.pairingCode
        }
        DeskLabel {
            width: parent.width
            text: root.page.pairingWords
        }
    }
}
