// The number pad. It only says what was pressed; what may be typed is decided behind the page. Undo is not on it.
// For the left hand the column of Next stands at the left, so that it lies at the outer edge of the tapping hand.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls

Item {
    id: root

    property bool hasPoint: false
    property bool canCommit: true
    property bool hasNudge: true
    property string nextText: qsTr("Next")
    property string nextName: qsTr("Next: record and go on")

    signal digit(string character)
    signal point()
    signal erase()
    signal next()
    signal nudge(int by)

    readonly property real keyWidth: Math.max(Theme.keyWidth, (root.width - 3 * Theme.gap) / 4)
    readonly property real keyHeight: Math.max(Theme.keyHeight, nextKey.implicitHeight / 2, (root.height - 3 * Theme.gap) / 4)
    readonly property real digitsX: Theme.isLeftHanded ? root.keyWidth + Theme.gap : 0
    readonly property real edgeX: Theme.isLeftHanded ? 0 : 3 * (root.keyWidth + Theme.gap)

    implicitWidth: 4 * Math.max(Theme.keyWidth, nextKey.implicitWidth) + 3 * Theme.gap
    implicitHeight: 4 * Theme.keyHeight + 3 * Theme.gap

    component Digit: FieldKey {
        id: padKey
        property int column
        property int row
        x: root.digitsX + padKey.column * (root.keyWidth + Theme.gap)
        y: padKey.row * (root.keyHeight + Theme.gap)
        width: root.keyWidth
        height: root.keyHeight
        mostPx: Theme.placePx
    }

    Repeater {
        model: 9
        Digit {
            id: digitKey
            required property int index
            readonly property string character: String(digitKey.index + 1)
            objectName: "digit" + digitKey.character
            text: digitKey.character
            column: digitKey.index % 3
            row: 2 - Math.floor(digitKey.index / 3)
            onTapped: root.digit(digitKey.character)
        }
    }
    Digit {
        id: eraseKey
        objectName: "erase"
        name: qsTr("Erase the last digit")
        column: 0
        row: 3
        onTapped: root.erase()
        FieldSign {
            sign: FieldSign.Erase
            ink: eraseKey.isInverted ? Theme.chosenInk : Theme.keyInk
            anchors.centerIn: parent
            width: Theme.mm(9)
            height: width
        }
    }
    Digit {
        objectName: "digit0"
        text: "0"
        column: 1
        row: 3
        width: root.hasPoint ? root.keyWidth : 2 * root.keyWidth + Theme.gap
        onTapped: root.digit("0")
    }
    Digit {
        objectName: "point"
        visible: root.hasPoint
        text: Qt.locale().decimalPoint
        name: qsTr("Decimal point")
        column: 2
        row: 3
        onTapped: root.point()
    }
    Digit {
        objectName: "nudgeUp"
        visible: root.hasNudge
        text: "+"
        name: qsTr("One more")
        x: root.edgeX
        row: 0
        onTapped: root.nudge(1)
    }
    Digit {
        objectName: "nudgeDown"
        visible: root.hasNudge
        text: "−"
        name: qsTr("One less")
        x: root.edgeX
        row: 1
        onTapped: root.nudge(-1)
    }
    FieldKey {
        id: nextKey
        objectName: "next"
        text: root.nextText
        name: root.nextName
        enabled: root.canCommit
        guardsRepeat: true
        isStrong: true
        x: root.edgeX
        y: root.hasNudge ? 2 * (root.keyHeight + Theme.gap) : 0
        width: root.keyWidth
        height: (root.hasNudge ? 2 : 4) * root.keyHeight + (root.hasNudge ? 1 : 3) * Theme.gap
        onTapped: root.next()
    }
}
