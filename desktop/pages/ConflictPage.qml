// One conflict at a time beside the list of those that wait: the row on its wire with the values at the vine, the values
// as cards of the same weight, and under them what else is known.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Plots
import Bullace.Desk

FocusScope {
    id: root

    required property ConflictsViewModel page
    readonly property string subject: root.page.subjectText
    onSubjectChanged: side.contentY = 0

    DeskTable {
        id: list
        objectName: "conflictList"
        focus: true
        model: root.page.table
        width: Math.round(parent.width * (Theme.textScale > 1.4 ? 0.44 : 0.40))
        height: parent.height
        onOpened: (row) => root.page.open(row)
    }
    Rectangle {
        x: list.width + Theme.mm(1.5)
        width: Theme.frame
        height: parent.height
        color: Theme.line
    }
    SidePane {
        id: side
        objectName: "conflictCase"
        name: qsTr("The conflict")
        x: list.width + Theme.mm(3)
        width: parent.width - x
        height: parent.height
        visible: root.page.hasCase

        DeskLabel {
            objectName: "conflictSubject"
            width: parent.width
            isHead: true
            text: root.page.subjectText
        }
        DeskLabel {
            visible: root.page.accessionText !== ""
            width: parent.width
            text: root.page.accessionText
        }
        WireItem {
            id: wire
            objectName: "conflictWire"
            visible: root.page.hasWire
            vines: root.page.wire
            width: parent.width
            height: Theme.mm(30) * (1 + (Theme.textScale - 1) * 0.6)
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("The row around it")
            Accessible.description: wire.summary
        }
        Flow {
            width: parent.width
            spacing: Theme.mm(2)
            Repeater {
                model: root.page.sides
                SideCard {
                    onTapped: root.page.run("side" + number)
                    width: Math.min(side.width, Math.max(Theme.mm(48) * Theme.textScale, (side.width - Theme.mm(2)) / 2))
                }
            }
        }
        DeskLabel {
            objectName: "conflictChoice"
            visible: root.page.choiceText !== ""
            width: parent.width
            isHead: true
            text: root.page.choiceText
            Accessible.role: Accessible.AlertMessage
        }
        DeskLabel {
            objectName: "conflictOutcome"
            visible: root.page.outcomeText !== ""
            width: parent.width
            isHead: true
            text: root.page.outcomeText
        }
        PhotoView {
            width: parent.width
            source: root.page.photos
        }
        FactList {
            width: parent.width
            model: root.page.facts
        }
        Plot {
            objectName: "conflictPlot"
            visible: root.page.hasPlot
            source: root.page.plot
            width: parent.width
            height: Math.round(Math.min(width * 0.6, Theme.mm(75)))
        }
    }
}
