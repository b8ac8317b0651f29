// What the page is for and how it is used; F1 shows and hides it.
import QtQuick
import Bullace.Controls
import Bullace.Desk

Item {
    id: root

    property string text

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Help")

    Rectangle {
        width: Theme.frame
        height: parent.height
        color: Theme.line
    }
    Column {
        x: Theme.mm(3)
        y: Theme.mm(2.5)
        width: parent.width - 2 * x
        spacing: Theme.mm(2)
        DeskLabel {
            isHead: true
            text: qsTr("Help")
        }
        DeskLabel {
            objectName: "helpWords"
            width: parent.width
            text: root.text
        }
        DeskLabel {
            width: parent.width
            text: qsTr("F1 shows and hides this. F6 goes to the next part of the page. Ctrl with a digit opens a page, Ctrl+F the search. Escape goes back.")
        }
    }
}
