// What stands beside a table and may be longer than the window: arrows scroll it once Tab has come to it.
import QtQuick
import Bullace.Controls

Flickable {
    id: root

    required property string name
    default property alias parts: column.data
    readonly property real line: Theme.mm(12)

    contentHeight: column.height
    clip: true
    boundsBehavior: Flickable.StopAtBounds
    activeFocusOnTab: root.contentHeight > root.height
    Accessible.role: Accessible.Pane
    Accessible.name: root.name
    Accessible.focusable: root.activeFocusOnTab
    Keys.onDownPressed: root.contentY = Math.max(0, Math.min(root.contentHeight - root.height, root.contentY + root.line))
    Keys.onUpPressed: root.contentY = Math.max(0, root.contentY - root.line)

    Column {
        id: column
        width: root.width
        spacing: Theme.mm(2)
    }
    Rectangle {
        parent: root
        visible: root.activeFocus
        anchors.fill: parent
        color: "transparent"
        border.width: 3
        border.color: Theme.focus
    }
}
