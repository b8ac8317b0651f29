// A page that is a sentence and a table, with facts beside it where there are any.
import QtQuick
import Bullace.Controls
import Bullace.Desk

FocusScope {
    id: root

    required property DeskPage page
    readonly property bool hasFacts: root.page.facts.count > 0

    DeskTable {
        id: table
        objectName: "pageTable"
        focus: true
        model: root.page.table
        width: root.hasFacts ? Math.round(parent.width * 0.62) : parent.width
        height: parent.height
        onOpened: (row) => root.page.open(row)
        onTyped: (row, column, text) => root.page.type(row, column, text)
    }
    DeskTable {
        objectName: "pageFacts"
        visible: root.hasFacts
        isPlain: true
        hasHeader: false
        model: root.page.facts
        x: table.width + Theme.mm(3)
        width: parent.width - x
        height: parent.height
    }
}
