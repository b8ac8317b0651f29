// One of the values that stand against each other. All cards look alike until a person has chosen.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Desk

TouchKey {
    id: root

    required property string number
    required property string value
    required property string detail
    required property string who
    required property string when
    required property string device
    required property string more
    required property bool isChosen
    required property string spoken
    readonly property real pad: Theme.mm(2)

    objectName: "card" + root.number
    implicitHeight: words.height + 2 * root.pad
    Accessible.role: Accessible.Button
    Accessible.name: root.spoken
    Accessible.focusable: true
    Accessible.onPressAction: root.tap()

    Rectangle {
        anchors.fill: parent
        color: root.isChosen ? Theme.chosenFill : Theme.keyFill
        border.width: root.activeFocus ? 3 : Theme.frame
        border.color: root.activeFocus ? Theme.focus : Theme.line
        radius: Theme.mm(0.8)
    }
    Column {
        id: words
        readonly property color ink: root.isChosen ? Theme.chosenInk : Theme.keyInk
        x: root.pad
        y: root.pad
        width: parent.width - 2 * root.pad
        spacing: Theme.mm(0.6)
        Item {
            width: parent.width
            height: Math.max(value.implicitHeight, key.implicitHeight)
            DeskLabel {
                id: key
                text: root.number
                font.bold: true
                color: words.ink
                Accessible.ignored: true
            }
            DeskLabel {
                id: value
                x: key.implicitWidth + Theme.mm(3)
                width: parent.width - x
                text: root.value
                font.bold: true
                font.family: Theme.family
                font.pixelSize: Theme.fit(root.value, Theme.deskHeadPx, Theme.deskValuePx, width, Theme.mm(20) * Theme.textScale)
                color: words.ink
                Accessible.ignored: true
            }
        }
        Repeater {
            model: [root.detail, root.who, root.when, root.device, root.more]
            DeskLabel {
                id: line
                required property string modelData
                visible: line.modelData !== ""
                width: words.width
                text: line.modelData
                color: words.ink
                Accessible.ignored: true
            }
        }
    }
}
