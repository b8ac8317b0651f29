// A selection meeting: the candidates, or what is known of one; beside it where it comes from, what was decided, and its
// photos.
import QtQuick
import Bullace.Controls
import Bullace.Desk

FocusScope {
    id: root

    required property SelectionViewModel page
    readonly property bool hasSide: root.page.facts.count > 0 || root.page.photos.count > 0

    DeskTable {
        id: table
        objectName: "pageTable"
        focus: true
        model: root.page.table
        width: root.hasSide ? Math.round(parent.width * 0.66) : parent.width
        height: parent.height
        onOpened: (row) => root.page.open(row)
    }
    SidePane {
        name: qsTr("Beside it")
        x: table.width + Theme.mm(3)
        width: parent.width - x
        height: parent.height
        visible: root.hasSide

        FactList {
            width: parent.width
            model: root.page.facts
        }
        PhotoView {
            width: parent.width
            source: root.page.photos
        }
    }
}
