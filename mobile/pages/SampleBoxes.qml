// The samples of one observation: a box for each, filled from the left. Mean and spread are told only after the last one.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Flow {
    id: root

    required property StopViewModel stop

    spacing: Theme.mm(1)
    Repeater {
        model: root.stop.boxes
        Rectangle {
            id: box
            required property string modelData
            width: Math.max(Theme.mm(9), words.implicitWidth + Theme.mm(2))
            height: words.implicitHeight + Theme.mm(1)
            color: Theme.paper
            border.width: Theme.frame
            border.color: Theme.line
            FieldLabel {
                id: words
                isSmall: true
                font.pixelSize: Theme.isSmallGlass ? Theme.leastSmallPx : Theme.smallPx
                anchors.centerIn: parent
                text: box.modelData
                Accessible.name: box.modelData === "" ? qsTr("A sample that is still to come") : box.modelData
            }
        }
    }
}
