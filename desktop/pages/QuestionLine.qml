// One question with a line to type the answer into. Enter answers, Escape drops it.
import QtQuick
import Bullace.Controls
import Bullace.Desk

Rectangle {
    id: root

    required property DeskPage page

    visible: root.page.isAsking
    implicitHeight: root.visible ? column.implicitHeight + 2 * Theme.gap : 0
    color: Theme.paper
    border.width: Theme.frame
    border.color: Theme.line
    // What is offered is replaced by typing, and kept by Enter.
    onVisibleChanged: if (root.visible) field.takeAll()
    Connections {
        target: root.page
        property string lastPrompt
        function onAsking(): void {
            if (root.page.isAsking && root.page.prompt !== lastPrompt) {
                field.takeAll();
            }
            lastPrompt = root.page.isAsking ? root.page.prompt : "";
        }
    }

    Column {
        id: column
        x: Theme.gap
        y: Theme.gap
        width: parent.width - 2 * Theme.gap
        spacing: Theme.mm(1)
        DeskLabel {
            width: parent.width
            text: root.page.prompt
        }
        DeskField {
            id: field
            objectName: "questionField"
            width: parent.width
            name: root.page.prompt
            text: root.page.typed
            onEdited: (text) => root.page.typed = text
            onCommitted: root.page.answer()
            onDropped: root.page.dropQuestion()
        }
        DeskLabel {
            objectName: "questionRefusal"
            visible: root.page.refusal !== ""
            width: parent.width
            font.bold: true
            text: root.page.refusal
            Accessible.role: Accessible.AlertMessage
        }
    }
}
