// What has been typed, large, with its unit; below it in words why a press was not taken. Nothing shakes or flashes.
import QtQuick
import Bullace.Controls

Item {
    id: root

    property string text
    property string unit
    property string refusal
    // A name or a note, which may be long, and not a number.
    property bool isWords: false
    // The most height it may take, in pixels; a larger text takes no more.
    property real room: Theme.mm(60)
    // What stands there before anything is typed, in words for those who hear the screen.
    property string emptyName: qsTr("Nothing typed yet")

    readonly property string said: root.text === "" ? root.emptyName
                                                    : root.unit === "" ? root.text
                                                                       : qsTr("%1 %2").arg(root.text).arg(root.unit)
    readonly property real numberWidth: Math.max(1, root.width - (root.unit === "" ? 0 : unitLabel.width + Theme.gap) - 2 * Theme.gap)

    implicitWidth: Theme.mm(60)
    implicitHeight: box.height + (refusalLabel.visible ? refusalLabel.height + Theme.gap : 0)
    Accessible.role: Accessible.StaticText
    Accessible.name: root.refusal === "" ? root.said : qsTr("%1. %2").arg(root.said).arg(root.refusal)

    Rectangle {
        id: box
        width: root.width
        height: root.isWords ? Math.max(Theme.wrappedHeight(root.text, number.font.pixelSize, root.numberWidth),
                                        Theme.wrappedHeight("0", Theme.leastPlacePx, root.width))
                             : number.font.pixelSize
        color: Theme.paper
        Rectangle {
            width: parent.width
            height: 2 * Theme.frame
            anchors.bottom: parent.bottom
            color: Theme.line
        }
        Text {
            id: number
            objectName: "echoNumber"
            text: root.text
            x: Theme.gap
            width: root.numberWidth
            // Digits have nothing below the line: the box is as high as they are.
            y: (box.height - number.height) / 2
            horizontalAlignment: Text.AlignRight
            color: Theme.ink
            font.family: Theme.family
            font.bold: true
            font.pixelSize: root.isWords ? Theme.fit(root.text, Theme.leastSmallPx, Theme.labelPx, root.numberWidth, root.room)
                                         : Theme.fit(root.text === "" ? "0" : root.text, Theme.leastPlacePx, Theme.echoPx, root.numberWidth, root.room)
            wrapMode: root.isWords ? Text.Wrap : Text.NoWrap
            textFormat: Text.PlainText
            Accessible.ignored: true
        }
        FieldLabel {
            id: unitLabel
            visible: root.unit !== ""
            text: root.unit
            wrapMode: Text.NoWrap
            anchors.right: parent.right
            anchors.rightMargin: Theme.gap
            anchors.baseline: number.baseline
            Accessible.ignored: true
        }
    }
    FieldLabel {
        id: refusalLabel
        objectName: "echoRefusal"
        visible: root.refusal !== ""
        text: root.refusal
        isSmall: true
        width: root.width
        anchors.top: box.bottom
        anchors.topMargin: Theme.gap
        Accessible.ignored: true
    }
}
