// The bench's grid beside the list of what it shows.
import QtQuick
import Bullace.Controls
import Bullace.Desk

FocusScope {
    id: root

    required property BenchViewModel page

    DeskTable {
        id: choices
        objectName: "benchChoices"
        focus: true
        hasHeader: false
        model: root.page.choices
        width: Math.round(Math.min(parent.width * 0.28, Theme.mm(56) * Theme.textScale))
        height: parent.height
        onOpened: (row) => root.page.choose(row)
    }
    DeskTable {
        objectName: "pageTable"
        isForTyping: true
        model: root.page.table
        x: choices.width + Theme.mm(3)
        width: parent.width - x
        height: parent.height
        onOpened: (row) => root.page.open(row)
        onTyped: (row, column, text) => root.page.type(row, column, text)
    }
}
