// The block map beside the list of what it can show.
import QtQuick
import Bullace.Controls
import Bullace.Desk

FocusScope {
    id: root

    required property MapViewModel page

    DeskTable {
        id: choices
        objectName: "pageTable"
        focus: true
        hasHeader: false
        model: root.page.table
        width: Math.round(Math.min(parent.width * 0.3, Theme.mm(58) * Theme.textScale))
        height: parent.height
        onOpened: (row) => root.page.open(row)
    }
    BlockMap {
        id: map
        objectName: "blockMap"
        x: choices.width + Theme.mm(3)
        width: parent.width - x
        height: parent.height - said.height
        source: root.page.map
        onChosen: (position) => root.page.choose(position)
    }
    DeskLabel {
        id: said
        objectName: "mapCursor"
        x: map.x
        width: map.width
        anchors.bottom: parent.bottom
        text: map.cursorWords
    }
}
