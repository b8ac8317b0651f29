// The photos of a vine and a day, one at a time; a click turns to the next.
import QtQuick
import Bullace.Controls
import Bullace.Desk

Column {
    id: root

    required property PictureSource source

    visible: root.source.count > 0
    spacing: Theme.mm(1)

    PictureItem {
        objectName: "photo"
        source: root.source
        width: parent.width
        height: Math.round(Math.min(width * 0.75, Theme.mm(80)))
        Accessible.role: Accessible.Graphic
        Accessible.name: caption.text
        MouseArea {
            anchors.fill: parent
            onClicked: root.source.turn()
        }
    }
    DeskLabel {
        id: caption
        width: parent.width
        text: qsTr("Photo %1 of %2").arg(root.source.current + 1).arg(root.source.count)
    }
}
