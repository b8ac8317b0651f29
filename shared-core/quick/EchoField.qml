// What has been typed, large, with its unit; below it in words why a press was not taken. Nothing shakes or flashes.
import QtQuick
import Bullace.Controls

Item {
    id: root

    property string text
    property string unit
    property string refusal
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
        height: Theme.wrappedHeight("0", number.font.pixelSize, root.width)
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
            height: parent.height
            horizontalAlignment: Text.AlignRight
            color: Theme.ink
            font.family: Theme.family
            font.bold: true
            font.pixelSize: Theme.fit(root.text, Theme.leastEchoPx, Theme.echoPx, root.numberWidth, Theme.mm(60))
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
