// A key of the desk: the key on the keyboard that does the same, and what it does. A mouse or a finger does it, too.
import QtQuick
import Bullace.Controls

TouchKey {
    id: root

    property string text
    property string keyText
    property bool isChosen: false
    // The most width it takes before its words wrap, in pixels; 0: as wide as they are.
    property real mostWidth: 0
    readonly property real pad: Theme.mm(1.6)
    readonly property bool isInverted: root.enabled && root.isChosen !== root.isDown
    readonly property real hintWidth: root.keyText === "" ? 0 : hint.implicitWidth + root.pad

    implicitHeight: Math.max(Theme.mm(8.6), words.implicitHeight + 2 * root.pad)
    implicitWidth: root.mostWidth > 0 ? Math.min(root.mostWidth, root.naturalWidth) : root.naturalWidth
    readonly property real naturalWidth: Math.ceil(Math.max(metrics.advanceWidth, metrics.boundingRect.width)) + 4 + root.hintWidth + 2 * root.pad

    Accessible.role: Accessible.Button
    Accessible.name: root.keyText === "" ? root.text : qsTr("%1, key %2").arg(root.text).arg(root.keyText)
    Accessible.focusable: true
    Accessible.checked: root.isChosen
    Accessible.onPressAction: root.tap()

    TextMetrics {
        id: metrics
        font: words.font
        text: root.text
    }
    Rectangle {
        visible: root.activeFocus
        anchors.fill: parent
        anchors.margins: -3
        color: "transparent"
        border.width: 3
        border.color: Theme.focus
        radius: Theme.mm(0.8) + 3
    }
    Rectangle {
        anchors.fill: parent
        color: root.isInverted ? Theme.chosenFill : Theme.keyFill
        border.width: root.enabled ? Theme.frame : 0
        border.color: Theme.line
        radius: Theme.mm(0.8)
    }
    Text {
        id: hint
        visible: root.keyText !== ""
        text: root.keyText
        color: words.color
        font.family: Theme.deskFamily
        font.bold: true
        font.pixelSize: Theme.deskPx
        x: root.pad
        anchors.verticalCenter: parent.verticalCenter
        textFormat: Text.PlainText
        Accessible.ignored: true
    }
    Text {
        id: words
        text: root.text
        color: root.isInverted ? Theme.chosenInk : root.enabled ? Theme.keyInk : Theme.ink
        font.family: Theme.deskFamily
        font.pixelSize: Theme.deskPx
        x: root.pad + root.hintWidth
        width: root.width - root.hintWidth - 2 * root.pad
        anchors.verticalCenter: parent.verticalCenter
        wrapMode: Text.WordWrap
        textFormat: Text.PlainText
        Accessible.ignored: true
    }
}
