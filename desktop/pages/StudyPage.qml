// A view of the sciences: the list of what can be shown, the picture or its table, and below them what has to be told.
import QtQuick
import Bullace.Controls
import Bullace.Plots
import Bullace.Desk

FocusScope {
    id: root

    required property StudyViewModel page
    readonly property real gap: Theme.mm(3)

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
    Plot {
        objectName: "studyPlot"
        visible: !root.page.isTableShown && !root.page.hasDrawing
        source: root.page.plot
        x: choices.width + root.gap
        width: parent.width - x
        height: facts.y - root.gap
    }
    Drawing {
        objectName: "studyDrawing"
        visible: !root.page.isTableShown && root.page.hasDrawing
        enabled: visible
        source: root.page.drawing
        x: choices.width + root.gap
        width: parent.width - x
        height: facts.y - root.gap
    }
    DeskTable {
        objectName: "studyTable"
        visible: root.page.isTableShown
        enabled: visible
        model: root.page.results
        x: choices.width + root.gap
        width: parent.width - x
        height: facts.y - root.gap
        onOpened: (row) => root.page.openResult(row)
    }
    SidePane {
        id: facts
        name: qsTr("What has to be told with it")
        x: choices.width + root.gap
        y: parent.height - height
        width: parent.width - x
        height: Math.round(Math.min(contentHeight, root.height * 0.32))

        FactList {
            width: parent.width
            model: root.page.facts
        }
    }
}
