// What just happened, in one sentence; it stands until the next, or until it is put away with Escape.
import QtQuick
import Bullace.Controls
import Bullace.Desk

Rectangle {
    id: root

    property string text

    signal dropped()

    visible: root.text !== ""
    implicitHeight: visible ? words.implicitHeight + 2 * Theme.mm(1.4) : 0
    color: Theme.chosenFill
    Accessible.role: Accessible.AlertMessage
    Accessible.name: root.text

    FieldSign {
        id: shape
        sign: FieldSign.Marked
        ink: Theme.chosenInk
        x: Theme.mm(1.6)
        y: Theme.mm(1.4)
        width: words.font.pixelSize
        height: width
    }
    DeskLabel {
        id: words
        objectName: "noticeWords"
        x: shape.x + shape.width + Theme.mm(1.6)
        y: Theme.mm(1.4)
        width: parent.width - x - Theme.mm(1.6)
        text: root.text
        color: Theme.chosenInk
        Accessible.ignored: true
    }
    TapHandler {
        onTapped: root.dropped()
    }
}
