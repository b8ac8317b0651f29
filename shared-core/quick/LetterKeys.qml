// Letters and digits for codes, names and notes: in the order of the alphabet, which nobody has to learn. It only says
// what was pressed.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls

Item {
    id: root

    property string letters: "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    property string digits: "0123456789"
    // Further characters that may be typed, like "-" in a position.
    property string others: ""
    property bool hasSpace: true
    property bool canCommit: true
    property string doneText: qsTr("Done")

    signal character(string text)
    signal erase()
    signal done()

    readonly property string characters: root.letters + root.digits + root.others
    readonly property real footerHeight: Math.max(spaceKey.implicitHeight, doneKey.implicitHeight)
    readonly property KeyGrid grid: KeyGrid {
        count: root.characters.length
        roomWidth: root.width
        roomHeight: root.height - root.footerHeight - Theme.gap
        least: Theme.layout === Theme.Bare ? Qt.size(Theme.least, Theme.least) : Qt.size(Theme.secondary, Theme.secondary)
        gap: Theme.gap
    }

    implicitWidth: Theme.mm(108)
    implicitHeight: root.grid.compactHeight + root.footerHeight + Theme.gap

    Repeater {
        model: root.characters.length
        FieldKey {
            id: key
            required property int index
            objectName: "letter" + key.text
            text: root.characters.charAt(key.index)
            isPrimary: false
            isSnug: true
            x: root.grid.keyWidth > 0 ? root.grid.keyX(key.index) : 0
            y: root.grid.keyHeight > 0 ? root.grid.keyY(key.index) : 0
            width: root.grid.keyWidth
            height: root.grid.keyHeight
            onTapped: root.character(key.text)
        }
    }
    Row {
        id: footer
        spacing: Theme.gap
        anchors.bottom: parent.bottom
        x: Theme.isLeftHanded ? 0 : root.width - footer.width
        layoutDirection: Theme.isLeftHanded ? Qt.RightToLeft : Qt.LeftToRight
        FieldKey {
            id: spaceKey
            objectName: "space"
            visible: root.hasSpace
            text: qsTr("Space")
            width: Math.max(implicitWidth, Theme.mm(24))
            height: root.footerHeight
            onTapped: root.character(" ")
        }
        FieldKey {
            id: eraseKey
            objectName: "erase"
            name: qsTr("Erase the last character")
            height: root.footerHeight
            onTapped: root.erase()
            FieldSign {
                sign: FieldSign.Erase
                ink: eraseKey.isInverted ? Theme.chosenInk : Theme.keyInk
                anchors.centerIn: parent
                width: Theme.mm(9)
                height: width
            }
        }
        FieldKey {
            id: doneKey
            objectName: "done"
            text: root.doneText
            isStrong: true
            enabled: root.canCommit
            guardsRepeat: true
            height: root.footerHeight
            onTapped: root.done()
        }
    }
}
