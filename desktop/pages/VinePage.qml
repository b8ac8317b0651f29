// A vine, an accession, a lot or one value's history: the table, and beside it what stood there, the plot of one
// descriptor and the photo of the line.
import QtQuick
import Bullace.Controls
import Bullace.Plots
import Bullace.Desk

FocusScope {
    id: root

    required property VineViewModel page
    readonly property bool hasSide: root.page.facts.count > 0 || root.page.hasPlot || root.page.photos.count > 0

    DeskTable {
        id: table
        objectName: "pageTable"
        focus: true
        model: root.page.table
        width: root.hasSide ? Math.round(parent.width * 0.6) : parent.width
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
        Plot {
            objectName: "vinePlot"
            visible: root.page.hasPlot
            source: root.page.plot
            width: parent.width
            height: Math.round(Math.min(width * 0.9, root.height * 0.75))
        }
        PhotoView {
            width: parent.width
            source: root.page.photos
        }
    }
}
