// A drawing with its words for who does not see it; arrows move it where it is larger than its room, + and − make it
// larger and smaller, 0 shows all of it.
import QtQuick
import Bullace.Controls
import Bullace.Plots

DrawingItem {
    id: root

    function drag(x: real, y: real): void {
        root.move(hand.from.x - x, hand.from.y - y);
        hand.from = Qt.point(x, y);
    }

    activeFocusOnTab: root.visible
    Accessible.role: Accessible.Graphic
    Accessible.name: root.source === null ? "" : root.source.title
    Accessible.description: root.source === null ? "" : root.source.summary
    Accessible.focusable: true

    Keys.onLeftPressed: root.step(-1, 0)
    Keys.onRightPressed: root.step(1, 0)
    Keys.onUpPressed: root.step(0, -1)
    Keys.onDownPressed: root.step(0, 1)
    Keys.onPressed: (event) => {
        event.accepted = event.text === "+" || event.text === "-" || event.text === "0";
        if (event.text === "0") {
            root.showAll();
        } else if (event.accepted) {
            root.enlarge(event.text === "+" ? 1.25 : 0.8);
        }
    }

    MouseArea {
        id: hand
        property point from
        anchors.fill: parent
        onPressed: (mouse) => {
            root.forceActiveFocus();
            hand.from = Qt.point(mouse.x, mouse.y);
        }
        onPositionChanged: (mouse) => root.drag(mouse.x, mouse.y)
        onWheel: (wheel) => root.enlarge(wheel.angleDelta.y > 0 ? 1.25 : 0.8)
    }
    Rectangle {
        visible: root.activeFocus
        anchors.fill: parent
        color: "transparent"
        border.width: 3
        border.color: Theme.focus
    }
}
