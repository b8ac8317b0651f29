// The wire with its stops: each can be tapped and reached by Tab, and says in words what hangs there.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls

WireItem {
    id: root

    property bool isTappable: true

    // The row of `vines` that was tapped.
    signal vineTapped(int index)

    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("The wire")
    Accessible.description: root.summary

    // Made anew whenever the scene is: slots have no identity beyond it.
    property int renewals: 0
    onSceneChanged: root.renewals += 1

    Repeater {
        model: root.isTappable ? root.slotCount : 0
        TouchKey {
            id: stop
            required property int index
            readonly property rect box: root.renewals >= 0 ? root.slotBox(stop.index) : Qt.rect(0, 0, 0, 0)
            objectName: "stop" + stop.index
            x: stop.box.x
            y: stop.box.y
            width: stop.box.width
            height: stop.box.height
            onTapped: root.vineTapped(root.slotVine(stop.index))
            Accessible.role: Accessible.Button
            Accessible.name: root.renewals >= 0 ? root.slotName(stop.index) : ""
            Accessible.focusable: true
            Accessible.onPressAction: stop.tap()
            Rectangle {
                visible: stop.activeFocus || stop.isDown
                anchors.fill: parent
                anchors.margins: 3
                color: "transparent"
                border.width: 3
                border.color: Theme.focus
            }
        }
    }
}
