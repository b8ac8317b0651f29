// A whole row with its two ends to tap: at which one does the person stand? The first vine is always drawn at the left.
import QtQuick
import Bullace.Controls

Item {
    id: root

    property int vineCount: 0
    property string firstText
    property string lastText

    // The end that was tapped.
    signal firstEnd()
    signal lastEnd()

    readonly property real endWidth: Math.max(Theme.mm(30), first.implicitWidth, last.implicitWidth)

    implicitWidth: 2 * root.endWidth + Theme.mm(40)
    implicitHeight: Math.max(Theme.mm(30), first.implicitHeight, last.implicitHeight)
    Accessible.role: Accessible.Grouping
    Accessible.name: qsTr("The row, with its two ends")

    FieldKey {
        id: first
        objectName: "firstEnd"
        text: root.firstText
        keyHint: "1"
        name: qsTr("You stand at this end: %1").arg(root.firstText)
        width: root.endWidth
        height: root.height
        onTapped: root.firstEnd()
    }
    RowItem {
        vineCount: root.vineCount
        anchors.left: first.right
        anchors.right: last.left
        anchors.margins: Theme.gap
        height: root.height
    }
    FieldKey {
        id: last
        objectName: "lastEnd"
        text: root.lastText
        keyHint: "2"
        name: qsTr("You stand at this end: %1").arg(root.lastText)
        anchors.right: parent.right
        width: root.endWidth
        height: root.height
        onTapped: root.lastEnd()
    }
}
