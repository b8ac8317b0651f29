// The block map with its cursor: it is reached by Tab, moved through by arrows, and says in words what lies under the cursor.
import QtQuick
import Bullace.Controls

BlockMapItem {
    id: root

    activeFocusOnTab: true

    Accessible.role: Accessible.Graphic
    Accessible.name: root.cursorWords === "" ? qsTr("Block map") : qsTr("Block map. %1").arg(root.cursorWords)
    Accessible.description: root.summary
    Accessible.focusable: true
    Accessible.onPressAction: if (root.cursor !== "") root.chosen(root.cursor)

    // Drawn over the map, so that moving it paints nothing anew: a ring in two colours is seen on every fill.
    Rectangle {
        id: ring
        objectName: "blockMapCursor"
        readonly property real grown: Theme.frame + 1
        visible: root.cursor !== "" && root.cursorBox.width > 0
        x: root.cursorBox.x - ring.grown
        y: root.cursorBox.y - ring.grown
        width: root.cursorBox.width + 2 * ring.grown
        height: root.cursorBox.height + 2 * ring.grown
        color: "transparent"
        border.width: root.activeFocus ? 3 : 2
        border.color: root.activeFocus ? Theme.focus : Theme.ink
        Rectangle {
            anchors.fill: parent
            anchors.margins: parent.border.width
            color: "transparent"
            border.width: 1
            border.color: Theme.paper
        }
    }
}
